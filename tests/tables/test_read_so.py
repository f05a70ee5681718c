"""Rules of reading a list that a slip would turn round."""

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.workbooks import Rows, write_workbook
from xlbatch.files.raw import Raw
from xlbatch.roster.read import Reading, read
from xlbatch.tables.cells import temperature
from xlbatch.tables.contents import contents

ReadingOf = Callable[..., Reading]


def rows(reading: Reading) -> list[tuple[str, str, str]]:
    return [(row.who, row.size, row.status) for row in reading.job.roster]


def test_zero_degrees_is_a_temperature() -> None:
    assert temperature(Raw(0), "°C") == 0
    assert temperature(Raw("32 °F"), "°C") == pytest.approx(0)


@pytest.mark.parametrize("waiting", ["Waiting list", "Cancelled"])
def test_those_on_a_second_sheet_of_who_gets_none_are_not_made(waiting: str, tmp_path: Path) -> None:
    people: Rows = [["Name", "Size"], ["Ana Quill", "M"], ["Bo Rusk", "L"]]
    others: Rows = [["Name", "Size"], ["Cy Tarn", "S"], ["Di Vole", "M"]]
    reading = read(write_workbook(tmp_path / "list.xlsx", {"Going": people, waiting: others}))
    assert isinstance(reading, Reading)
    made = {row.who: row.status for row in reading.job.roster}
    assert (made["Ana Quill"], made["Bo Rusk"]) == ("", "")
    told = {row for problem in reading.problems if problem.level == "check" for row in problem.rows}
    of = {row.who: row.source.row for row in reading.job.roster}
    assert all(made[name] == "cancelled" or of[name] in told for name in ("Cy Tarn", "Di Vole"))


def test_a_person_and_a_partner_have_each_their_own_size(reading_of: ReadingOf) -> None:
    """Columns of sizes are none of names, whosever they are."""
    reading = reading_of(
        [
            ["Name", "Size", "Partner", "Partner's size", "Room"],
            ["Ana Quill", "M", "Bo Rusk", "L", 12],
            ["Cy Tarn", "S", None, None, 14],
        ]
    )
    assert rows(reading) == [("Ana Quill", "M", ""), ("Cy Tarn", "S", ""), ("Bo Rusk", "L", "")]


@pytest.mark.parametrize(
    ("second", "expected"),
    [
        (["Quill", "Rusk", "Tarn"], ["Ana Quill", "Bo Rusk", "Cy Tarn"]),  # last names
        (["Ana Quill", "Bo Rusk", "Cy Tarn"], ["Ana Quill", "Bo Rusk", "Cy Tarn"]),  # whole ones
    ],
)
def test_a_first_name_beside_a_column_called_name(
    second: list[str], expected: list[str], reading_of: ReadingOf
) -> None:
    firsts = ["Ana", "Bo", "Cy"]
    people = [[first, name, "M"] for first, name in zip(firsts, second, strict=True)]
    assert [who for who, _, _ in rows(reading_of([["First name", "Name", "Size"], *people]))] == expected


def test_a_list_without_headings_begins_in_its_first_row(reading_of: ReadingOf) -> None:
    assert rows(reading_of([["Ana Quill", "M"], ["Bo Rusk", "L"], ["Cy Tarn", "S"]])) == [
        ("Ana Quill", "M", ""),
        ("Bo Rusk", "L", ""),
        ("Cy Tarn", "S", ""),
    ]


@pytest.mark.parametrize(
    ("numbers", "few"),
    [([2, 1, 1, 9], True), ([2, 1, 1, 10], False), ([2, 1, 9], False), ([2, 9, 9], True), ([10, 12, 12], False)],
)
def test_numbers_of_one_digit_that_repeat_may_be_counts(numbers: list[int], few: bool) -> None:
    """Of two digits they are more likely those of two teams; where none repeats, of one."""
    assert bool(contents([Raw(number) for number in numbers]).share("few")) is few


def test_a_chat_s_message_that_names_someone_is_theirs(tmp_path: Path) -> None:
    path = tmp_path / "chat.txt"
    path.write_text(
        "[5/2/26, 9:14:03 PM] Pia Quill: Ned - Youth M\n"
        "[5/2/26, 9:15:40 PM] Ivo Rusk: L please\n"
        "[5/2/26, 9:16:40 PM] Jo Vole: Tess: S thanks\n",
        encoding="utf-8",
    )
    reading = read(path)
    assert isinstance(reading, Reading)
    assert rows(reading) == [("Ned", "Youth M", ""), ("Ivo Rusk", "L", ""), ("Tess", "S", "")]
