"""Where a live text stands in a drawing, however it is turned and stretched there; set anew it lies there again."""

import cmath
import math
from dataclasses import replace
from pathlib import Path

import numpy as np
import pathops
import pytest

from xlbatch.geometry.path import Matrix
from xlbatch.lettering.fonts import find_font
from xlbatch.parts.frame import Round, Straight
from xlbatch.parts.live_words import LiveWords, live_stand
from xlbatch.parts.stand import Stand
from xlbatch.svg.layer import Letters, LiveText, Spot, TextSpan

PLAIN = Letters(("Anton",), False, False, 20.0, 0.0, 0.0, "start", 0.0, (("#000000", 0.0),))
LEVEL: Matrix = (2.0, 0.0, 0.0, -2.0, 0.0, 200.0)
WIDE: Matrix = (3.0, 0.0, 0.0, -2.0, 10.0, 200.0)
HERE = Spot(30.0, 40.0)
FACE = find_font("Anton", Path())


def turned(degrees: float, scale: float = 2.0) -> Matrix:
    c, s = scale * math.cos(math.radians(degrees)), scale * math.sin(math.radians(degrees))
    return (c, s, s, -c, 50.0, 200.0)


def text(words: str, matrix: Matrix = LEVEL, spot: Spot = HERE, **more: object) -> LiveText:
    return LiveText((TextSpan(words, replace(PLAIN, **more), (spot,)),), matrix)  # type: ignore[arg-type]


def stood(live: LiveText, *, anchored: bool = True) -> tuple[Stand, LiveWords]:
    assert FACE
    found = live_stand(live, lambda _look: FACE, anchored=anchored)
    assert found
    return found[0], LiveWords(live, lambda _look: FACE, *found)


def reach(stand: Stand, path: pathops.Path) -> tuple[float, float, float, float]:
    """How far ink reaches along the text's line and above it."""
    points = np.array([complex(*at) for _, ats in path.segments for at in ats])
    along, above = stand.frame.onto(points)
    return float(along.min()), float(above.min()), float(along.max()), float(above.max())


@pytest.mark.parametrize("matrix", [LEVEL, WIDE, turned(30), turned(-50, 3.0)])
@pytest.mark.parametrize(("spacing", "word_spacing", "raised"), [(0.0, 0.0, 0.0), (3.0, 0.0, 0.0), (1.0, 6.0, 4.0)])
def test_set_anew_a_text_lies_where_it_lay(matrix: Matrix, spacing: float, word_spacing: float, raised: float) -> None:
    """Its words, set in half as high letters that are a fourth narrower, are so; at a place they have their middle."""
    live = text("TO ELI", matrix, spacing=spacing, word_spacing=word_spacing, raised=raised)
    stand, words = stood(live)
    assert isinstance(stand.frame, Straight)
    assert stand.frame.along == pytest.approx(complex(*matrix[:2]) / abs(complex(*matrix[:2])))
    foot = complex(matrix[0] * 30 + matrix[2] * 40 + matrix[4], matrix[1] * 30 + matrix[3] * 40 + matrix[5])
    assert stand.frame.onto(np.array([foot]))[1] == pytest.approx([0.0], abs=1e-6)
    sample = reach(stand, path := words.placed(1.0, 1.0))
    assert stand.span == pytest.approx(sample[::2], abs=0.01)
    assert stand.low == pytest.approx(sample[1], abs=0.01)
    drawn = np.concatenate([shape.points for shape in stand.sample])
    assert (drawn.real.min(), drawn.imag.max()) == pytest.approx((path.bounds[0], path.bounds[3]), abs=0.05)
    assert (words.width, words.height) == pytest.approx((sample[2] - sample[0], sample[3] - sample[1]), abs=0.01)
    left, low, right, high = reach(stand, words.placed(0.75, 0.5))
    assert (right - left, high - low) == pytest.approx((0.75 * words.width, 0.5 * words.height), rel=0.01)
    assert (left, low) == pytest.approx((sample[0], 0.5 * sample[1]), abs=0.05)
    _, low, _, high = reach(stand, words.placed(0.75, 0.5, 50.0))
    assert (low + high) / 2 == pytest.approx(50, abs=0.05)


def test_capitals_are_as_high_as_the_font_s_in_the_drawing() -> None:
    assert FACE
    for matrix, across in ((LEVEL, 2), (WIDE, 2), (turned(30, 3.0), 3)):
        stand, words = stood(text("HI", matrix))
        _, low, _, high = reach(stand, words.placed(1.0, 1.0))
        assert stand.cap == words.cap == pytest.approx(high - low, rel=0.001)
        assert stand.cap == pytest.approx(20 * across * FACE.cap_height / FACE.font.face.upem)


@pytest.mark.parametrize(
    ("words", "anchored", "capitals", "small"),
    [
        ("ONE", False, True, False),
        ("One", False, False, True),
        ("31", False, False, False),  # figures tell nothing
        ("ONE", True, False, False),  # braces say how their words are written
    ],
)
def test_a_text_of_capitals(words: str, anchored: bool, capitals: bool, small: bool) -> None:
    stand, made = stood(text(words), anchored=anchored)
    assert (stand.capitals, made.small, made.text) == (capitals, small, words)


@pytest.mark.parametrize(
    ("anchor", "anchored", "at"), [("start", True, 0.0), ("middle", True, 0.5), ("end", True, 1.0), ("end", False, 0.5)]
)
def test_other_words_are_put_by_the_anchor_or_in_the_middle(anchor: str, anchored: bool, at: float) -> None:
    assert stood(text("ONE", anchor=anchor), anchored=anchored)[0].anchor == at


def test_a_letter_moved_up_stays_so() -> None:
    low, high = (stood(text("ONE", spot=Spot(30.0, 40.0, 0.0, dy)))[1].placed(1.0, 1.0).bounds for dy in (0.0, -5.0))
    assert (high[1] - low[1], high[3] - low[3]) == pytest.approx((10, 10))


def test_a_text_without_ink_stands_nowhere() -> None:
    assert FACE
    assert live_stand(text(" "), lambda _look: FACE, anchored=True) is None


@pytest.mark.parametrize(("long", "matrix", "longest"), [(150.0, LEVEL, 300), (150.0, WIDE, 450), (None, LEVEL, None)])
def test_a_text_of_a_given_length_may_be_as_long(long: float | None, matrix: Matrix, longest: float | None) -> None:
    stand, words = stood(replace(text("ONE", matrix), long=long))
    assert stand.longest == (pytest.approx(longest) if longest else math.inf)
    assert words.base.long is None


def on_line(words: str, corners: list[complex], place: float, anchor: str) -> tuple[Stand, LiveWords]:
    """A text along a line, in units of its own, twice as large in the drawing and turned upward."""
    line = pathops.Path()
    pen = line.getPen()
    pen.moveTo((corners[0].real, corners[0].imag))
    for corner in corners[1:]:
        pen.lineTo((corner.real, corner.imag))
    pen.endPath()
    live = replace(text(words, spot=Spot(None, None), anchor=anchor), along=line, offset=place)
    return stood(live)


@pytest.mark.parametrize(
    ("anchor", "place", "longest"),
    [
        ("start", 30.0, 2 * 270),  # to the line's end
        ("middle", 120.0, 2 * 240),  # to the nearer end, to both sides
        ("middle", 200.0, 2 * 200),
        ("end", 200.0, 2 * 200),  # to its start
    ],
)
def test_words_stay_on_their_line(anchor: str, place: float, longest: float) -> None:
    """A straight line of 300; ink begins a little beside where the letters are put."""
    stand, _ = on_line("ONE", [0j, 300 + 0j], place, anchor)
    assert isinstance(stand.frame, Straight)
    assert stand.longest == pytest.approx(longest, abs=6)


@pytest.mark.parametrize("heads_out", [True, False])
def test_the_line_of_a_text_on_an_arc(heads_out: bool) -> None:
    """A half circle of 100 about (150, 150), y downward: over the top, or along the bottom."""
    side = -1 if heads_out else 1
    corners = [150 + 150j + 100 * cmath.exp(1j * math.pi * (1 + turn / 180 * -side)) for turn in range(181)]
    stand, words = on_line("TO ELI", corners, 50 * math.pi, "middle")
    assert isinstance(stand.frame, Round)
    assert stand.frame.radius == pytest.approx(200 if heads_out else -200, rel=0.01)
    assert abs(stand.frame.center - (300 - 100j)) < 2
    sample = reach(stand, words.placed(1.0, 1.0))
    assert stand.span == pytest.approx(sample[::2], abs=1)
    assert stand.cap == pytest.approx(sample[3], rel=0.05)
    assert stand.longest == pytest.approx(200 * math.pi, rel=0.02)
