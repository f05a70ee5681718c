"""Interlocks the decals of a strip by their outlines, as short as a counted search can make it.

Decals drop one after another, each to the lowest, then leftmost place it reaches from above. The search is over orders
and ways round. It also goes on from what is a little worse, the less the longer it has searched, so that it does not
stay where it first got stuck.
"""

import math
import random
from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from xlbatch.film.box import UM, Bed
from xlbatch.film.cores import spread
from xlbatch.film.layout import Lying, Strip
from xlbatch.film.profile import COLUMN, Lengths, Profile, profiles
from xlbatch.how_far import alive

MOVED, SWAPPED, TURNED_TOO = 0.4, 0.2, 0.3  # how often a change does what; else it turns one decal
WORSE = 0.1  # of the score: how much worse a layout may be to go on from at first
LEVEL = 0.02  # how much the mean height of the columns counts beside the highest
FEWEST, MOST = 150, 1500  # tries for a strip: at the least, and times the effort
USUAL = 6  # decals in a strip; with more of them more is tried, by the square of their number
DROPS = 2_000_000  # decals dropped for all strips of a film, times the effort
MUCH = 100_000  # decals dropped in all: some seconds
GRID = COLUMN * UM


class _Laid(NamedTuple):
    """Where a decal lies, and how far the columns are filled then, in µm."""

    across: int
    along: int
    filled: Lengths
    score: float


class _Layout(NamedTuple):
    """Decals in the order in which they drop, the way round of each decal, and where those in the order lie."""

    order: Sequence[int]
    way: Sequence[int]
    laid: Sequence[_Laid]

    @property
    def length(self) -> int:
        return int(self.laid[-1].filled.max())

    @property
    def score(self) -> float:
        return self.laid[-1].score


class _StripToInterlock(NamedTuple):
    """A strip, and how to interlock it."""

    strip: Strip
    bed: Bed
    mirrored: bool
    tries: int


def interlock(strips: Sequence[Strip], bed: Bed, effort: int, *, mirrored: bool) -> tuple[Strip, ...]:
    """The strips interlocked, each where that makes it shorter."""
    decals = sum(len(strip.lying) for strip in strips)
    parts = [_StripToInterlock(strip, bed, mirrored, _tries(len(strip.lying), decals, effort)) for strip in strips]
    drops = sum(part.tries * len(part.strip.lying) for part in parts)
    return tuple(spread(_interlocked, parts, pays=drops > MUCH))


def _tries(here: int, decals: int, effort: int) -> int:
    """How much is tried for a strip of so many of all decals."""
    return max(FEWEST, min(round(MOST * max(1.0, here / USUAL) ** 2), DROPS // decals) * effort)


def _interlocked(part: _StripToInterlock) -> Strip:
    strip, bed = part.strip, part.bed
    ways = [profiles(lying.decal, bed, mirrored=part.mirrored) for lying in strip.lying]
    layout = _StripSearch(ways, bed.width).shortest(part.tries)
    length = (layout.length - bed.gap) / UM
    if length >= strip.length:
        return strip
    lying = {
        decal_no: Lying(
            strip.lying[decal_no].decal, laid.across / UM, laid.along / UM, ways[decal_no][layout.way[decal_no]].turned
        )
        for decal_no, laid in zip(layout.order, layout.laid, strict=True)
    }
    return Strip(strip.batch, strip.start, length, tuple(lying[decal_no] for decal_no in range(len(ways))))


class _StripSearch:
    """The search for a strip's shortest layout. `ways`: of each decal, the ways round in which it fits across."""

    def __init__(self, ways: Sequence[Sequence[Profile]], width: int) -> None:
        self.ways, self.width, self.dice = ways, width, random.Random(len(ways))

    def shortest(self, tries: int) -> _Layout:
        """The shortest layout found, beginning with the largest decal first."""
        largest = sorted(
            range(len(self.ways)), key=lambda decal_no: -self.ways[decal_no][0].across * self.ways[decal_no][0].along
        )
        best = now = self._dropped(largest, [0] * len(largest), (), math.inf)
        for left in range(tries, 0, -1):
            alive()
            most = now.score * (1 + WORSE * left / tries * self.dice.random() ** 2)
            order, way, same = self._changed(now)
            tried = self._dropped(order, way, now.laid[:same], most)
            if tried.score <= most:
                now = tried
                best = min(best, now, key=lambda layout: layout.length)
        return best

    def _changed(self, now: _Layout) -> tuple[list[int], list[int], int]:
        """Another order, other ways round or both, and how many decals lie as before."""
        dice, order, way = self.dice, list(now.order), list(now.way)
        first, other, kind = dice.randrange(len(order)), dice.randrange(len(order)), dice.random()
        turned = dice.randrange(len(order)) if kind >= MOVED + SWAPPED or dice.random() < TURNED_TOO else None
        same = min(first, other) if kind < MOVED + SWAPPED else len(order)
        if kind < MOVED:
            order.insert(other, order.pop(first))
        elif kind < MOVED + SWAPPED:
            order[first], order[other] = order[other], order[first]
        if turned is not None:
            decal_no = order[turned]
            way[decal_no] = dice.randrange(len(self.ways[decal_no]))
            same = min(same, turned)
        return order, way, same

    def _dropped(self, order: Sequence[int], way: Sequence[int], same: Sequence[_Laid], most: float) -> _Layout:
        """The decals dropped beyond those that lie already, as long as the score is at most so much."""
        laid = list(same)
        filled = laid[-1].filled if laid else np.zeros(math.ceil(self.width / GRID), np.int32)
        for decal_no in order[len(laid) :]:
            laid.append(_drop(self.ways[decal_no][way[decal_no]], filled, self.width))
            filled = laid[-1].filled
            if laid[-1].score > most:
                break
        return _Layout(order, way, laid)


def _drop(shape: Profile, filled: Lengths, width: int) -> _Laid:
    """Lays a shape as low, then as far left as it goes on what is filled."""
    columns, places = len(shape.low), (width - shape.across) // GRID + 1
    # each place's columns: sliding_window_view shows them too, but takes longer than all else here
    below = np.ndarray((places, columns), filled.dtype, filled, strides=filled.strides * 2)
    height = (below - shape.low).max(axis=1)
    column = int(height.argmin())
    along = int(height[column])
    filled = filled.copy()
    filled[column : column + columns] = np.maximum(below[column], shape.high + along)
    return _Laid(column * GRID, along, filled, float(filled.max() + LEVEL * filled.mean(dtype=np.float64)))
