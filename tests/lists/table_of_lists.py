"""Reads the tables of lists (`lists.txt`): each list's cells, and the garments a careful reader sees in them."""

import re
from dataclasses import dataclass
from pathlib import Path

from openpyxl import Workbook
from openpyxl.styles import Font

STRUCK, HIDDEN, CSV, SHEET, MERGED = "~~", " (hidden)", "Csv: ", "Sheet: ", "Merged: "
_EXPECTED = re.compile(r"(?P<mark>[?-] )?(?:(?P<many>\d+) x )?(?P<garment>.*)")


@dataclass(frozen=True)
class Expected:
    """One garment as a careful reader sees it; the parts may name several readings that would do if the list asks."""

    who: str
    size: tuple[str, ...]
    printed: tuple[str, ...]  # "" for a blank without a text
    number: tuple[str, ...]
    garment: str  # "" for any
    mark: str  # "" made as said, "?" only asking is right, "-" not made


@dataclass(frozen=True)
class PeoplesList:
    """A list: what kind it is of, what it shows, its sheets' rows as text, and what is expected."""

    kind: str
    shows: str
    sheets: dict[str, list[str]]
    encoding: str  # of a .csv; "" for a workbook
    expected: tuple[Expected, ...]
    merged: tuple[str, ...] = ()  # of the first sheet

    def write(self, folder: Path) -> Path:
        """The list as a file."""
        if self.encoding:
            path = folder / "list.csv"
            path.write_bytes("\r\n".join(next(iter(self.sheets.values()))).encode(self.encoding))
            return path
        book = Workbook()
        del book["Sheet"]
        for name, rows in self.sheets.items():
            sheet = book.create_sheet(name.removesuffix(HIDDEN))
            if name.endswith(HIDDEN):
                sheet.sheet_state = "hidden"
            for row_no, text in enumerate(rows, 1):
                cells = re.split(r"\s*\|\s*", text.removeprefix(STRUCK).strip(" ")) if text.strip() else []
                for column, value in enumerate(cells, 1):
                    cell = sheet.cell(row_no, column)
                    cell.value = _typed(value)
                    if text.startswith(STRUCK):
                        cell.font = Font(strike=True)
        for cells_together in self.merged:
            book.worksheets[0].merge_cells(cells_together)
        path = folder / "list.xlsx"
        book.save(path)
        return path


def _typed(text: str) -> object:
    """Digits as a number, as a spreadsheet has them; nothing for an empty cell."""
    return int(text) if re.fullmatch(r"0|[1-9]\d*", text) else text or None


def lists_in(path: Path) -> tuple[PeoplesList, ...]:
    """All lists of a table."""
    blocks = re.split(r"^(?=\[)", path.read_text(encoding="utf-8"), flags=re.MULTILINE)[1:]
    return tuple(_list(block) for block in _whole(blocks))


def _whole(blocks: list[str]) -> list[str]:
    """A block without expected garments goes on in the next: a chat's lines begin with a bracket too."""
    whole: list[str] = []
    for block in blocks:
        if whole and "\n----\n" not in whole[-1]:
            whole[-1] += block
        else:
            whole.append(block)
    return whole


def _list(block: str) -> PeoplesList:
    head, _, rest = block.partition("\n")
    cells, _, expected = rest.partition("\n----\n")
    kind, _, shows = head.removeprefix("[").partition("] ")
    encoding, sheets, name, merged = "", dict[str, list[str]](), "Sheet1", ""
    for line in cells.split("\n"):
        if line.startswith(CSV):
            encoding = line.removeprefix(CSV)
        elif line.startswith(SHEET):
            name = line.removeprefix(SHEET)
        elif line.startswith(MERGED):
            merged = line.removeprefix(MERGED)
        else:
            sheets.setdefault(name, []).append(line)
    lines = [line for line in expected.split("\n") if line.strip()]
    expected_ = tuple(each for line in lines for each in _expected(line))
    return PeoplesList(kind, shows, sheets, encoding, expected_, tuple(filter(None, merged.split(", "))))


def _expected(line: str) -> list[Expected]:
    found = _EXPECTED.fullmatch(line)
    assert found, line
    parts = [part.strip() for part in found["garment"].split("|")] + [""] * 5
    who = parts[0]
    printed = tuple("" if each == "nothing" else each for each in _either(parts[2])) if parts[2] else (who,)
    garment = Expected(who, _either(parts[1]), printed, _either(parts[3]), parts[4], (found["mark"] or "").strip())
    return [garment] * int(found["many"] or 1)


def _either(text: str) -> tuple[str, ...]:
    return tuple(part.strip() for part in text.split("/"))
