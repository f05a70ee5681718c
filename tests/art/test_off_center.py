"""Ink that sits to one side: where its centroid is, and when it is said."""

import math
from pathlib import Path
from typing import Any

import pytest
import shapely

from xlbatch.geometry.flat import moment
from xlbatch.geometry.ink import outline
from xlbatch.geometry.outline import Segment, pack
from xlbatch.lettering.fonts import find_font
from xlbatch.lettering.typeface import set_line


def svg(body: str) -> str:
    return f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100">{body}</svg>'


def test_the_centroid_of_known_shapes() -> None:
    """A triangle's lies at a third; that of a half disk of radius 1 at 4 / (3 π) from its straight side."""
    triangle: list[Segment] = [("M", (0, 0)), ("L", (9, 0)), ("L", (0, 6)), ("Z", ())]
    assert moment(pack(triangle)) == pytest.approx(27 * 3)
    bend = 4 / 3 * math.tan(math.pi / 8)  # a quarter circle as a cubic curve, within 0.03 %
    half: list[Segment] = [
        ("M", (0, -1)), ("C", (bend, -1, 1, -bend, 1, 0)), ("C", (1, bend, bend, 1, 0, 1)), ("Z", ()),
    ]  # fmt: skip
    assert moment(pack(half)) == pytest.approx(math.pi / 2 * 4 / (3 * math.pi), rel=0.001)


def test_the_centroid_of_lettering_is_that_of_its_letters() -> None:
    face = find_font("Arimo Bold", Path())
    assert face
    drawn = outline(set_line(face, "IIII").pieces, 0.05, 0.05)
    assert drawn.center == pytest.approx(drawn.width / 2, abs=0.01)


def test_ink_to_one_side_is_said_with_how_far_to_shift(make: Any) -> None:
    """A triangle with its upright side to the left, 6 in wide: its ink is 1 in to the left of the middle."""
    spec = make.artwork(svg('<path d="M0 0L90 0L0 60z"/>'), width=6 * 25.4)
    (decal,), (found,) = make.drawn(spec)
    assert decal.shift == pytest.approx(25.4, abs=0.01)
    assert (found.level, found.code) == ("note", "off-center")
    assert "17 %" in found.wrong
    assert "1 in more to the right" in found.todo


def test_the_limit_is_three_percent_of_the_width(make: Any) -> None:
    """A bar of 94 × 10 with a block of 6 × h on its right end: the centroid by shapely, just off and just within."""
    for high, noticed in ((20.5, False), (22.5, True)):
        shape = shapely.union(shapely.box(0, 0, 94, 10), shapely.box(94, 0, 100, high))
        off = shape.centroid.x / 100 - 0.5
        assert (off > 0.03) == noticed
        spec = make.artwork(svg(f'<path d="M0 0H94V10H0z"/><path d="M94 0H100V{high}H94z"/>'), width=254.0)
        (decal,), _ = make.drawn(spec)
        assert decal.shift == pytest.approx(-off * 254 if noticed else 0.0, abs=0.02)


def test_colors_of_one_drawing_are_shifted_as_one(make: Any) -> None:
    text = svg('<path d="M0 0H50V50H0z" fill="red"/><path d="M50 40H100V50H50z" fill="blue"/>')
    red, blue = (make.artwork(text, width=254.0, artwork_color=color) for color in ("red", "blue"))
    first, second = make.drawn(red, blue)[0]
    assert first.shift == second.shift > 0
