"""Where a part's words stand, and the lines that letters may stand on."""

import cmath
import math
from collections.abc import Sequence
from itertools import islice

import pytest

from tests.parts.by_hand import Corners, block, ell, shape
from xlbatch.parts.frame import Round, Straight
from xlbatch.parts.letter_rows import LetterRow
from xlbatch.parts.part import Part
from xlbatch.parts.stand import stand_of
from xlbatch.parts.standing import lines_under, standing

FRAME = Straight(100 + 200j)


def part_of(letters: Sequence[Corners], loose: Sequence[Corners] = ()) -> Part:
    """A word on a line from (100, 200), its letters measured from there."""
    own, bits = ([shape(c, lambda p: p + 100 + 200j) for c in those] for those in (letters, loose))
    row = LetterRow(tuple(own), FRAME, 100.0, (0.0, 999.0), tuple(bits))
    return Part(1, "word", "", (0, 0, 1, 1), shapes=(*own, *bits), row=row)


@pytest.mark.parametrize(
    ("letters", "low", "capitals"),
    [
        ([ell(0, 0, 40, 100), ell(60, 0, 40, 95)], 0, True),
        ([ell(0, 0, 40, 100), ell(60, 0, 40, 91)], 0, False),  # a small letter
        ([ell(0, 0, 40, 100), ell(60, -6, 40, 104)], -6, True),  # a round one, or a Q
        ([ell(0, 0, 40, 100), ell(60, -10, 40, 108)], -10, False),  # it reaches below the line
    ],
)
def test_a_word_s_lowest_and_whether_it_is_all_capitals(letters: list[Corners], low: float, capitals: bool) -> None:
    stand = stand_of(part_of(letters))
    assert (stand.frame, stand.cap, stand.told, stand.anchor) == (FRAME, 100, True, 0.5)
    assert stand.low == pytest.approx(low)
    assert stand.capitals is capitals
    assert stand.longest == math.inf
    assert stand.span == pytest.approx((0, 100))
    assert len(stand.sample) == 2


@pytest.mark.parametrize(("size", "left"), [(11, -30), (9, 0)])
def test_dots_count_for_how_far_a_word_reaches_and_specks_do_not(size: float, left: float) -> None:
    stand = stand_of(part_of([ell(0, 0, 40, 100), ell(60, 0, 40, 100)], [block(-30, 110, size, size)]))
    assert stand.span == pytest.approx((left, 100))
    assert len(stand.sample) == 3


@pytest.mark.parametrize(
    ("shapes", "origin", "along", "span", "cap"),
    [
        ([block(10, 20, 100, 30), block(60, 40, 90, 30)], 20j, 1, (10, 150), 50),
        ([block(10, 20, 30, 100)], 40, 1j, (20, 120), 30),  # read upward
        ([block(10, 20, 30, 30)], 20j, 1, (10, 40), 30),
    ],
)
def test_where_no_line_is_told_words_stand_along_the_longer_side(
    shapes: list[Corners], origin: complex, along: complex, span: tuple[float, float], cap: float
) -> None:
    stand = stand_of(Part(1, "shape", "", (0, 0, 1, 1), shapes=tuple(shape(corners) for corners in shapes)))
    assert stand.frame == Straight(origin, along)
    assert (stand.span, stand.low, stand.cap, stand.told, stand.capitals) == (span, 0.0, cap, False, False)


def test_an_outline_measured_on_a_line() -> None:
    stood = standing(Straight(10 + 5j), shape(ell(30, 2, 40, 90)))
    assert (stood.start, stood.end, stood.foot, stood.top) == (20, 60, -3, 87)
    assert (stood.long, stood.high) == (40, 90)


def slopes(letters: Sequence[Corners]) -> list[float]:
    """The degrees of the sloped lines tried."""
    lines = [line for line in lines_under([shape(letter) for letter in letters]) if isinstance(line, Straight)]
    return sorted(round(math.degrees(cmath.phase(line.along)), 1) for line in lines if line.along != 1)


def test_a_level_line_is_tried_under_each() -> None:
    lines = list(lines_under([shape(ell(0, 7, 40, 90)), shape(ell(60, 3, 40, 90))]))
    assert lines == [Straight(3j), Straight(7j)]


@pytest.mark.parametrize(
    ("step", "gap", "found"),
    [
        (20, 20, [14.0, 14.0]),
        (-20, 20, [-14.0, -14.0]),
        (75, 20, [43.2, 43.2]),
        (85, 20, []),  # steeper than letters stand
        (20, 55, [9.9, 9.9]),
        (20, 65, []),  # not beside one another
    ],
)
def test_sloped_lines_are_tried_through_the_feet_of_neighbors(step: float, gap: float, found: list[float]) -> None:
    """Blocks 60 wide and 100 high, each a step above the one before."""
    letters = [block((60 + gap) * at, step * at, 60, 100) for at in range(3)]
    near = [slope for slope in slopes(letters) if slope in found]
    assert near == found
    assert bool(slopes(letters)) is bool(found)


def test_letters_right_above_one_another_have_no_slope() -> None:
    above = [block(0, 150 * at, 60, 100) for at in range(3)]
    assert slopes(above) == []
    assert slopes([block(0, 0, 60, 100), block(0, 0, 60, 100), block(0, 300, 60, 100)]) == []


@pytest.mark.parametrize(("count", "radius", "heads_out", "found"), [
    (3, 400, True, True), (5, 400, True, True), (5, 400, False, True), (6, 900, True, True), (5, 3500, True, False),
    (5, 1900, True, True), (5, 2400, True, False),
])  # fmt: skip
def test_arcs_are_tried_through_the_feet_of_three(count: int, radius: float, heads_out: bool, found: bool) -> None:
    """Letters 100 high on an arc; one of a radius of more than 20 letters is taken for a line."""
    side = 1 if heads_out else -1

    def on_arc(point: complex) -> complex:
        turned = cmath.exp(-1j * (point.real - 100 * (count - 1) / 2) / radius * side)
        return 500 + 500j + (radius + side * point.imag) * side * 1j * turned

    letters = [shape(ell(100 * at - 35, 0, 50 + 10 * (at % 3), 100), on_arc) for at in range(count)]
    arcs = [line for line in lines_under(letters) if isinstance(line, Round)]
    near = [
        arc for arc in arcs
        if arc.radius == pytest.approx(side * radius, rel=0.02)
        and all(abs(standing(arc, letter).foot) < 1 for letter in letters)
    ]  # fmt: skip
    assert bool(near) is found
    if found:
        assert abs(near[0].center - (500 + 500j)) < 0.02 * radius


@pytest.mark.parametrize(("off", "joins"), [(5, True), (9, False)])
def test_a_letter_near_an_arc_is_one_of_those_it_is_drawn_through(off: float, joins: bool) -> None:
    """The fourth of six stands a little above the arc of the others, or farther; the nearest arc to the first three is
    then drawn through it too, or not."""

    def on_arc(point: complex) -> complex:
        return (800 + point.imag) * 1j * cmath.exp(-1j * (point.real - 250) / 800)

    letters = [
        shape(ell(100 * at - 35, off * (at == 3), 50 + 10 * (at % 3), 100), on_arc) for at in range(6)
    ]  # fmt: skip
    arcs = [line for line in lines_under(letters) if isinstance(line, Round)]
    least = min(max(abs(standing(arc, letters[at]).foot) for at in (0, 1, 2, 4, 5)) for arc in arcs)
    assert (least > 0.5) is joins


def test_of_very_many_outlines_no_pairs_are_tried() -> None:
    many = [ell(70 * at, 3 * at, 40 + at % 7, 100) for at in range(81)]
    assert len(list(lines_under([shape(letter) for letter in many]))) == 81
    assert len(list(islice(lines_under([shape(letter) for letter in many[:80]]), 82))) == 82
