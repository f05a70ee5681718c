"""Outlines measured on a line, and the lines they may stand on."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

import numpy as np

from xlbatch.parts.frame import Frame, Round, Straight, arc_through, sloped
from xlbatch.parts.outlines import Contour, box_gap

LINKED = 0.6  # of the larger one's size: how far neighbors may be apart
FEET = 0.045  # of the cap height: how near the line feet are that stand on it
_MOST = 80  # outlines of which all pairs are tried
_STEEPEST = 0.71  # the sine of 45 degrees: letters on a steeper line are stacked, or no letters
_MOST_BEND = 20.0  # of a letter's size: the radius of an arc letters stand on


@dataclass(frozen=True)
class OnLine:
    """An outline, how far along a line it begins and ends, and its lowest and highest above the line."""

    mark: Contour
    start: float
    end: float
    foot: float
    top: float

    @property
    def long(self) -> float:
        return self.end - self.start

    @property
    def high(self) -> float:
        return self.top - self.foot


def standing(frame: Frame, mark: Contour) -> OnLine:
    """The outline measured on a line."""
    along, above = frame.onto(mark.points)
    return OnLine(mark, float(along.min()), float(along.max()), float(above.min()), float(above.max()))


def lines_under(letters: Sequence[Contour]) -> Iterator[Frame]:
    """Lines that letters may stand on: level ones, sloped ones through neighbors' feet, and arcs."""
    ordered = sorted(letters, key=lambda mark: (mark.box[1], mark.box[0]))
    for mark in ordered:
        yield Straight(complex(0.0, mark.box[1]))
    if not 3 <= len(ordered) <= _MOST:
        return
    for contour, other in combinations(ordered, 2):
        if box_gap(contour.box, other.box) <= LINKED * max(contour.size, other.size) and (
            line := _slope(contour, other)
        ):
            yield line
    chain = sorted(letters, key=lambda mark: (mark.center.real, mark.center.imag))
    for step in range(1, 1 + max(1, (len(chain) - 1) // 2)):
        for first in range(len(chain) - 2 * step):
            three = chain[first], chain[first + step], chain[first + 2 * step]
            for heads_out in (True, False):
                if arc := _arc(three, letters, heads_out):
                    yield arc


def _slope(contour: Contour, other: Contour) -> Straight | None:
    """The line through the feet of two, which depend on its slope."""
    feet = contour.center, other.center
    for _ in range(3):
        if abs(feet[0] - feet[1]) < 1e-6:
            return None
        line = sloped(*feet)
        feet = _foot(line, contour), _foot(line, other)
    return line if abs(line.along.imag) <= _STEEPEST else None


def _arc(three: Sequence[Contour], letters: Sequence[Contour], heads_out: bool) -> Round | None:
    """The arc through the feet of three and then of all that stand on it."""
    largest, middling = max(mark.size for mark in three), float(np.median([mark.size for mark in three]))
    arc = arc_through(np.array([mark.center for mark in three]), heads_out)
    members = three
    for _ in range(4):
        if arc is None:
            break
        arc = arc_through(np.array([_foot(arc, mark) for mark in members]), heads_out)
        if arc is not None:
            near = [mark for mark in letters if abs(standing(arc, mark).foot) < 1.5 * FEET * middling]
            members = near if len(near) >= len(three) else members
    return arc if arc is not None and abs(arc.radius) < _MOST_BEND * largest else None


def _foot(line: Frame, mark: Contour) -> complex:
    """Where a mark's lowest part over the line has its middle."""
    above = line.onto(mark.points)[1]
    low = above <= above.min() + 0.01 * mark.size
    points = mark.points[low]
    return complex(points[np.argmin(above[low])]) if isinstance(line, Straight) else complex(points.mean())
