"""Lettering at its size: as asked, condensed, smaller, too long; bent; with a border."""

import itertools
import math
from pathlib import Path

import pytest
import shapely
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapely.affinity import translate
from shapely.geometry.base import BaseGeometry

from xlbatch.geometry.ink import InkPart, measured, outline
from xlbatch.geometry.outline import Outline
from xlbatch.geometry.path import bounds, contours, curves, length, signed_area
from xlbatch.geometry.weld import border
from xlbatch.lettering.arch import arc_of, bent
from xlbatch.lettering.fonts import find_font
from xlbatch.lettering.text_line import NARROWEST, Scale, TooLong, fit, letter, most_bent
from xlbatch.lettering.typeface import Typeface, set_line

CAP, LEAST = 50.8, 12.7  # 2 in, 1/2 in


def font(name: str = "Anton") -> Typeface:
    found = find_font(name, Path())
    assert found
    return found


def natural(text: str) -> Outline:
    scale = fit(font(), text, CAP, math.inf, LEAST)
    assert isinstance(scale, Scale)
    return letter(font(), text, scale)


def fitted(text: str, widest: float, arch: float = 0.0) -> tuple[Scale, Outline]:
    scale = fit(font(), text, CAP, widest, LEAST, arch)
    assert isinstance(scale, Scale)
    return scale, letter(font(), text, scale, arch)


def polygon(drawn: Outline) -> BaseGeometry:
    """The outline as shapely sees it, 16 points a curve."""
    rings = []
    for contour in contours(drawn.segments):
        points = [bezier(curve, step / 16) for curve in curves(contour) for step in range(16)]
        rings.append(shapely.Polygon(points))
    shape: BaseGeometry = shapely.Polygon()
    for ring in rings:
        shape = shape.symmetric_difference(ring)
    return shape


def bezier(curve: tuple[tuple[float, float], ...], t: float) -> tuple[float, float]:
    points = list(curve)
    while len(points) > 1:
        points = [(a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t) for a, b in itertools.pairwise(points)]
    return points[0]


def test_a_capital_h_is_as_high_as_asked() -> None:
    assert natural("H").height == CAP
    assert natural("OH").height > CAP  # round letters overshoot


def test_where_there_is_room_nothing_changes() -> None:
    whole = natural("Ana Ruiz")
    scale, drawn = fitted("Ana Ruiz", whole.width)
    assert scale.across == scale.up
    assert drawn == whole


def test_a_little_too_long_is_condensed_and_stays_as_high() -> None:
    whole = natural("Ana Ruiz")
    scale, drawn = fitted("Ana Ruiz", whole.width * 0.9)
    assert scale.across / scale.up == pytest.approx(0.9, rel=1e-4)
    assert drawn.width == pytest.approx(whole.width * 0.9, abs=0.001)
    assert drawn.height == whole.height


def test_longer_is_condensed_to_80_percent_and_made_smaller() -> None:
    whole = natural("Ana Ruiz")
    scale, drawn = fitted("Ana Ruiz", whole.width * 0.4)
    assert scale.across / scale.up == pytest.approx(0.8)
    assert drawn.width == pytest.approx(whole.width * 0.4, abs=0.001)
    assert drawn.height == pytest.approx(whole.height * 0.5, abs=0.001)  # 0.4 / 0.8


def test_at_the_least_letter_height_it_fits_and_below_it_does_not() -> None:
    least_width = natural("Ana Ruiz").width * NARROWEST * LEAST / CAP
    scale, _ = fitted("Ana Ruiz", least_width)
    assert scale.up * font().cap_height == pytest.approx(LEAST, rel=1e-4)
    too_long = fit(font(), "Ana Ruiz", CAP, least_width - 0.01, LEAST)
    assert isinstance(too_long, TooLong)
    assert too_long.needed == pytest.approx(least_width, rel=1e-4)


def test_letters_asked_for_below_the_least_height_are_not_made_smaller_still() -> None:
    assert isinstance(fit(font(), "Ana", 10, 1000, LEAST), Scale)
    assert isinstance(fit(font(), "Ana", 10, 5, LEAST), TooLong)


@settings(max_examples=40, deadline=None)
@given(st.text("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789", min_size=1, max_size=14),
       st.floats(60, 400))  # fmt: skip
def test_measures_are_those_of_the_outline(text: str, widest: float) -> None:
    scale = fit(font(), text, CAP, widest, LEAST)
    assume(isinstance(scale, Scale))
    assert isinstance(scale, Scale)
    drawn = letter(font(), text, scale)
    assert bounds(drawn.segments) == pytest.approx((0, 0, drawn.width, drawn.height), abs=0.002)
    assert drawn.width <= widest + 0.001
    assert drawn.area == pytest.approx(signed_area(drawn.segments), rel=1e-3)
    assert drawn.cut_length == pytest.approx(length(drawn.segments), rel=1e-4)
    parts = contours(drawn.segments)
    assert drawn.contours == len(parts)
    assert all(part[-1][0] == "Z" for part in parts)


def test_a_bent_line_spans_its_angle_and_keeps_its_length() -> None:
    """The middle of a straight bar 200 long, bent by 90°, is a quarter of a circle of radius 200 / (π/2)."""
    arc = arc_of(0, 200, 25, 90)
    radius = 200 / (math.pi / 2)
    assert arc.bend(100, 25) == pytest.approx((0, 0))
    left, right = arc.bend(0, 25), arc.bend(200, 25)
    assert left == pytest.approx((-radius * math.sin(math.pi / 4), radius * math.cos(math.pi / 4) - radius))
    assert right == pytest.approx((-left[0], left[1]))


@pytest.mark.parametrize("degrees", [15, 60, -60, 120])
def test_bent_curves_lie_on_the_bent_points(degrees: float) -> None:
    """Every point of the straight outline, bent by itself, lies within 0.01 mm of the bent outline."""
    scale, straight = fitted("Sample 8", math.inf)
    drawn = letter(font(), "Sample 8", scale, degrees)
    arc = arc_of(0, straight.width, CAP / 2 - _below_baseline("Sample 8", scale), degrees)
    points = [bezier(curve, step / 8) for curve in curves(straight.segments) for step in range(8)]
    moved = shapely.points([arc.bend(*point) for point in points])
    left, bottom, _, _ = shapely.total_bounds(moved)
    edges = translate(polygon(drawn).boundary, left, bottom)
    assert shapely.distance(moved, edges).max() < 0.03  # the reference polygon's own chords included


def _below_baseline(text: str, scale: Scale) -> float:
    box = set_line(font(), text).box
    assert box
    return box[1] * scale.up


@pytest.mark.parametrize("degrees", [30, -90])
def test_bent_lettering_keeps_its_letters_and_its_area(degrees: float) -> None:
    scale, straight = fitted("Anna Lind", math.inf)
    drawn = letter(font(), "Anna Lind", scale, degrees)
    assert drawn.contours == straight.contours
    assert drawn.area == pytest.approx(straight.area, rel=0.02)
    assert polygon(drawn).is_valid


@pytest.mark.parametrize("degrees", [30, -60, 120])
def test_bent_lettering_keeps_its_strokes_and_its_length(degrees: float) -> None:
    """Across: along the middle arc there is as much ink as along the straight middle. Up: on every radius there is as
    much ink as on the upright it came from. Both within 1 %."""
    text = "MILENA 84"
    scale, straight = fitted(text, math.inf)
    middle = CAP / 2 - _below_baseline(text, scale)
    arc = arc_of(0, straight.width, middle, degrees)
    ink = measured(bent(straight.segments, arc))
    assert ink
    left, bottom, _, _ = ink.box
    shape, bars = translate(polygon(outline((InkPart(ink),))), left, bottom), polygon(straight)
    across = shapely.LineString([arc.bend(straight.width * part / 2000, middle) for part in range(2001)])
    level = shapely.LineString([(0, middle), (straight.width, middle)])
    assert across.length == pytest.approx(straight.width, rel=1e-4)
    assert across.intersection(shape).length == pytest.approx(level.intersection(bars).length, rel=0.01)
    for part in range(5, 96, 5):
        x = straight.width * part / 100
        upright = shapely.LineString([(x, -5), (x, straight.height + 5)]).intersection(bars).length
        radius = shapely.LineString([arc.bend(x, -5), arc.bend(x, straight.height + 5)]).intersection(shape).length
        assert radius == pytest.approx(upright, rel=0.01, abs=0.05)


@pytest.mark.parametrize("widest", [140, 215])  # of some 230: made smaller, only condensed
@pytest.mark.parametrize("degrees", [40, -75])
def test_bent_lettering_is_fitted_to_the_width_it_has_when_bent(degrees: float, widest: float) -> None:
    scale, drawn = fitted("Anna Lind", widest, degrees)
    assert widest - 0.1 < drawn.width <= widest + 0.001
    assert scale.across / scale.up >= NARROWEST - 1e-9


def test_a_short_text_bears_less_bending() -> None:
    assert most_bent(font(), "Jo") < most_bent(font(), "Johanna") < 300
    assert most_bent(font(), "The longest line that anyone would ever bend") == 300


@pytest.mark.parametrize(
    ("name", "wide"), [("Anton", 1.0), ("Lobster", 3.0), ("Archivo Black", 5.0), ("Anton", 8.0), ("Alfa Slab One", 6.0)]
)
def test_a_border_stands_out_by_its_width_everywhere(name: str, wide: float) -> None:
    """To 0.05 mm of shapely's buffer, also where it is wider than the letters' own curves and fills their counters."""
    up = CAP / font(name).cap_height
    drawn = letter(font(name), "Ana & 8", Scale(up, up))
    ink = measured(border(drawn.segments, wide))
    assert ink
    edge = polygon(outline((InkPart(ink),)))
    inner = translate(polygon(drawn), wide, wide)
    assert outline((InkPart(ink),)).width == pytest.approx(drawn.width + 2 * wide, abs=0.01)
    assert shapely.hausdorff_distance(edge.boundary, inner.buffer(wide, quad_segs=64).boundary) < 0.05
