"""What a plan wrote on its own sheets, in a few letters a cell, and the cells in which something else stands now.

Only cells are looked at that the program does not read back: what is typed over one of these would be lost."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from zlib import crc32

from xlbatch.files.raw import Raw, RawSheet
from xlbatch.problems import Where
from xlbatch.tables.cells import shown_value

WATCHED: Mapping[str, tuple[str, ...]] = {  # what tells a sheet's rows apart
    "Proof": ("Garment no.",),
    "Film requirement": ("Film",),
    "Cut list": ("Film", "Run", "Strip"),
    "Placement": ("Garment no.", "Decal"),
    "Press log": ("Decal",),
    "Runs": ("Run",),
    "Decals": ("Decal",),
}
READ: Mapping[str, tuple[str, ...]] = {  # the columns of these that are read back
    "Proof": ("Checked",),
    "Cut list": ("Cut", "Weeded", "Spoiled"),
    "Press log": ("Pressed", "Peeled", "Result", "By", "Note"),
}
KIND = "written"  # how these rows of the memory begin
MARK = 3  # letters a cell
BLANK, ANY = "-" * MARK, "=" * MARK  # marks of a blank cell, and of one that may hold anything
_FIRST_MARKS = 4  # the column after the kind, the sheet and the row's key
_LETTERS = "0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ+/"


@dataclass(frozen=True)
class TypedOver:
    """A cell with another text than the plan wrote."""

    sheet: str
    where: Where
    row: str
    heading: str
    text: str


def mark_of(text: str) -> str:
    """A few letters that stand for a text: one in 262,144 others has the same."""
    number = crc32(text.encode())
    return "".join(_LETTERS[number >> shift & 63] for shift in (0, 6, 12)) if text else BLANK


def plain(value: object) -> str:
    """A cell's text, however the program that saved it keeps numbers."""
    number = isinstance(value, int | float) and not isinstance(value, bool)
    return f"{float(value):.6g}" if number else shown_value(Raw(value))  # type: ignore[arg-type]


def marked(sheet: str, headings: Sequence[str], rows: Iterable[Sequence[object]]) -> Iterator[tuple[str, ...]]:
    """The rows of the memory for a sheet that is written: what its columns are called, then each row's key and marks.
    A value None is blank, one of no plain kind (a formula) anything."""
    watched = [column for column, heading in enumerate(headings) if heading not in READ.get(sheet, ())]
    keys = [headings.index(heading) for heading in WATCHED[sheet]]
    yield KIND, sheet, "", *(headings[column] for column in watched)
    for values in rows:
        if key := _key(plain(values[column]) for column in keys):
            yield KIND, sheet, key, "".join(_mark(values[column]) for column in watched)


def _mark(value: object) -> str:
    return mark_of(plain(value)) if value is None or isinstance(value, str | int | float) else ANY


def _key(texts: Iterable[str]) -> str:
    return " · ".join(filter(None, texts))


def typed_over(memory: RawSheet, sheets: Mapping[str, RawSheet]) -> Iterator[TypedOver]:
    """The cells typed over, sheet by sheet. `sheets`: those watched, by what they are."""
    headings: dict[str, list[str]] = {}
    written: dict[tuple[str, str], str] = {}
    for cells in memory.rows.values():
        last = max((_FIRST_MARKS, *cells))  # of a row that somebody cut short too
        texts = [str(cells[column].value) if column in cells else "" for column in range(1, last + 1)]
        if texts[0] == KIND and not texts[2]:
            headings[texts[1]] = texts[3:]
        elif texts[0] == KIND:
            written[texts[1], texts[2]] = texts[3]
    for name, sheet in sheets.items():
        if name in headings:
            yield from _on_sheet(name, sheet, headings[name], written)


def _on_sheet(
    name: str, sheet: RawSheet, headings: Sequence[str], written: Mapping[tuple[str, str], str]
) -> Iterator[TypedOver]:
    columns: dict[str, int] = {}
    for row, cells in sheet.rows.items():
        if not columns:
            titles = {shown_value(cell): column for column, cell in cells.items()}
            columns = titles if set(WATCHED[name]) <= titles.keys() and len(titles) > len(headings) // 2 else {}
            continue
        key = _key(plain(cells[columns[watched]].value) for watched in WATCHED[name] if columns[watched] in cells)
        marks = written.get((name, key))
        for place, heading in enumerate(headings) if marks else ():
            cell = cells.get(columns.get(heading, 0))
            before = (marks or "")[place * MARK : (place + 1) * MARK] or ANY
            text = plain(cell.value) if cell and not cell.fault else ""
            if text and before != ANY and mark_of(text) != before:
                yield TypedOver(name, sheet.where(columns[heading], row), key, heading, text)
