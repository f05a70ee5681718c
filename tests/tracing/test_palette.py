"""Which colors of a picture are taken for one."""

import numpy as np
import pytest

from xlbatch.tracing.backdrop import background_of
from xlbatch.tracing.palette import flat_colors, merged, steepness
from xlbatch.tracing.picture_faults import Unfit

WHITE, PALE, RED, BLUE = (255, 255, 255), (235, 240, 220), (200, 0, 0), (0, 0, 160)


def groups(*colors: tuple[int, int, int], most: int) -> list[int]:
    found = merged(np.array([(*color, 255) for color in colors], dtype=float), np.ones(len(colors)), most)
    return [int(group) for group in found]


def test_a_color_no_eye_tells_from_the_background_is_background() -> None:
    assert groups(WHITE, (254, 254, 255), RED, most=6) == [0, 0, 1]


def test_a_color_that_is_seen_is_none_of_the_background_however_many_there_are() -> None:
    """The pale one is nearest to the white around it; it is joined with another that is cut, not left out."""
    assert groups(WHITE, PALE, RED, most=1) == [0, 1, 1]
    assert groups(WHITE, RED, PALE, BLUE, most=1) == [0, 1, 1, 1]


@pytest.mark.parametrize(("off", "colors"), [(1, {WHITE, RED}), (15, {WHITE, RED}), (30, {WHITE})])
def test_a_thin_line_is_of_a_color_but_where_dots_ripple(off: int, colors: set[tuple[int, ...]]) -> None:
    """A line 3 dots wide; of 10,000 dots each that is a little off makes 5 differ from a neighbor: 1 % may."""
    dots = np.full((100, 100, 4), 255, dtype=np.uint8)
    dots[5:8, 20:80, :3] = RED
    for number in range(off):
        dots[20 + 8 * (number // 10), 5 + 8 * (number % 10), :3] = 252
    found, _ = flat_colors(dots, steepness(dots))
    assert {tuple(color) for color in found[:, :3].round().astype(int).tolist()} == colors


@pytest.mark.parametrize(("tint", "painted"), [(12, True), (13, False)])
def test_a_painted_checkerboard_is_of_grays(tint: int, painted: bool) -> None:
    """Squares of 8 dots; those of two colors, one of them plainly tinted, are a pattern somebody wants cut."""
    light, dark = (255, 255, 255, 255), (200, 200, 200 + tint, 255)
    odd = np.add.outer(np.arange(96) // 8, np.arange(96) // 8) % 2
    dots = np.array([light, dark], dtype=np.uint8)[odd]
    colors = np.array([light, dark], dtype=float)
    if painted:
        with pytest.raises(Unfit, match="checkerboard"):
            background_of(dots, colors)
    else:
        assert background_of(dots, colors) in (0, 1)
