"""A few cases of edits planted in a plan; tests/benchmarks/changes_benchmark.py runs a hundred."""

from pathlib import Path

import pytest

from tests.kept.planted import differences, worked_on


@pytest.fixture(scope="module")
def plan(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return worked_on(tmp_path_factory.mktemp("planted")).path


@pytest.mark.parametrize("seed", range(6))
def test_changes_lists_exactly_the_edits_and_each_on_a_garment_in_hand_is_asked(plan: Path, seed: int) -> None:
    assert list(differences(plan, seed)) == []
