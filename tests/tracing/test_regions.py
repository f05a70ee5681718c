"""Outlines put together of curves along borders, worked out by hand."""

import numpy as np
import pytest

from xlbatch.geometry.flat import Points
from xlbatch.geometry.path import bounds
from xlbatch.tracing.borders import Border
from xlbatch.tracing.curve_fit import Fit
from xlbatch.tracing.regions import Ring, inside, rings_of

HIGH = 30  # dots of the picture


def bow() -> dict[int, list[Ring]]:
    """A line of 12 dots to the right, and over it a curve back with handles of 8 dots straight up."""
    line = (10 + 20j, 14 + 20j, 18 + 20j, 22 + 20j)
    curve = (22 + 20j, 22 + 12j, 10 + 12j, 10 + 20j)
    fit = Fit(np.array([line, curve]).T, np.array([True, False]))
    return rings_of([Border(1, 0, np.array(line), True, 0, 0, 0, 0)], [fit], HIGH)


def test_an_outline_runs_with_its_area_to_the_left_and_y_upward() -> None:
    """The curve is y = 24 t (1 - t) over x = 12 (1 - t)² (1 + 2 t): inside are 0.6 of 12 by 8."""
    found = bow()
    assert sorted(found) == [0, 1]
    ring, around = found[1][0], found[0][0]
    there, back = ([(verb, list(place)) for verb, place in line.segments] for line in (ring, around))
    assert there == [("M", [10, 10]), ("L", [22, 10]), ("C", [22, 18, 10, 18, 10, 10]), ("Z", [])]
    assert back == [("M", [10, 10]), ("C", [10, 18, 22, 18, 22, 10]), ("L", [10, 10]), ("Z", [])]
    assert ring.area == pytest.approx(0.6 * 12 * 8)
    assert around.area == pytest.approx(-0.6 * 12 * 8)
    assert ring.corners.tolist() == [10 + 10j, 22 + 10j]


def test_an_outline_as_short_lines_has_four_to_a_curve() -> None:
    lines = list(bow()[1][0].lines)
    assert [verb for verb, _ in lines] == ["M", *"LLLLL", "Z"]
    points = [(22, 10), (20.125, 14.5), (16, 16), (11.875, 14.5), (10, 10)]
    assert [place for _, place in lines[1:-1]] == [pytest.approx(point) for point in points]


@pytest.mark.parametrize("lean", [0, 3])  # a cubic curve whose handles differ, so that no two terms are alike
def test_the_area_inside_curves_is_that_of_many_short_lines(lean: int) -> None:
    nodes = np.array([5 + 3j, 25 + 6j, 22 + 24j, 4 + 20j])
    ends = np.roll(nodes, -1)
    handles = nodes + (2 + lean - 4j) * np.exp(1j * np.arange(4)), ends + (1 + 5j + lean) * np.exp(2j * np.arange(4))
    curves = np.stack((nodes, *handles, ends))
    fit = Fit(curves, np.zeros(4, dtype=bool))
    (ring,) = rings_of([Border(0, 1, nodes, True, 0, 0, 0, 0)], [fit], HIGH)[1]
    t = np.linspace(0, 1, 5001)[:, None]
    a, b, c, d = curves
    x = ((1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * b + 3 * (1 - t) * t**2 * c + t**3 * d).T.ravel()
    assert ring.area == pytest.approx(float((x.conj() * np.roll(x, -1)).imag.sum() / 2), abs=1e-4)


SQUARE = np.array([10 + 10j, 20 + 10j, 20 + 20j, 10 + 20j])
NOTCHED = np.array([0, 30, 30 + 30j, 20 + 30j, 20 + 10j, 10 + 10j, 10 + 30j, 30j])


@pytest.mark.parametrize(
    ("point", "polygon", "is_inside"),
    [
        (11 + 11j, SQUARE, True),
        (19 + 19j, SQUARE, True),
        (9 + 15j, SQUARE, False),
        (21 + 15j, SQUARE, False),
        (15 + 9j, SQUARE, False),
        (15 + 21j, SQUARE, False),
        (10 + 20j, np.array([0, 20, 40j]), False),  # to the right of a slanting side, and left of it
        (9 + 20j, np.array([0, 20, 40j]), True),
        (5 + 20j, NOTCHED, True),
        (15 + 20j, NOTCHED, False),
        (25 + 20j, NOTCHED, True),
        (15 + 5j, NOTCHED, True),
        (-5 + 20j, NOTCHED, False),
    ],
)
def test_whether_a_point_lies_inside(point: complex, polygon: Points, is_inside: bool) -> None:
    for way in (polygon, polygon[::-1]):
        assert inside(point, way) is is_inside


def test_borders_between_nodes_are_joined_end_to_start_whichever_way_they_run() -> None:
    """A square of two halves: their three borders run from the node below to that above; each half has two of them."""
    low, high = 10 + 20j, 10 + 10j

    def side(left: int, right: int, across: complex, leaves: int, arrives: int) -> tuple[Border, Fit]:
        ways = np.array([low, low + across, high + across, high])
        nodes = np.stack((ways[:-1], ways[:-1], ways[1:], ways[1:])) if across else np.array([[low, low, high, high]]).T
        border = Border(left, right, ways, False, 7, 9, leaves, arrives)
        return border, Fit(nodes, np.ones(nodes.shape[1], dtype=bool))

    sides = [side(0, 1, -8, 2, 0), side(1, 2, 0, 3, 3), side(2, 0, 6, 0, 2)]
    found = rings_of([border for border, _ in sides], [fit for _, fit in sides], HIGH)
    assert {label: [ring.area for ring in rings] for label, rings in found.items()} == {
        0: [pytest.approx(-140)],
        1: [pytest.approx(80)],
        2: [pytest.approx(60)],
    }
    assert bounds(found[1][0].segments) == (2, 10, 10, 20)
    assert bounds(found[2][0].segments) == (10, 10, 16, 20)
