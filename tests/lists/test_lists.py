"""Lists as people have them are read as a careful reader would. Invented; common practice, no source."""

from collections import Counter
from pathlib import Path

import pytest

from tests.lists.score import HARD_TABLES, NOW, OUTCOMES, TABLES, total
from tests.lists.table_of_lists import lists_in
from tests.workbooks import Rows, write_workbook
from xlbatch.roster.read import Reading, read
from xlbatch.run import Options, run

ALL = tuple(Path(__file__).with_name(name) for name in TABLES)
LISTS = ALL[0]


def test_there_are_enough_lists_of_each_kind() -> None:
    kinds = Counter(each.kind for each in lists_in(LISTS))
    assert kinds.total() >= 100
    assert min(kinds.values()) >= 3


def test_every_list_expects_something() -> None:
    assert all(each.expected and each.sheets for each in lists_in(LISTS))


@pytest.mark.parametrize("table", ALL, ids=TABLES)
def test_no_list_is_read_wrong_unasked(table: Path) -> None:
    counted = total(table)
    rows = sum(counted[outcome] for outcome in OUTCOMES)
    assert counted["wrong unasked"] == 0
    assert counted["refused"] <= 0.02 * rows
    assert counted["right"] >= 0.8 * rows


@pytest.mark.parametrize("table", HARD_TABLES)
def test_what_is_odd_in_a_list_is_asked_about(table: str) -> None:
    """Lists in each of which something is odd: half of their garments may be asked about, none be wrong unasked."""
    counted = total(Path(__file__).with_name(table))
    assert counted["wrong unasked"] == 0
    assert counted["refused"] <= 0.02 * sum(counted[outcome] for outcome in OUTCOMES)


@pytest.mark.parametrize("rows", [
    [["Size", "Quantity"], ["S", 3], ["M", 2]],
    [["Name", "Size", "Print name"], ["Ana Blom", "M", "no name"], ["Ivo Berg", "L", "IVO"], ["Cy Kim", "S", "blank"]],
])  # fmt: skip
def test_garments_without_a_print_are_planned_to_the_end(rows: Rows, tmp_path: Path) -> None:
    path = write_workbook(tmp_path / "list.xlsx", {"Sheet1": rows})
    outcome = run(path, Options(effort=0), lambda _step: None, NOW)
    assert outcome.code == 0
    assert outcome.written is not None
    again = read(outcome.written)
    assert isinstance(again, Reading)
    assert [row.print_name == "no name" for row in again.job.roster].count(True) >= 2
