"""Workbooks spoiled at random end in a plain exit, and no row of the list is lost without a word."""

from pathlib import Path

import pytest

from tests.mutations import faults, spoiled

SEEDS = 100


@pytest.mark.filterwarnings("ignore")  # openpyxl warns while it writes odd workbooks
def test_no_spoiled_workbook_loses_a_row(tmp_path: Path) -> None:
    found = {seed: list(faults(seed, tmp_path)) for seed in range(SEEDS)}
    assert {seed: them for seed, them in found.items() if them} == {}


@pytest.mark.filterwarnings("ignore")
def test_spoiled_workbooks_end_in_an_exit_code(tmp_path: Path) -> None:
    found = {seed: list(faults(seed, tmp_path, write=True)) for seed in range(0, SEEDS, 20)}
    assert {seed: them for seed, them in found.items() if them} == {}


def test_the_same_seed_spoils_alike() -> None:
    kinds = {spoiled(seed)[0] for seed in range(20)}
    assert kinds == {"cells", "structure", "bytes"}
