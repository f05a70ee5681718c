"""Which plan is a later one, what is said of it, and numbers that go on after it."""

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from tests.art.conftest import ROW
from tests.kept.test_numbers_kept import kept
from tests.kept.test_what_is_remembered import job
from xlbatch.files.raw import RawSheet
from xlbatch.job.marks import Marks, OrderKey, OrderMark, StepMark, StripMark
from xlbatch.job.source import Source
from xlbatch.kept.later import Later, _has_marks, _number, _plans, after, numbered_after, numbers_given, sentence
from xlbatch.kept.memory import NO_MEMORY, KeptGarment, Memory
from xlbatch.roster.read import Reading

SOURCE = Source("Cut list", 4)
STRIP = StripMark(SOURCE, 3, 9, "Black smooth", False, False, ())
STEP = StepMark(SOURCE, 1, "Front", "D012", False, "", "", "", "", False)
ORDER = OrderMark(SOURCE, OrderKey("blank", "", "Tee", "M", "white"), 3, None, None)


@pytest.mark.parametrize(
    ("name", "number"),
    [("camp", 0), ("camp - plan", 1), ("camp - plan 2", 2), ("camp - plan 12", 12), ("camp - plans", 0), ("plan 3", 0)],
)
def test_the_number_of_a_plan_is_in_its_name(name: str, number: int) -> None:
    assert _number(Path(f"{name}.xlsx")) == number


def test_plans_of_a_job_are_those_of_its_name(tmp_path: Path) -> None:
    own = {"camp - plan.xlsx", "camp - plan 2.ods", "camp - plan 3.XLSM"}
    for name in (*own, "camp.xlsx", "camp - plan.csv", "camps - plan.xlsx", "~$camp - plan.xlsx"):
        (tmp_path / name).touch()
    assert {path.name for path in _plans(tmp_path, "camp")} == own
    assert list(_plans(tmp_path / "none", "camp")) == []


@pytest.mark.parametrize(
    ("marks", "memory", "marked"),
    [
        (Marks(), NO_MEMORY, False),
        (Marks(strips=(STRIP,), steps=(STEP,), orders=(ORDER,)), NO_MEMORY, False),
        (Marks(strips=(replace(STRIP, cut=True),)), NO_MEMORY, True),
        (Marks(strips=(replace(STRIP, weeded=True),)), NO_MEMORY, True),
        (Marks(strips=(replace(STRIP, spoiled=("D001",)),)), NO_MEMORY, True),
        (Marks(steps=(replace(STEP, outcome="ok"),)), NO_MEMORY, True),
        (Marks(steps=(replace(STEP, pressed=True),)), NO_MEMORY, True),
        (Marks(steps=(replace(STEP, by="Kai"),)), NO_MEMORY, True),
        (Marks(steps=(replace(STEP, note="edge"),)), NO_MEMORY, True),
        (Marks(orders=(replace(ORDER, ordered=2),)), NO_MEMORY, True),
        (Marks(orders=(replace(ORDER, arrived=True),)), NO_MEMORY, True),
        (Marks(), replace(NO_MEMORY, decals=(kept(1, "to cut"),)), False),
        (Marks(), replace(NO_MEMORY, decals=(kept(1, "to cut"), kept(2, "cut"))), True),
        (Marks(), replace(NO_MEMORY, garments=(KeptGarment(1, "Tee", "M", "white", ""),)), False),
        (Marks(), replace(NO_MEMORY, garments=(KeptGarment(1, "Tee", "M", "white", "begun"),)), True),
    ],
)  # fmt: skip
def test_a_plan_with_anything_of_its_own_has_marks(marks: Marks, memory: Memory, marked: bool) -> None:
    assert _has_marks(marks, memory) is marked


@pytest.mark.parametrize(
    ("strips", "steps", "given"),
    [
        ([STRIP], [STEP], (0, 0, 0)),
        ([replace(STRIP, cut=True), replace(STRIP, run=4, strip=2)], [], (0, 4, 9)),
        ([replace(STRIP, weeded=True)], [STEP, replace(STEP, decal="D007"), replace(STEP, decal="front")], (12, 3, 9)),
        ([replace(STRIP, spoiled=("D001",))], [], (0, 3, 9)),
        ([], [replace(STEP, outcome="ok")], (12, 0, 0)),
        ([], [replace(STEP, pressed=True, decal="D1x")], (0, 0, 0)),
    ],
)
def test_numbers_of_a_plan_with_marks_and_no_memory_are_given(
    strips: list[StripMark], steps: list[StepMark], given: tuple[int, int, int]
) -> None:
    assert numbers_given(Marks(strips=tuple(strips), steps=tuple(steps))) == given


def test_numbers_go_on_after_the_highest_of_both() -> None:
    memory = Memory(last_decal=5, last_run=6, last_strip=7, retired_run=1, retired_strip=9)
    now = after(memory, (8, 3, 8))
    assert (now.last_decal, now.last_run, now.last_strip, now.retired_run, now.retired_strip) == (8, 6, 8, 3, 9)


def reading(*names: str, marks: Marks = Marks(), kept_sheet: Any = None, last: int = 0) -> Reading:  # noqa: B008
    roster = tuple(replace(ROW, no=no, who=name) for no, name in enumerate(names, 1))
    own = replace(job(), roster=roster, settings=replace(job().settings, last_no=last))
    return Reading(own, (), marks, kept_sheet)


def later(*names: str) -> Later:
    memory = Memory(last_decal=20, last_run=4, last_strip=6)
    return Later(Path("camp - plan 2.xlsx"), reading(*names, last=30), memory)


def test_new_numbers_go_on_after_those_of_the_later_plan() -> None:
    now = numbered_after(reading("Ana", "Bo", last=2), later())
    assert [row.no for row in now.job.roster] == [31, 32]
    assert (now.job.settings.last_no, now.after) == (32, (20, 4, 6))
    plan = numbered_after(reading("Ana", last=2, kept_sheet=RawSheet("Kept", {})), later())
    assert ([row.no for row in plan.job.roster], plan.job.settings.last_no, plan.after) == ([1], 2, (20, 4, 6))


def test_what_is_said_of_a_later_plan() -> None:
    there = later("ana", "Bo")
    assert "Not in it" not in sentence(Path("camp.xlsx"), reading("Ana", "BO", ""), there)
    said = sentence(Path("camp.xlsx"), reading("Ana", *(f"P{no}" for no in range(1, 9))), there)
    assert "Not in it: P1, P2, P3, P4, P5, P6, P7, P8;" in said
    said = sentence(Path("camp.xlsx"), reading(*(f"P{no}" for no in range(1, 11))), there)
    assert "Not in it: P1, P2, P3, P4, P5, P6, P7, P8 and 2 more;" in said


@pytest.mark.parametrize(
    ("strips", "steps", "counts"),
    [
        ([STRIP], [STEP], None),
        ([replace(STRIP, cut=True), replace(STRIP, spoiled=("D001",)), STRIP], [STEP], (2, 0)),
        ([], [replace(STEP, outcome="ok"), STEP], (0, 1)),
    ],
)
def test_marks_made_in_the_older_plan_are_told(
    strips: list[StripMark], steps: list[StepMark], counts: tuple[int, int] | None
) -> None:
    marks = Marks(strips=tuple(strips), steps=tuple(steps))
    said = sentence(Path("camp.xlsx"), reading("Ana", marks=marks), later("Ana"))
    plain = sentence(Path("camp.xlsx"), reading("Ana"), later("Ana"))
    if counts is None:
        assert said == plain
    else:
        more = said.removeprefix(plain)
        assert [int(word) for word in more.replace(",", " ").split() if word.isdigit()] == list(counts), more
