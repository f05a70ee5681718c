"""What people write beside the rows of a plan, in columns of theirs or in notes on cells, comes back with the row."""

from pathlib import Path

import pytest
from openpyxl.comments import Comment

from tests.kept.history import through_office
from tests.plan_book import KEYS, PlanBook, written
from tests.plan_book import drop_for_workbook as drop
from tests.workbooks import heading_at, write_workbook
from xlbatch.run import Outcome

DESIGNS = [
    ["Design", "Decal", "What", "Film", "Position", "Height"],
    ["Name", "Front", "print name", "Black smooth", "full front", "1 in"],
]
PEOPLE = [["Who", "Size"], ["Ana", "M"], ["Ivo", "L"], ["Mei", "S"]]
OWN = ("Press log", "Cut list", "Shopping list", "Money", "Proof", "Roster", "Job")
KEY_COLUMN = {**{sheet: keys[0] for sheet, keys in KEYS.items()}, "Job": "Setting", "Film": "Kind", "Designs": "Design"}


@pytest.fixture
def first(tmp_path: Path) -> PlanBook:
    return written(drop(write_workbook(tmp_path / "roster.xlsx", {"Roster": PEOPLE, "Designs": DESIGNS})))


def dropped(book: PlanBook) -> Outcome:
    book.book.save(book.path)
    return drop(book.path)


def beside(book: PlanBook, sheet: str, text: str, column: str = "Where it lies") -> str:
    """Writes a text into a column of one's own beside the first row of a sheet. Returns what that row is called."""
    own = book.sheet(sheet)
    top, key = heading_at(own, KEY_COLUMN[sheet])
    across = next((c.column for c in own[top] if c.value == column), own.max_column + 1)
    row = next(row for row in range(top + 1, own.max_row + 1) if own.cell(row, key).value is not None)
    own.cell(top, across).value, own.cell(row, across).value = column, text
    return str(own.cell(row, key).value)


def stands_beside(book: PlanBook, sheet: str, column: str = "Where it lies") -> dict[str, str]:
    if not any(cell.value == column for row in book.sheet(sheet).iter_rows() for cell in row):
        return {}
    rows = (row for _, row in book.rows(sheet, KEY_COLUMN[sheet]) if row[column])
    return {str(row[KEY_COLUMN[sheet]]): row[column] for row in rows}


@pytest.mark.parametrize("sheet", OWN)
def test_a_column_of_ones_own_stays_beside_its_row(first: PlanBook, sheet: str) -> None:
    key = beside(first, sheet, "seat 12 left")
    second = written(dropped(first))
    assert stands_beside(second, sheet) == {key: "seat 12 left"}
    assert stands_beside(written(drop(second.path)), sheet) == {key: "seat 12 left"}


def noted(book: PlanBook, sheet: str, heading: str, text: str) -> None:
    own = book.sheet(sheet)
    top, across = heading_at(own, heading)
    _, key = heading_at(own, KEY_COLUMN[sheet])
    row = next(row for row in range(top + 1, own.max_row + 1) if own.cell(row, key).value is not None)
    own.cell(row, across).comment = Comment(text, "Kai")


def notes(book: PlanBook, sheet: str) -> list[str]:
    """The notes on a sheet, in its own words' order."""
    return [cell.comment.text for row in book.sheet(sheet).iter_rows() for cell in row if cell.comment]


@pytest.mark.parametrize(
    ("sheet", "heading"),
    [
        ("Press log", "Who"), ("Cut list", "Film"), ("Shopping list", "Item"), ("Money", "Who"), ("Proof", "Who"),
        ("Roster", "Size"), ("Film", "Kind"), ("Designs", "Height (in)"), ("Job", "Value"),
    ],
)  # fmt: skip
def test_a_note_on_a_cell_stays_on_it(first: PlanBook, sheet: str, heading: str) -> None:
    noted(first, sheet, heading, "ask Ana")
    second = written(dropped(first))
    assert [text for text in notes(second, sheet) if "ask Ana" in text] != []
    third = written(drop(second.path))
    assert notes(third, sheet) == notes(second, sheet)


def test_what_a_plan_itself_notes_on_a_cell_is_no_note_of_a_persons(first: PlanBook) -> None:
    first.edit(2, "Size", "L?")
    second = written(dropped(first))
    assert len(notes(second, "Roster")) == 1
    second.edit(2, "Size", "L")
    assert notes(written(dropped(second)), "Roster") == []


@pytest.mark.parametrize("kind", ["xlsx", "ods"])
def test_both_stay_through_another_spreadsheet_program(first: PlanBook, kind: str) -> None:
    key = beside(first, "Press log", "seat 12 left")
    noted(first, "Roster", "Size", "ask Ana")
    first.book.save(first.path)
    second = written(drop(through_office(first.path, kind)))
    assert stands_beside(second, "Press log") == {key: "seat 12 left"}
    assert notes(second, "Roster") == ["ask Ana"]


def test_what_stood_beside_a_row_that_is_gone_is_on_changes(first: PlanBook) -> None:
    beside(first, "Press log", "seat 12 left")
    beside(first, "Proof", "he likes it")
    first.cut()
    first.result("ok", lambda row: row["Garment no."] == 1)
    second = written(dropped(first))
    assert {(row["Sheet"], row["What"], row["Before"]) for row in second.changes()} == {
        ("Press log", "Where it lies", "seat 12 left"), ("Proof", "Where it lies", "he likes it"),
    }  # fmt: skip
