"""Marks that contradict each other, lack something or cannot be read are asked about, and the piece stays to do."""

from pathlib import Path

import pytest

from tests.plan_book import PlanBook, codes, decals, drop_for_workbook, steps, written
from tests.workbooks import Rows, write_workbook
from xlbatch.run import Outcome

DESIGNS: Rows = [
    ["Design", "Decal", "What", "Film", "Position", "Height", "Layer"],
    ["Name", "Front", "print name", "Black smooth", "full front", "2 in", 1],
    ["Name", "Over", "number", "Red smooth", "full front", "1 in", 2],
]
PEOPLE: Rows = [["Who", "Size", "Number"], ["Ana", "M", "4"], ["Ivo", "L", "7"]]


@pytest.fixture
def cut(tmp_path: Path) -> PlanBook:
    """A plan of two people with two layers each, all of it cut."""
    book = written(drop_for_workbook(write_workbook(tmp_path / "job.xlsx", {"Roster": PEOPLE, "Designs": DESIGNS})))
    book.cut()
    return book


def dropped(book: PlanBook) -> Outcome:
    book.book.save(book.path)
    return drop_for_workbook(book.path)


def test_a_garment_ticked_as_pressed_without_a_result_is_asked_about(cut: PlanBook) -> None:
    cut.mark("Press log", "Pressed", "x", lambda row: row["Garment no."] == 1)
    outcome = dropped(cut)
    assert "pressed-no-result" in codes(outcome)
    assert {no for no, _, _ in steps(written(outcome))} == {1, 2}


def test_results_that_contradict_each_other_are_asked_and_the_garment_stays_to_do(cut: PlanBook) -> None:
    of_first = [row["Decal"] for _, row in cut.steps() if row["Garment no."] == 1]
    cut.result("redo garment", lambda row: row["Decal"] == of_first[0])
    cut.result("ok", lambda row: row["Decal"] in of_first[1:])
    outcome = dropped(cut)
    assert "result-contradicts" in codes(outcome)
    assert {no for no, _, _ in steps(written(outcome))} == {1, 2}


@pytest.mark.parametrize("result", ["ok, redo film", "okq", "not ok"])
def test_a_result_that_cannot_be_read_is_never_taken_or_proposed_as_ok(cut: PlanBook, result: str) -> None:
    cut.result(result)
    outcome = dropped(cut)
    asked = [problem for problem in outcome.problems if problem.code == "result-unknown"]
    assert asked
    assert not [problem for problem in asked if problem.suggestion == "ok"]
    assert {no for no, _, _ in steps(written(outcome))} == {1, 2}


@pytest.mark.parametrize("mark", ["perhaps", "ask Ivo"])
def test_a_mark_that_cannot_be_read_counts_as_none(cut: PlanBook, mark: str) -> None:
    cut.cut(mark)
    outcome = dropped(cut)
    assert "mark-unclear" in codes(outcome)
    assert not decals(written(outcome), "cut")


def test_a_decal_of_another_strip_is_not_spoiled_with_this_one(cut: PlanBook) -> None:
    cut.cut("D099", "Spoiled")
    outcome = dropped(cut)
    assert "spoiled-unknown" in codes(outcome)
    assert not decals(written(outcome), "spoiled")


def test_film_under_what_is_pressed_cannot_be_made_anew(cut: PlanBook) -> None:
    under = next(row["Decal"] for _, row in cut.steps() if (row["Garment no."], row["Piece"]) == (1, "Front"))
    cut.result("ok", lambda row: row["Garment no."] == 1 and row["Decal"] != under)
    cut.result("redo film", lambda row: row["Decal"] == under)
    outcome = dropped(cut)
    asked = next(problem for problem in outcome.problems if problem.code == "redo-under")
    assert asked.level == "stop"
    assert "redo garment" in asked.todo


def test_a_memory_that_was_changed_is_asked_about(cut: PlanBook) -> None:
    kept = cut.sheet("Kept by the program")
    row = next(row for row in kept.iter_rows() if row[0].value == "edition")
    row[1].value = "none"
    assert "memory-damaged" in codes(dropped(cut))
