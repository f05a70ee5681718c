"""A straight line under letters is raised to their flat feet, unless some stand on it."""

import numpy as np
import pytest

from xlbatch.parts.flat_feet import on_flat_feet
from xlbatch.parts.frame import Round, Straight
from xlbatch.parts.outlines import Contour

CAP = 100.0


def block(left: float, foot: float) -> Contour:
    """A letter as wide as half its height, flat at its foot and pointed above."""
    corners = ((0, 0), (50, 0), (50, 90), (25, 100), (0, 90))
    points = np.array([complex(left + x, foot + y) for x, y in corners])
    return Contour((), (left, foot, left + 50, foot + 100), 4750.0, points)


@pytest.mark.parametrize(
    ("feet", "raised"),
    [
        ((3.0, 3.0, 3.0), 3.0),
        ((3.0, 3.1, 3.0, 2.0), 3.1),  # the highest of those that most share
        ((0.0, 3.0, 3.0), 0.0),  # one stands on the line
        ((-3.0, -3.0, -3.0), 0.0),  # none above it
    ],
)
def test_the_line_goes_where_most_letters_stand(feet: tuple[float, ...], raised: float) -> None:
    letters = [block(60.0 * number, foot) for number, foot in enumerate(feet)]
    line = on_flat_feet(Straight(0j), letters, CAP)
    assert isinstance(line, Straight)
    assert line.origin.imag == pytest.approx(raised, abs=0.01)


def on_foot(*foot: complex) -> Contour:
    """A letter that stands on such points, from left to right, and is 100 high."""
    points = np.array([*foot, 60 + 40j, 60 + 90j, 25 + 103j, -10 + 90j, -10 + 40j])
    left, low, right, high = points.real.min(), points.imag.min(), points.real.max(), points.imag.max()
    return Contour((), (left, low, right, high), 5000.0, points)


@pytest.mark.parametrize(
    ("foot", "raised"),
    [
        ((3j, 50 + 3j), 3.0),
        ((3j, 9 + 3j), 3.0),
        ((3j, 7 + 3j), 0.0),  # too short for a foot
        ((3j, 25 + 2.96j, 50 + 3j), 2.985),  # hardly bent
        ((3j, 25 + 2.9j, 50 + 3j), 0.0),  # a curve
        ((3j, 50 + 7j), 5.0),  # it rises a little
        ((3j, 50 + 8j), 0.0),
        ((3j, 10 + 3j, 12 + 20j, 28 + 20j, 30 + 4j, 50 + 4j), 4.0),  # the longer of two feet
        ((3j, 20 + 3j, 22 + 20j, 38 + 20j, 40 + 4j, 50 + 4j), 3.0),
        ((3j, 3 + 3j, 5 + 20j, 10 + 20j, 12 + 9j, 50 + 9j), 0.0),  # no foot is as high
        ((0.7j, 50 + 0.7j), 0.7),
        ((0.5j, 50 + 0.5j), 0.0),  # it stands on the line as it is
        ((4j, 50 + 4j), 4.0),
        ((5j, 50 + 5j), 0.0),  # too far off the line to stand on it
    ],
)
def test_a_flat_foot_is_long_straight_and_level(foot: tuple[complex, ...], raised: float) -> None:
    line = on_flat_feet(Straight(0j), [on_foot(*foot)] * 3, CAP)
    assert isinstance(line, Straight)
    assert line.origin.imag == pytest.approx(raised, abs=0.01)


@pytest.mark.parametrize(
    ("heights", "raised"), [((3.0, 3.5, 4.0), 3.5), ((3.0, 3.0, 4.0, 4.0), 4.0), ((3.0, 3.0, 4.0, -2.0), 3.0)]
)
def test_the_line_is_raised_to_the_height_that_most_feet_share(heights: tuple[float, ...], raised: float) -> None:
    line = on_flat_feet(Straight(0j), [on_foot(1j * high, 50 + 1j * high) for high in heights], CAP)
    assert isinstance(line, Straight)
    assert line.origin.imag == pytest.approx(raised, abs=0.01)


@pytest.mark.parametrize(("letters", "radius"), [(2, 1000.0), (3, 1003.0)])
def test_three_flat_feet_tell_an_arc(letters: int, radius: float) -> None:
    """Letters whose feet stand 3 above an arc of radius 1000, 200 apart; the arc is drawn through them."""
    marks = []
    for number in range(letters):
        turn = np.exp(-0.2j * (number - 1))
        points = (block(-25.0, 0.0).points + 1003j) * turn
        marks.append(
            Contour((), (points.real.min(), points.imag.min(), points.real.max(), points.imag.max()), 4750.0, points)
        )
    line = on_flat_feet(Round(0j, 1000.0), marks, CAP)
    assert isinstance(line, Round)
    assert line.radius == pytest.approx(radius, abs=0.5)
