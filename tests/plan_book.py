"""A plan workbook being filled in as people do, by headings and by what stands in a row, and dropped again."""

from collections.abc import Callable, Iterator, Mapping
from datetime import datetime
from pathlib import Path
from typing import Any

from openpyxl import load_workbook
from openpyxl.worksheet.worksheet import Worksheet

from tests.workbooks import heading_at
from xlbatch.run import Options, Outcome, run

Row = Mapping[str, Any]
NOW = datetime(2026, 5, 4)


class PlanBook:
    """A plan open in a spreadsheet program."""

    def __init__(self, path: Path) -> None:
        self.path = path
        self.book = load_workbook(path)

    def sheet(self, name: str) -> Worksheet:
        sheet: Worksheet = self.book[name]
        return sheet

    def rows(self, name: str, key: str) -> Iterator[tuple[int, Row]]:
        """The rows below the headings, among which is `key`: row number and cells by heading."""
        sheet = self.sheet(name)
        top, _ = heading_at(sheet, key)
        headings = [cell.value for cell in sheet[top]]
        for number, row in enumerate(sheet.iter_rows(min_row=top + 1), top + 1):
            yield number, {str(h): cell.value for h, cell in zip(headings, row, strict=True) if h is not None}

    def mark(self, name: str, heading: str, value: object, where: Callable[[Row], bool] = lambda _: True) -> int:
        """Writes under a heading in all rows that fit. Returns how many."""
        sheet, count = self.sheet(name), 0
        _, column = heading_at(sheet, heading)
        for row, cells in list(self.rows(name, heading)):
            if where(cells):
                sheet.cell(row, column).value = value  # type: ignore[assignment]
                count += 1
        return count

    def cut(self, mark: object = "x", heading: str = "Cut", where: Callable[[Row], bool] = lambda _: True) -> int:
        """Marks strips of the Cut list."""
        return self.mark("Cut list", heading, mark, lambda row: row["Decals"] is not None and where(row))

    def result(self, result: str | None, where: Callable[[Row], bool] = lambda _: True) -> int:
        """Writes results into steps of the Press log."""
        return self.mark("Press log", "Result", result, lambda row: row["Garment no."] is not None and where(row))

    def join(self, **cells: object) -> None:
        """A new row at the end of the Roster."""
        sheet = self.sheet("Roster")
        last = max(row for row, cell in self.rows("Roster", "Who") if cell["Who"])
        for heading, value in cells.items():
            _, column = heading_at(sheet, heading.replace("_", " "))
            sheet.cell(last + 1, column).value = value  # type: ignore[assignment]

    def edit(self, no: int, heading: str, value: object) -> None:
        """Writes into a garment's row of the Roster."""
        assert self.mark("Roster", heading, value, lambda row: row["Garment no."] == no) == 1

    def drop(self) -> Outcome:
        """Saves the workbook and drops it."""
        self.book.save(self.path)
        return drop(self.path)


def drop(path: Path) -> Outcome:
    return run(path, Options(effort=0), lambda _: None, NOW)


def written(outcome: Outcome) -> PlanBook:
    """The plan that came of a drop."""
    assert outcome.written is not None, outcome.message
    return PlanBook(outcome.written)


def codes(outcome: Outcome) -> list[str]:
    """The problems but for notes."""
    return [found.code for found in outcome.problems if found.level != "note"]


def decals(book: PlanBook, now: str) -> set[str]:
    """The decals that stand so on the sheet Decals."""
    return {str(row["Decal"]) for _, row in book.rows("Decals", "Decal") if row["Now"] == now}


def steps(book: PlanBook) -> list[tuple[int, str, str]]:
    """Garment, decal and batch of each step of the Press log."""
    found, batch = [], ""
    for _, row in book.rows("Press log", "Step"):
        first = row["Step"]
        if isinstance(first, str) and first.startswith("Batch"):
            batch = first.split(" ·")[0]
        if row["Garment no."] is not None:
            found.append((row["Garment no."], row["Decal"], batch))
    return sorted(found)
