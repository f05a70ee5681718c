"""Remarks that deny or want something, or hold a count, may change a row. Common practice, no source."""

import pytest

from xlbatch.files.raw import Raw
from xlbatch.tables.roster_columns import decide
from xlbatch.trade.remarks import may_change_it


@pytest.mark.parametrize("remark", ["can I have 2?", "nothing for me", "rien pour moi", "niet meer mee"])
def test_a_remark_that_wants_or_denies_may_change_the_row(remark: str) -> None:
    assert may_change_it(remark)


@pytest.mark.parametrize("remark", ["see you there", "no allergies", "call after 7:30", "will bring cake"])
def test_talk_changes_nothing(remark: str) -> None:
    assert not may_change_it(remark)


def test_a_column_of_numbers_that_nothing_accounts_for_is_told() -> None:
    rows = [{1: Raw("Ana Blom"), 2: Raw("M"), 3: Raw(17)}, {1: Raw("Ivo Berg"), 2: Raw("L"), 3: Raw(42)}]
    assert decide({1: "Name", 2: "Size", 3: "Quux"}, rows).unused == {3: "number"}
