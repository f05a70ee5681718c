"""In which order a run's outlines are cut, how long all cuts are, and how far the blade travels between them.

The film feeds forward: it is cut in windows along it, so that it is drawn back no farther than one window. Within a
window the decal that begins nearest is next; within a decal what lies inside an outline is cut before it, one letter
after another.
"""

import math
from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import NamedTuple

import numpy as np

from xlbatch.film.layout import Lying, Run
from xlbatch.geometry.outline import Outline, Segment, Segments, contours_of
from xlbatch.geometry.path import Box, Point, transform
from xlbatch.how_far import alive
from xlbatch.trade.tables import practice

WINDOW = practice("how far along the film the blade works before it goes on")


class CutPiece(NamedTuple):
    """A decal, its contours in cutting order, and where on the run's page each begins (and ends)."""

    lying: Lying
    segments: Segments
    begins: tuple[Point, ...]


@dataclass(frozen=True)
class Cutting:
    """Decals in cutting order; lengths in mm."""

    pieces: tuple[CutPiece, ...]
    length: float  # of all cuts
    travel: float  # of the way to and between them, from the left of the leading end


def cutting(run: Run) -> Cutting:
    """How a run is cut."""
    here: Point = (0.0, run.length)
    travel = 0.0
    pieces: list[CutPiece] = []
    for window in _windows(run):
        while window:
            alive()
            piece = min(window, key=lambda piece_: math.dist(here, piece_.begins[0]))
            window.remove(piece)
            pieces.append(piece)
            travel += sum(math.dist(*step) for step in pairwise((here, *piece.begins)))
            here = piece.begins[-1]
    length = sum(lying.decal.outline.cut_length for lying in run.outlined if lying.decal.outline)
    return Cutting(tuple(pieces), round(length + 4 * run.test_cut, 3), round(travel, 3))


def _windows(run: Run) -> Iterator[list[CutPiece]]:
    """The decals that begin in each window, from the leading end on."""
    windows: dict[int, list[CutPiece]] = defaultdict(list)
    for lying in sorted(run.outlined, key=lambda decal: (decal.along, decal.across)):
        if lying.decal.outline:
            windows[int(lying.along // WINDOW)].append(_piece(run, lying, lying.decal.outline))
    yield from windows.values()


def _piece(run: Run, lying: Lying, outline: Outline) -> CutPiece:
    segments, starts = _in_order(outline.segments)
    return CutPiece(lying, segments, tuple((ends[0], ends[1]) for _, ends in transform(starts, run.matrix(lying))))


@lru_cache(maxsize=2048)
def _in_order(segments: Segments) -> tuple[Segments, tuple[Segment, ...]]:
    """The contours in the order in which they are cut, and where each begins."""
    parts = _inside_first(segments)
    ordered = Segments("".join(part.verbs for part in parts), b"".join(part.packed for part in parts))
    return ordered, tuple(("M", tuple(part.points[0].tolist())) for part in parts)


def _inside_first(segments: Segments) -> tuple[Segments, ...]:
    """The contours so that what lies inside another is cut before it, one letter after another from the left."""
    contours = contours_of(segments)
    boxed = list(zip(_boxes(segments, contours), contours, strict=True))
    boxed.sort(
        key=lambda boxed_contour: (boxed_contour[0][0], -boxed_contour[0][2])
    )  # an outer contour before what it holds
    letters: list[list[tuple[Box, Segments]]] = []
    for box, contour in boxed:
        outer = next((letter for letter in letters if _holds(letter[0][0], box)), None)
        if outer is None:
            letters.append([(box, contour)])
        else:
            outer.append((box, contour))
    return tuple(
        contour
        for letter in letters
        for _, contour in sorted(
            letter,
            key=lambda boxed_contour: (
                (boxed_contour[0][2] - boxed_contour[0][0]) * (boxed_contour[0][3] - boxed_contour[0][1])
            ),
        )
    )


def _boxes(segments: Segments, contours: Sequence[Segments]) -> Iterator[Box]:
    """The box of each contour's points: near enough to tell what lies in what."""
    points = segments.points
    first = np.cumsum([0, *(len(contour.packed) // 16 for contour in contours[:-1])])
    for low, high in zip(np.minimum.reduceat(points, first), np.maximum.reduceat(points, first), strict=True):
        yield (*low.tolist(), *high.tolist())


def _holds(outer: Box, inner: Box) -> bool:
    return outer[0] <= inner[0] and outer[1] <= inner[1] and outer[2] >= inner[2] and outer[3] >= inner[3]
