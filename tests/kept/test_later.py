"""A list beside which a plan of it with marks lies is not planned silently."""

from dataclasses import replace
from pathlib import Path

import pytest

from tests.plan_book import NOW, PlanBook, drop, steps, written
from tests.workbooks import write_workbook
from xlbatch.run import Options, run

PEOPLE = [["Who", "Size"], ["Ana", "M"], ["Ivo", "L"]]


@pytest.fixture
def roster(tmp_path: Path) -> Path:
    return write_workbook(tmp_path / "roster.xlsx", {"Roster": PEOPLE})


def marked(roster: Path) -> PlanBook:
    book = written(drop(roster))
    book.cut()
    book.book.save(book.path)
    return book


def test_the_later_plan_is_named_and_so_is_who_is_not_in_it(roster: Path) -> None:
    plan = marked(roster)
    write_workbook(roster, {"Roster": [*PEOPLE, ["Kai", "S"]]})
    outcome = drop(roster)
    assert outcome.code == 3
    assert plan.path.name in outcome.message
    assert "Not in it: Kai" in outcome.message
    assert [offer.words for offer in outcome.offers] == ["Plan it anyway"]


def test_planned_anyway_its_numbers_go_on(roster: Path) -> None:
    marked(roster)
    outcome = run(roster, replace(Options(effort=0), anew=True), lambda _: None, NOW)
    assert [(no, decal) for no, decal, _ in steps(written(outcome))] == [(3, "D003"), (4, "D004")]


def test_a_list_is_planned_again_while_nothing_is_marked(roster: Path) -> None:
    drop(roster)
    assert drop(roster).code == 0


def test_an_older_plan_gives_way_to_the_later_one_with_marks(roster: Path) -> None:
    first = marked(roster)
    assert drop(first.path).code == 0
    assert drop(first.path).code == 3


def test_an_older_plan_gives_way_to_one_with_another_list_though_nothing_is_marked(roster: Path) -> None:
    first = written(drop(roster))
    book = PlanBook(first.path)
    book.join(Who="Kai", Size="S")
    later = book.path.with_name("roster - plan 2.xlsx")
    book.book.save(book.path)
    assert written(drop(book.path)).path == later
    first.book.save(first.path)  # as it was before Kai came
    outcome = drop(first.path)
    assert outcome.code == 3
    assert later.name in outcome.message
