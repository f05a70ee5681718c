"""Where a record was read: the cell that a problem names."""

import pytest

from xlbatch.job.source import MOST_SHEET_ROWS, Source
from xlbatch.problems import Where


@pytest.mark.parametrize(
    ("source", "cell"),
    [
        (Source("Roster", 5, {"Size": "C5", "": "B5"}), "C5"),
        (Source("Roster", 5, {"Who": "B5", "": "B5"}), "B5"),  # no such column: the row's first cell
        (Source("Roster", 5, {"Who": "B5"}), "A5"),
        (Source("Roster"), ""),  # built in: no one typed it
        (Source("Roster", MOST_SHEET_ROWS + 7), "A7"),  # a second table, counted on
    ],
)
def test_a_problem_names_the_cell_or_the_beginning_of_its_row(source: Source, cell: str) -> None:
    assert source.at("Size") == Where("Roster", cell)


def test_what_is_built_in_has_no_row() -> None:
    assert (Source("Film").built_in, Source("Film").sheet_row) == (True, 0)
    assert (Source("Film", 1).built_in, Source("Film", 1).sheet_row) == (False, 1)
    assert Source("Roster", MOST_SHEET_ROWS).sheet_row == MOST_SHEET_ROWS == 2**20  # ECMA-376: the rows of a sheet
