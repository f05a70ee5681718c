"""A few short histories of a job, held against a model of it; tests/benchmarks/history_benchmark.py runs many."""

from pathlib import Path

import pytest

from tests.kept.history import live


@pytest.mark.parametrize("seed", [3, 5])
def test_what_happened_is_what_the_plan_knows(tmp_path: Path, seed: int) -> None:
    assert live(seed, tmp_path, drops=3)
