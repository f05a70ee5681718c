"""Ink: welded outlines together with their measures, and the outline of a decal made of pieces of ink."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from xlbatch.geometry.flat import moment
from xlbatch.geometry.outline import Outline, Segment, Segments, pack
from xlbatch.geometry.path import Box, bounds, signed_area, steps

_PLACES = 4  # coordinates are rounded to 0.0001 mm, so that every machine cuts the same


@dataclass(frozen=True, eq=False)
class Ink:
    """Welded, closed outlines in any unit, outer ones counterclockwise and counters clockwise.

    The arrays (all points in order, and the steps their length is the sum of) make stretching a line quick."""

    verbs: str
    points: NDArray[np.float64]
    steps: NDArray[np.float64]
    box: Box
    area: float
    moment: float  # the area times how far its centroid lies to the right


class InkPart(NamedTuple):
    """Ink, and how far it is moved."""

    ink: Ink
    x: float = 0.0
    y: float = 0.0

    @property
    def box(self) -> Box:
        return shifted(self.ink.box, self.x, self.y)


def measured(segments: Sequence[Segment]) -> Ink | None:
    """The ink of welded outlines, or None where there is none."""
    box = bounds(segments)
    if box is None:
        return None
    packed = pack(segments)
    return Ink(packed.verbs, packed.points, np.array(list(steps(segments))), box, signed_area(segments), moment(packed))


def around(boxes: Iterable[Box]) -> Box:
    """The box around all boxes. Raises ValueError where there are none."""
    left, bottom, right, top = zip(*boxes, strict=True)
    return min(left), min(bottom), max(right), max(top)


def shifted(box: Box, x: float, y: float) -> Box:
    """The box moved by x and y."""
    return box[0] + x, box[1] + y, box[2] + x, box[3] + y


def scaled(box: Box, by: float) -> Box:
    """The box so many times as large and as far from 0."""
    return box[0] * by, box[1] * by, box[2] * by, box[3] * by


def outline(pieces: Sequence[InkPart], across: float = 1.0, up: float = 1.0) -> Outline:
    """The pieces in one outline at so many mm a unit, its ink box's lower-left corner at (0, 0)."""
    left, bottom, right, top = around(piece.box for piece in pieces)
    stretch = np.array((across, up))
    points = (
        np.concatenate([piece.ink.points + np.array((piece.x - left, piece.y - bottom)) for piece in pieces]) * stretch
    )
    lengths = np.concatenate([piece.ink.steps for piece in pieces]) * stretch
    verbs = "".join(piece.ink.verbs for piece in pieces)
    area = sum(piece.ink.area for piece in pieces)
    moments = sum(piece.ink.moment + piece.x * piece.ink.area for piece in pieces)
    return Outline(
        Segments(verbs, (points.round(_PLACES) + 0.0).tobytes()),  # + 0.0 makes -0 into 0
        round((right - left) * across, 3),
        round((top - bottom) * up, 3),
        verbs.count("M"),
        round(float(np.hypot(lengths[:, 0], lengths[:, 1]).sum()), 3),
        round(area * across * up, 3),
        round((moments / area - left) * across, 3) if area else None,
    )
