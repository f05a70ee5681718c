"""Lists as people have them are read as a careful reader would. Invented; common practice, no source."""

from collections import Counter
from pathlib import Path

import pytest

from tests.lists.score import OUTCOMES, TABLES, total
from tests.lists.table_of_lists import lists_in

LISTS, FURTHER = (Path(__file__).with_name(name) for name in TABLES)


def test_there_are_enough_lists_of_each_kind() -> None:
    kinds = Counter(each.kind for each in lists_in(LISTS))
    assert kinds.total() >= 100
    assert min(kinds.values()) >= 3


def test_every_list_expects_something() -> None:
    assert all(each.expected and each.sheets for each in lists_in(LISTS))


@pytest.mark.parametrize("table", [LISTS, FURTHER])
def test_no_list_is_read_wrong_unasked(table: Path) -> None:
    counted = total(table)
    rows = sum(counted[outcome] for outcome in OUTCOMES)
    assert counted["wrong unasked"] == 0
    assert counted["refused"] <= 0.02 * rows
    assert counted["right"] >= 0.8 * rows
