"""Measure lines on placement pictures: clear of other pieces, and no ring over a name or another ring."""

import re
from collections.abc import Callable
from itertools import combinations

import pytest

from xlbatch.pictures.labels import Box
from xlbatch.pictures.measure_marks import ROUND, Origin, measure_marks
from xlbatch.pictures.sketch import box_of
from xlbatch.placement.place import Place
from xlbatch.plan import Plan

FRAME = Box(0, 0, 121, 160)
ORIGIN = Origin(60.5, 2.0, 0.16)  # so small are drawings where there are many


@pytest.fixture
def back(plan_of: Callable[..., Plan]) -> tuple[Place, ...]:
    """A short name and a number below it, 2 1/2 in below the collar of a child's shirt."""
    designs = [
        ["Design", "Decal", "What", "Position", "Height"],
        ["Team", "Back name", "print name", "back name", "1 1/2 in"],
        ["Team", "Back number", "number", "back number", "6 in"],
    ]
    roster = [["Who", "Size", "Design", "Number"], ["Mwezi", "Youth S", "Team", 13]]
    return plan_of(roster, Designs=designs).places


def paper(place: Place) -> Box:
    left, top, width, height = (mm * ORIGIN.scale for mm in box_of(place))
    return Box(ORIGIN.x + left, ORIGIN.y + top, ORIGIN.x + left + width, ORIGIN.y + top + height)


def marks(places: tuple[Place, ...]) -> tuple[list[Box], list[Box]]:
    """The rings, and the upright lines."""
    svg = measure_marks(
        places, {place.decal.id: letter for place, letter in zip(places, "AB", strict=True)}, ORIGIN, FRAME
    )
    rings = [(float(x), float(y)) for x, y in re.findall(r'cx="([\d.-]+)" cy="([\d.-]+)"', svg)]
    lines = [tuple(map(float, line)) for line in re.findall(r'd="M([\d.-]+) ([\d.-]+)V([\d.-]+)', svg)]
    return (
        [Box(x - ROUND, y - ROUND, x + ROUND, y + ROUND) for x, y in rings],
        [Box(x - 0.5, top, x + 0.5, low - 0.1) for x, top, low in lines],
    )


def test_rings_hide_no_piece_and_no_other_ring(back: tuple[Place, ...]) -> None:
    rings, _ = marks(back)
    assert len(rings) == 2
    assert all(ring.shared(paper(place)) == 0 for ring in rings for place in back)
    assert all(one.shared(other) == 0 for one, other in combinations(rings, 2))


def test_a_line_goes_around_what_lies_between(back: tuple[Place, ...]) -> None:
    """The number's measure passes the name."""
    _, lines = marks(back)
    assert all(line.shared(paper(place)) == 0 for line in lines for place in back)


def test_rings_are_whole_within_the_drawing(back: tuple[Place, ...]) -> None:
    rings, _ = marks(back)
    assert all(ring.left >= 0 and ring.top >= 0 and ring.right <= FRAME.right for ring in rings)


def test_the_two_measures_are_as_long_as_they_are(back: tuple[Place, ...]) -> None:
    _, lines = marks(back)
    for line, place in zip(lines, back, strict=True):
        assert line.bottom + 0.1 - line.top == pytest.approx((place.below_collar or 0.0) * ORIGIN.scale, abs=0.02)
