"""The shapes of a drawing's layers: every outer contour with the holes in it, before anything is welded together."""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import pathops

from xlbatch.geometry.flat import Points, edges_of
from xlbatch.geometry.outline import Segment, pack
from xlbatch.geometry.path import Box, bounds, contours, length, signed_area
from xlbatch.geometry.weld import path_of, segments_in
from xlbatch.svg.layer import Layer

_STEP, _NEAR = 12.0, 0.5  # units: a page is about 2,000
_TINY = 0.5  # square units: a remnant of rounding
_TURNS = (3, 4, 5, 6, 7, 8, 12)
_ANGLES = 360
_ALIKE = 0.03  # of the size: how near two outlines are that look the same


@dataclass(frozen=True, eq=False)
class Contour:
    """A closed outline of a layer, in the drawing's units, y upward."""

    segments: tuple[Segment, ...]
    box: Box
    area: float  # never negative
    points: Points

    @property
    def width(self) -> float:
        return self.box[2] - self.box[0]

    @property
    def height(self) -> float:
        return self.box[3] - self.box[1]

    @property
    def size(self) -> float:
        """Its longer side."""
        return max(self.width, self.height)

    @property
    def center(self) -> complex:
        return complex(self.box[0] + self.box[2], self.box[1] + self.box[3]) / 2

    @cached_property
    def length(self) -> float:
        return length(self.segments)

    @cached_property
    def turns_alike(self) -> bool:
        """Whether it looks the same after a turn of a third or less, as stars, disks and flowers do, and no letter."""
        about = self.points - self.points.mean()
        degrees = np.degrees(np.angle(about)).astype(int) % _ANGLES
        farthest, nearest = np.zeros(_ANGLES), np.full(_ANGLES, np.inf)
        np.maximum.at(farthest, degrees, np.abs(about))
        np.minimum.at(nearest, degrees, np.abs(about))
        known = np.flatnonzero(farthest)
        reaches = [np.interp(np.arange(_ANGLES), known, reach[known], period=_ANGLES) for reach in (farthest, nearest)]

        def alike(turn: int) -> bool:
            return all(
                float(np.abs(reach - np.roll(reach, _ANGLES // turn)).mean()) < _ALIKE * reach.mean()
                for reach in reaches
            )

        return any(alike(turn) for turn in _TURNS)

    @cached_property
    def solidity(self) -> float:
        """Its area over that of what a band around it would enclose: 1 for a disk or box."""
        return self.area / max(_hull_area(self.points), 1e-9)


@dataclass(frozen=True, eq=False)
class Shape(Contour):
    """An outer contour, its holes, and the layer it is in; what lies in a hole is a shape of its own."""

    layer: int = 0
    holes: tuple[Contour, ...] = ()

    @property
    def ink(self) -> float:
        """The area that is filled."""
        return self.area - sum(hole.area for hole in self.holes)


def shapes_of(layers: Iterable[Layer]) -> tuple[Shape, ...]:
    """The shapes of all layers, lowest layer first."""
    return tuple(shape for layer_no, layer in enumerate(layers) for shape in _shapes(layer.path, layer_no))


def path_of_shapes(shapes: Iterable[Shape]) -> pathops.Path:
    """Shapes that do not overlap as one path."""
    return path_of(segment for shape in shapes for contour in (shape, *shape.holes) for segment in contour.segments)


def inside(point: complex, contour: Contour) -> bool:
    """Whether a point lies within a contour: by how often a ray to the right crosses it."""
    start, end = contour.points, np.roll(contour.points, -1)
    crosses = (start.imag > point.imag) != (end.imag > point.imag)
    start, end = start[crosses], end[crosses]
    x = start.real + (point.imag - start.imag) * (end.real - start.real) / (end.imag - start.imag)
    return bool(np.count_nonzero(x > point.real) % 2)


def box_gap(box: Box, other: Box) -> float:
    """How far two boxes are apart; 0 where they meet."""
    x = max(box[0] - other[2], other[0] - box[2], 0.0)
    y = max(box[1] - other[3], other[1] - box[3], 0.0)
    return math.hypot(x, y)


def _shapes(path: pathops.Path, layer: int) -> list[Shape]:
    inked: list[tuple[tuple[Segment, ...], Box, float, Points]] = []
    holes: list[tuple[tuple[Segment, ...], Box, float, Points]] = []
    for segments in contours(segments_in(path)) if len(path) else ():
        area = signed_area(segments)
        if abs(area) < _TINY or (box := bounds(segments)) is None:
            continue
        points = edges_of(pack(segments), _STEP, _NEAR).start
        (inked if area > 0 else holes).append((segments, box, abs(area), points))
    shapes = [Shape(*outline, layer) for outline in inked]
    within: dict[int, list[Contour]] = {}
    for hole in (Contour(*outline) for outline in holes):
        point = complex(hole.points[0])  # no outline of the same layer touches it but the hole itself
        around = [
            shape_no
            for shape_no, shape in enumerate(shapes)
            if shape.area > hole.area and _in_box(point, shape.box) and inside(point, shape)
        ]
        if around:
            within.setdefault(min(around, key=lambda shape_no: shapes[shape_no].area), []).append(hole)
    return [
        Shape(shape.segments, shape.box, shape.area, shape.points, layer, tuple(within.get(shape_no, ())))
        for shape_no, shape in enumerate(shapes)
    ]


def _in_box(point: complex, box: Box) -> bool:
    return box[0] <= point.real <= box[2] and box[1] <= point.imag <= box[3]


def _hull_area(points: Points) -> float:
    """The area of the smallest band around points (Andrew's monotone chain)."""
    ordered = sorted({(point.real, point.imag) for point in points})

    def half(corners: Iterable[tuple[float, float]]) -> list[tuple[float, float]]:
        chain: list[tuple[float, float]] = []
        for x, y in corners:
            while len(chain) > 1 and (chain[-1][0] - chain[-2][0]) * (y - chain[-2][1]) <= (
                chain[-1][1] - chain[-2][1]
            ) * (x - chain[-2][0]):
                chain.pop()
            chain.append((x, y))
        return chain[:-1]

    hull = half(ordered) + half(reversed(ordered))
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(hull, hull[1:] + hull[:1], strict=True))) / 2
