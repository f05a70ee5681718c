"""Outlines and what they are made of: verbs with their coordinates, packed. Lengths in mm, y upward."""

from array import array
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import chain

import numpy as np
from numpy.typing import NDArray

# a verb and its coordinates: M and L carry x, y; Q one control point more, C two more; Z none
Segment = tuple[str, tuple[float, ...]]

NUMBERS = {"M": 2, "L": 2, "Q": 4, "C": 6, "Z": 0}  # how many numbers each verb carries


@dataclass(frozen=True, slots=True)
class Segments:
    """Segments in order, packed: a large job has millions of them, and as tuples they take ten times the memory."""

    verbs: str
    packed: bytes  # their coordinates as 64-bit numbers

    @property
    def points(self) -> NDArray[np.float64]:
        """All points in order, one a line; not to be written to."""
        return np.frombuffer(self.packed).reshape(-1, 2)

    def __iter__(self) -> Iterator[Segment]:
        values, start = self.points.ravel().tolist(), 0
        for verb in self.verbs:
            after = start + NUMBERS[verb]
            yield verb, tuple(values[start:after])
            start = after


def pack(segments: Iterable[Segment]) -> Segments:
    """The same segments packed."""
    listed = list(segments)
    numbers = chain.from_iterable(values for _, values in listed)
    return Segments("".join(verb for verb, _ in listed), array("d", numbers).tobytes())


def contours_of(segments: Segments) -> tuple[Segments, ...]:
    """The segments of each contour, from its M to its Z, packed."""
    contours, start = [], 0
    for rest in segments.verbs.split("M")[1:]:
        verbs = f"M{rest}"
        after = start + 8 * sum(verbs.count(verb) * count for verb, count in NUMBERS.items())
        contours.append(Segments(verbs, segments.packed[start:after]))
        start = after
    return tuple(contours)


@dataclass(frozen=True)
class Outline:
    """Closed, welded outlines in mm, upright, y upward, the ink box's lower-left corner at (0, 0)."""

    segments: Segments
    width: float
    height: float
    contours: int
    cut_length: float  # mm along all contours
    area: float  # mm² of film that stays
    center: float | None = None  # how far from the left the ink's centroid lies
