"""The line that letters stand on: places along it and above it, there and back. Sums of school geometry."""

import math

import numpy as np
import pytest

from xlbatch.parts.frame import Frame, Round, Straight, arc_through, sloped


@pytest.mark.parametrize(
    ("frame", "point", "along", "above"),
    [
        (Straight(10 + 5j), 13 + 9j, 3, 4),
        (Straight(10 + 5j, 1j), 10 + 9j, 4, 0),  # a line that runs up
        (Straight(10 + 5j, 1j), 7 + 5j, 0, 3),  # above it is to its left
        (Straight(0j, 0.6 + 0.8j), 3 + 4j, 5, 0),
        (Round(0j, 10), 10j, 0, 0),  # the middle of an arch
        (Round(0j, 10), 12j, 0, 2),  # heads outward
        (Round(0j, 10), 10 + 0j, 5 * math.pi, 0),  # a quarter further to the right
        (Round(0j, 10), -10 + 0j, -5 * math.pi, 0),
        (Round(0j, -10, -1j), -10j, 0, 0),  # the middle of a bowl
        (Round(0j, -10, -1j), -8j, 0, 2),  # heads inward
        (Round(0j, -10, -1j), 10 + 0j, 5 * math.pi, 0),
        (Round(1 + 1j, 10), 1 + 11j, 0, 0),
    ],
)
def test_a_point_along_and_above_a_line(frame: Frame, point: complex, along: float, above: float) -> None:
    measured = [float(values[0]) for values in frame.onto(np.array([point]))]
    assert measured == pytest.approx([along, above], abs=1e-9)
    assert frame.point(along, above) == pytest.approx(point)


@pytest.mark.parametrize(
    "frame", [Straight(3 + 4j), Straight(1j, 0.8 - 0.6j), Round(2 + 3j, 40), Round(2 + 3j, -40, -1j), Round(0j, 40, 1)]
)
def test_an_outline_is_placed_where_its_points_belong(frame: Frame) -> None:
    """An upright stroke from (5, -1) to (5, 7)."""
    placed = frame.placed((("M", (5.0, -1.0)), ("L", (5.0, 7.0)), ("Z", ())))
    foot, head = (complex(*numbers) for _, numbers in placed[:2])
    assert foot == pytest.approx(frame.point(5, -1), abs=0.01)
    assert head == pytest.approx(frame.point(5, 7), abs=0.01)


@pytest.mark.parametrize("frame", [Straight(3 + 4j, 1j), Round(0j, 40), Round(0j, -40, -1j)])
def test_a_raised_line_goes_through_what_was_above(frame: Frame) -> None:
    assert frame.raised(6).point(0, 0) == pytest.approx(frame.point(0, 6))


def test_a_sloped_line_runs_from_left_to_right() -> None:
    assert sloped(8 + 6j, 0j) == Straight(0j, 0.8 + 0.6j)
    assert sloped(0j, 8 + 6j) == Straight(0j, 0.8 + 0.6j)
    assert sloped(9 + 7j, 1 + 1j) == Straight(1 + 1j, 0.8 + 0.6j)
    assert sloped(5j, 2j) == Straight(2j, 1j)  # upright: upward


def test_the_arc_through_points_of_a_circle_is_that_circle() -> None:
    points = np.array([5 + 2j + 10 * np.exp(1j * math.radians(degrees)) for degrees in (30, 60, 90, 120, 150)])
    arc = arc_through(points, heads_out=True)
    assert arc
    assert (arc.center, arc.radius, arc.top) == pytest.approx((5 + 2j, 10, 1j))
    inward = arc_through(points, heads_out=False)
    assert inward
    assert inward.radius == pytest.approx(-10)
