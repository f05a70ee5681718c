"""Lays thousands of boxes in one sweep along a bed.

The proof of the least length prices every width: what fits side by side at best costs as much as the bed is wide, and
what a layout is longer than the proof is exactly what it leaves unfilled at those prices. So the lowest, then leftmost
notch of the skyline is filled with the box that loses least there: what could have lain in the notch at best, less the
box, less what can still lie beside it, and what the box would have cost less the other way round. Large boxes and those
level with a wall are favored. As boxes run out the prices change, so they are found anew for what is left.
"""

import math
import random
from bisect import bisect_right
from collections import Counter
from collections.abc import Iterator, Sequence
from typing import NamedTuple

import numpy as np

from xlbatch.film.bound import Slices
from xlbatch.film.box import Bed, Box, Laid, Packing, kind_of, packing_of

LEFT = 0.6  # of the boxes left when prices are next found anew
FEW = 20  # boxes left, from where on prices stay
LARGE, FLUSH = (0.05, 1.0), (0.2, 2.0)  # parts of its worth that favor any box, and one level with a wall
USUAL = 0.1, 0.2  # both at the first try
CHANGED = 0.1  # by how much of it what favors a box differs from that, after the first try
OPEN = 1 << 40  # µm: no wall
NEVER = 1 << 61  # µm²: a loss above all others


class _Stair(NamedTuple):
    """A part of the skyline, from left to right."""

    across: int
    width: int
    along: int


def sweep(boxes: Sequence[Box], bed: Bed, tries: int, seed: int = 0) -> Packing:
    """The shortest packing found in so many sweeps (at least one). Each box must fit across the bed."""
    ways = _PricedWays([kind_of(box, bed) for box in boxes], bed)
    dice = random.Random(seed)
    layouts = (_Sweep(ways, bed.width, *favor).laid for favor in _favors(ways, tries, dice))
    return min((packing_of(boxes, laid, bed) for laid in layouts), key=lambda packing: packing.length)


def _favors(ways: "_PricedWays", tries: int, dice: random.Random) -> Iterator[tuple[float, float, Sequence[float]]]:
    """What favors boxes at each try: being large, being level, and each kind beyond that."""
    yield *USUAL, [1.0] * len(ways.kinds)
    for _ in range(tries - 1):
        large, flush = (math.exp(dice.uniform(*map(math.log, between))) for between in (LARGE, FLUSH))
        yield large, flush, [1 + dice.uniform(-CHANGED, CHANGED) for _ in ways.kinds]


class _PricedWays:
    """Every way round of every kind of box, from narrow to wide, and the proof that prices them."""

    def __init__(self, boxes: Sequence[Box], bed: Bed) -> None:
        self.kinds = sorted(Counter(boxes).items())
        ways = [bed.ways(kind) for kind, _ in self.kinds]
        table = sorted((*way, number) for number, box_ways in enumerate(ways) for way in box_ways)
        self.across, self.along, self.kind = np.array(table, np.int64).T
        self.widths = self.across.tolist()
        self.of_kind: list[list[int]] = [[] for _ in self.kinds]
        for column, (_, _, kind_no) in enumerate(table):
            self.of_kind[kind_no].append(column)
        self.slices = Slices(ways, bed.width)


class _Sweep:
    """One sweep: the skyline, what is left to lay, and what was laid."""

    def __init__(self, ways: _PricedWays, width: int, large: float, flush: float, unlike: Sequence[float]) -> None:
        self.ways, self.large, self.flush = ways, large * np.array(unlike), flush
        self.left = np.array([count for _, count in ways.kinds])
        self.skyline = [_Stair(0, width, 0)]
        self.laid: list[Laid] = []
        self.narrowest = 0  # the first column of which a box is left
        boxes = int(self.left.sum())
        priced = math.inf
        for left in range(boxes, 0, -1):
            if left < LEFT * priced and (left > FEW or left == boxes):
                self._price()
                priced = left
            self._lay_next()

    def _price(self) -> None:
        """What each way round of each box costs now, and what speaks for it."""
        kind = self.ways.kind
        self.prices = self.ways.slices.prices_of(self.ways.across, self.left)
        cost = self.ways.along * self.prices.of
        worth = np.full(len(self.left), NEVER)
        np.minimum.at(worth, kind, cost)
        self.base = cost - worth[kind] - np.rint((self.large * worth)[kind]).astype(np.int64)
        self.base[self.left[kind] == 0] = NEVER
        self.bonus = np.rint(self.flush * worth[kind]).astype(np.int64)

    def _lay_next(self) -> None:
        """Lays the box that loses least in the lowest notch, at its higher wall."""
        while True:
            part_no = min(range(len(self.skyline)), key=lambda part_no_: self.skyline[part_no_].along)
            notch = self.skyline[part_no]
            left, right = self._along(part_no - 1), self._along(part_no + 1)
            column = self._best(notch.width, min(left, right) - notch.along, max(left, right) - notch.along)
            if column is not None:
                break
            self._raised(part_no, [notch._replace(along=min(left, right))])
        width, top = self.ways.widths[column], notch.along + int(self.ways.along[column])
        rest = notch.width - width
        across = notch.across if left >= right else notch.across + rest
        box, free = (
            _Stair(across, width, top),
            _Stair(notch.across + (width if left >= right else 0), rest, notch.along),
        )
        self._raised(part_no, sorted((box, free)) if rest else [box])
        self._take(column, across, notch.along)

    def _along(self, part_no: int) -> int:
        return self.skyline[part_no].along if 0 <= part_no < len(self.skyline) else OPEN

    def _best(self, width: int, low: int, high: int) -> int | None:
        """The column of the box to lay in a notch so wide, its walls so high; None where none fits."""
        ways, prices = self.ways, self.prices
        these = slice(self.narrowest, bisect_right(ways.widths, width))
        if these.stop <= these.start:
            return None
        rest, along = width - ways.across[these], ways.along[these]
        beside = np.where(rest < ways.widths[self.narrowest], 0, prices.most[rest // prices.grid])
        lost = np.maximum(prices.most[width // prices.grid] - prices.of[these] - beside, 0)
        score = self.base[these] + lost * np.minimum(along, low)
        level = np.flatnonzero((along == high) | ((along == low) & (rest == 0)))
        score[level] -= self.bonus[these][level]
        best = int(score.argmin())
        return these.start + best if score[best] < NEVER // 2 else None

    def _take(self, column: int, across: int, along: int) -> None:
        kind = int(self.ways.kind[column])
        box = self.ways.kinds[kind][0]
        self.laid.append(Laid(box, across, along, self.ways.widths[column] != box[0]))
        self.left[kind] -= 1
        if not self.left[kind]:
            self.base[self.ways.of_kind[kind]] = NEVER
            while self.narrowest < len(self.base) and self.base[self.narrowest] == NEVER:
                self.narrowest += 1

    def _raised(self, part_no: int, parts: Sequence[_Stair]) -> None:
        """A part of the skyline replaced by others; neighbors that reach equally far are joined."""
        around = slice(max(0, part_no - 1), part_no + 2)
        joined: list[_Stair] = []
        for part in (*self.skyline[around.start : part_no], *parts, *self.skyline[part_no + 1 : around.stop]):
            if joined and joined[-1].along == part.along:
                joined[-1] = joined[-1]._replace(width=joined[-1].width + part.width)
            else:
                joined.append(part)
        self.skyline[around] = joined
