"""Positions: a changed row moves the decal, an own row makes a place of its own, a bad one is told."""

from collections.abc import Callable

import pytest

from xlbatch.plan import Plan
from xlbatch.roster.read import Reading
from xlbatch.trade.columns import columns

HEADINGS = tuple(column.heading for column in columns("Positions"))
ROSTER = (("Who", "Size"), ("Ana", "M"))


def row(*cells: object) -> tuple[tuple[object, ...], ...]:
    return (HEADINGS, cells)


def test_a_changed_distance_moves_the_decal(plan_of: Callable[..., Plan]) -> None:
    changed = row("Full front", "adult", "crew", "front", "front collar seam", "4 1/4 in", 0, None, "1/2 in")
    (place,) = plan_of(ROSTER, Positions=changed).places
    assert place.below_collar == pytest.approx(4.25 * 25.4)


def test_a_place_of_ones_own(plan_of: Callable[..., Plan]) -> None:
    own = row("Low left", "adult", "any", "front", "front collar seam", "10 in", "-3 in", None, None)
    designs = (("Design", "Decal", "What", "Film", "Position", "Height", "Widest"),
               ("Name", "Name", "print name", "Black smooth", "low left", "1 in", "4 in"))  # fmt: skip
    plan = plan_of(ROSTER, Positions=own, Designs=designs)
    (place,) = plan.places
    assert (place.below_collar, place.from_center) == pytest.approx((254, -76.2))
    assert plan.job.position("full front", "adult", "crew") is not None  # the usual ones are still there


def test_a_bad_row_is_told_and_the_usual_one_holds(reading_of: Callable[..., Reading]) -> None:
    bad = row("Full front", "adult", "crew", "front", "front collar seam", "far", 0, None, None)
    reading = reading_of(ROSTER, Positions=bad)
    (told,) = [problem for problem in reading.problems if problem.where.sheet == "Positions"]
    assert (told.code, told.where.cell, told.found) == ("value-unclear", "F2", "far")
    usual = reading.job.position("full front", "adult", "crew")
    assert usual is not None
    assert usual.distance == pytest.approx(76.2)


def test_blank_measures_are_none(reading_of: Callable[..., Reading]) -> None:
    blank = row("At the seam", "adult", "any", "front", "front collar seam", None, None, None, None)
    position = reading_of(ROSTER, Positions=blank).job.position("at the seam", "adult", "crew")
    assert position is not None
    assert (position.distance, position.across, position.gap, position.under) == (0.0, 0.0, 0.0, ())
