"""Sums over outlines: moving, ink box, length, area, SVG path data. Lengths in mm, y upward.

An affine matrix (a, b, c, d, e, f) takes (x, y) to (a·x + c·y + e, b·x + d·y + f), as in SVG.
"""

import itertools
import math
from collections.abc import Iterable, Iterator, Sequence
from typing import cast

import numpy as np
from fontTools.pens.areaPen import AreaPen
from fontTools.pens.basePen import BasePen
from fontTools.pens.boundsPen import BoundsPen

from xlbatch.geometry.outline import NUMBERS, Segment, Segments, pack

Matrix = tuple[float, float, float, float, float, float]
Box = tuple[float, float, float, float]  # left, bottom, right, top
Point = tuple[float, float]
Curve = tuple[Point, ...]  # 2 points: a line; 3: a quadratic curve; 4: a cubic one

IDENTITY: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)

_WRITTEN = {verb: verb + " ".join(["%.10g"] * numbers) for verb, numbers in NUMBERS.items()}

# Gauss-Legendre nodes and weights of five points, moved to 0..1 (Abramowitz and Stegun 25.4.30)
GAUSS = (
    (0.046910077030668, 0.118463442528095),
    (0.230765344947158, 0.239314335249683),
    (0.5, 0.284444444444444),
    (0.769234655052842, 0.239314335249683),
    (0.953089922969332, 0.118463442528095),
)
# how much of each leg between control points goes into the derivative there
_QUADRATIC = tuple((2 * weight * (1 - t), 2 * weight * t) for t, weight in GAUSS)
_CUBIC = tuple((3 * weight * (1 - t) ** 2, 6 * weight * t * (1 - t), 3 * weight * t * t) for t, weight in GAUSS)


def path_data(segments: Segments | Iterable[Segment], matrix: Matrix = IDENTITY) -> str:
    """SVG path data of the segments moved by `matrix`, coordinates rounded to 0.001 mm, curves kept."""
    packed = segments if isinstance(segments, Segments) else pack(segments)
    a, b, c, d, e, f = matrix
    x, y = packed.points.T
    moved = np.column_stack((a * x + c * y + e, b * x + d * y + f)).round(3) + 0.0  # + 0.0 makes -0 into 0
    return " ".join(map(_WRITTEN.__getitem__, packed.verbs)) % tuple(moved.ravel().tolist())


def transform(segments: Iterable[Segment], matrix: Matrix) -> tuple[Segment, ...]:
    """The segments moved by `matrix`."""
    a, b, c, d, e, f = matrix
    return tuple(
        (verb, tuple([v for x, y in _pairs(points) for v in (a * x + c * y + e, b * x + d * y + f)]))
        for verb, points in segments
    )


def product(first: Matrix, then: Matrix) -> Matrix:
    """The matrix that moves by `first` and then by `then`."""
    a, b, c, d, e, f = first
    g, h, i, j, k, m = then
    return (g * a + i * b, h * a + j * b, g * c + i * d, h * c + j * d, g * e + i * f + k, h * e + j * f + m)


def curves(segments: Iterable[Segment]) -> Iterator[Curve]:
    """Every line and curve with its starting point; a contour is closed by a line where it does not meet itself."""
    start = here = (0.0, 0.0)
    for verb, values in segments:
        if verb == "M":
            start = here = (values[0], values[1])
        elif verb == "Z":
            if here != start:
                yield here, start
            here = start
        else:
            points = tuple(_pairs(values))
            yield (here, *points)
            here = points[-1]


def contours(segments: Iterable[Segment]) -> tuple[tuple[Segment, ...], ...]:
    """The segments of each contour, from its M to its Z."""
    parts: list[list[Segment]] = []
    for segment in segments:
        if segment[0] == "M":
            parts.append([])
        parts[-1].append(segment)
    return tuple(map(tuple, parts))


def bounds(segments: Iterable[Segment]) -> Box | None:
    """The ink box: exact, curves measured at their extremes. None where there is no ink."""
    pen = BoundsPen(None, ignoreSinglePoints=True)
    _draw(pen, segments)
    return cast(Box | None, pen.bounds)


def length(segments: Iterable[Segment]) -> float:
    """The length in mm along all contours, closing lines included."""
    return sum(math.hypot(*step) for step in steps(segments))


def steps(segments: Iterable[Segment]) -> Iterator[Point]:
    """Steps along all contours whose lengths add up to theirs; a curve's are five, by Gauss quadrature.

    Stretching the steps stretches the contours."""
    for curve in curves(segments):
        if len(curve) == 2:
            yield _minus(curve[1], curve[0])
        else:
            yield from _curve_steps(curve)


def signed_area(segments: Iterable[Segment]) -> float:
    """The area in mm² inside the contours, counterclockwise ones positive: exact, by Green's theorem."""
    pen = AreaPen(None)
    _draw(pen, segments)
    return float(pen.value)


def _draw(pen: BasePen, segments: Iterable[Segment]) -> None:
    for verb, points in segments:
        match verb:
            case "M":
                pen.moveTo(points)
            case "L":
                pen.lineTo(points)
            case "Q":
                pen.qCurveTo(points[:2], points[2:])
            case "C":
                pen.curveTo(points[:2], points[2:4], points[4:])
            case _:
                pen.closePath()


def _pairs(values: Sequence[float]) -> Iterator[Point]:
    return zip(values[::2], values[1::2], strict=True)


def _curve_steps(curve: Curve) -> Iterator[Point]:
    """The derivative, weighted, at the five nodes."""
    if len(curve) == 3:
        (ax, ay), (bx, by) = (_minus(after, before) for before, after in itertools.pairwise(curve))
        for p, q in _QUADRATIC:
            yield p * ax + q * bx, p * ay + q * by
    else:
        (ax, ay), (bx, by), (cx, cy) = (_minus(after, before) for before, after in itertools.pairwise(curve))
        for p, q, r in _CUBIC:
            yield p * ax + q * bx + r * cx, p * ay + q * by + r * cy


def _minus(point: Point, other: Point) -> Point:
    return point[0] - other[0], point[1] - other[1]
