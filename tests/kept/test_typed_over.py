"""What is typed over a cell that a plan makes anew is asked about, naming the sheet to change, and kept on Changes."""

from pathlib import Path
from random import Random

import pytest
from openpyxl import load_workbook
from openpyxl.cell.cell import MergedCell

from tests.kept.history import through_office
from tests.plan_book import PlanBook, Row, drop, drop_for_workbook, written
from tests.workbooks import write_workbook
from xlbatch.files.raw import Raw, RawSheet
from xlbatch.run import Outcome
from xlbatch.tables.typed_over import KIND, UNPACKED, typed_over

PEOPLE = [["Who", "Size"], ["Ana", "M"], ["Ivo", "L"], ["Mei", "S"]]


@pytest.fixture
def first(tmp_path: Path) -> PlanBook:
    return written(drop_for_workbook(write_workbook(tmp_path / "roster.xlsx", {"Roster": PEOPLE})))


def dropped(book: PlanBook) -> Outcome:
    book.book.save(book.path)
    return drop_for_workbook(book.path)


def told(outcome: Outcome) -> list[tuple[str, str, str]]:
    """Where something was typed over, what, and where to change it."""
    found = [each for each in outcome.problems if each.code in ("typed-over", "typed-beside")]
    return [(each.where.sheet, each.found, each.todo.partition("sheet ")[2].partition(",")[0]) for each in found]


@pytest.mark.parametrize(
    ("sheet", "heading", "text", "change_on"),
    [
        ("Placement", "Size", "XL", "Roster"),
        ("Placement", "Width (in)", 7, "Designs"),
        ("Proof", "Exact text", "IVA", "Roster"),
        ("Press log", "Size", "M", "Roster"),
        ("Press log", "Temperature (°F)", 300, "Film"),
        ("Runs", "Length (in)", 99, "Job"),
        ("Decals", "Text", "Eve", "Roster"),
        ("Time plan", "Minutes", 999, "Work times"),
        ("Placement", "Garment no.", 99, "Roster"),
        ("Proof", "Garment no.", 99, "Roster"),
        ("Runs", "Run", 99, "Job"),
        ("Decals", "Decal", "D999", "Designs"),
        ("Shopping list", "Needed", 99, "Roster"),
    ],
)
def test_a_cell_typed_over_is_named_with_the_sheet_to_change(
    first: PlanBook, sheet: str, heading: str, text: object, change_on: str
) -> None:
    where = second_row(first, sheet, heading)
    first.mark(sheet, heading, text, where)
    outcome = dropped(first)
    assert told(outcome) == [(sheet, str(text), change_on)]
    second = written(outcome)
    assert [(row["Sheet"], row["What"], row["Now"]) for row in second.changes()] == [(sheet, heading, str(text))]
    assert told(dropped(second)) == []


FORMS = [  # sheet, what stood there, what is typed over it, the sheet to change
    ("Job sheet", "3", "4", "Job"),  # garments
    ("Job sheet", "Roster", "people", "Job"),  # the name of the job
    ("Job sheet", "", "call Eve", "Job"),
    ("Placement", "Placement", "ask Eve first", "Positions"),
    ("Money", "Money", "Prices were told on Monday", "Job"),
    ("Money", "Mei", "Mae", "Roster"),
    ("Roll layout", "Roll layout", "Thursday", "Film"),
    ("Placement pictures", "Placement pictures", "3 in, not 4", "Positions"),
    ("Bag tags", "Ana", "Anna", "Roster"),
    ("Bag tags", "M", "L", "Roster"),  # which stands on another tag
]


def test_what_stands_in_no_table_is_watched_too(tmp_path: Path) -> None:
    first = written(drop(write_workbook(tmp_path / "roster.xlsx", {"Roster": PEOPLE})))
    assert told(drop(first.path)) == []
    for sheet, before, text, _ in FORMS:
        cells = (cell for row in first.sheet(sheet).iter_rows() for cell in row if not isinstance(cell, MergedCell))
        next(cell for cell in cells if str(cell.value or "") == before).value = text
    outcome = dropped(first)
    assert sorted(told(outcome)) == sorted((sheet, text, change_on) for sheet, _, text, change_on in FORMS)
    second = written(outcome)
    changes = [(row["Sheet"], str(row["Now"])) for row in second.changes()]
    assert sorted(changes) == sorted((sheet, text) for sheet, _, text, _ in FORMS)
    assert told(dropped(second)) == []


def second_row(book: PlanBook, sheet: str, heading: str):  # type: ignore[no-untyped-def]
    """Whether a row is the last one of the sheet with something under a heading."""
    rows = [row for _, row in book.rows(sheet, heading) if row[heading] is not None]
    last: Row = rows[-1]
    return lambda row: row == last


def test_marks_and_notes_are_typed_over_nothing(first: PlanBook) -> None:
    first.cut()
    first.result("ok", lambda row: row["Garment no."] == 1)
    first.mark("Proof", "Checked", "A. N.")
    first.mark("Shopping list", "Arrived", "yes")
    assert told(dropped(first)) == []


@pytest.mark.parametrize("kind", ["xlsx", "ods"])
def test_a_plan_saved_by_another_program_is_as_it_was(first: PlanBook, kind: str) -> None:
    first.book.move_sheet("Placement", -3)
    first.shuffle("Decals", "Decal", Random(1))
    moved = first.sheet("Placement")
    moved.title = "Where"
    moved.insert_cols(2)
    moved.insert_rows(1)
    first.sheet("Job sheet").insert_rows(3)
    first.book.save(first.path)
    assert told(drop_for_workbook(through_office(first.path, kind))) == []


def test_a_row_of_the_memory_cut_short_tells_nothing() -> None:
    headings = {column: Raw(text) for column, text in enumerate((UNPACKED, "Runs", "", "Run", "Length"), 1)}
    short = {column: Raw(text) for column, text in enumerate((UNPACKED, "Runs", "R1"), 1)}
    packed = {1: Raw(KIND), 2: Raw("Runs"), 3: Raw('[["","Run","Le')}
    for kept in ({1: headings, 2: short}, {1: {1: Raw(UNPACKED)}, 2: headings, 3: short}, {1: packed}):
        sheet = RawSheet("Runs", {1: {1: Raw("Run"), 2: Raw("Length")}, 2: {1: Raw("R1"), 2: Raw("9")}})
        assert list(typed_over(RawSheet("Kept", kept), {"Runs": sheet})) == []


@pytest.mark.parametrize(
    ("sheet", "key", "cells", "change_on"),
    [
        ("Press log", "Decal", {1: "Ivo wants his pressed on Friday"}, "Press"),
        ("Shopping list", "Item", {1: "tape", 2: "green tape", 3: 2}, "Job"),
        ("Runs", "Run", {1: "R9", 3: "for Eve"}, "Job"),
        ("Money", "Garment no.", {2: "Eve", 8: 12.5}, "Job"),
        ("Proof", "Garment no.", {1: 4, 2: "Eve"}, "Roster"),
    ],
)
def test_a_line_below_a_table_or_among_its_rows_is_told_once(
    first: PlanBook, sheet: str, key: str, cells: dict[int, object], change_on: str
) -> None:
    below = first.sheet(sheet).max_row + 2
    among = next(row for row, each in first.rows(sheet, key) if each[key]) + 1
    first.sheet(sheet).insert_rows(among)
    for row, text in ((among, "?"), (below, "!")):
        for column, value in cells.items():
            first.sheet(sheet).cell(row, column).value = f"{value}{text}"
    words = [" · ".join(f"{value}{text}" for value in cells.values()) for text in "?!"]
    outcome = dropped(first)
    assert told(outcome) == [(sheet, text, change_on) for text in words]
    assert [(row["Sheet"], row["Now"]) for row in written(outcome).changes()] == [(sheet, text) for text in words]


def test_a_banner_typed_over_is_told(first: PlanBook) -> None:
    row = next(row for row, each in first.rows("Press log", "Step") if str(each["Step"]).startswith("Batch"))
    first.sheet("Press log").cell(row, 1).value = "Batch 1, on Friday"
    assert told(dropped(first)) == [("Press log", "Batch 1, on Friday", "Press")]


@pytest.mark.parametrize("kind", ["xlsx", "ods"])
def test_a_number_in_the_place_of_a_formula_is_told(first: PlanBook, kind: str) -> None:
    first.mark("Shopping list", "Buy", 14, lambda row: row["Size"] == "L")
    first.mark("Shopping list", "Spares", 3, lambda row: row["Size"] == "M")  # Buy of that line and the sum follow
    cells = (cell for row in first.sheet("Shopping list").iter_rows() for cell in row)
    next(cell for cell in cells if str(cell.value).startswith("=SUMIF")).value = 99
    first.book.save(first.path)
    typed = told(drop_for_workbook(through_office(first.path, kind)))
    assert sorted(typed) == [("Shopping list", "14", "Shopping list"), ("Shopping list", "99", "Job")]


def test_a_plan_kept_without_formulas_is_as_it_was(first: PlanBook) -> None:
    load_workbook(first.path, data_only=True).save(first.path)
    assert told(drop_for_workbook(first.path)) == []
