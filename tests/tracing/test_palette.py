"""Which colors of a picture are taken for one."""

from collections.abc import Sequence

import numpy as np
import pytest

from xlbatch.tracing.palette import cielab, flat_colors, hex_of, merged, steepness

WHITE, PALE, RED, BLUE = (255, 255, 255), (235, 240, 220), (200, 0, 0), (0, 0, 160)


def groups(*colors: tuple[int, int, int], most: int, sizes: Sequence[int] = ()) -> list[int]:
    weights = np.array(sizes or [1] * len(colors), dtype=float)
    found = merged(np.array([(*color, 255) for color in colors], dtype=float), weights, most)
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


def gray(level: int) -> tuple[int, int, int]:
    return (level, level, level)


def test_two_grays_that_differ_by_four_in_lightness_are_two() -> None:
    """Ten levels at this lightness are 3.8, eleven 4.2; of the lightest ones eleven are 3.9, twelve 4.3."""
    assert groups(WHITE, gray(128), gray(138), most=6) == [0, 1, 1]
    assert groups(WHITE, gray(128), gray(139), most=6) == [0, 1, 2]
    assert groups(WHITE, gray(244), most=6) == [0, 0]
    assert groups(WHITE, gray(243), most=6) == [0, 1]


@pytest.mark.parametrize(("sizes", "found"), [((9, 1, 1, 1), [0, 1, 1, 2]), ((9, 1, 9, 1), [0, 1, 1, 1])])
def test_colors_taken_for_one_are_as_most_of_their_dots(sizes: Sequence[int], found: list[int]) -> None:
    """105 and 113 are nearest: halfway between them, the third is too far off, but not from where most dots are."""
    assert groups(WHITE, gray(105), gray(113), gray(122), most=6, sizes=sizes) == found


@pytest.mark.parametrize(
    ("color", "seen"),
    [
        ((255, 255, 255, 255), (100, 0, 0, 100)),
        ((255, 0, 0, 255), (53.24, 80.09, 67.20, 100)),
        ((0, 255, 0, 255), (87.73, -86.18, 83.18, 100)),
        ((0, 0, 255, 255), (32.30, 79.19, -107.86, 100)),
        ((10, 10, 10, 255), (2.74, 0, 0, 100)),
        ((0, 0, 0, 0), (100, 0, 0, 0)),  # nothing on white
        ((0, 0, 0, 51), (82.05, 0, 0, 20)),  # #cccccc
    ],
)
def test_colors_as_an_eye_sees_them(color: tuple[int, ...], seen: tuple[float, ...]) -> None:
    """The values of CIE 15 for the primaries of IEC 61966-2-1, as published tables have them."""
    assert cielab(np.array([color], dtype=float))[0] == pytest.approx(seen, abs=0.05)


@pytest.mark.parametrize(
    ("color", "name"),
    [
        ((200, 17, 0, 255), "#c81100"),
        ((100, 50, 0, 128), "#c76400"),
        ((0, 0, 0, 0), "#000000"),
        ((9, 0, 0, 8), "#ff0000"),
    ],
)
def test_a_color_s_name_is_what_it_would_be_if_it_covered_all(color: tuple[int, ...], name: str) -> None:
    assert hex_of(np.array(color, dtype=float)) == name


def test_how_far_each_dot_differs_from_the_four_next_to_it() -> None:
    dots = np.zeros((4, 5, 2), dtype=np.uint8)
    dots[1, 2], dots[3, 0, 1], dots[0, 4, 0] = (30, 20), 200, 7
    assert steepness(dots).tolist() == [
        [0, 0, 30, 7, 7],
        [0, 30, 30, 30, 7],
        [200, 0, 30, 0, 0],
        [200, 200, 0, 0, 0],
    ]


@pytest.mark.parametrize(("long", "known"), [(13, False), (14, True)])
def test_a_color_has_at_least_twelve_dots_inside(long: int, known: bool) -> None:
    """Of a bar three dots high, the middle line but for its ends; the largest color comes first, with its dots."""
    dots = np.full((40, 40, 4), 255, dtype=np.uint8)
    dots[5:8, 5 : 5 + long, :3] = RED
    dots[20:30, 5:15, :3] = BLUE
    colors, sizes = flat_colors(dots, steepness(dots))
    assert colors.tolist() == [[*WHITE, 255], [*BLUE, 255], *([[*RED, 255]] if known else [])]
    around = 2 * (3 + long) + 4 * 10  # white dots beside other ones
    assert sizes.tolist() == [1600 - 3 * long - 100 - around, 64, *([long - 2] if known else [])]


def test_of_a_large_picture_every_other_dot_is_looked_at() -> None:
    dots = np.full((1000, 1000, 4), 255, dtype=np.uint8)
    dots[:300, :, :3] = RED
    _, sizes = flat_colors(dots, steepness(dots))
    assert sizes == pytest.approx([699_000, 299_000], rel=1e-3)


@pytest.mark.parametrize(
    ("parts", "rippled", "reds"),
    [
        ({0: 340, 6: 60}, False, [100.9]),  # one color, by its mean
        ({0: 340, 7: 60}, False, [100, 107]),
        ({0: 316, 5: 64, 12: 20}, False, [100.8, 112]),  # nearly all of the first are just so
        ({0: 300, 5: 80, 12: 20}, False, [101.6]),
        ({0: 340, 14: 60}, True, [102.1]),  # a picture packed with loss is less exact
        ({0: 340, 15: 60}, True, [100, 115]),
        ({0: 226, 13: 174}, True, [105.6]),
        ({0: 216, 13: 184}, True, []),  # a color that fades has no middle
    ],
)
def test_how_far_the_dots_of_one_color_differ(parts: dict[int, int], rippled: bool, reds: list[float]) -> None:
    """Columns of red so many levels above 100; the first four rows may have ripples."""
    line = np.repeat([100 + off for off in parts], list(parts.values()))
    dots = np.full((100, 400, 4), 255, dtype=np.uint8)
    dots[:, :, 0] = line
    if rippled:
        dots[0, ::4, 0] += 1
        dots[2, ::4, 0] += 1
    found, _ = flat_colors(dots, steepness(dots))
    assert found[:, 0].tolist() == pytest.approx(reds, abs=0.2)
