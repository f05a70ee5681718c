"""Lists in parts: headings in two rows, one table beside or below another, one column a size, none at all."""

from collections.abc import Callable

import pytest

from xlbatch.job.source import MOST_SHEET_ROWS, Source
from xlbatch.roster.read import Reading
from xlbatch.tables.size_columns import size_columns, sizes_by_wearer

Read = Callable[..., Reading]


def people(reading: Reading) -> list[tuple[str, str]]:
    return [(row.who, row.size) for row in reading.job.roster]


def found(reading: Reading) -> list[tuple[str, str]]:
    return [(each.code, each.where.cell) for each in reading.problems]


def test_headings_in_two_rows(reading_of: Read) -> None:
    rows = [["Player", "", "Shirt", ""], ["", "", "Size", "Color"], ["Ana", "", "M", "navy"], ["Ivo", "", "L", "red"]]
    reading = reading_of(rows)
    assert [(row.who, row.size, row.color) for row in reading.job.roster] == [("Ana", "M", "navy"), ("Ivo", "L", "red")]


def test_a_second_list_beside_the_first(reading_of: Read) -> None:
    rows = [["Name", "Size", "", "Name", "Size"], ["Ana", "M", "", "Eva", "S"], ["", "", "", "Zoe", "?"], ["Ivo", "L"]]
    reading = reading_of(rows)
    assert people(reading) == [("Ana", "M"), ("Ivo", "L"), ("Eva", "S"), ("Zoe", "?")]
    assert found(reading) == [("table-joined", "D1"), ("size-unknown", "E3")]
    stop = reading.problems[-1]
    assert stop.rows == (MOST_SHEET_ROWS + 3,)  # Zoe's row, not that of the list on the left


def test_a_second_list_beside_the_first_without_headings(reading_of: Read) -> None:
    reading = reading_of(
        [["Who", "Size"], ["Ana Blom", "M", None, "Ivo Berg", "L"], ["Cy Kim", "S", None, "Mei Lin", "XL"]]
    )
    assert people(reading) == [("Ana Blom", "M"), ("Cy Kim", "S"), ("Ivo Berg", "L"), ("Mei Lin", "XL")]
    assert found(reading) == [("table-joined", "D2"), ("headings-missing", "D2")]


def test_a_word_of_headings_beside_a_title_is_no_heading(reading_of: Read) -> None:
    reading = reading_of([["Harbor run", "cancelled"], ["Who", "Size"], ["Ana", "M"]])
    assert found(reading) == [("row-above", "A1")]


def test_a_second_list_below_with_other_columns(reading_of: Read) -> None:
    rows = [["Who", "Size"], ["Ana", "M"], [], ["Helpers"], ["Size", "Note", "Name"], ["XL", "tall", "Cy"]]
    reading = reading_of(rows)
    assert people(reading) == [("Ana", "M"), ("Cy", "XL")]
    assert found(reading) == [("row-title", "A4"), ("table-joined", "A5")]


def test_a_summary_below_is_not_read_as_people(reading_of: Read) -> None:
    reading = reading_of([["Who", "Size"], ["Ana", "M"], [], ["Size", "How many"], ["M", 1]])
    assert people(reading) == [("Ana", "M")]
    assert found(reading) == [("table-aside", "A4")]


@pytest.mark.parametrize("total", [["Total", "", 3], ["Grand total: 3", "", ""], ["", "", 3], ["TOTALS", "3", ""]])
def test_totals_at_the_end(reading_of: Read, total: list[object]) -> None:
    reading = reading_of([["Who", "Size", "How many"], ["Ana", "M", 1], ["Ivo", "L", 2], total])
    assert people(reading) == [("Ana", "M"), ("Ivo", "L"), ("Ivo", "L")]
    assert [code for code, _ in found(reading)] == ["row-totals"]


def test_someone_called_sum_is_no_total(reading_of: Read) -> None:
    assert people(reading_of([["Who", "Size"], ["Ana", "M"], ["Sum Yee", "M"]])) == [("Ana", "M"), ("Sum Yee", "M")]


def test_one_column_a_size(reading_of: Read) -> None:
    rows = [["Name", "Qty S", "Qty M", "Quantity of XL", "Youth M", "Paid"], ["Ana", 1, "", 2, "x", "yes"],
            ["Ivo", 0, "", "", "", ""], ["Mei", "", "some", "", "", ""]]  # fmt: skip
    reading = reading_of(rows)
    assert people(reading) == [
        ("Ana", "S"), ("Ana", "XL"), ("Ana", "XL"), ("Ana", "Youth M"), ("Ivo", ""), ("Mei", "M"),
    ]  # fmt: skip
    assert found(reading) == [("size-missing", "B3"), ("how-many-unclear", "C4")]
    assert [each.meaning for each in reading.job.headings][1:4] == [
        f"how many in size {size}" for size in ("S", "M", "XL")
    ]
    assert reading.job.roster[1].source.at("Size").cell == "D2"


@pytest.mark.parametrize(
    ("titles", "sizes"),
    [
        (["Name", "S", "M", "L"], {2: "S", 3: "M", 4: "L"}),
        (["Name", "Size S", "Size M"], {2: "S", 3: "M"}),
        (["Name", "Adult S", "Youth S"], {2: "S", 3: "Youth S"}),
        (["Name", "Number of small", "# of 2XL"], {2: "S", 3: "2XL"}),
        (["Name", "M", "F", "Size"], {}),
        (["Name", "M"], {}),
        (["M", "T", "W", "T", "F", "S", "S"], {}),
    ],
)
def test_headings_that_are_sizes(titles: list[str], sizes: dict[int, str]) -> None:
    assert size_columns(dict(enumerate(titles, 1))) == sizes


def test_a_column_of_sizes_for_children_and_one_for_adults(reading_of: Read) -> None:
    rows = [
        ["Name", "Youth size", "Adult T-shirt size"],
        ["Ana", "M", ""],
        ["Ivo", "", "M"],
        ["Mei", "S", "M"],
        ["Bo", "", ""],
    ]
    reading = reading_of(rows)
    assert people(reading) == [("Ana", "Youth M"), ("Ivo", "M"), ("Mei", "youth S and adult M"), ("Bo", "")]
    assert found(reading) == [("size-unknown", "B4"), ("size-missing", "B5")]


def test_whose_sizes_a_heading_asks_for() -> None:
    titles = {
        1: "Size",
        2: "Youth size",
        3: "Adult shirt size",
        4: "Ladies' Size",
        5: "Size (adult or youth)",
        6: "Shirt size",
    }
    assert sizes_by_wearer(titles) == {2: "youth", 3: "adult", 4: "ladies"}


def test_a_list_without_headings(reading_of: Read) -> None:
    reading = reading_of([["Ana Novak", "M", "red"], ["Ivo Berg", "YL", "blue"], ["Cy Kim", "2T", ""]])
    assert people(reading) == [("Ana Novak", "M"), ("Ivo Berg", "Youth L"), ("Cy Kim", "2T")]
    assert [code for code, _ in found(reading)] == ["headings-missing"]


def test_sizes_under_a_heading_that_does_not_say_so(reading_of: Read) -> None:
    reading = reading_of([["Name", "Shirt"], ["Ana", "M"], ["Ivo", "YL"]])
    assert people(reading) == [("Ana", "M"), ("Ivo", "Youth L")]
    assert found(reading) == [("heading-by-content", "B1")]


def test_rows_that_are_no_ones_are_named(reading_of: Read) -> None:
    rows = [["Eva", "S"], ["Who", "Size", ""], ["Ana", "M"], ["", "", "ask Mei"]]
    reading = reading_of(rows)
    assert people(reading) == [("Ana", "M")]
    assert found(reading) == [("row-above", "A1"), ("row-aside", "C4")]


@pytest.mark.parametrize(
    ("row", "own"), [(0, 0), (1, 1), (3, 3), (MOST_SHEET_ROWS, MOST_SHEET_ROWS), (MOST_SHEET_ROWS + 3, 3)]
)
def test_rows_counted_on_keep_their_number_on_the_sheet(row: int, own: int) -> None:
    """1,048,576 rows: ECMA-376, the limits of a sheet."""
    assert Source("Roster", row).sheet_row == own
