"""Where a measure's line is drawn: over the piece's middle, or beside what lies between it and the seam."""

from collections.abc import Callable

import pytest

from xlbatch.pictures.labels import Box
from xlbatch.pictures.measure_marks import CLEAR, TICK, Origin, _line, span_of
from xlbatch.placement.place import Place
from xlbatch.plan import Plan

AT = Origin(200.0, 50.0, 1.0)


@pytest.fixture
def place(plan_of: Callable[..., Plan]) -> Place:
    return plan_of([["Who", "Size"], ["Ana", "M"]]).places[0]


@pytest.mark.parametrize(
    ("room", "moves"),
    [
        (TICK + 1.0, True),  # beyond the end of the line's tick
        (TICK - 1.0, False),  # the tick would stick out of the drawing
        (-1.0, False),
    ],
)
def test_the_line_goes_around_what_is_in_its_way_if_there_is_room(place: Place, room: float, moves: bool) -> None:
    """The room is at the left alone."""
    x, top, bottom = span_of(place)
    middle = AT.x + x
    block = Box(middle - 20, AT.y + min(top, bottom), middle + 20, AT.y + max(top, bottom))
    left = block.left - CLEAR
    frame = Box(left - room, 0.0, block.right, 1000.0)
    line = _line(place, [block], AT, frame)
    assert line.seam == pytest.approx(middle)
    assert line.x == pytest.approx(left if moves else middle)


def test_nothing_in_the_way_leaves_it_over_the_middle(place: Place) -> None:
    line = _line(place, [], AT, Box(0.0, 0.0, 400.0, 1000.0))
    assert line.x == line.seam
