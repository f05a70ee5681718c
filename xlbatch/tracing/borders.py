"""A map of labels, one a dot → the borders between differently labeled areas, each once, finer than the dots.

Positions are complex numbers x + iy in dots, y downward, (0, 0) the picture's upper left corner.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from xlbatch.geometry.flat import Array, Index, Points

Labels = NDArray[np.uint8]
Where = tuple[Index, Index]  # rows and columns
Blend = Callable[[Where, Labels, Labels], Array]  # how far dots have gone from the first label (0) to the second (1)

_WHOLE = 0.04  # a dot covered less is not covered
_INSIDE = 0.02  # of a dot: a border stays this far from the dots' centers


@dataclass(frozen=True, eq=False)
class Border:
    """One stretch between two labels, `left` lying left of its way on a page with y downward and `right` right of it.

    `closed` where it meets no third label; else it runs from node to node, and its ends are shared."""

    left: int
    right: int
    points: Points
    closed: bool
    start: int  # the corner of dots it begins at, numbered along the rows
    end: int
    leaves: int  # where it heads at its start and at its end: 0 east, 1 south, 2 west, 3 north
    arrives: int


@dataclass(frozen=True, eq=False)
class _Cracks:
    """Sides of dots between two labels, directed so that the smaller label lies to the left."""

    start: Index  # corners of dots
    end: Index
    heading: Index  # 0 east, 1 south, 2 west, 3 north
    left: Labels
    right: Labels
    point: Points


def borders_of(labels: Labels, blend: Blend) -> list[Border]:
    """All borders of a map whose outermost dots all carry one label."""
    cracks = _cracks(labels, blend)
    return _chained(cracks, _following(cracks, labels))


def _cracks(labels: Labels, blend: Blend) -> _Cracks:
    wide = labels.shape[1] + 1
    row, column = np.nonzero(labels[:, 1:] != labels[:, :-1])
    upright = _side(labels, blend, (row, column), 0, 1)
    # with the smaller label on the west side the way leads north: from (row + 1, column + 1) to (row, column + 1)
    swapped = upright[0] > upright[1]
    low, high = (row + 1) * wide + column + 1, row * wide + column + 1
    first = (np.where(swapped, high, low), np.where(swapped, low, high), np.where(swapped, 1, 3))
    point = column + 0.5 + upright[2] + 1j * (row + 0.5)
    row, column = np.nonzero(labels[1:] != labels[:-1])
    level = _side(labels, blend, (row, column), 1, 0)
    # with the smaller label above the way leads east
    turned = level[0] > level[1]
    west, east = (row + 1) * wide + column, (row + 1) * wide + column + 1
    second = (np.where(turned, east, west), np.where(turned, west, east), np.where(turned, 2, 0))
    below = column + 0.5 + 1j * (row + 0.5 + level[2])
    start, end, heading = (np.concatenate(both) for both in zip(first, second, strict=True))
    start_labels, other = (np.concatenate((upright[side], level[side])) for side in (0, 1))
    return _Cracks(
        start,
        end,
        heading,
        np.minimum(start_labels, other),
        np.maximum(start_labels, other),
        np.concatenate((point, below)),
    )


def _side(labels: Labels, blend: Blend, here: Where, down: int, across: int) -> tuple[Labels, Labels, Array]:
    """The labels of dots and of those `down` or `across` from them, and where between the centers of the two the one
    label goes over into the other: by what four dots in a line are covered, where the edge lies within them, else
    where half of a dot would be."""
    row, column = here
    there = row + down, column + across
    before = np.maximum(row - down, 0), np.maximum(column - across, 0)
    high, wide = labels.shape
    beyond = np.minimum(row + 2 * down, high - 1), np.minimum(column + 2 * across, wide - 1)
    left, other = labels[here], labels[there]
    first, low, high, last = (blend(place, left, other) for place in (before, here, there, beyond))
    part = (0.5 - low) / np.maximum(high - low, 1e-9)
    whole = (first < _WHOLE) & (last > 1 - _WHOLE)
    part[whole] = 2.5 - (first + low + high + last)[whole]
    return left, other, np.clip(part, _INSIDE, 1 - _INSIDE)


def _following(cracks: _Cracks, labels: Labels) -> Index:
    """For each crack the one after it; -1 where three labels meet and its border ends.

    Where two areas of one label touch only at a corner, those of the smaller label are taken apart."""
    order = np.argsort(cracks.start, kind="stable")
    start = cracks.start[order]
    first, last = (np.searchsorted(start, cracks.end, side=side) for side in ("left", "right"))
    straight_on, other = order[first], order[last - 1]  # where one ends another begins: labels go up and down around it
    left_turn = (cracks.heading + 3) % 4
    after = np.where(cracks.heading[other] == left_turn, other, straight_on)
    row, column = np.divmod(cracks.end, labels.shape[1] + 1)
    around = np.sort([labels[row - up, column - aside] for up in (0, 1) for aside in (0, 1)], axis=0)
    after[np.count_nonzero(np.diff(around, axis=0), axis=0) > 1] = -1
    return after


def _chained(cracks: _Cracks, following: Index) -> list[Border]:
    """The cracks in order, border by border: those between nodes first, then the closed ones."""
    begins = np.ones(len(following), dtype=bool)
    begins[following[following >= 0]] = False
    after, unseen, borders = following.tolist(), [True] * len(following), []
    for first in (*np.flatnonzero(begins).tolist(), *range(len(after))):
        if unseen[first]:
            chain, crack = [], first
            while crack >= 0 and unseen[crack]:
                unseen[crack] = False
                chain.append(crack)
                crack = after[crack]
            ends = int(cracks.start[first]), int(cracks.end[chain[-1]])
            left, right = int(cracks.left[first]), int(cracks.right[first])
            ways = int(cracks.heading[first]), int(cracks.heading[chain[-1]])
            borders.append(Border(left, right, cracks.point[chain], crack >= 0, *ends, *ways))
    return borders
