"""What was paid may be written on Money or on Roster of a plan: the next plans have it, once."""

from collections.abc import Callable, Mapping
from datetime import datetime
from decimal import Decimal
from pathlib import Path

import pytest
from openpyxl import Workbook, load_workbook

from tests.workbooks import Rows, heading_at, write_workbook
from xlbatch.problems import Problem
from xlbatch.roster.read import Reading, read
from xlbatch.run import Options, run

BEFORE = "Paid in Roster"
SHEETS: Mapping[str, Rows] = {
    "Roster": [
        ["Who", "Group", "Size", "How many", "Paid"],
        ["Ana Novak", "Novak", "M", None, None],
        ["Ivo Novak", "Novak", "L", None, 5],
        ["Mei Lin", None, "S", None, "yes"],
        ["Kai Lin", None, "M", 3, 20],
    ],
    "Job": [["Setting", "Value"], ["Margin or fixed price", "15.00"]],
}
FIRST = {1: None, 2: 5, 3: "yes", 4: 6.67, 5: 6.67, 6: 6.66}  # by garment number, as the first plan's Roster has it
Edits = Mapping[tuple[str, int | str], object]


def plan_of(path: Path) -> Path:
    written = run(path, Options(effort=0), lambda _: None, datetime(2026, 5, 4)).written
    assert written is not None
    return written


@pytest.fixture(scope="module")
def whole(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The first plan of six garments."""
    return plan_of(write_workbook(tmp_path_factory.mktemp("paid") / "tees.xlsx", dict(SHEETS)))


@pytest.fixture(scope="module")
def plan(whole: Path) -> Path:
    """The plan less what has no part in this, to be read quickly."""
    book = load_workbook(whole)
    for sheet in book.worksheets:
        if sheet.title not in ("Roster", "Job", "Money"):
            book.remove(sheet)
    book.save(whole.with_name("few sheets.xlsx"))
    return whole.with_name("few sheets.xlsx")


def edit(path: Path, folder: Path, edits: Edits, change: Callable[[Workbook], None] = lambda _: None) -> Path:
    """A plan in which Paid was written into the rows of some garments, or of a sum named in its row, and then
    something else was changed."""
    book = load_workbook(path)
    for (sheet, row), value in edits.items():
        top, column = heading_at(book[sheet], "Paid")
        cells = enumerate(book[sheet].iter_rows(values_only=True), 1)
        at = next(down for down, values in cells if down > top and row in values)
        book[sheet].cell(at, column).value = value  # type: ignore[assignment]
    change(book)
    book.save(folder / path.name)
    return folder / path.name


def paid(path: Path) -> dict[int, object]:
    """What the roster is read to say, by garment number."""
    rows = reading_of(path).job.roster
    return {row.no: float(row.paid) if isinstance(row.paid, Decimal) else row.paid for row in rows}


def told(path: Path) -> list[Problem]:
    return [each for each in reading_of(path).problems if each.code.startswith("paid-")]


def codes(path: Path) -> list[str]:
    return [each.code for each in told(path)]


def reading_of(path: Path) -> Reading:
    reading = read(path)
    assert isinstance(reading, Reading)
    return reading


def column(path: Path, sheet: str, heading: str) -> dict[object, object]:
    """What stands under a heading, by garment number."""
    rows = load_workbook(path, data_only=True)[sheet]
    (top, at), (_, no) = heading_at(rows, heading), heading_at(rows, "Garment no.")
    cells = ((row[no - 1], row[at - 1]) for row in rows.iter_rows(min_row=top + 1, values_only=True))
    return {number: value for number, value in cells if isinstance(number, int)}


def test_what_is_written_on_money_is_on_both_sheets_of_the_next_plan_and_of_the_one_after(
    whole: Path, tmp_path: Path
) -> None:
    assert column(whole, "Roster", "Paid") == column(whole, "Money", BEFORE) == FIRST
    edited = edit(whole, tmp_path, {("Money", 1): 15, ("Money", 2): "$ 7.50", ("Money", 4): "yes"})
    (found,) = told(edited)
    assert (found.code, found.where) == ("paid-taken-over", ("Money", "I5"))
    assert found.wrong.endswith(
        ": Ivo Novak (no. 2) 7.50, not 5.00; Kai Lin (no. 4) yes, not 6.67; Ana Novak (no. 1) 15.00."
    )
    second, after = plan_of(edited), FIRST | {1: 15, 2: 7.5, 4: "yes"}
    assert column(second, "Roster", "Paid") == column(second, "Money", BEFORE) == after
    assert column(second, "Money", "Paid") == after | {3: 15, 4: 15}
    assert column(second, "Money", "Owed") == {1: 0, 2: 7.5, 3: 0, 4: 0, 5: 8.33, 6: 8.34}
    third = plan_of(edit(second, tmp_path, {("Money", 5): 15}))
    assert column(third, "Roster", "Paid") == after | {5: 15}
    assert column(third, "Money", "Paid") == after | {3: 15, 4: 15, 5: 15}
    assert told(third) == []


@pytest.mark.parametrize(
    ("garment", "edits", "then", "problems"),
    [
        (1, {"Roster": 15}, 15, []),
        (1, {"Money": 0}, 0, ["paid-taken-over"]),
        (2, {"Money": None}, None, ["paid-taken-over"]),
        (2, {"Money": "no"}, None, ["paid-taken-over"]),
        (3, {"Money": 10}, 10, ["paid-taken-over"]),  # not all of it, as it turned out
        (3, {"Roster": None}, None, []),
        (2, {"Roster": 15, "Money": 15}, 15, []),
        (2, {"Roster": "yes", "Money": 15}, "yes", []),  # the price is 15.00
        (2, {"Roster": 15, "Money": "yes"}, 15, []),
        (2, {"Roster": 10, "Money": 15}, 10, ["paid-two-ways"]),
        (2, {"Roster": "yes", "Money": 10}, "yes", ["paid-two-ways"]),
        (2, {"Roster": None, "Money": 10}, None, ["paid-two-ways"]),
        (2, {"Money": "gave Kai 10"}, 5, ["paid-not-read"]),
        (2, {"Roster": 10, "Money": "later"}, 10, ["paid-two-ways"]),
        (2, {"Roster": 10, "Money": "a bit"}, 10, ["paid-not-read"]),
        (2, {"Money": -5}, 5, ["paid-not-read"]),
        (2, {"Money": "#REF!"}, 5, ["paid-not-read"]),
    ],
)
def test_the_sheet_on_which_it_was_changed_counts(
    plan: Path, tmp_path: Path, garment: int, edits: Mapping[str, object], then: object, problems: list[str]
) -> None:
    after = edit(plan, tmp_path, {(sheet, garment): value for sheet, value in edits.items()})
    assert paid(after) == FIRST | {garment: then}
    assert codes(after) == problems


def test_each_way_to_write_it_wrong_is_told_at_its_cell(plan: Path, tmp_path: Path) -> None:
    edits: Edits = {("Money", 1): "soon", ("Money", 2): 7, ("Roster", 2): 8, ("Money", "Everyone"): 99}
    after = edit(plan, tmp_path, edits)
    assert {(each.code, *each.where) for each in told(after)} == {
        ("paid-not-read", "Money", "I4"),
        ("paid-not-read", "Money", "I13"),
        ("paid-two-ways", "Roster", "L5"),
    }
    (both,) = (each for each in told(after) if each.code == "paid-two-ways")
    assert "to 8 and on the sheet Money, in I5, to 7.00" in both.wrong
    assert paid(after) == FIRST | {2: 8}


def test_a_sum_that_a_spreadsheet_worked_out_is_not_taken_for_a_payment(plan: Path, tmp_path: Path) -> None:
    """Those of the group Novak, of no group, of everyone, and what follows the price: each with its value saved."""

    def worked_out(book: Workbook) -> None:
        top, at = heading_at(book["Money"], "Paid")
        for down, total in ((3, 15), (8, 35), (9, 20), (10, 55)):
            assert str(book["Money"].cell(top + down, at).value).startswith("=")
            book["Money"].cell(top + down, at).value = total

    after = edit(plan, tmp_path, {("Money", 1): 15}, worked_out)
    assert paid(after) == FIRST | {1: 15}
    assert codes(after) == ["paid-taken-over"]


@pytest.mark.parametrize("row", ["Novak", "no group", "Everyone"])
@pytest.mark.parametrize("value", [99, "all of it"])
def test_what_is_written_over_a_sum_is_told(plan: Path, tmp_path: Path, row: str, value: object) -> None:
    def over(book: Workbook) -> None:
        (top, at), rows = heading_at(book["Money"], "Paid"), book["Money"].iter_rows(values_only=True)
        down = next(down for down, cells in enumerate(rows, 1) if down > top + 6 and row in cells)
        book["Money"].cell(down, at).value = value  # type: ignore[assignment]

    after = edit(plan, tmp_path, {}, over)
    assert [(each.code, each.found) for each in told(after)] == [("paid-not-read", str(value))]
    assert paid(after) == FIRST


def test_a_payment_for_a_row_that_more_are_made_of_is_shared_out(plan: Path, tmp_path: Path) -> None:
    """The row's payment as it is now, and all of it."""

    def two(book: Workbook) -> None:
        top, many = heading_at(book["Roster"], "How many")
        book["Roster"].cell(top + 2, many).value = 2

    assert paid(edit(plan, tmp_path, {("Money", 2): 25}, two)) == FIRST | {2: 12.5, 7: 12.5}


def test_a_copied_row_does_not_double_a_payment(plan: Path, tmp_path: Path) -> None:
    def copy(book: Workbook) -> None:
        top, _ = heading_at(book["Roster"], "Paid")
        book["Roster"].append([cell.value for cell in book["Roster"][top + 1]])

    assert paid(edit(plan, tmp_path, {("Money", 1): 15}, copy)) == FIRST | {1: 15, 7: None}


def test_a_payment_for_a_row_that_was_taken_out_is_told(plan: Path, tmp_path: Path) -> None:
    def take_out(book: Workbook) -> None:
        top, _ = heading_at(book["Roster"], "Paid")
        book["Roster"].delete_rows(top + 1)

    (found,) = told(edit(plan, tmp_path, {("Money", 1): 15}, take_out))
    assert found.where == ("Money", "I4")
    assert found.wrong == "“15” under Paid was not taken over: garment no. 1 is not on the Roster."


def test_a_sorted_money_sheet_is_read_by_its_garment_numbers(plan: Path, tmp_path: Path) -> None:
    def turn_round(book: Workbook) -> None:
        money, (top, _) = book["Money"], heading_at(book["Money"], "Paid")
        rows = [[cell.value for cell in row] for row in money.iter_rows(min_row=top + 1, max_row=top + 6)]
        for down, row in enumerate(reversed(rows), top + 1):
            for across, value in enumerate(row, 1):
                money.cell(down, across).value = value

    assert paid(edit(plan, tmp_path, {("Money", 6): 8}, turn_round)) == FIRST | {6: 8}


@pytest.mark.parametrize(
    ("edits", "garment", "then", "problems"),
    [
        ({}, 2, 5, []),
        ({("Money", 1): 15}, 1, 15, ["paid-taken-over"]),
        ({("Roster", 1): 15}, 1, 15, []),
        ({("Roster", 2): 10}, 2, 10, ["paid-two-ways"]),  # which of the two is newer cannot be known
    ],
)
def test_a_plan_that_does_not_say_what_it_wrote_is_read_with_care(
    plan: Path, tmp_path: Path, edits: Edits, garment: int, then: object, problems: list[str]
) -> None:
    """As plans once were: the price itself where all was paid."""

    def without(book: Workbook) -> None:
        book["Money"].delete_cols(heading_at(book["Money"], BEFORE)[1])

    after = edit(plan, tmp_path, {("Money", 3): 15, **edits}, without)
    assert paid(after) == FIRST | {garment: then}
    assert codes(after) == problems


def test_many_payments_are_one_note(tmp_path: Path) -> None:
    """It lists twenty, and says how many more there are; the Roster has them all."""
    numbers = range(1, 26)
    roster: Rows = [["Garment no.", "Who", "Size"], *([no, f"Runner {no}", "M"] for no in numbers)]
    money: Rows = [
        ["Garment no.", "Who", "Price", "Paid", BEFORE],
        *([no, f"Runner {no}", 15, 15, None] for no in numbers),
    ]
    path = write_workbook(tmp_path / "many.xlsx", {"Roster": roster, "Money": money})
    (found,) = told(path)
    assert "Runner 20 (no. 20) 15.00; and 5 more" in found.wrong
    assert paid(path) == dict.fromkeys(numbers, 15)
