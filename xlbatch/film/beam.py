"""Fills many beds with boxes at the same time, each in several ways, of which the most promising are kept.

The lowest, then leftmost notch of a skyline is filled next, against its higher wall. A filling is the more promising
the less area it has lost for good and the more its boxes gain: what a box counts for is given from outside. Nothing may
reach beyond a bed's ceiling, so a filling that has lost more area than the ceiling leaves over is given up at once.
All is in whole numbers, and equal scores are told apart by their place, so that every machine finds the same.
"""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

import numpy as np

from xlbatch.film.box import Bed, Box, Laid
from xlbatch.film.skyline import OPEN, Ints, Notch, Skylines
from xlbatch.how_far import alive

KEPT = 5  # fillings of one bed
BRANCHES = 6  # next boxes looked at in each filling
FLUSH = 20  # a box level with a wall of its notch gains one part in so many of its area
WIDE = 1 << 40  # µm: a way round that does not fit
NEVER = np.int64(1 << 47)  # a score above all others that may still be multiplied by the columns


class Fill(NamedTuple):
    """What to try: how many of each kind of box, what each kind gains (µm²), and how long the filling may be (µm)."""

    kinds: Mapping[Box, int]
    gains: Mapping[Box, int]
    ceiling: int = OPEN


def fill(fills: Sequence[Fill], bed: Bed) -> list[tuple[Laid, ...] | None]:
    """The shortest filling found of each, in the order of laying; None where none stays below the ceiling.

    All must hold equally many boxes, each of which fits across the bed."""
    ways = _FillWays(fills, bed)
    beam = _Beam(ways, bed.width)
    steps = [beam.step() for _ in range(sum(fills[0].kinds.values()))]
    return [
        None if row is None else _traced(steps, row, list(fill_.kinds), ways.kinds)
        for fill_, row in zip(fills, beam.shortest(), strict=True)
    ]


class _FillWays:
    """Every way round of every kind of box: a row a fill; kind k stands in columns k and, turned, k + kinds."""

    def __init__(self, fills: Sequence[Fill], bed: Bed) -> None:
        self.kinds = max(len(filled.kinds) for filled in fills)
        across, along, gain = np.zeros((3, len(fills), 2, self.kinds), np.int64)
        across += WIDE
        self.count = np.zeros((len(fills), self.kinds), np.int64)
        for fill_no, fill_ in enumerate(fills):
            self.count[fill_no, : len(fill_.kinds)] = list(fill_.kinds.values())
            for kind, box in enumerate(fill_.kinds):
                for way in bed.ways(box):
                    turned = int(way != box)
                    across[fill_no, turned, kind], along[fill_no, turned, kind] = way
                    gain[fill_no, turned, kind] = fill_.gains[box]
        self.across, self.along, self.gain = (table.reshape(len(fills), -1) for table in (across, along, gain))
        self.area = self.across * self.along  # 0 where it does not fit
        self.ceiling = np.array([filled.ceiling for filled in fills])
        area = np.array([sum(width * length * n for (width, length), n in filled.kinds.items()) for filled in fills])
        self.to_lose = np.minimum(self.ceiling, OPEN // bed.width) * bed.width - area
        self.mark = np.arange(1, self.kinds + 1) ** 2 * 7_368_787 % (1 << 40)  # sums tell sets of boxes apart


class _Step(NamedTuple):
    """One box more in each filling kept: the filling it came from, the box's column, and its corner."""

    of: Ints
    way: Ints
    across: Ints
    along: Ints


class _Beam:
    """The fillings kept, one a row, those of a bed together."""

    def __init__(self, ways: _FillWays, width: int) -> None:
        beds = len(ways.count)
        self.ways, self.bed, self.left = ways, np.arange(beds), ways.count
        self.skylines = Skylines(np.zeros((beds, 1), np.int64), np.full((beds, 1), width))
        self.laid, self.gained, self.mark, self.length = np.zeros((4, beds), np.int64)

    def step(self) -> _Step:
        """Lays one box more in every filling; those in which none can be laid are given up."""
        alive()
        if not len(self.bed):
            return _Step(*np.zeros((4, 0), np.int64))
        usable = np.where(np.tile(self.left > 0, 2), self.ways.across[self.bed], WIDE)
        notch = self.skylines.raised(usable.min(axis=1))
        ends = notch.along[:, None] + self.ways.along[self.bed]
        above = self._useless_above(usable, ends)
        of, way = self._chosen(self._scores(notch, usable, ends, above), ends)
        width, end = usable[of, way], ends[of, way]
        next_step = _Step(of, way, notch.begins(of, width), notch.along[of])
        if len(of):
            self.skylines = self.skylines.raised_by(of, notch, width, end + above[of, way])
        self._take(of, way, end)
        return next_step

    def _useless_above(self, usable: Ints, ends: Ints) -> Ints:
        """How much is left above each box where nothing else fits below the ceiling."""
        thinnest = np.where(usable < WIDE, self.ways.along[self.bed], WIDE).min(axis=1)
        above = self.ways.ceiling[self.bed][:, None] - ends
        return np.where(above < thinnest[:, None], above, 0)

    def _scores(self, notch: Notch, usable: Ints, ends: Ints, above: Ints) -> Ints:
        """The lower, the more promising is each box in each filling; NEVER where it can't lie."""
        area, rest = self.ways.area[self.bed], notch.width[:, None] - usable
        beside = np.where(rest < usable.min(axis=1)[:, None], rest, 0)  # so much that nothing fits there
        floor, low, high = notch.along[:, None], notch.low[:, None], notch.high[:, None]
        lost = (self.skylines.under() - self.laid)[:, None] + beside * (np.minimum(ends, low) - floor)
        lost += above * np.where(usable < WIDE, usable, 0)
        fits = (rest >= 0) & (above >= 0) & (lost <= self.ways.to_lose[self.bed][:, None])
        flush = (ends == high) | ((rest == 0) & (ends == low))
        gain = self.gained[:, None] + self.ways.gain[self.bed] + area * flush // FLUSH
        return np.where(fits, lost - gain, NEVER)

    def _chosen(self, scores: Ints, ends: Ints) -> tuple[Ints, Ints]:
        """The best few fillings of each bed: the row each comes from, and the column of the box laid next."""
        columns = scores.shape[1]
        unlike = scores * columns + np.arange(columns)
        way = np.argpartition(unlike, min(BRANCHES, columns) - 1, axis=1)[:, :BRANCHES]
        of = np.repeat(np.arange(len(scores)), way.shape[1])
        way = way.ravel()
        score, bed = scores[of, way], self.bed[of]
        mark = self.mark[of] + self.ways.mark[way % self.ways.kinds] + ends[of, way] * 7919
        order = np.lexsort((way, of, mark, score, bed))
        order = order[score[order] < NEVER]
        key = np.stack((bed, score, mark))[:, order]
        order = order[np.append(True, (key[:, 1:] != key[:, :-1]).any(axis=0))[: len(order)]]  # the same set once
        bed = bed[order]
        kept = order[np.arange(len(order)) - np.searchsorted(bed, bed) < KEPT]
        return of[kept], way[kept]

    def _take(self, of: Ints, way: Ints, end: Ints) -> None:
        kind, rows = way % self.ways.kinds, np.arange(len(of))
        self.bed, self.left = self.bed[of], self.left[of]
        self.left[rows, kind] -= 1
        self.laid = self.laid[of] + self.ways.area[self.bed, way]
        self.gained = self.gained[of] + self.ways.gain[self.bed, way]
        self.mark = self.mark[of] + self.ways.mark[kind]
        self.length = np.maximum(self.length[of], end)

    def shortest(self) -> list[int | None]:
        """The row of the shortest filling of each bed."""
        best: list[int | None] = [None] * len(self.ways.count)
        for row in np.lexsort((np.arange(len(self.bed)), -self.length)).tolist():
            best[self.bed[row]] = row
        return best


def _traced(steps: Sequence[_Step], row: int, kinds: Sequence[Box], columns: int) -> tuple[Laid, ...]:
    """The boxes laid on the way to a filling."""
    laid: list[Laid] = []
    for step in reversed(steps):
        way = int(step.way[row])
        laid.append(Laid(kinds[way % columns], int(step.across[row]), int(step.along[row]), way >= columns))
        row = int(step.of[row])
    return tuple(reversed(laid))
