"""Where a decal and a garment stand by what was marked, each mark by itself."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

import pytest

from tests.art.conftest import ROW, SETTINGS, SPEC
from tests.kept.test_numbers_kept import kept as kept_
from tests.kept.test_what_is_remembered import job as blank
from xlbatch.job.marks import ALL, Marks, StepMark, StripMark
from xlbatch.job.source import Source
from xlbatch.kept.memory import NO_MEMORY, KeptDecal, KeptGarment
from xlbatch.kept.states import Standing, standing

LIST, LOG = Source("Cut list", 4, {"Spoiled": "H4"}), Source("Press log", 9)
BOTH = (replace(SPEC, decal="Front"), replace(SPEC, decal="Back"))


def kept(number: int, state: str, piece: str = "Front", **other: Any) -> KeptDecal:
    return kept_(number, state, garment_no=7, piece=piece, **other)


def strip(
    *, cut: bool = False, weeded: bool = False, spoiled: tuple[str, ...] = (), film: str = "BLACK smooth"
) -> StripMark:
    return StripMark(LIST, 1, 1, film, cut, weeded, spoiled)


def step(number: int, outcome: Any = "", piece: str = "Front", *, pressed: bool = False, decal: str = "") -> StepMark:
    return StepMark(LOG, 7, piece, decal or f"D{number:03d}", pressed, "", outcome, "", "", False)


def stood(
    decals: Sequence[KeptDecal],
    strips: Sequence[StripMark] = (),
    steps: Sequence[StepMark] = (),
    stage: Any = "",
    **row: Any,
) -> Standing:
    job = replace(blank(), settings=SETTINGS, designs=BOTH, roster=(replace(ROW, no=7, **row),))
    memory = replace(NO_MEMORY, decals=tuple(decals), garments=(KeptGarment(7, "Tee", "M", "white", stage),))
    return standing(job, Marks(strips=tuple(strips), steps=tuple(steps)), memory)


def states(of: Standing) -> list[str]:
    return [decal.state for decal in of.decals]


@pytest.mark.parametrize(
    ("before", "mark", "after"),
    [
        ("to cut", strip(), "to cut"),
        ("to cut", strip(cut=True), "cut"),
        ("to cut", strip(weeded=True), "weeded"),
        ("to cut", strip(cut=True, weeded=True), "weeded"),
        ("to cut", strip(cut=True, film="White smooth"), "to cut"),
        ("cut", strip(), "to cut"),  # the mark was cleared
        ("cut", strip(cut=True), "cut"),
        ("cut", strip(cut=True, weeded=True), "weeded"),
        ("weeded", strip(cut=True, weeded=True), "weeded"),
        ("weeded", strip(cut=True), "cut"),  # Weeded was cleared
        ("weeded", strip(), "to cut"),
        ("to cut", strip(cut=True, spoiled=("D003",)), "spoiled"),
        ("to cut", strip(spoiled=(ALL,)), "spoiled"),
        ("weeded", strip(cut=True, spoiled=("D004",)), "cut"),
        ("pressed", strip(), "pressed"),
        ("pressed", strip(cut=True, spoiled=(ALL,)), "pressed"),
        ("spoiled", strip(cut=True), "spoiled"),
    ],
)
def test_the_marks_of_a_strip(before: str, mark: StripMark, after: str) -> None:
    row: dict[str, Any] = {"done_so_far": ("blank in hand", "Front")} if before == "pressed" else {}
    assert states(stood([kept(3, before)], [mark], **row)) == [after]
    elsewhere = replace(mark, strip=2)
    assert states(stood([kept(3, before)], [elsewhere], **row)) == [before]


def test_a_strip_half_weeded_keeps_what_is_weeded_while_it_stays_cut() -> None:
    both = [kept(3, "weeded"), kept(4, "cut", "Back")]
    assert states(stood(both, [strip(cut=True)])) == ["weeded", "cut"]
    assert states(stood(both, [strip()])) == ["to cut", "to cut"]


def test_a_number_spoiled_that_lies_elsewhere_is_asked_about() -> None:
    both = [kept(3, "to cut"), kept(4, "to cut", "Back", strip=2)]
    now = stood(both, [strip(cut=True, spoiled=("D003", "D004", ALL))])
    assert [(each.code, each.found, each.where.cell) for each in now.problems] == [("spoiled-unknown", "D004", "H4")]


@pytest.mark.parametrize(("outcome", "first"), [("ok", "pressed"), ("redo film", "spoiled")])
def test_what_is_pressed_was_cut_and_so_was_the_rest_of_its_strip(outcome: str, first: str) -> None:
    decals = [kept(3, "to cut"), kept(4, "to cut", "Back"), kept(5, "to cut", "Sleeve", strip=2)]
    assert states(stood(decals, steps=[step(3, outcome)])) == [first, "cut", "to cut"]
    old = [kept(3, "pressed"), kept(4, "to cut", "Back")]  # pressed in a plan before, and its strip's number given anew
    assert states(stood(old, done_so_far=("Front",))) == ["pressed", "to cut"]


CUT = [kept(3, "weeded"), kept(4, "weeded", "Back")]
HALF = [kept(3, "pressed"), kept(4, "weeded", "Back")]
ON = {"done_so_far": ("blank in hand", "Front"), "stage": "begun"}


@pytest.mark.parametrize(
    ("decals", "steps", "row", "after"),
    [  # states; Status; Done so far; blanks used
        (CUT, [], {}, (["weeded", "weeded"], "", (), 0)),
        (CUT, [step(3)], {}, (["weeded", "weeded"], "", (), 0)),
        (CUT, [step(3, "ok")], {}, (["pressed", "weeded"], "", ("blank in hand", "Front"), 1)),
        (CUT, [step(3, "ok"), step(4, "ok")], {}, (["pressed", "pressed"], "done", (), 1)),
        (CUT, [step(3, "redo film")], {}, (["spoiled", "weeded"], "", ("blank in hand",), 1)),
        (CUT, [step(3, "redo garment")], {}, (["spoiled", "weeded"], "", (), 1)),
        (CUT, [step(3, pressed=True), step(4, "redo garment")], {}, (["spoiled", "spoiled"], "", (), 1)),
        (CUT, [step(3, "ok"), step(4)], {"status": "done"}, (["pressed", "pressed"], "done", (), 1)),
        (CUT, [step(3)], {"status": "done"}, (["pressed", "weeded"], "done", (), 1)),
        (CUT, [], {"status": "redo garment"}, (["spoiled", "spoiled"], "", (), 1)),
        (CUT, [], {"status": "redo film"}, (["spoiled", "spoiled"], "", ("blank in hand",), 1)),
        (CUT, [step(3, pressed=True)], {"status": "redo film"}, (["spoiled", "weeded"], "", ("blank in hand",), 1)),
        (CUT, [], {"status": "cancelled"}, (["weeded", "weeded"], "cancelled", (), 0)),
        (HALF, [], ON, (["pressed", "weeded"], "", ("blank in hand", "Front"), 0)),
        (HALF, [step(4, "ok")], ON, (["pressed", "pressed"], "done", (), 0)),
        (HALF, [step(4, "redo film")], ON, (["pressed", "spoiled"], "", ("blank in hand", "Front"), 0)),
        (HALF, [step(4, "redo garment")], ON, (["spoiled", "spoiled"], "", (), 0)),
        (HALF, [], ON | {"done_so_far": ("blank in hand",)}, (["weeded", "weeded"], "", ("blank in hand",), 0)),
        (HALF, [], ON | {"done_so_far": ()}, (["weeded", "weeded"], "", (), -1)),
        (HALF, [], ON | {"done_so_far": (), "status": "done"}, (["pressed", "weeded"], "done", (), 0)),
        (HALF, [], ON | {"status": "redo garment"}, (["spoiled", "weeded"], "", (), 0)),
        (HALF, [], ON | {"status": "redo film"}, (["spoiled", "weeded"], "", ("blank in hand",), 0)),
        (CUT, [], {"stage": "begun", "status": "redo garment"}, (["weeded", "weeded"], "", (), 0)),
        (CUT, [], {"stage": "begun", "status": "redo film"}, (["spoiled", "spoiled"], "", ("blank in hand",), 0)),
        ([kept(3, "pressed")], [], {"stage": "done", "status": "done"}, (["pressed"], "done", (), 0)),
        (CUT, [step(3)], {"stage": "done", "status": "done"}, (["weeded", "weeded"], "done", (), 0)),
        ([kept(3, "pressed")], [], {"stage": "done"}, (["weeded"], "", (), -1)),
        ([], [], {"done_so_far": ("Front",)}, ([], "", ("blank in hand", "Front"), 1)),  # before there was a memory
        ([], [], {"done_so_far": ("Front", "Back")}, ([], "done", (), 1)),
        ([kept(4, "weeded", "Back")], [step(4, "ok")], {"done_so_far": ("Front",)}, (["pressed"], "done", (), 1)),
    ],
)  # fmt: skip
def test_the_results_of_a_garment(
    decals: Sequence[KeptDecal], steps: Sequence[StepMark], row: dict[str, Any], after: tuple[Any, ...]
) -> None:
    now = stood(decals, steps=steps, **row)
    status, done = now.job.roster[0].status, now.job.roster[0].done_so_far
    assert (states(now), status, done, now.used.get(7, 0)) == after
    in_hand = "done" if status == "done" else "begun" if done else ""
    assert [garment.stage for garment in now.garments.values()] == ([in_hand] if in_hand else [])


def test_a_joined_piece_holds_the_pieces_of_its_parts() -> None:
    joined = [kept(3, "weeded", "Front + Back")]
    assert stood(joined, steps=[step(3, "ok", "Front + Back")]).job.roster[0].status == "done"
    half = [kept(3, "pressed", "Front + Sleeve"), kept(4, "weeded", "Back")]
    now = stood(half, stage="begun", done_so_far=("blank in hand", "Front", "Sleeve"))
    assert now.job.roster[0].done_so_far == ("blank in hand", "Front", "Sleeve")


def test_a_step_without_a_number_is_about_its_piece() -> None:
    decals = [kept(2, "spoiled"), kept(3, "weeded"), kept(4, "weeded", "Back")]
    assert states(stood(decals, steps=[step(0, "ok", decal="-")])) == ["spoiled", "pressed", "weeded"]
    assert states(stood(decals, steps=[step(0, "ok", decal="D004")])) == ["spoiled", "weeded", "pressed"]
