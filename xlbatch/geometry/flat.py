"""Outlines as polygons of short straight edges, for measuring how thin they are. Lengths in mm."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from xlbatch.geometry.outline import NUMBERS, Segments
from xlbatch.geometry.path import GAUSS

Array = NDArray[np.float64]
Points = NDArray[np.complex128]  # x + iy: quicker than two columns
Index = NDArray[np.intp]

_COUNTS = np.bincount([ord(verb) for verb in NUMBERS], list(NUMBERS.values())).astype(np.intp)  # by the verb's code
_M, _Q, _C, _Z = (ord(verb) for verb in "MQCZ")


@dataclass(frozen=True, eq=False)
class Edges:
    """Straight edges in order, contour after contour; ink lies to the left of each."""

    start: Points
    step: Points  # from its start to its end
    long: Array
    contour: Index
    first: Index  # the first edge of each contour
    along: Array  # from the contour's beginning to the edge's start
    around: Array  # the length of each contour

    @property
    def left(self) -> Points:
        """The direction, one mm long, in which the ink lies."""
        return self.step * 1j / self.long

    def areas(self) -> Array:
        """The area inside each contour, negative for one around a hole (the shoelace formula)."""
        swept = dot(self.start * 1j, self.step)
        return np.asarray(np.add.reduceat(swept, self.first)) / 2


def dot(points: Points, other: Points) -> Array:
    """The scalar product of two vectors."""
    return points.real * other.real + points.imag * other.imag


def edges_of(segments: Segments, longest: float, near: float) -> Edges:
    """Closed contours cut into edges at most `longest` mm long and within `near` mm of the curves."""
    curves, contour = _cubics(segments)
    pieces = _pieces(curves, longest, near)
    start = _points(curves, pieces)
    contour = np.repeat(contour, pieces)
    first = np.flatnonzero(np.diff(contour, prepend=-1))
    after = np.arange(1, len(start) + 1)
    after[np.append(first[1:], len(start)) - 1] = first
    step = start[after] - start
    long = np.abs(step)
    walked = np.cumsum(long) - long
    around = np.add.reduceat(long, first)
    contour = np.repeat(np.arange(len(first)), np.diff(np.append(first, len(start))))
    return Edges(start, step, long, contour, first, walked - walked[first][contour], around)


def moment(segments: Segments) -> float:
    """The area inside closed contours times how far its centroid lies to the right: half the integral of x² dy along
    them (Green's theorem), by Gauss quadrature, exact for these curves."""
    (a, b, c, d), _ = _cubics(segments)
    total = 0.0
    for t, weight in GAUSS:
        s = 1 - t
        x = (s * s * s * a + 3 * s * s * t * b + 3 * s * t * t * c + t * t * t * d).real
        slope = (s * s * (b - a) + 2 * s * t * (c - b) + t * t * (d - c)).imag * 3
        total += weight * float((x * x * slope).sum())
    return total / 2


def _cubics(segments: Segments) -> tuple[Points, Index]:
    """Every line and curve that has a length as the four points of a cubic one, and its contour's number."""
    verbs = np.frombuffer(segments.verbs.encode(), dtype=np.uint8)
    points = np.frombuffer(segments.packed, dtype=np.complex128)
    stop = np.cumsum(_COUNTS[verbs]) // 2
    opening = np.maximum.accumulate(np.where(verbs == _M, np.arange(len(verbs)), 0))
    end = points[np.where(verbs == _Z, stop[opening], stop) - 1]  # Z ends where its contour began
    start = np.roll(end, 1)
    first_handle, two = start + (end - start) / 3, end + (start - end) / 3
    quadratic, cubic = verbs == _Q, verbs == _C
    middle = points[stop[quadratic] - 2]
    first_handle[quadratic], two[quadratic] = ((middle * 2 + end_point[quadratic]) / 3 for end_point in (start, end))
    first_handle[cubic], two[cubic] = points[stop[cubic] - 3], points[stop[cubic] - 2]
    drawn = (verbs != _M) & ((start != end) | cubic)
    return np.stack((start, first_handle, two, end))[:, drawn], np.cumsum(verbs == _M)[drawn]


def _pieces(curves: Points, longest: float, near: float) -> Index:
    """How many edges each curve is cut into: its second derivative bounds how far a chord strays from it."""
    legs = np.diff(curves, axis=0)
    bend = np.abs(np.diff(legs, axis=0)).max(axis=0) * 6
    reach = np.abs(legs).sum(axis=0)
    pieces = np.maximum(np.sqrt(bend / (8 * near)), np.maximum(reach / longest, 1))
    return np.asarray(np.ceil(pieces), dtype=np.intp)


def _points(curves: Points, pieces: Index) -> Points:
    """The starts of all edges."""
    curve = np.repeat(np.arange(len(pieces)), pieces)
    t = (np.arange(len(curve)) - np.repeat(np.cumsum(pieces) - pieces, pieces)) / pieces[curve]
    a, b, c, d = curves[:, curve]
    s = 1 - t
    return np.asarray(s * s * s * a + 3 * s * s * t * b + 3 * s * t * t * c + t * t * t * d)
