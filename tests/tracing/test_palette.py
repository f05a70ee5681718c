"""Which colors of a picture are taken for one."""

import numpy as np
import pytest

from xlbatch.tracing.palette import flat_colors, merged, steepness

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
