"""How much room words have beside the sample they replace, and which outlines are taken for neighbors. In units."""

import pytest

from tests.parts.test_outlines import shape_list
from xlbatch.parts.fitting import Room
from xlbatch.parts.frame import Round, Straight
from xlbatch.parts.letter_rows import _level_with, _linked
from xlbatch.parts.outlines import Shape
from xlbatch.parts.stand import Stand


def box(left: float, bottom: float, wide: float, high: float) -> Shape:
    (shape,) = shape_list(f"M{left} {bottom}h{wide}v{high}h{-wide}z")
    return shape


SAMPLE = box(900, 0, 200, 100)
SKY = box(0, 300, 2000, 50)  # all the drawing is as wide


@pytest.mark.parametrize(
    ("others", "room"),
    [
        ([], (0, 2000)),  # to the edges of the drawing
        ([box(700, 20, 100, 50)], (800, 2000)),
        ([box(1300, 20, 100, 50)], (0, 1300)),
        ([box(700, 20, 100, 50), box(600, 20, 250, 50), box(1200, -10, 50, 20)], (850, 1200)),  # the nearest
        ([box(1300, 120, 100, 50)], (0, 2000)),  # above their heads
        ([box(1300, -90, 100, 50)], (0, 2000)),  # below their feet
    ],
)
def test_a_line_has_room_up_to_its_neighbors_or_the_drawing_s_edge(
    others: list[Shape], room: tuple[float, float]
) -> None:
    """The sample stands on the x axis from 900 to 1,100 and is 100 high."""
    stand = Stand(Straight(0j), (900, 1100), 0.0, 100.0, [SAMPLE])
    assert Room([SKY, *others]).beside(stand, -25.0, 110.0) == pytest.approx(room, abs=4)


def test_letters_go_no_further_around_an_arc_than_300_degrees() -> None:
    """150 degrees of a circle of 400 to either side are 1,047 along it; in steps of 4."""
    far_away = [box(x, y, 10, 10) for x in (-3000, 3000) for y in (-3000, 3000)]
    stand = Stand(Round(0j, 400), (-100, 100), 0.0, 100.0, [box(-100, 400, 200, 100)])
    assert Room(far_away).beside(stand, -25.0, 110.0) == pytest.approx((-1047, 1047), abs=4)


@pytest.mark.parametrize(("anchor", "place"), [(0.0, 900), (0.5, 1000), (1.0, 1100)])
def test_words_are_put_at_the_start_the_middle_or_the_end(anchor: float, place: float) -> None:
    assert Stand(Straight(0j), (900, 1100), 0.0, 100.0, [SAMPLE], anchor=anchor).anchored == place


@pytest.mark.parametrize(
    ("other", "level"),
    [
        (box(300, 0, 80, 100), True),
        (box(300, 1, 80, 100), True),  # a hundredth off
        (box(300, 1, 80, 98), True),
        (box(300, 40, 80, 100), False),
        (box(300, 0, 80, 150), False),  # feet alike, heads not
        (box(300, -50, 80, 150), False),
    ],
)
def test_outlines_are_level_where_feet_and_heads_are(other: Shape, level: bool) -> None:
    letter = box(0, 0, 80, 100)
    assert _level_with(letter, other) is _level_with(other, letter) is level


@pytest.mark.parametrize(
    ("other", "linked"),
    [
        (box(90, 0, 80, 100), True),  # as letters of a word stand
        (box(230, 0, 80, 100), True),  # 1 1/2 of their size apart, but level: a word set wide
        (box(230, 30, 80, 100), False),  # and not level
        (box(130, 30, 80, 100), True),  # half their size apart
        (box(90, 0, 30, 10), False),  # much smaller
        (box(900, 0, 80, 100), False),  # far away
        (box(0, 900, 80, 100), False),
    ],
)
def test_outlines_near_one_another_and_alike_in_size_go_together(other: Shape, linked: bool) -> None:
    letter = box(0, 0, 80, 100)
    assert _linked(letter, other) is _linked(other, letter) is linked
