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


@pytest.mark.parametrize(("left", "right", "middle"), [(0.0, 50.0, (25.0, 0.0)), (100.0, 157.0, (100.0, 50.0))])
def test_the_arc_is_that_of_the_stretch_the_text_fills(left: float, right: float, middle: tuple[float, float]) -> None:
    """A line of 100 straight ahead, then a quarter turn of radius 100."""
    line = pathops.Path()
    pen = line.getPen()
    pen.moveTo((0, 0))
    pen.lineTo((100, 0))
    pen.curveTo((155.2, 0), (200, 44.8), (200, 100))
    pen.endPath()
    frame = _arc(text("ONE", along=line), left, right)
    if isinstance(frame, Round):
        assert abs(frame.radius) == pytest.approx(100, rel=0.05)
        assert left == 100.0
    else:
        _along, above = frame.onto(np.array([complex(*middle)]))
        assert above == pytest.approx([0.0], abs=0.01)
        assert left == 0.0
