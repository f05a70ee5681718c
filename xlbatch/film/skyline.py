"""Lays any number of boxes in a bed of given width, as short as a counted search can make it.

The skyline is the upper edge of what lies so far. Its lowest, then leftmost notch is filled next, by the box with
the best score: its place in the order, what it wastes beside it, and whether it ends flush with the notch's walls.
The search changes the order and counts its tries, so the same seed gives the same layout on every machine.
"""

import math
import random
from collections.abc import Callable, Sequence
from typing import NamedTuple

from xlbatch.film.box import Bed, Box

LOOK = 48  # how many fitting boxes are scored for one notch
LATE, WASTE, FLUSH = 0.02, 1.0, 0.3  # what a later place in the order, waste and a flush end count for


class Spot(NamedTuple):
    """Where a box lies in its bed: lower-left corner in µm, and whether it was turned a quarter."""

    across: int
    along: int
    turned: bool


class Packing(NamedTuple):
    """A length in µm, gap included, and where each box lies."""

    length: int
    spots: tuple[Spot, ...]


class _Notch(NamedTuple):
    along: int
    across: int
    width: int
    left: float  # how far along its walls reach
    right: float


class _Skyline:
    """Steps from left to right: how far along each is, where it begins, and how wide it is."""

    def __init__(self, width: int) -> None:
        self.steps = [(0, 0, width)]

    def lowest(self) -> _Notch:
        at = self.steps.index(min(self.steps))
        left = self.steps[at - 1][0] if at else math.inf
        right = self.steps[at + 1][0] if at + 1 < len(self.steps) else math.inf
        return _Notch(*self.steps[at], left, right)

    def fill(self, notch: _Notch, width: int, along: int) -> int:
        """Raises a part of the notch, against its higher wall, to `along`; returns where that part begins."""
        at = self.steps.index(notch[:3])
        rest = notch.width - width
        begin = notch.across if notch.left >= notch.right else notch.across + rest
        parts = [(along, begin, width)]
        if rest:
            parts.append((notch.along, notch.across if begin > notch.across else begin + width, rest))
        self.steps[at : at + 1] = sorted(parts, key=lambda step: step[1])
        self._join(at)
        return begin

    def _join(self, at: int) -> None:
        """Joins neighbors that reach equally far."""
        at = max(0, at - 1)
        for _ in range(3):
            if at + 1 < len(self.steps) and self.steps[at][0] == self.steps[at + 1][0]:
                (along, across, width), (_, _, more) = self.steps[at : at + 2]
                self.steps[at : at + 2] = [(along, across, width + more)]
            else:
                at += 1


class _Choice(NamedTuple):
    score: float
    at: int  # in the order of what is left
    box: int
    way: Box


class _Pass:
    """One filling of a bed in a given order."""

    def __init__(self, ways: Sequence[tuple[Box, ...]], boxes: Sequence[Box], bed: Bed, order: Sequence[int]) -> None:
        self.ways, self.boxes, self.left = ways, boxes, list(order)
        self.skyline = _Skyline(bed.width)
        self.spots = [Spot(0, 0, False)] * len(boxes)
        self.least = [min(way[0] for way in each) for each in ways]  # the narrowest each box can lie
        self.narrow = sorted(order, key=lambda box: -self.least[box])  # the narrowest last
        self.laid = [False] * len(boxes)

    def packing(self) -> Packing:
        length = 0
        while self.left:
            notch = self.skyline.lowest()
            choice = self._best(notch)
            if choice is None:
                self.skyline.fill(notch, notch.width, int(min(notch.left, notch.right)))
                continue
            along = notch.along + choice.way[1]
            across = self.skyline.fill(notch, choice.way[0], along)
            del self.left[choice.at]
            self.laid[choice.box] = True
            self.spots[choice.box] = Spot(across, notch.along, choice.way != self.boxes[choice.box])
            length = max(length, along)
        return Packing(length, tuple(self.spots))

    def _narrowest(self) -> int:
        while self.laid[self.narrow[-1]]:
            self.narrow.pop()
        return self.least[self.narrow[-1]]

    def _best(self, notch: _Notch) -> _Choice | None:
        narrowest = self._narrowest()
        best, seen = None, 0
        for at, box in enumerate(self.left) if narrowest <= notch.width else ():
            if self.least[box] > notch.width:
                continue
            for way in self.ways[box]:
                score = _score(notch, way, narrowest) - LATE * seen
                if way[0] <= notch.width and (best is None or score > best.score):
                    best = _Choice(score, at, box, way)
            seen += 1
            if seen == LOOK:
                break
        return best


def _score(notch: _Notch, way: Box, narrowest: int) -> float:
    rest = notch.width - way[0]
    score = 0.0 if rest else FLUSH
    if 0 < rest < narrowest:
        score -= WASTE * rest / notch.width
    if notch.along + way[1] in (max(notch.left, notch.right), notch.left if not rest else None):
        score += FLUSH
    return score


def pack(boxes: Sequence[Box], bed: Bed, tries: int, seed: int = 0) -> Packing:
    """The shortest packing found: three sorted orders are tried, then `tries` changed ones.

    Raises ValueError where a box fits neither way round."""
    ways = [bed.ways(box) for box in boxes]
    if not all(ways):
        raise ValueError("a box is wider than its bed")
    dice = random.Random(seed)
    measures: tuple[Callable[[Box], int], ...] = (math.prod, max, min)
    orders = [sorted(range(len(boxes)), key=[-measure(box) for box in boxes].__getitem__) for measure in measures]
    starts = [(_Pass(ways, boxes, bed, order).packing(), order) for order in orders]
    best, order = min(starts, key=lambda start: start[0].length)
    for _ in range(tries if len(boxes) > 1 else 0):
        changed = _changed(order, dice)
        found = _Pass(ways, boxes, bed, changed).packing()
        if found.length <= best.length:
            best, order = found, changed
    return best


def _changed(order: Sequence[int], dice: random.Random) -> list[int]:
    changed = list(order)
    for _ in range(dice.choice((1, 1, 2, 3))):
        changed.insert(dice.randrange(len(changed)), changed.pop(dice.randrange(len(changed))))
    return changed
