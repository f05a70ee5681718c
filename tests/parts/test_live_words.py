"""A live text whose words have changed: it flows in one go from its first letter, in all its looks."""

from dataclasses import replace
from pathlib import Path

import numpy as np
import pathops
import pytest

from xlbatch.geometry.ink import around
from xlbatch.lettering.fonts import find_font
from xlbatch.parts.frame import Round
from xlbatch.parts.live_words import LiveWords, _arc, _flowing, live_stand
from xlbatch.svg.layer import Letters, LiveText, Spot, TextSpan

PLAIN = Letters(("Anton",), False, False, 20.0, 0.0, 0.0, "middle", 0.0, (("#000000", 0.0),))


def text(*words: str, along: pathops.Path | None = None) -> LiveText:
    spans = tuple(
        TextSpan(word, replace(PLAIN, size=20.0 + no), (Spot(5.0 * no, 7.0),)) for no, word in enumerate(words)
    )
    return LiveText(spans, (1.0, 0.0, 0.0, 1.0, 0.0, 0.0), along)


def test_all_looks_are_kept_and_only_the_first_letter_has_a_spot() -> None:
    flowing = _flowing(text("ONE ", "TWO ", "THREE"))
    assert [(span.text, span.look.size) for span in flowing.spans] == [("ONE ", 20), ("TWO ", 21), ("THREE", 22)]
    assert [len(span.spots) for span in flowing.spans] == [1, 0, 0]
    assert {span.look.anchor for span in flowing.spans} == {"start"}


def test_it_starts_at_the_line_s_own_height_and_at_no_place_across() -> None:
    (spot,) = _flowing(text("ONE")).spans[0].spots
    assert (spot.x, spot.y, spot.dx) == (0.0, 7.0, 0.0)


def test_a_letter_of_which_nothing_is_said_is_not_moved_or_turned() -> None:
    assert Spot() == (None, None, 0.0, 0.0, 0.0)
    unsaid = LiveText((), (1.0, 0.0, 0.0, 1.0, 0.0, 0.0))
    assert (unsaid.offset, unsaid.long, unsaid.widened, unsaid.stretched) == (0.0, None, False, 1.0)


@pytest.mark.parametrize(("anchor", "stays"), [("start", 0.0), ("middle", 0.5), ("end", 1.0)])
def test_a_text_stands_where_its_ink_lies(anchor: str, stays: float) -> None:
    """Drawn at twice its size on a page 200 high, its foot 40 below the top; set anew it lies there again. Half as wide
    it keeps its left end, its middle or its right end."""
    face = find_font("Anton", Path())
    assert face
    span = TextSpan("ONE", replace(PLAIN, anchor=anchor), (Spot(30.0, 40.0),))
    one = LiveText((span,), (2.0, 0.0, 0.0, -2.0, 0.0, 200.0))
    found = live_stand(one, lambda _look: face, anchored=True)
    assert found
    stand, place = found
    left, bottom, right, top = around(shape.box for shape in stand.sample)
    assert stand.span == pytest.approx((left, right))
    assert stand.low == pytest.approx(bottom - 120)
    words = LiveWords(one, lambda _look: face, stand, place)
    assert (words.width, words.height) == pytest.approx((right - left, top - bottom))
    assert words.placed(1.0, 1.0).bounds == pytest.approx((left, bottom, right, top))
    narrow_left, _, narrow_right, _ = words.placed(0.5, 1.0).bounds
    assert narrow_right - narrow_left == pytest.approx((right - left) / 2)
    assert narrow_left == pytest.approx(left + stays * (right - left) / 2)


@pytest.mark.parametrize(("left", "right", "radius"), [(0.0, 50.0, 0), (100.0, 157.0, 100), (50.1, 50.3, 134)])
def test_the_arc_is_that_of_the_stretch_the_text_fills(left: float, right: float, radius: int) -> None:
    """A line of 100 straight ahead, then a quarter turn of radius 100. A stretch of one point says no way: the whole
    line is taken."""
    line = pathops.Path()
    pen = line.getPen()
    pen.moveTo((0, 0))
    pen.lineTo((100, 0))
    pen.curveTo((155.2, 0), (200, 44.8), (200, 100))
    pen.endPath()
    frame = _arc(text("ONE", along=line), left, right)
    if isinstance(frame, Round):
        assert abs(frame.radius) == pytest.approx(radius, rel=0.05)
    else:
        _along, above = frame.onto(np.array([25 + 0j]))
        assert above == pytest.approx([0.0], abs=0.01)
        assert radius == 0


@pytest.mark.parametrize("turn", [1, 1j, -1, 0.8 - 0.6j])
@pytest.mark.parametrize("side", [1, -1])
def test_heads_stand_left_of_the_way_the_line_runs(turn: complex, side: int) -> None:
    """A line of 100 straight ahead, then a quarter of a circle to the right (its heads out) or to the left."""
    line, center = pathops.Path(), (100 - 100j * side) * turn
    pen = line.getPen()
    ways = [0, 100, 155.2, 200 - 44.8j * side, 200 - 100j * side]
    start, straight, *curve = ((point.real, point.imag) for point in (way * turn for way in ways))
    pen.moveTo(start)
    pen.lineTo(straight)
    pen.curveTo(*curve)
    pen.endPath()
    frame = _arc(text("ONE", along=line), 100.0, 260.0)
    assert isinstance(frame, Round)
    assert frame.radius == pytest.approx(100 * side, rel=0.01)
    assert abs(frame.center - center) < 1
    assert abs(frame.point(0.0, 0.0) - center - 100j * side * turn * np.exp(-0.25j * np.pi * side)) < 3


@pytest.mark.parametrize(("left", "right"), [(0.0, 700.0), (-50.0, 628.0), (5.0, 628.4), (900.0, 950.0)])
@pytest.mark.parametrize("side", [1, -1])
def test_words_may_go_all_around_a_circle(left: float, right: float, side: int) -> None:
    line, k = pathops.Path(), 55.23j * side
    pen = line.getPen()
    pen.moveTo((100, 0))
    for turn in (1, 1j * side, -1, -1j * side):
        points = [point * turn for point in (100 + k, 55.23 + 100j * side, 100j * side)]
        pen.curveTo(*((point.real, point.imag) for point in points))
    pen.closePath()
    frame = _arc(text("ONE", along=line), left, right)
    assert isinstance(frame, Round)
    assert frame.radius == pytest.approx(-100 * side, rel=0.01)
    assert abs(frame.center) < 0.1
