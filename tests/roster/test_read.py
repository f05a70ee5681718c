"""Whole workbooks: sheets found, rows read, defaults filled in, and each problem at its cell."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

import pytest
from openpyxl import Workbook

from tests.workbooks import write_workbook
from xlbatch.job.job import RosterRow
from xlbatch.roster.read import Reading, read

Rows = list[list[object]]
Read = Callable[..., Reading]
LIST: Rows = [["Who", "Size"], ["Ana", "M"]]


def found(reading: Reading) -> list[tuple[str, str, str]]:
    """Code, sheet and cell of each problem."""
    return [(each.code, *each.where) for each in reading.problems]


def rows(reading: Reading) -> list[tuple[int, str, str]]:
    """Number, who and size of each garment."""
    return [(row.no, row.who, row.size) for row in reading.job.roster]


def row(reading: Reading) -> RosterRow:
    """The one garment."""
    (only,) = reading.job.roster
    return only


def read_sheets(path: Path, sheets: dict[str, Rows]) -> Reading:
    reading = read(write_workbook(path / "list.xlsx", sheets))
    assert isinstance(reading, Reading)
    return reading


# the list


def test_a_name_and_a_size_are_enough(reading_of: Read) -> None:
    reading = reading_of(LIST)
    assert rows(reading) == [(1, "Ana", "M")]
    assert reading.problems == ()
    assert row(reading).source.at("Size") == ("Roster", "B2")
    assert reading.job.settings.last_no == 1


def test_every_column(reading_of: Read) -> None:
    headings = ["Who", "Group", "Garment", "Size", "Color", "Design", "Print name", "Number", "How many", "Note",
                "Paid", "Status", "Done so far"]  # fmt: skip
    values = [
        "Ana",
        "Vrba",
        "Polo",
        "ym",
        "navy",
        "Name",
        "ANA",
        "07",
        1,
        "late",
        15,
        "Cancelled",
        "blank in hand; Name",
    ]
    assert row(reading_of([headings, values])) == RosterRow(
        source=row(reading_of([headings, values])).source, no=1, who="Ana", group="Vrba", garment="Polo",
        size="Youth M", color="navy", design="Name", print_name="ANA", number="07", note="late",
        paid=Decimal(15), status="cancelled", done_so_far=("blank in hand", "Name"),
    )  # fmt: skip


def test_how_many_is_spread_out_and_numbers_last(reading_of: Read) -> None:
    reading = reading_of(
        [
            ["Garment no.", "Who", "Size", "How many"],
            [None, "Ana", "M", 2],
            [7, "Ben", "L", None],
            [None, "Cid", "S", 1],
        ]
    )
    assert rows(reading) == [(8, "Ana", "M"), (9, "Ana", "M"), (7, "Ben", "L"), (10, "Cid", "S")]
    assert [each.source.row for each in reading.job.roster] == [2, 2, 3, 4]
    assert reading.job.settings.last_no == 10


def test_numbers_given_out_before_are_not_given_again(reading_of: Read) -> None:
    reading = reading_of(
        [["Garment no.", "Who", "Size"], [3, "Ana", "M"], [None, "Ben", "L"]],
        Job=[["Setting", "Value"], ["Last garment no.", 12]],
    )
    assert rows(reading) == [(3, "Ana", "M"), (13, "Ben", "L")]


def test_a_number_that_stands_twice_stays_with_the_first(reading_of: Read) -> None:
    reading = reading_of([["Garment no.", "Who", "Size"], [3, "Ana", "M"], [3, "Ben", "L"], ["x", "Cid", "S"]])
    assert rows(reading) == [(3, "Ana", "M"), (4, "Ben", "L"), (5, "Cid", "S")]
    assert found(reading) == [("garment-no-twice", "Roster", "A3"), ("garment-no-unclear", "Roster", "A4")]


def test_first_and_last_name_make_who(reading_of: Read) -> None:
    reading = reading_of([["First name", "Surname", "Size"], ["Ana", "Nováková", "M"], ["Ben", None, "L"]])
    assert [(each.who, each.first_name, each.last_name) for each in reading.job.roster] == [
        ("Ana Nováková", "Ana", "Nováková"),
        ("Ben", "Ben", ""),
    ]


def test_title_rows_blank_rows_and_repeated_headings(reading_of: Read) -> None:
    reading = reading_of(
        [
            ["Spring run"],
            [],
            ["printed 4 May; Size matters"],
            ["Who", "Size"],
            ["Ana", "M"],
            [],
            ["Who", "Size"],
            ["Ben", "L"],
        ]
    )
    assert rows(reading) == [(1, "Ana", "M"), (2, "Ben", "L")]
    assert [each.source.row for each in reading.job.roster] == [5, 8]
    assert reading.problems == ()


def test_a_row_without_a_size_is_kept_and_held_back(reading_of: Read) -> None:
    reading = reading_of([["Who", "Size"], ["Ana", "M"], ["Ben", None]])
    assert rows(reading) == [(1, "Ana", "M"), (2, "Ben", "")]
    assert found(reading) == [("size-missing", "Roster", "B3")]
    assert reading.problems[0].rows == (3,)


def test_a_cancelled_row_needs_no_size(reading_of: Read) -> None:
    assert reading_of([["Who", "Size", "Status"], ["Ana", "M", None], ["Ben", None, "cancelled"]]).problems == ()


def test_columns_not_understood_are_kept_in_order(reading_of: Read) -> None:
    reading = reading_of([["E-mail", "Who", "Size", "Phone", None], ["a@example.org", "Ana", "M", 123, "late"]])
    assert row(reading).source.extra == {"E-mail": "a@example.org", "Phone": "123", "Column E": "late"}
    assert list(row(reading).source.extra) == ["E-mail", "Phone", "Column E"]
    assert found(reading) == [("heading-unknown", "Roster", "A1")]
    assert reading.problems[0].found == "E-mail, Phone, Column E"
    assert [(each.found, each.meaning) for each in reading.job.headings] == [
        ("E-mail", "not about the garment, not used"), ("Who", "Who"), ("Size", "Size"),
        ("Phone", "not about the garment, not used"),
    ]  # fmt: skip


def test_a_heading_that_stands_twice(reading_of: Read) -> None:
    reading = reading_of([["Who", "Size", "Shirt size"], ["Ana", "M", "L"]])
    assert rows(reading) == [(1, "Ana", "M")]
    assert row(reading).source.extra == {"Shirt size": "L"}
    assert found(reading) == [("heading-twice", "Roster", "C1")]


@pytest.mark.parametrize("name", ["NA", "None", "TRUE", "1E5", "Null", "nan", "True", "=1+1", "+Ana", "-Ana", "@Ana"])
def test_names_that_look_like_something_else(tmp_path: Path, name: str) -> None:
    """The first characters are those of OWASP, CSV Injection."""
    path = tmp_path / "list.csv"
    path.write_text(f"Who,Size,Print name\n{name},M,{name}\n", encoding="utf-8")
    reading = read(path)
    assert isinstance(reading, Reading)
    assert (row(reading).who, row(reading).print_name) == (name, name)
    assert reading.problems == ()


def test_text_01_a_number_formatted_00_and_a_true(tmp_path: Path) -> None:
    book = Workbook()
    sheet = book.create_sheet("Roster", 0)
    for line in (["Who", "Size", "Number"], ["Ana", "M", "01"], ["Ben", "L", 7], ["Cid", "S", 7.0], [True, "S", None]):
        sheet.append(line)
    sheet["C3"].number_format = "00"
    book.save(tmp_path / "list.xlsx")
    reading = read(tmp_path / "list.xlsx")
    assert isinstance(reading, Reading)
    assert [each.number for each in reading.job.roster] == ["01", "07", "7", ""]
    assert reading.job.roster[3].who == "TRUE"


def test_cleaned_text_is_noted_at_its_cell(reading_of: Read) -> None:
    reading = reading_of([["Who", "Size"], ["Ana\u00a0Nova\u200bk", " M "], ["Ben ", "L"]])
    assert [each.who for each in reading.job.roster] == ["Ana Novak", "Ben"]
    (note,) = reading.problems
    assert (note.code, note.where, note.found) == ("text-cleaned", ("Roster", "A2"), "Ana·Nova·k")
    assert "now “Ana Novak”" in note.sentence


def test_a_payment_that_is_unclear_holds_nothing_back(reading_of: Read) -> None:
    reading = reading_of([["Who", "Size", "Paid"], ["Ana", "M", "half"], ["Ivo", "L", "ja"], ["Eva", "S", "offen"]])
    assert found(reading) == [("paid-unclear", "Roster", "C2")]
    assert reading.problems[0].level == "check"
    assert [row.paid for row in reading.job.roster] == [None, "yes", None]


@pytest.mark.parametrize(
    ("heading", "value", "code", "suggestion"),
    [
        ("Size", "Youht M", "size-unknown", "Youth M"),
        ("Size", "5-12", "size-unknown", ""),
        ("Size", datetime(2026, 3, 5), "date-for-size", "3-5"),
        ("Size", date(2026, 10, 12), "date-for-size", "10-12"),
        ("How many", "a few", "how-many-unclear", ""),
        ("How many", 100000, "how-many-unclear", ""),
        ("Status", "Doen", "status-unknown", "done"),
        ("Number", datetime(2026, 3, 5), "value-unclear", "3-5"),
        ("Who", datetime(2026, 3, 5), "value-unclear", "3-5"),
        ("Color", "#REF!", "cell-error", ""),
        ("Size", "#N/A", "cell-error", ""),
        ("Size", "=1+1", "formula-unsaved", ""),
    ],
)
def test_unclear_cells(reading_of: Read, heading: str, value: object, code: str, suggestion: str) -> None:
    line: dict[str, object] = {"Who": "Ana", "Size": "M"} | {heading: value}
    reading = reading_of([list(line), list(line.values())])
    cell = f"{'ABC'[list(line).index(heading)]}2"
    assert found(reading) == [(code, "Roster", cell)]
    (problem,) = reading.problems
    assert (problem.level, problem.suggestion, problem.rows) == ("stop", suggestion, (2,))
    assert len(reading.job.roster) == 1


def test_a_date_in_a_note_is_no_problem(reading_of: Read) -> None:
    reading = reading_of([["Who", "Size", "Note"], ["Ana", "M", datetime(2026, 6, 14)]])
    assert row(reading).note == "14-Jun-2026"
    assert reading.problems == ()


def test_hidden_rows_are_read_and_counted(tmp_path: Path) -> None:
    book = Workbook()
    sheet = book.create_sheet("Roster", 0)
    for line in (["Who", "Size"], ["Ana", "M"], ["Ben", "L"]):
        sheet.append(line)
    sheet.row_dimensions[3].hidden = True
    book.save(tmp_path / "list.xlsx")
    reading = read(tmp_path / "list.xlsx")
    assert isinstance(reading, Reading)
    assert len(reading.job.roster) == 2
    assert found(reading) == [("sheet-hidden-rows", "Roster", "")]


# sheets


@pytest.mark.parametrize(
    ("empty", "code"), [([], "no-rows"), ([["Who", "Size"]], "no-rows"), ([["Spring run"]], "list-not-found")]
)
def test_no_list(reading_of: Read, empty: Rows, code: str) -> None:
    reading = reading_of(empty)
    assert reading.job.roster == ()
    assert code in [each.code for each in reading.problems]


def test_a_list_without_a_size_column_holds_all_rows_back_with_one_problem(reading_of: Read) -> None:
    reading = reading_of([["Who", "Color"], ["Ana", "navy"], ["Ben", "red"]])
    assert found(reading) == [("no-rows", "Roster", "A1")]
    assert reading.problems[0].rows == (2, 3)
    assert len(reading.job.roster) == 2


def test_reading_twice_gives_the_same(reading_of: Read) -> None:
    one, two = reading_of(LIST), reading_of(LIST)
    assert replace(one.job, path=Path()) == replace(two.job, path=Path())
