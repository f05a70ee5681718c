"""A plan workbook being filled in as people do, by headings and by what stands in a row, and dropped again."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from datetime import datetime
from itertools import count
from pathlib import Path
from random import Random
from typing import Any

import pytest
from openpyxl import load_workbook
from openpyxl.worksheet.worksheet import Worksheet

from tests.workbooks import heading_at
from xlbatch.files.raw import UnreadableFile
from xlbatch.paper.page import Page
from xlbatch.plan import Plan
from xlbatch.roster.read import read
from xlbatch.run import Options, Outcome, make_plan, run
from xlbatch.sheets.all_sheets import SHEETS, Sheet
from xlbatch.sheets.write import write_plan

Row = Mapping[str, Any]
Key = tuple[Any, ...]
NOW = datetime(2026, 5, 4)
PICTURES = ("Roll layout", "Placement pictures", "Bag tags", "Fonts to choose from")
KEYS = {  # what tells a sheet's rows apart
    "Press log": ("Decal",),
    "Proof": ("Garment no.",),
    "Roster": ("Garment no.",),
    "Money": ("Garment no.",),
    "Film": ("Film",),
    "Shopping list": ("Item", "Size", "Color"),
    "Cut list": ("Film", "Run", "Strip"),
}


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

    def of(self, name: str, heading: str) -> Mapping[Key, Any]:
        """What stands under a heading, by what tells the sheet's rows apart."""
        keys = KEYS[name]
        return {tuple(row[key] for key in keys): row[heading] for _, row in self.rows(name, heading) if row[keys[0]]}

    def has(self, name: str, heading: str) -> bool:
        """Whether a sheet has a column."""
        return any(cell.value == heading for row in self.sheet(name).iter_rows() for cell in row)

    def add_column(self, name: str, heading: str) -> None:
        """A column of one's own at the right of a sheet, where it is not there yet."""
        if not self.has(name, heading):
            sheet = self.sheet(name)
            sheet.cell(heading_at(sheet, KEYS[name][0])[0], sheet.max_column + 1).value = heading

    def strips(self, *, ready: bool) -> list[Row]:
        """The strips of the Cut list that are at the table, or are to be cut."""
        rows = [row for _, row in self.rows("Cut list", "Cut") if row["Decals"]]
        return [row for row in rows if (row["Length (in)"] is None) == ready]

    def steps(self) -> Iterator[tuple[int, Row]]:
        """The steps of the Press log."""
        return ((at, row) for at, row in self.rows("Press log", "Step") if row["Garment no."] is not None)

    def batches(self) -> Iterator[tuple[int, list[Row]]]:
        """The batches of the Press log: the row of its banner and its steps."""
        banner, steps = 0, list[Row]()
        for at, row in self.rows("Press log", "Step"):
            if isinstance(row["Step"], str) and row["Step"].startswith("Batch"):
                if steps:
                    yield banner, steps
                banner, steps = at, []
            elif row["Garment no."] is not None:
                steps.append(row)
        if steps:
            yield banner, steps

    def changes(self) -> list[Row]:
        """The lines of Changes; none where the plan has no such sheet."""
        return [row for _, row in self.rows("Changes", "What follows")] if "Changes" in self.book.sheetnames else []

    def asked(self, code: str) -> set[int]:
        """The garments of which a problem of this code asks."""
        rows = (row for _, row in self.rows("Problems", "Code") if row["Code"] == code)
        return {int(row["Garment no."]) for row in rows if row["Garment no."]}

    def row_of(self, no: int) -> int:
        """The row of a garment on the Roster."""
        return next(at for at, row in self.rows("Roster", "Who") if row["Garment no."] == no)

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

    def join(self, *, first: bool = False, **cells: object) -> None:
        """A new row at the end of the Roster, or inserted before the first."""
        sheet = self.sheet("Roster")
        rows = [row for row, cell in self.rows("Roster", "Who") if cell["Who"]]
        at = min(rows) if first else max(rows) + 1
        if first:
            sheet.insert_rows(at)
        for heading, value in cells.items():
            _, column = heading_at(sheet, heading.replace("_", " "))
            sheet.cell(at, column).value = value  # type: ignore[assignment]

    def shuffle(self, name: str, key: str, random: Random) -> None:
        """The rows of a table in another order."""
        sheet = self.sheet(name)
        top, _ = heading_at(sheet, key)
        rows = [[cell.value for cell in row] for row in sheet.iter_rows(min_row=top + 1)]
        rows = [row for row in rows if any(value is not None for value in row)]
        random.shuffle(rows)
        for down, values in enumerate(rows, top + 1):
            for across, value in enumerate(values, 1):
                sheet.cell(down, across).value = value

    def edit(self, no: int, heading: str, value: object) -> None:
        """Writes into a garment's row of the Roster."""
        assert self.mark("Roster", heading, value, lambda row: row["Garment no."] == no) == 1

    def drop(self) -> Outcome:
        """Saves the workbook and drops it."""
        self.book.save(self.path)
        return drop(self.path)


def drop(path: Path) -> Outcome:
    return run(path, Options(effort=0), lambda _: None, NOW)


def _title_alone(page: Page, _: Plan) -> None:
    page.sheet.write_string(0, 0, page.sheet.get_name())


def _unpictured(sheet: Sheet) -> Sheet:
    return replace(sheet, write=_title_alone) if sheet.name in PICTURES else sheet


def drop_for_workbook(path: Path) -> Outcome:
    """As `drop`, quicker: the plan's workbook alone is written, without its sheets of pictures."""
    reading = read(path)
    assert not isinstance(reading, UnreadableFile), reading.sentence
    plan = make_plan(reading, 0, lambda _: None, NOW)
    if not plan.garments:
        return Outcome(0, "Nothing is left to do.")
    number = next(no for no in count(1) if not path.with_name(f"plan {no}.xlsx").exists())
    target = path.with_name(f"plan {number}.xlsx")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("xlbatch.sheets.write.SHEETS", [_unpictured(each) for each in SHEETS])
        patch.setattr("xlbatch.sheets.proof.MOST_DRAWN", 0)

        write_plan(target, plan)
    return Outcome(1 if plan.held else 0, "planned", written=target, problems=plan.problems, held=len(plan.held))


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
