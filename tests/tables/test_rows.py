"""The lines made of a list's rows: marks that repeat, sizes for some, counts, several in a cell."""

from collections.abc import Callable

import pytest

from tests.tables.short_lists import cases, read_short
from xlbatch.roster.read import Reading


@pytest.mark.parametrize(("text", "reading"), cases("rows.txt"))
def test_the_garments_of_a_list(text: str, reading: str) -> None:
    assert read_short(text) == reading


def test_a_list_that_lies_on_its_side_is_told_by_its_first_cells(reading_of: Callable[..., Reading]) -> None:
    reading = reading_of([["Name", "Ana Blom", "Bo Berg"], ["Size", "M", "L"]])
    assert [row.source.at("").cell for row in reading.job.roster] == ["B1", "C1"]
    assert [row.source.at("Size").cell for row in reading.job.roster] == ["B2", "C2"]


def test_a_row_of_another_sheet_is_no_row_of_the_list(reading_of: Callable[..., Reading]) -> None:
    reading = reading_of([["Who", "Size"], ["Ana Blom", "M"]], Film=[["Film", "Rolls sold"], ["Red smooth", "dear"]])
    assert [(each.where.sheet, each.rows) for each in reading.problems] == [("Film", ())]
