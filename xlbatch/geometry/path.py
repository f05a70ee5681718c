"""Sums over outlines: moving, ink box, length, area, SVG path data. Lengths in mm, y upward.

An affine matrix (a, b, c, d, e, f) takes (x, y) to (a·x + c·y + e, b·x + d·y + f), as in SVG.
"""

import itertools
import math
from collections.abc import Iterable, Iterator, Sequence

import numpy as np

from xlbatch.geometry.outline import NUMBERS, Segment

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


def path_data(segments: Iterable[Segment], matrix: Matrix = IDENTITY) -> str:
    """SVG path data of the segments moved by `matrix`, coordinates rounded to 0.001 mm, curves kept."""
    segments = tuple(segments)
    a, b, c, d, e, f = matrix
    x, y = np.array([value for _, at in segments for value in at]).reshape(-1, 2).T
    moved = np.column_stack((a * x + c * y + e, b * x + d * y + f)).round(3) + 0.0  # + 0.0 makes -0 into 0
    return " ".join([_WRITTEN[verb] for verb, _ in segments]) % tuple(moved.ravel().tolist())


def transform(segments: Iterable[Segment], matrix: Matrix) -> tuple[Segment, ...]:
    """The segments moved by `matrix`."""
    a, b, c, d, e, f = matrix
    return tuple(
        (verb, tuple([v for x, y in _pairs(at) for v in (a * x + c * y + e, b * x + d * y + f)]))
        for verb, at in segments
    )


def product(first: Matrix, then: Matrix) -> Matrix:
    """The matrix that moves by `first` and then by `then`."""
    a, b, c, d, e, f = first
    g, h, i, j, k, m = then
    return (g * a + i * b, h * a + j * b, g * c + i * d, h * c + j * d, g * e + i * f + k, h * e + j * f + m)


def curves(segments: Iterable[Segment]) -> Iterator[Curve]:
    """Every line and curve with its starting point; a contour is closed by a line where it does not meet itself."""
    start = here = (0.0, 0.0)
    for verb, at in segments:
        if verb == "M":
            start = here = (at[0], at[1])
        elif verb == "Z":
            if here != start:
                yield here, start
            here = start
        else:
            points = tuple(_pairs(at))
            yield (here, *points)
            here = points[-1]


def contours(segments: Iterable[Segment]) -> tuple[tuple[Segment, ...], ...]:
    """The segments of each contour, from its M to its Z."""
    found: list[list[Segment]] = []
    for segment in segments:
        if segment[0] == "M":
            found.append([])
        found[-1].append(segment)
    return tuple(map(tuple, found))


def bounds(segments: Iterable[Segment]) -> Box | None:
    """The ink box: exact, curves measured at their extremes. None where there is no ink."""
    xs: list[float] = []
    ys: list[float] = []
    for curve in curves(segments):
        for axis, values in enumerate((xs, ys)):
            line = [point[axis] for point in curve]
            values += (line[0], line[-1])
            if len(line) > 2 and not _between(line):
                values += (_bezier(line, t) for t in _extremes(line))
    return (min(xs), min(ys), max(xs), max(ys)) if xs else None


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
    return sum(map(_swept, curves(segments)))


def _pairs(at: Sequence[float]) -> Iterator[Point]:
    return zip(at[::2], at[1::2], strict=True)


def _between(line: Sequence[float]) -> bool:
    low, high = sorted((line[0], line[-1]))
    return all(low <= value <= high for value in line[1:-1])


def _bezier(line: Sequence[float], t: float) -> float:
    """The value at `t` of a one-dimensional Bézier curve (de Casteljau)."""
    while len(line) > 1:
        line = [p + (q - p) * t for p, q in itertools.pairwise(line)]
    return line[0]


def _extremes(line: Sequence[float]) -> Iterator[float]:
    """Where, strictly between 0 and 1, the derivative of a quadratic or cubic curve is zero."""
    slopes = [q - p for p, q in itertools.pairwise(line)]
    if len(slopes) == 2:
        roots = _roots(0.0, slopes[1] - slopes[0], slopes[0])
    else:
        roots = _roots(slopes[0] - 2 * slopes[1] + slopes[2], 2 * (slopes[1] - slopes[0]), slopes[0])
    return (t for t in roots if 0 < t < 1)


def _roots(a: float, b: float, c: float) -> tuple[float, ...]:
    """The real roots of a·t² + b·t + c, in the form that does not cancel."""
    if a == 0:
        return (-c / b,) if b else ()
    inside = b * b - 4 * a * c
    if inside < 0:
        return ()
    q = -(b + math.copysign(math.sqrt(inside), b)) / 2
    return (q / a, c / q) if q else (0.0,)


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


def _minus(one: Point, other: Point) -> Point:
    return one[0] - other[0], one[1] - other[1]


def _swept(curve: Curve) -> float:
    """The area swept from the origin along a curve: that of its chord and that between chord and curve."""
    (x0, y0), (xn, yn) = curve[0], curve[-1]
    chord = (x0 * yn - xn * y0) / 2
    if len(curve) == 2:
        return chord
    x1, y1 = curve[1][0] - x0, curve[1][1] - y0
    xn, yn = xn - x0, yn - y0
    if len(curve) == 3:
        return chord + (x1 * yn - xn * y1) / 3
    x2, y2 = curve[2][0] - x0, curve[2][1] - y0
    return chord + 0.15 * (x1 * (y2 + yn) + x2 * (2 * yn - y1) - xn * (y1 + 2 * y2))
