"""From which size on another core makes the pages, and how far the writing is said to be."""

from collections.abc import Callable
from contextlib import nullcontext
from dataclasses import replace
from pathlib import Path

import pytest

from xlbatch.outcome import DRAWING, LAYING, ORDERING, PLACING, READING, WRITING, Options, Outcome, Step
from xlbatch.plan import Plan
from xlbatch.two_workbooks import LARGE, TwoWorkbooks


class Core:
    """Stands in for another core: done at once."""

    def __init__(self, work: Callable[..., bytes], *given: object) -> None:
        self._work, self._given = work, given

    def result(self) -> bytes:
        return self._work(*self._given)

    def leave(self) -> None:
        self._given = ()


@pytest.mark.parametrize(("garments", "how"), [(LARGE - 1, ["pages", "plan"]), (LARGE, ["plan", "pages later"])])
def test_the_pages_of_a_large_job_are_made_by_another_core(
    garments: int, how: list[str], plan_of: Callable[..., Plan], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """3,000 garments: the wait for a process is then a small part of the pages' work."""
    made: list[str] = []

    def later(plan: Plan, name: str) -> bytes:
        assert (len(plan.garments), name) == (LARGE, "plan.xlsx")
        made.append("pages later")
        return b"pages"

    monkeypatch.setattr("xlbatch.two_workbooks.OtherCore", Core)
    monkeypatch.setattr("xlbatch.pages.write_pages.pages_of", later)
    monkeypatch.setattr("xlbatch.pages.write_pages.write_pages", lambda *_: made.append("pages"))
    monkeypatch.setattr("xlbatch.sheets.write.write_plan", lambda *_: made.append("plan"))
    plan = plan_of([["Who", "Size"], ["Ana", "M"]])
    books = TwoWorkbooks(replace(plan, garments=plan.garments * garments))
    books.print_(tmp_path / "to print.xlsx", "plan.xlsx")
    books.write(tmp_path / "plan.xlsx")
    assert made == how
    assert (tmp_path / "to print.xlsx").exists() is (garments == LARGE)
    assert LARGE == 3_000


@pytest.mark.parametrize(
    ("garments", "steps"), [(1, [(0, 40), (40, 100)]), (LARGE, [(0, 100)])], ids=["small", "large"]
)
def test_how_far_the_writing_is_counts_what_this_core_writes(
    garments: int,
    steps: list[tuple[int, int]],
    plan_of: Callable[..., Plan],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    told: list[tuple[int, int]] = []

    def percent(first: int, last: int) -> object:
        told.append((first, last))
        return nullcontext()

    monkeypatch.setattr("xlbatch.two_workbooks.percent", percent)
    monkeypatch.setattr("xlbatch.two_workbooks.OtherCore", Core)
    monkeypatch.setattr("xlbatch.pages.write_pages.pages_of", lambda *_: b"pages")
    monkeypatch.setattr("xlbatch.pages.write_pages.write_pages", lambda *_: None)
    monkeypatch.setattr("xlbatch.sheets.write.write_plan", lambda *_: None)
    plan = plan_of([["Who", "Size"], ["Ana", "M"]])
    books = TwoWorkbooks(replace(plan, garments=plan.garments * garments))
    books.print_(tmp_path / "to print.xlsx", "plan.xlsx")
    books.write(tmp_path / "plan.xlsx")
    assert told == steps


@pytest.mark.parametrize(
    ("step", "words"),
    [
        (Step(LAYING, 40, 100), "40 %"),
        (Step(WRITING, 7.9, 100), "7 %"),
        (Step(DRAWING, 1000, 1000), "1,000 of 1,000 drawn"),
        (Step(DRAWING), "…"),  # not begun to count
        (Step(READING, 1, 2), "…"),  # a stage that counts nothing
    ],
)
def test_how_far_a_stage_is_in_words(step: Step, words: str) -> None:
    assert step.words == words


def test_the_whole_is_behind_when_the_last_stage_is() -> None:
    assert Step(READING).share == 0
    assert Step(PLACING, 1, 1).share == 1
    begins = [Step(stage).share for stage in (READING, DRAWING, LAYING, ORDERING, WRITING, PLACING)]
    assert Step(DRAWING, 1, 2).share == pytest.approx((begins[1] + begins[2]) / 2)


def test_nothing_is_asked_for_that_no_one_asked_for() -> None:
    usual = Options()
    assert (usual.folder, usual.effort, usual.forms) == (None, 1, ())
    assert not any((usual.check_only, usual.anew, usual.what_if))
    nothing = Outcome(0, "")
    assert (nothing.held, nothing.unsaved) == (0, False)
