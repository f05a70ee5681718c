"""The pages beside a plan: written with it or not at all, and what happens when they are dropped themselves."""

import shutil
from datetime import datetime
from pathlib import Path

import pytest

from tests.page_jobs import bare_list
from xlbatch.each_list import lists_in
from xlbatch.run import Options, Outcome, run


def plan_list(path: Path) -> Outcome:
    return run(path, Options(effort=0), lambda _: None, datetime(2026, 5, 4))


@pytest.fixture(scope="module")
def planned(tmp_path_factory: pytest.TempPathFactory) -> Outcome:
    return plan_list(bare_list(tmp_path_factory.mktemp("dropped")))


def test_the_pages_lie_beside_the_plan(planned: Outcome) -> None:
    assert planned.written
    assert planned.to_print
    assert planned.to_print.name == "reading club - to print.xlsx"
    assert planned.to_print.parent == planned.written.parent


def test_dropped_pages_name_their_plan_whatever_they_are_called(planned: Outcome, tmp_path: Path) -> None:
    assert planned.to_print
    renamed = tmp_path / "print me.xlsx"
    shutil.copy(planned.to_print, renamed)
    outcome = plan_list(renamed)
    assert outcome.code == 3
    assert "“reading club - plan.xlsx”" in outcome.message
    assert list(tmp_path.iterdir()) == [renamed]


def test_a_folders_lists_are_without_its_pages(planned: Outcome) -> None:
    assert planned.written
    assert [path.name for path in lists_in([planned.written.parent])] == ["reading club.xlsx"]


def test_the_same_plan_gives_the_same_pages(planned: Outcome, tmp_path: Path) -> None:
    assert planned.to_print
    again = plan_list(bare_list(tmp_path))
    assert again.to_print
    assert again.to_print.read_bytes() == planned.to_print.read_bytes()
