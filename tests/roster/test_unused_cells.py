"""What stands in a list and was not used is asked about at its rows. Invented; common practice, no source."""

from pathlib import Path

import pytest

from tests.workbooks import Rows, write_workbook
from xlbatch.roster.read import Reading, read


def _asked(rows: Rows, folder: Path) -> list[tuple[str, tuple[int, ...]]]:
    reading = read(write_workbook(folder / "list.xlsx", {"Sheet1": rows}))
    assert isinstance(reading, Reading)
    return [(each.code, each.rows) for each in reading.problems if each.level == "check"]


@pytest.mark.parametrize(("title", "cells", "code", "rows"), [
    ("Sides", ("front", "both"), "column-choice-unused", (2, 3)),
    ("Swap to", ("M", "XL"), "column-size-unused", (3,)),
    ("Hood?", ("yes", "no"), "column-answer-unused", (2, 3)),
    ("Yell", ("nothing on the back", "see you there"), "note-asks", (2,)),
    ("Yell", ("hello there", "make it XL"), "note-asks", (3,)),
])  # fmt: skip
def test_a_column_no_one_used_names_its_rows(
    title: str, cells: tuple[str, str], code: str, rows: tuple[int, ...], tmp_path: Path
) -> None:
    list_: Rows = [["Name", "Size", title], ["Ana Blom", "M", cells[0]], ["Ivo Berg", "L", cells[1]]]
    assert _asked(list_, tmp_path) == [(code, rows)]


@pytest.mark.parametrize("title", ["Mail", "Locker", "Town"])
def test_a_harmless_column_is_no_question(title: str, tmp_path: Path) -> None:
    list_: Rows = [["Name", "Size", title], ["Ana Blom", "M", "Lund"], ["Ivo Berg", "L", "Lund"]]
    assert _asked(list_, tmp_path) == []


def test_a_line_about_someone_is_asked_at_their_row(tmp_path: Path) -> None:
    list_: Rows = [["Name", "Size"], ["Ana Blom", "M"], ["Ivo Berg", "L"], ["Change: Ivo now XL"]]
    assert ("line-about", (3,)) in _asked(list_, tmp_path)


def test_the_families_of_an_order_are_names(tmp_path: Path) -> None:
    rows: Rows = [["Family", "Shirts", "Size"], ["Ana Blom", 2, "M"], ["Ivo Berg", 1, "L"]]
    reading = read(write_workbook(tmp_path / "list.xlsx", {"Sheet1": rows}))
    assert isinstance(reading, Reading)
    assert [row.who for row in reading.job.roster] == ["Ana Blom", "Ana Blom", "Ivo Berg"]
