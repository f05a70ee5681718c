"""Packs thousands of small sets of boxes at once, each as short as a counted search can make it.

The boxes of a set drop one after another to the lowest, then leftmost place they reach from above. Any layout can be
dropped in some order, so the search is over orders and ways round; all sets try the same change at the same time, each
keeps it where it got no longer. Up to three boxes, every order and way round is tried: the length is then the least.
"""

import random
from collections.abc import Iterator, Sequence
from itertools import permutations, product
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from xlbatch.film.box import Bed, Box
from xlbatch.film.cores import spread
from xlbatch.how_far import alive

Ints = NDArray[np.int64]  # lengths and keys
Short = NDArray[np.int32]  # what is computed with most: no strip is 2 km long

EXACT = 3  # boxes of which every order is tried
MOVED, TURNED_TOO = 0.6, 0.3  # how often a change moves a box, and how often it then turns one as well
CHUNK = 2048  # sets worked on at a time, so that they stay in the processor's cache
BITS = 24
HIGH = np.int64(1 << BITS)  # µm, wider than any film
MUCH = 4_000_000  # tries of a set: some seconds
NOWHERE = np.int64(1 << 62)


class Sets(NamedTuple):
    """Sets of equally many boxes: one column a set, one row a box, in the order of dropping."""

    across: Short
    along: Short
    which: Short  # the box's place in its set

    def reordered(self, order: Sequence[int]) -> "Sets":
        return Sets(*(values[list(order)] for values in self))

    def turned(self, row: int, bed: Bed) -> "Sets":
        """The box of one row turned, wherever it then still fits across."""
        fits = self.along[row] <= bed.width
        across, along = self.across.copy(), self.along.copy()
        across[row] = np.where(fits, self.along[row], self.across[row])
        along[row] = np.where(fits, self.across[row], self.along[row])
        return Sets(across, along, self.which)


class _SetsOfOneCount(NamedTuple):
    """Sets of equally many boxes, and how to lay them."""

    sets: Sequence[Sequence[Box]]
    bed: Bed
    tries: int


def searched(sets: Sequence[Sequence[Box]], bed: Bed, tries: int) -> Iterator[tuple[list[int], tuple["Sets", Short]]]:
    """The places of sets that are alike, and the best found for them."""
    places = list(alike(sets))
    parts = [_SetsOfOneCount([sets[set_no] for set_no in these], bed, tries) for these in places]
    return zip(places, spread(_part_searched, parts, pays=len(sets) * tries > MUCH), strict=True)


def by_count(sets: Sequence[Sequence[Box]]) -> dict[int, list[int]]:
    """The places of the sets of each number of boxes."""
    sets_by_count: dict[int, list[int]] = {}
    for set_no, boxes in enumerate(sets):
        sets_by_count.setdefault(len(boxes), []).append(set_no)
    return sets_by_count


def alike(sets: Sequence[Sequence[Box]]) -> Iterator[list[int]]:
    """The places of sets of equally many boxes, a chunk at a time; empty sets are left out."""
    for count, places in by_count(sets).items():
        for begin in range(0, len(places) if count else 0, CHUNK):
            yield places[begin : begin + CHUNK]


def drop(across: Short, along: Short, width: int) -> tuple[Short, Short, Short]:
    """Drops boxes so wide and long into a bed `width` wide, row by row; returns how far across and along each lies, and
    each column's length."""
    count, columns = across.shape
    x, y, top = np.zeros((3, count, columns), np.int32)
    right = np.zeros((count + 1, columns), np.int32)
    right[1], top[0] = across[0], along[0]
    for row in range(1, count):
        begin = right[: row + 1]  # beside the left edge or any box
        end = begin + across[row]
        meets = begin[:, None] < right[1 : row + 1]
        meets &= x[:row] < end[:, None]
        place = np.maximum.reduce(meets * top[:row], axis=1) * HIGH
        place += begin
        place[1:][end[1:] > width] = NOWHERE
        lowest = np.minimum.reduce(place, axis=0)  # and of the lowest the leftmost
        x[row], y[row] = lowest & (HIGH - 1), lowest >> BITS
        right[row + 1], top[row] = x[row] + across[row], y[row] + along[row]
    return x, y, top.max(axis=0)


def _part_searched(part: _SetsOfOneCount) -> tuple[Sets, Short]:
    return _best(part.sets, part.bed, part.tries)


def _best(sets: Sequence[Sequence[Box]], bed: Bed, tries: int) -> tuple[Sets, Short]:
    given = fitting(sets, bed)
    count = len(given.across)
    if count <= EXACT:
        return shortest(_every_way(given, bed), bed)
    best, lengths = shortest(sorted_ways(given, bed), bed)
    for order, turn in changes(count, bed.turn, tries):
        tried = best.reordered(order)
        best, lengths = _kept(best, lengths, tried if turn is None else tried.turned(turn, bed), bed)
    return best, lengths


def _kept(best: Sets, lengths: Short, tried: Sets, bed: Bed) -> tuple[Sets, Short]:
    """The tried sets where they are no longer, else the best so far."""
    alive()
    tried_lengths = drop(tried.across, tried.along, bed.width)[2]
    better = tried_lengths <= lengths
    kept = Sets(*(np.where(better, new, old) for new, old in zip(tried, best, strict=True)))
    return kept, np.minimum(lengths, tried_lengths)


def shortest(ways: Iterator[Sets], bed: Bed) -> tuple[Sets, Short]:
    best = next(ways)
    lengths = drop(best.across, best.along, bed.width)[2]
    for tried in ways:
        best, lengths = _kept(best, lengths, tried, bed)
    return best, lengths


def fitting(sets: Sequence[Sequence[Box]], bed: Bed) -> Sets:
    """The sets as arrays, in one order whatever order they are given in, each box turned where it fits only so."""
    table = np.array(sets, np.int32).transpose(1, 2, 0)
    which = np.argsort(table[:, 0].astype(np.int64) * HIGH + table[:, 1], axis=0, kind="stable")
    across, along = (np.take_along_axis(table[:, side], which, axis=0) for side in (0, 1))
    flip = across > bed.width
    return Sets(np.where(flip, along, across), np.where(flip, across, along), which.astype(np.int32))


def _every_way(given: Sets, bed: Bed) -> Iterator[Sets]:
    count = len(given.across)
    for order in permutations(range(count)):
        for flips in product((False, True) if bed.turn else (False,), repeat=count):
            tried = given.reordered(order)
            for row in range(count):
                tried = tried.turned(row, bed) if flips[row] else tried
            yield tried


def sorted_ways(given: Sets, bed: Bed) -> Iterator[Sets]:
    """Every box at its widest, then at its narrowest; the largest, widest or longest dropped first."""
    low, high = np.minimum(given.across, given.along), np.maximum(given.across, given.along)
    wide = np.where(high <= bed.width, high, low)
    for across in (wide, low) if bed.turn else (given.across,):
        along = low + high - across
        for key in (across.astype(np.int64) * along, across, along):
            order = np.argsort(np.where(key, -key, -NOWHERE), axis=0, kind="stable")  # a box of no size is first
            yield Sets(*(np.take_along_axis(values, order, axis=0) for values in (across, along, given.which)))


def changes(count: int, turn: bool, tries: int) -> Iterator[tuple[list[int], int | None]]:
    """Orders with one box moved or none, and the row of a box to turn or none; the same for the same count."""
    dice = random.Random(count)
    for _ in range(tries):
        order = list(range(count))
        move = dice.random() < MOVED or not turn
        if move:
            order.insert(dice.randrange(count), order.pop(dice.randrange(count)))
        row = dice.randrange(count) if turn and (not move or dice.random() < TURNED_TOO) else None
        yield order, row
