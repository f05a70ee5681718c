"""How much work a drawing is: by its points and the pairs of edges that may cross, worked out by hand for squares."""

import pathops
import pytest

from xlbatch.svg.effort import Effort
from xlbatch.svg.faults import Unreadable


def squares(count: int, apart: float) -> pathops.Path:
    """Three edges drawn and one that closes: the middle one meets the other two, and each itself."""
    path = pathops.Path()
    pen = path.getPen()
    for number in range(count):
        left = number * apart
        pen.moveTo((left, 0))
        for place in ((left + 10, 0), (left + 10, 10), (left, 10)):
            pen.lineTo(place)
        pen.closePath()
    return path


@pytest.mark.parametrize(
    ("count", "apart", "work"),
    [
        (16, 20, 0),  # too few points to matter
        (17, 20, (68 + 17 * 7) ** 2),
        (21, 20, (84 + 21 * 7) ** 2),
        (42, 20, (168 + 42 * 7) ** 2),  # of 126 edges every other is looked at
        (42, 0, (168 + 42 * 42 * 7) ** 2),
    ],
)
def test_work_grows_as_the_square_of_points_and_of_edges_that_may_cross(count: int, apart: float, work: float) -> None:
    effort = Effort()
    whole = effort.left
    effort.spend(squares(count, apart))
    assert whole - effort.left == pytest.approx(work)


def test_there_is_a_most_at_once_and_in_all() -> None:
    with pytest.raises(Unreadable, match="too detailed"):
        Effort().spend(squares(135, 0))
    effort = Effort()
    for _ in range(12):
        effort.spend(squares(50, 0), squares(50, 0))
    with pytest.raises(Unreadable, match="too detailed"):
        effort.spend(squares(100, 0))
