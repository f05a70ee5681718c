"""The first of the spoiled lists and drawings of `tests.fuzz`; build/test.py runs more of them."""

import pytest

from tests.fuzz import CASES, wrongs

FEW = {"bytes": 40, "parts": 16, "cells": 12, "drawings": 12}


@pytest.mark.parametrize("kind", CASES)
def test_spoiled_lists_meet_no_fault_of_ours(kind: str) -> None:
    assert [f"{number}: {wrong}" for number in range(FEW[kind]) for wrong in wrongs(kind, number)] == []


def test_a_fault_is_seen(monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(*_: object) -> None:
        raise KeyError("ours")

    monkeypatch.setattr("xlbatch.tables.list_parts._one_below_another", broken)
    assert any("KeyError" in wrong for number in range(4) for wrong in wrongs("cells", number))
