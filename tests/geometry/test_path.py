"""Sums over outlines, held against other programs: Skia's boxes, polygons of many points, fontTools' perimeters."""

import itertools
from collections.abc import Sequence

import numpy as np
import pathops
import pytest
from fontTools.pens.perimeterPen import PerimeterPen
from hypothesis import given, settings
from hypothesis import strategies as st

from xlbatch.geometry.outline import Segment
from xlbatch.geometry.path import bounds, contours, curves, length, path_data, product, signed_area, transform

SQUARE: tuple[Segment, ...] = (("M", (0, 0)), ("L", (10, 0)), ("L", (10, 10)), ("L", (0, 10)), ("Z", ()))

numbers = st.floats(-500, 500, allow_subnormal=False)
drawn = st.one_of(
    st.tuples(st.just("L"), st.tuples(*[numbers] * 2)),
    st.tuples(st.just("Q"), st.tuples(*[numbers] * 4)),
    st.tuples(st.just("C"), st.tuples(*[numbers] * 6)),
)
outlines = st.builds(
    lambda start, parts: (("M", start), *parts, ("Z", ())),
    st.tuples(numbers, numbers),
    st.lists(drawn, min_size=1, max_size=8),
)


def draw(segments: Sequence[Segment], pen: object) -> None:
    verbs = {"M": "moveTo", "L": "lineTo", "Q": "qCurveTo", "C": "curveTo", "Z": "closePath"}
    for verb, at in segments:
        getattr(pen, verbs[verb])(*zip(at[::2], at[1::2], strict=True))


@settings(max_examples=200)
@given(outlines)
def test_the_ink_box_is_that_of_skia(segments: tuple[Segment, ...]) -> None:
    """Skia reckons with 32 bits: a part in 16 million of coordinates up to 500."""
    path = pathops.Path()
    draw(segments, path.getPen())
    assert bounds(segments) == pytest.approx(path.bounds, abs=1e-3)


@settings(max_examples=200)
@given(outlines)
def test_the_area_is_that_of_a_polygon_of_many_points(segments: tuple[Segment, ...]) -> None:
    """The shoelace formula; a chord of 1/1,000 of a curve leaves less than a millionth of its reach aside."""
    t = np.arange(1000)[:, None] / 1000
    points = []
    for curve in curves(segments):
        level = [np.array(point) for point in curve]
        while len(level) > 1:
            level = [one + (other - one) * t for one, other in itertools.pairwise(level)]
        points.append(level[0])
    x, y = np.concatenate(points).T
    shoelace = (x @ np.roll(y, -1) - y @ np.roll(x, -1)) / 2
    assert signed_area(segments) == pytest.approx(shoelace, abs=5)


def test_areas_as_geometry_has_them() -> None:
    """A square; a hole in it, run round the other way; a parabola's segment: two thirds of its box (Archimedes)."""
    hole: tuple[Segment, ...] = (("M", (2, 2)), ("L", (2, 4)), ("L", (4, 4)), ("L", (4, 2)), ("Z", ()))
    assert signed_area(SQUARE) == 100
    assert signed_area((*SQUARE, *hole)) == 96
    assert signed_area((("M", (6, 0)), ("Q", (3, 8, 0, 0)), ("Z", ()))) == pytest.approx(2 / 3 * 6 * 4)
    assert bounds((("M", (6, 0)), ("Q", (3, 8, 0, 0)), ("Z", ()))) == (0, 0, 6, 4)
    assert bounds((("M", (3, 4)), ("Z", ()))) is None


def test_the_length_of_curves_as_smooth_as_letters_is_exact_to_a_thousandth() -> None:
    quarter: tuple[Segment, ...] = (("M", (100, 0)), ("C", (100, 55.228, 55.228, 100, 0, 100)), ("Q", (0, 0, 100, 0)))
    pen = PerimeterPen(tolerance=1e-6)
    draw((*quarter, ("Z", ())), pen)
    assert length((*quarter, ("Z", ()))) == pytest.approx(pen.value, rel=1e-3)


def test_a_contour_is_closed_by_a_line() -> None:
    assert length(SQUARE) == 40
    assert signed_area(SQUARE) == 100  # counterclockwise
    assert signed_area(transform(SQUARE, (-1, 0, 0, 1, 0, 0))) == -100


def test_no_outline_has_no_box() -> None:
    assert bounds(()) is None
    assert path_data(()) == ""


def test_path_data_keeps_curves_and_rounds_to_a_thousandth() -> None:
    segments: tuple[Segment, ...] = (
        ("M", (0.00049, -0.0001)),
        ("Q", (1.23456, 2, 3, 4)),
        ("C", (1, 2, 3, 4, 5, 1234567.8914)),
        ("Z", ()),
    )
    assert path_data(segments) == "M0 0 Q1.235 2 3 4 C1 2 3 4 5 1234567.891 Z"


def test_path_data_is_moved_by_the_matrix() -> None:
    mirrored_about_width_20 = (-1, 0, 0, 1, 20, 0)  # SVG: matrix(-1 0 0 1 W 0)
    assert path_data(SQUARE, mirrored_about_width_20) == "M20 0 L10 0 L10 10 L20 10 Z"


def test_a_product_moves_first_by_the_first_matrix() -> None:
    turn, shift = (0.0, 1.0, -1.0, 0.0, 0.0, 0.0), (1.0, 0.0, 0.0, 1.0, 5.0, 7.0)
    assert transform(SQUARE, product(turn, shift)) == transform(transform(SQUARE, turn), shift)


def test_contours_are_told_apart() -> None:
    assert contours((*SQUARE, *SQUARE)) == (SQUARE, SQUARE)


def test_path_data_is_rounded_and_has_no_minus_nothing() -> None:
    """Moved by -0.0004 mm, what lies at 0 stays 0; the same point is never written in two ways."""
    line = [("M", (0.0, 1.23456)), ("L", (-0.0, 10.0)), ("Z", ())]
    assert path_data(line, (1, 0, 0, 1, -0.0004, 0)) == "M0 1.235 L0 10 Z"
    assert path_data(line, (1, 0, 0, -1, 0, 0)) == "M0 -1.235 L0 -10 Z"
