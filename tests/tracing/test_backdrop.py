"""What of a picture is background, what fades, and what glows: each side of every limit, on dots set by hand."""

from collections.abc import Sequence

import numpy as np
import pytest
from numpy.typing import NDArray

from xlbatch.geometry.flat import Array
from xlbatch.tracing.backdrop import background_of, fading, glow_of, is_see_through
from xlbatch.tracing.labeled import NONE, Labeled
from xlbatch.tracing.picture_faults import Unfit

WHITE, RED, BLUE = (255, 255, 255, 255), (200, 0, 0, 255), (0, 0, 160, 255)
Color = tuple[int, int, int, int]


def levels(*colors: Color) -> Array:
    return np.array(colors, dtype=float)


@pytest.mark.parametrize(("corner", "background"), [((233, 255, 255, 255), 1), ((232, 255, 255, 255), 0)])
def test_the_four_corner_dots_alone_make_a_background_where_they_are_of_a_color(corner: Color, background: int) -> None:
    """Not those beside them; a dot 22 levels off is of the color, one 23 off is not."""
    dots = np.full((7, 9, 4), RED, dtype=np.uint8)
    dots[np.ix_((0, -1), (0, -1))] = corner
    assert background_of(dots, levels(RED, WHITE)) == background


@pytest.mark.parametrize("corner", [(0, 0), (0, -1), (-1, 0), (-1, -1)])
def test_corners_of_two_colors_make_none_but_what_most_of_the_edges_have(corner: tuple[int, int]) -> None:
    dots = np.full((7, 9, 4), RED, dtype=np.uint8)
    dots[np.ix_((0, -1), (0, -1))] = WHITE
    dots[corner] = BLUE
    assert background_of(dots, levels(WHITE, BLUE, RED)) == 2


GRAY, PALE = (200, 200, 200, 255), (145, 145, 145, 255)


def squares(wide: int, high: int, light: Color, dark: Color, side: int = 8) -> NDArray[np.uint8]:
    odd = np.add.outer(np.arange(high) // side, np.arange(wide) // side) % 2
    return np.asarray(np.array([light, dark], dtype=np.uint8)[odd])


@pytest.mark.parametrize(
    ("wide", "high", "dark", "painted"),
    [
        (96, 96, GRAY, True),
        (96, 96, (200, 200, 212, 255), True),  # a pattern of two colors, one plainly tinted, is wanted
        (96, 96, (200, 200, 213, 255), False),
        (96, 96, PALE, True),
        (96, 96, (144, 145, 145, 255), False),  # one of white and a dark gray too
        (64, 64, GRAY, True),  # six squares between the outer two
        (56, 56, GRAY, False),
        (96, 56, GRAY, True),  # on two sides
        (56, 96, GRAY, True),
    ],
)
def test_a_painted_checkerboard_is_of_many_pale_gray_squares(wide: int, high: int, dark: Color, painted: bool) -> None:
    for light, other in ((WHITE, dark), (dark, WHITE)):
        assert is_checkerboard(squares(wide, high, light, other), light, other) is painted


def is_checkerboard(dots: NDArray[np.uint8], *colors: Color) -> bool:
    try:
        background_of(dots, levels(*colors))
    except Unfit as unfit:
        return unfit.args == ("checkerboard",)
    return False


@pytest.mark.parametrize(("off", "beside", "painted"), [(1, 0, True), (2, 1, False)])
def test_the_squares_of_a_painted_checkerboard_are_of_one_size(off: int, beside: int, painted: bool) -> None:
    """To two dots; here two sides are moved, which makes squares of 9, 7 and 8 dots, or of 10, 7 and 7."""
    dots = squares(96, 96, WHITE, GRAY)
    for side, moved in ((40, off), (48, beside)):
        dots[:, side : side + moved] = dots[:, side - 1 : side]
        dots[side : side + moved] = dots[side - 1 : side]
    assert is_checkerboard(dots, WHITE, GRAY) is painted


@pytest.mark.parametrize(
    ("edges", "painted"), [(((0, slice(None)),), False), (((slice(None), -1), (0, slice(None))), True)]
)
def test_squares_on_one_edge_are_a_border_somebody_drew_on_two_they_are_the_ground(
    edges: Sequence[tuple[int | slice, int | slice]], painted: bool
) -> None:
    ground = squares(96, 96, WHITE, GRAY)
    dots = np.full(ground.shape, RED, dtype=np.uint8)
    for edge in edges:
        dots[edge] = ground[edge]
    dots[0, 0] = dots[-1, -1] = (90, 0, 0, 255)  # of no color
    assert is_checkerboard(dots, WHITE, GRAY, RED) is painted


def test_a_dot_of_no_color_between_squares_is_passed_over() -> None:
    dots = squares(96, 96, WHITE, GRAY)
    dots[4] = dots[:, 4] = (90, 0, 0, 255)
    assert is_checkerboard(dots, WHITE, GRAY)


def test_what_covers_less_than_three_quarters_is_seen_through() -> None:
    assert is_see_through(levels((0, 0, 0, 189), (0, 0, 0, 190), WHITE)).tolist() == [True, False, False]


@pytest.mark.parametrize("turned", [False, True])
@pytest.mark.parametrize(("gentle", "fades"), [(5, False), (6, True), (10, True), (0, False)])
def test_a_color_fades_where_more_than_half_of_its_edge_is_gentle(gentle: int, fades: bool, turned: bool) -> None:
    """Ten rows: the first color, a dot or two of none, the second; the first's edge is rough in the other rows, the
    second's is hard everywhere."""
    pure = np.tile(np.array([0, 0, NONE, NONE, 1, 1], dtype=np.uint8), (10, 1))
    rough = np.zeros(pure.shape, dtype=bool)
    rough[gentle:, 2] = rough[:, 3] = True
    for flip in (slice(None), slice(None, None, -1)):
        labels, edges = pure[:, flip], rough[:, flip]
        if turned:
            labels, edges = labels.T, edges.T
        assert fading(labels, edges, 2).tolist() == [fades, False]


def test_colors_side_by_side_without_an_edge_fade_and_dots_on_an_edge_say_nothing() -> None:
    pure = np.repeat(np.array([[0, 0, 1, 1, NONE, 2]], dtype=np.uint8), 4, axis=0)
    rough = np.zeros(pure.shape, dtype=bool)
    rough[:, 4:] = True
    assert fading(pure, rough, 3).tolist() == [True, False, False]  # half of the second's edge is hard, all of 2 rough


@pytest.mark.parametrize("down", [False, True])
@pytest.mark.parametrize(
    ("blocks", "strange", "what"),
    [
        ([("solid", 100)], 10, "nothing"),
        ([("solid", 75), ("rough", 25)], 11, "fading"),
        ([("solid", 74), ("rough", 26)], 10, "nothing"),
        ([("solid", 74), ("rough", 26)], 11, "photograph"),
        ([("solid", 996), ("soft", 4)], 0, "nothing"),
        ([("solid", 995), ("soft", 5)], 0, "glow"),
        ([("solid", 100), ("soft", 400)], 0, "glow"),
        ([("solid", 100), ("soft", 401)], 0, "fading"),
        ([("solid", 55)] * 16 + [("soft", 40)] * 3, 0, "glow"),
        ([("solid", 55)] * 17 + [("soft", 40)] * 3, 0, "fading"),
        ([("solid", 40)] * 24 + [("soft", 10)] * 4, 0, "nothing"),
        ([("solid", 40)] * 23 + [("solid", 39)] + [("soft", 10)] * 3 + [("soft", 11)], 0, "fading"),
    ],
)
def test_what_glows_what_fades_and_what_is_too_little_to_matter(
    blocks: Sequence[tuple[str, int]], strange: int, what: str, down: bool
) -> None:
    """Blocks in a line with a dot of background between. Something glows where more than 15 % of the background's edge
    is soft, with at most four soft dots to a solid one; it fades where else more than 4 % of the drawing are soft."""
    kinds = ["ground"]
    for kind, long in blocks:
        kinds += [kind] * long + ["ground"]
    line = np.array(kinds)[:, None] if down else np.array(kinds)[None]
    soft, rough = line == "soft", line == "rough"
    labels = ((line == "solid") | soft).astype(np.uint8)
    if what in ("fading", "photograph"):
        with pytest.raises(Unfit, match=what):
            glow_of(Labeled(labels, soft, strange), rough)
        return
    glow = glow_of(Labeled(labels, soft, strange), rough)
    assert (glow is None) is (what == "nothing")
    assert glow is None or (glow == soft).all()
