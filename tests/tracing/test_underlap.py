"""How far a color goes on under those over it, on squares."""

import math
from collections.abc import Sequence

import pathops
import pytest

from xlbatch.tracing.underlap import extended, under

Box = tuple[float, float, float, float]
WHOLE = (0, 0, 100, 100)


def squares(*boxes: Box, holes: Sequence[Box] = ()) -> pathops.Path:
    path = pathops.Path()
    pen = path.getPen()
    for number, (left, low, right, high) in enumerate((*boxes, *holes)):
        ways = [(left, low), (right, low), (right, high), (left, high)]
        pen.moveTo(ways[0])
        for place in ways[1:] if number < len(boxes) else ways[:0:-1]:
            pen.lineTo(place)
        pen.closePath()
    return path


def area(path: pathops.Path) -> float:
    return abs(float(sum(-contour.area if contour.clockwise else contour.area for contour in path.contours)))


def test_half_a_millimeter_in_a_drawing_ten_inches_wide() -> None:
    assert under(254) == pytest.approx(0.5)
    assert under(1270) == pytest.approx(2.5)


def test_a_color_goes_on_so_far_but_not_beyond_what_is_cut_at_all() -> None:
    grown = extended(squares((0, 20, 60, 90)), squares(WHOLE), 2)
    assert grown.bounds == pytest.approx((0, 18, 62, 92), abs=0.01)
    assert area(grown) == pytest.approx(62 * 74 - (2 - math.pi / 2) * 2, abs=0.5)  # two corners are round


@pytest.mark.parametrize(("side", "filled"), [(14, True), (15, False)])
def test_a_hole_three_times_as_wide_as_it_is_narrowed_is_filled(side: float, filled: bool) -> None:
    """By 2 dots on each side: what is left is then smaller than a circle of 6 dots around, of 113."""
    grown = extended(squares((0, 0, 60, 100), holes=[(20, 20, 20 + side, 20 + side)]), squares(WHOLE), 2)
    assert area(grown) == pytest.approx(6200 - (0 if filled else (side - 4) ** 2), abs=0.1)


@pytest.mark.parametrize("ring", [0, 3, 5])  # of the upper color in the hole, so wide
def test_a_small_hole_of_the_whole_drawing_stays_open(ring: float) -> None:
    hole = (40.0, 40.0, 44.0, 44.0)
    lower = squares((0, 0, 60, 100), holes=[(40 - ring, 40 - ring, 44 + ring, 44 + ring)])
    grown = extended(lower, squares(WHOLE, holes=[hole]), 2)
    assert area(grown) == pytest.approx(6200 - 16, abs=0.1)


def test_of_very_many_outlines_none_grows() -> None:
    """More than 400 in all: welding them takes long."""
    boxes = [(30 * (no % 20), 30 * (no // 20), 30 * (no % 20) + 10, 30 * (no // 20) + 10) for no in range(201)]
    lower = squares(*boxes)
    assert area(extended(lower, squares((-9, -9, 900, 900), *boxes[:199]), 1)) == area(lower)
