"""Bends outlines along an arc of a circle. Lengths in any one unit, y upward."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from xlbatch.geometry.outline import Segment
from xlbatch.geometry.path import Curve, Point, contours, curves

STEEPEST = 300.0  # degrees: beyond this the ends of a line would meet
LEAST_RADIUS = 1.5  # times the ink height: tighter, and the inner edge shrinks to less than two thirds
_PIECE = 0.1  # radians bent by one curve: its error stays under a millionth of the radius


@dataclass(frozen=True)
class Arc:
    """A straight run bent to an arc. Its line at height `middle` keeps its length; `radius` is negative where
    the ends point up."""

    center: float  # where on the run the arc's top is
    middle: float
    radius: float

    def bend(self, x: float, y: float) -> Point:
        """Where a point of the straight run goes."""
        angle, reach = (x - self.center) / self.radius, self.radius + y - self.middle
        return reach * math.sin(angle), reach * math.cos(angle) - self.radius

    def turn(self, x: float, y: float, across: float, up: float) -> Point:
        """Where a small step (across, up) at (x, y) goes: the derivative of `bend`."""
        angle, stretch = (x - self.center) / self.radius, 1 + (y - self.middle) / self.radius
        sine, cosine = math.sin(angle), math.cos(angle)
        return sine * up + stretch * cosine * across, cosine * up - stretch * sine * across


def strongest(width: float, height: float) -> float:
    """The most degrees a run of this ink box can be bent without squeezing its inner edge too far."""
    return min(STEEPEST, math.degrees(width / (LEAST_RADIUS * height)))


def arc_of(left: float, right: float, middle: float, degrees: float) -> Arc:
    """The arc that a run from `left` to `right` spans when bent by `degrees` (not 0; positive: middle up)."""
    return Arc((left + right) / 2, middle, (right - left) / math.radians(degrees))


def bent(segments: Iterable[Segment], arc: Arc) -> tuple[Segment, ...]:
    """The outlines bent along `arc`: every line and curve cut small and carried over with its tangents."""
    return tuple(segment for contour in contours(segments) for segment in _bent_contour(contour, arc))


def _bent_contour(contour: tuple[Segment, ...], arc: Arc) -> Iterator[Segment]:
    yield "M", arc.bend(contour[0][1][0], contour[0][1][1])
    for curve in curves(contour):
        if len(curve) == 2 and curve[0][0] == curve[1][0]:  # upright lines stay straight
            yield "L", arc.bend(*curve[1])
        else:
            yield from _bent_curve(_cubic(curve), arc)
    yield "Z", ()


def _bent_curve(cubic: Curve, arc: Arc) -> Iterator[Segment]:
    xs = [x for x, _ in cubic]
    pieces = max(1, math.ceil((max(xs) - min(xs)) / abs(arc.radius) / _PIECE))
    for piece in range(pieces):
        (start, leaving), (end, arriving) = (_at(cubic, (piece + i) / pieces, pieces) for i in (0, 1))
        first, last = arc.bend(*start), arc.bend(*end)
        out, into = arc.turn(*start, *leaving), arc.turn(*end, *arriving)
        yield "C", (first[0] + out[0], first[1] + out[1], last[0] - into[0], last[1] - into[1], *last)


def _cubic(curve: Curve) -> Curve:
    """The same line or curve written as a cubic one."""
    if len(curve) == 4:
        return curve
    start, end = curve[0], curve[-1]
    if len(curve) == 2:
        return start, _toward(start, end, 1 / 3), _toward(end, start, 1 / 3), end
    return start, _toward(start, curve[1], 2 / 3), _toward(end, curve[1], 2 / 3), end


def _toward(start: Point, other: Point, part: float) -> Point:
    return start[0] + (other[0] - start[0]) * part, start[1] + (other[1] - start[1]) * part


def _at(cubic: Curve, t: float, pieces: int) -> tuple[Point, Point]:
    """The point at `t`, and the step to the control point of a piece that is 1/pieces long."""
    a, b, c, d = cubic
    ab, bc, cd = _toward(a, b, t), _toward(b, c, t), _toward(c, d, t)
    abc, bcd = _toward(ab, bc, t), _toward(bc, cd, t)
    return _toward(abc, bcd, t), ((bcd[0] - abc[0]) / pieces, (bcd[1] - abc[1]) / pieces)
