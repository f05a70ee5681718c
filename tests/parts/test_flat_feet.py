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
