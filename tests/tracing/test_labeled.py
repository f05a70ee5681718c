"""Which color each dot of a picture is given, on small pictures set dot by dot."""

import numpy as np
import pytest

from xlbatch.geometry.flat import Array
from xlbatch.tracing.labeled import NONE, Labeled, labeled, looked_up, nearest

BLACK, RED, WHITE = (0, 0, 0, 255), (240, 0, 0, 255), (255, 255, 255, 255)
Color = tuple[float, float, float, float]


def levels(*colors: Color) -> Array:
    return np.array(colors, dtype=float)


def between(dot: Color, *, steep: int = 0, third: Color | None = None, away: int = 0, turned: bool = False) -> Labeled:
    """A line of such dots, of no color by itself, between black and red; a line of a third color so far from it."""
    pure = np.zeros((15, 15), dtype=np.uint8)
    pure[8:], pure[7] = 1, NONE
    dots = np.array([BLACK, RED, third or WHITE])[np.minimum(pure, 2)].astype(np.uint8)
    dots[7] = dot
    if away:
        pure[7 + away] = 2
    steepness = np.zeros(pure.shape, dtype=np.uint8)
    steepness[7] = steep
    if turned:
        dots, pure, steepness = dots.transpose(1, 0, 2), pure.T, steepness.T
    colors = levels(BLACK, RED, third) if third else levels(BLACK, RED)
    found = labeled(dots, steepness, pure, colors)
    return Labeled(found.labels.T, found.soft.T, found.strange) if turned else found


def test_the_nearest_color_and_how_far_off_it_is() -> None:
    number, off = nearest(levels((3, 4, 0, 255), (240, 0, 0, 243), (255, 253, 253, 254)), levels(BLACK, RED, WHITE))
    assert number.tolist() == [0, 1, 2]
    assert off == pytest.approx([5, 12, 3])


def test_a_dot_has_the_color_it_is_at_most_22_levels_off() -> None:
    """Each dot by itself, in steps of 8 levels: one 18 off has it, one 26 off beside it has not."""
    color = levels((100, 100, 100, 255))
    for off, found in ((22, 0), (23, NONE)):
        assert looked_up(np.array([[(100, 100 + off, 100, 255)]], dtype=np.uint8), color).tolist() == [[found]]
    row = np.array([[(100, 118, 100, 255), (100, 126, 100, 255)]], dtype=np.uint8)
    assert looked_up(row, color).tolist() == [[0, NONE]]


@pytest.mark.parametrize(("level", "label"), [(119, 0), (121, 1)])
def test_a_dot_between_two_colors_has_the_one_it_has_more_of(level: int, label: int) -> None:
    found = between((level, 0, 0, 255))
    assert found.labels[:, 3].tolist() == [0] * 7 + [label] + [1] * 7
    assert found.strange == 0


@pytest.mark.parametrize("turned", [False, True])
@pytest.mark.parametrize(
    ("green", "away", "label"),
    [(16, 3, 2), (16, -3, 2), (16, 4, 0), (16, -4, 0), (17, 3, 2), (17, 4, 2), (17, -4, 2)],
)
def test_a_color_that_is_nowhere_near_is_less_likely_than_a_mixture_of_two_near(
    green: int, away: int, label: int, turned: bool
) -> None:
    """A dot `green` levels off what black and red make together, and half a level off a third color; where that is seen
    within three dots, it has it in any case."""
    third = (100, green + 0.5, 0, 255)
    found = between((100, green, 0, 255), third=third, away=away, turned=turned)
    assert set(found.labels[7].tolist()) == {label}


@pytest.mark.parametrize(("green", "steep", "strange"), [(38, 17, 0), (39, 17, 15), (39, 16, 0)])
def test_what_is_like_no_mixture_is_counted_but_where_a_color_fades(green: int, steep: int, strange: int) -> None:
    """By 40 levels, 2 of them for being a mixture; a color fades where neighbors differ by at most 16."""
    found = between((120, green, 0, 255), steep=steep)
    assert found.strange == strange
    assert found.soft.sum() == (0 if strange or steep > 16 else 15)


@pytest.mark.parametrize(("level", "strange"), [(140, 0), (141, 15)])
def test_what_lies_beyond_two_colors_is_no_mixture_of_them(level: int, strange: int) -> None:
    pure = np.repeat(np.array([[0]] * 7 + [[NONE]] + [[1]] * 7, dtype=np.uint8), 15, axis=1)
    dots = np.full((15, 15, 4), (level, 0, 0, 255), dtype=np.uint8)
    steep = np.where(pure == NONE, np.uint8(99), np.uint8(0))
    assert labeled(dots, steep, pure, levels(BLACK, (100, 0, 0, 255))).strange == strange


def test_nor_is_a_mixture_with_a_color_that_is_nowhere_near_likely() -> None:
    """18 levels off black and 12 off a green that is not there."""
    green = (0, 30, 0, 255)
    dots = np.full((9, 9, 4), BLACK, dtype=np.uint8)
    dots[4] = (0, 18, 0, 255)
    for colors in ((green, BLACK, RED), (BLACK, green, RED)):
        black = colors.index(BLACK)
        pure = np.full((9, 9), black, dtype=np.uint8)
        pure[4] = NONE
        assert (labeled(dots, np.zeros((9, 9), dtype=np.uint8), pure, levels(*colors)).labels == black).all()


@pytest.mark.parametrize(
    ("red", "kept"),
    [
        ([(4, 4)], []),
        ([(4, 4), (4, 5)], []),
        ([(4, 3), (4, 4), (4, 5)], [(4, 4)]),
        ([(4, 4), (4, 5), (5, 4)], [(4, 4), (4, 5), (5, 4)]),
        ([(0, 4)], []),  # what lies beyond the picture is like its edge
        ([(8, 8)], [(8, 8)]),
    ],
)
def test_a_dot_all_but_alone_among_nine_is_a_speck(red: list[tuple[int, int]], kept: list[tuple[int, int]]) -> None:
    dots = np.full((9, 9, 4), BLACK, dtype=np.uint8)
    for place in red:
        dots[place] = RED
    steep = np.full((9, 9), 255, dtype=np.uint8)
    found = labeled(dots, steep, looked_up(dots, levels(BLACK, RED)), levels(BLACK, RED)).labels
    assert [tuple(place) for place in np.argwhere(found == 1).tolist()] == kept


def test_a_speck_is_given_what_most_around_it_have() -> None:
    dots = np.full((9, 9, 4), WHITE, dtype=np.uint8)
    dots[5:], dots[4, 5:], dots[4, 4] = BLACK, BLACK, RED  # four around it white, four black; then one more
    colors = levels(WHITE, RED, BLACK)
    steep = np.full((9, 9), 255, dtype=np.uint8)
    for place, label in (((4, 3), 2), ((4, 5), 0)):
        one_more = dots.copy()
        one_more[place] = BLACK if label else WHITE
        assert labeled(one_more, steep, looked_up(one_more, colors), colors).labels[4, 4] == label
