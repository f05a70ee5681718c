"""What follows from a change: film to cut with its share and price, blanks to take, steps to press; of each once."""

from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from tests.art.conftest import FILM, ROW, SETTINGS, SPEC
from tests.cutfiles.test_run_svg import decal as decal_of
from tests.kept.test_numbers_kept import kept
from xlbatch.art.decal import Decal
from xlbatch.check.garment import Garment
from xlbatch.film.layout import Layout, Lying, Run, Strip
from xlbatch.job.job import Roll
from xlbatch.kept.follows import Follows
from xlbatch.kept.memory import NO_MEMORY, KeptChange, KeptGarment
from xlbatch.placement.place import Place
from xlbatch.press.step import PressPlan, PressStep
from xlbatch.roster.read import blank_job

JOB = blank_job(Path("list.xlsx"))
BLANK, PRESS = JOB.blanks[0], JOB.presses[0]
CM = replace(SETTINGS, length_unit="cm")
ROLLS = (Roll(1000, Decimal(30)), Roll(5000, Decimal(100)), Roll(9000, None))  # 0.02 a mm at the cheapest


def decal(number: int, garment: int) -> Decal:
    return replace(decal_of(number), garment_no=garment)  # 40 by 60 mm


def garment(no: int, size: str = "M", *, needs_blank: bool = True, design: str = "Name") -> Garment:
    specs = (replace(SPEC, design=design),)
    blank = replace(BLANK, garment="Tee", size=size)
    return Garment(replace(ROW, no=no), blank, "navy", "Ana", specs, specs, needs_blank)


def run(*decals: Decal, length: float = 100, of: float = 100, **film: Any) -> Run:
    """One strip of `length` mm with all of them in a run of `of` mm."""
    lying = tuple(Lying(it, 0, 0, 0) for it in decals)
    return Run(1, replace(FILM, rolls=ROLLS, **film), of, (Strip(1, 10, length, lying),), True, "roll")


def pressing(*decals: Decal) -> PressPlan:
    steps = [
        PressStep(
            no=at, batch=1, lane=1, film=FILM, press=PRESS, temperature=165, warm_up=5, front=30, back=15, tack=False,
            wait=0, trial=False, with_step=None,
            place=Place(garment(it.garment_no), it, "front", "hem", 0, None, None, 0, 0, 0, ()),
        )
        for at, it in enumerate(decals, 1)
    ]  # fmt: skip
    return PressPlan(tuple(steps), False, 0, 0, 0)


def follows(*runs: Run, garments: Sequence[Garment] = (), steps: Sequence[Decal] = (), **before: Any) -> Follows:
    before["garments"] = before.pop("taken", ())
    planned = garments or (garment(1), garment(2, "L"))
    return Follows(replace(NO_MEMORY, **before), CM, planned, Layout((), runs, ()), pressing(*steps))


def said(of: Follows, *changes: tuple[str, str, str]) -> list[str]:
    lines = [KeptChange(2, sheet, "B2", who, what, "", "x", "") for sheet, who, what in changes]
    return [line.follows for line in of.told(lines)]


ANA, BO = ("Roster", "No. 1 Ana", "Size"), ("Roster", "No. 2 Bo", "Size")
AS_BEFORE = (KeptGarment(1, "Tee", "M", "navy", ""), KeptGarment(2, "Tee", "L", "Navy", ""))


def test_a_decal_to_cut_is_its_share_of_the_strip_by_its_box() -> None:
    big = replace(decal(3, 2), width=80)  # two thirds of the boxes
    of = follows(run(decal(2, 1), big, length=90, of=150), taken=AS_BEFORE)
    assert said(of, ANA, BO) == ["1 decal to cut, 5 cm of film for $1.00", "1 decal to cut, 10 cm of film for $2.00"]
    assert said(of, ("Job", "Gap", "Value")) == ["2 decals to cut, 15 cm of film for $3.00"]
    assert said(of, ("Job", "Gap", "Value"), ANA) == [
        "1 decal to cut, 10 cm of film for $2.00", "1 decal to cut, 5 cm of film for $1.00",
    ]  # fmt: skip
    assert said(of, ("Roster", "No. 1 Ana", "Note"), ("Roster", "Kim", "Size")) == ["", "nothing to make"]


def test_the_margins_of_a_run_are_shared_by_its_strips() -> None:
    one, two = (Strip(no, 10, length, (Lying(decal(no, no), 0, 0, 0),)) for no, length in ((1, 100), (2, 50)))
    of = follows(replace(run(length=0), length=170, strips=(one, two)), taken=AS_BEFORE)
    assert said(of, ANA, BO) == ["1 decal to cut, 11 cm of film for $2.20", "1 decal to cut, 6 cm of film for $1.20"]


def test_film_without_a_price_is_said_without() -> None:
    of = follows(run(decal(2, 1)), replace(run(decal(3, 1)), film=FILM), taken=AS_BEFORE)
    assert said(of, ANA) == ["2 decals to cut, 20 cm of film"]
    of = follows(replace(run(decal(2, 1), length=100.2, of=100.2), film=FILM), taken=AS_BEFORE)
    assert said(of, ANA) == ["1 decal to cut, 10.1 cm of film"]  # rounded up


def test_what_was_to_cut_or_press_before_does_not_follow() -> None:
    to_cut, steps = kept(2, "to cut", run=1), [decal(2, 1), decal(3, 2), decal(3, 2)]
    of = follows(run(decal(2, 1), decal(3, 2)), steps=steps, decals=(to_cut,), taken=AS_BEFORE)
    assert said(of, ANA, BO) == ["nothing to make", "1 decal to cut, 5 cm of film for $1.00; 2 steps to press"]
    for decals, follow in (
        ((kept(2, "to cut", run=0),), "1 step to press"),  # it was held back
        ((kept(2, "weeded"),), "nothing to make"),
        ((kept(2, "pressed"),), "1 step to press"),
    ):
        assert said(follows(steps=[decal(2, 1)], decals=decals, taken=AS_BEFORE), ANA) == [follow]


@pytest.mark.parametrize(
    ("before", "follows_"),
    [
        (KeptGarment(1, "TEE", "M", "Navy", ""), "nothing to make"),
        (KeptGarment(1, "Tee", "S", "navy", ""), "1 blank, M navy"),
        (KeptGarment(1, "Polo", "M", "navy", ""), "1 blank, M navy"),
        (KeptGarment(1, "Tee", "M", "red", ""), "1 blank, M navy"),
        (KeptGarment(1, "Tee", "M", "navy", "begun"), "1 blank, M navy"),  # which was spoiled since
        (KeptGarment(2, "Tee", "M", "navy", ""), "1 blank, M navy"),
    ],
)
def test_another_blank_follows(before: KeptGarment, follows_: str) -> None:
    assert said(of_one(before), ANA) == [follows_]


def of_one(before: KeptGarment, *, needs_blank: bool = True) -> Follows:
    memory = replace(NO_MEMORY, garments=(before,))
    return Follows(memory, CM, [garment(1, needs_blank=needs_blank)], Layout((), (), ()), pressing())


def test_a_garment_in_hand_takes_no_blank_and_two_are_not_named() -> None:
    assert said(of_one(KeptGarment(2, "Tee", "M", "navy", ""), needs_blank=False), ANA) == ["nothing to make"]
    assert said(follows(), ("Job", "Usual color", "Value")) == ["2 blanks"]


@pytest.mark.parametrize(
    ("sheet", "who", "count"),
    [
        ("Designs", "NAME · Front", "1 decal to cut, 10 cm of film for $2.00; 2 blanks"),
        ("Designs", "Other · Front", "1 blank, S navy"),
        ("Designs", "Name", ""),
        ("Garments", "TEE · M", "1 decal to cut, 10 cm of film for $2.00; 3 blanks"),
        ("Garments", "Polo · M", ""),
        ("Film", "BLACK smooth", "1 decal to cut, 10 cm of film for $2.00; 1 blank, L navy"),
        ("Film", "White smooth", ""),
        ("Positions", "full front", "1 decal to cut, 10 cm of film for $2.00; 3 blanks"),
    ],
)
def test_a_change_of_another_sheet_concerns_what_it_is_about(sheet: str, who: str, count: str) -> None:
    garments = [garment(1), garment(2, "L"), garment(3, "S", design="Other"), replace(garment(4), needs_blank=False)]
    of = follows(run(decal(2, 2)), garments=garments)
    assert said(of, (sheet, who, "Width")) == [count]
