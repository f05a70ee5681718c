"""Workbooks spoiled at random end in a plain exit, and no row of the list is lost without a word."""

from pathlib import Path

import pytest

from tests.further_mutations import further_faults
from tests.mutations import faults, spoiled
from xlbatch.roster import read as reader
from xlbatch.roster.people import read_people

SEEDS = 100


@pytest.mark.filterwarnings("ignore")  # openpyxl warns while it writes odd workbooks
def test_no_spoiled_workbook_loses_a_row(tmp_path: Path) -> None:
    found = {seed: list(faults(seed, tmp_path)) for seed in range(SEEDS)}
    assert {seed: them for seed, them in found.items() if them} == {}


@pytest.mark.filterwarnings("ignore")
def test_no_workbook_spoiled_in_further_ways_loses_a_row(tmp_path: Path) -> None:
    found = {seed: list(further_faults(seed, tmp_path)) for seed in range(40)}
    assert {seed: them for seed, them in found.items() if them} == {}


@pytest.mark.filterwarnings("ignore")
def test_a_row_lost_without_a_word_is_noticed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(reader, "read_people", lambda given, *of: read_people(list(given)[1:], *of))
    found = {seed for seed in range(10) if any("is lost" in fault for fault in further_faults(seed, tmp_path))}
    assert len(found) >= 4


@pytest.mark.filterwarnings("ignore")
def test_spoiled_workbooks_end_in_an_exit_code(tmp_path: Path) -> None:
    found = {seed: list(faults(seed, tmp_path, write=True)) for seed in range(0, SEEDS, 20)}
    assert {seed: them for seed, them in found.items() if them} == {}


def test_the_same_seed_spoils_alike() -> None:
    kinds = {spoiled(seed)[0] for seed in range(20)}
    assert kinds == {"cells", "structure", "bytes"}
