"""A few short histories of a job, held against a model of it; tests/benchmarks/history_benchmark.py runs many."""

from pathlib import Path

import pytest

from tests.kept.history import live
from tests.plan_book import drop_for_workbook


@pytest.mark.parametrize("seed", [3, 5])
def test_what_happened_is_what_the_plan_knows(tmp_path: Path, seed: int) -> None:
    assert live(seed, tmp_path, drops=3)


def test_a_longer_history_agrees_too(tmp_path: Path) -> None:
    assert live(8, tmp_path, drop=drop_for_workbook)
