"""How short each of many small sets of boxes can be laid, without saying how: as `drop.py` lays them, in less time.

Of up to three boxes it is a sum. Few sets of different numbers of boxes are searched together: smaller ones are filled
up with boxes of no size, dropped first, which lie at the left edge and change nothing.
"""

from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise, product
from typing import NamedTuple

import numpy as np

from xlbatch.film.box import Bed, Box
from xlbatch.film.drop import (
    EXACT,
    NOWHERE,
    Ints,
    Sets,
    Short,
    alike,
    by_count,
    changes,
    drop,
    fitting,
    searched,
    shortest,
    sorted_ways,
)
from xlbatch.how_far import alive

MIXED = 400  # sets, up to which those of different numbers of boxes are searched together


class _Change(NamedTuple):
    """One try, a column for each number of boxes: the row each row is taken from, and the row turned, -1 for none."""

    order: Ints
    turned: Ints


def least_lengths(sets: Sequence[Sequence[Box]], bed: Bed, tries: int) -> Ints:
    """The shortest length found for each set (µm, gap included); more tries never make it longer."""
    lengths = np.zeros(len(sets), np.int64)
    few = [at for at, boxes in enumerate(sets) if 0 < len(boxes) <= EXACT]
    for these in alike([sets[at] for at in few]):
        lengths[[few[at] for at in these]] = _least_of_few(fitting([sets[few[at]] for at in these], bed), bed)
    many = [at for at, boxes in enumerate(sets) if len(boxes) > EXACT]
    if 0 < len(many) <= MIXED:
        lengths[many] = _mixed_lengths([sets[at] for at in many], bed, tries)
        return lengths
    for these, (_, found) in searched([sets[at] for at in many], bed, tries):
        lengths[[many[at] for at in these]] = found
    return lengths


def _least_of_few(given: Sets, bed: Bed) -> Short:
    """The least length of up to three boxes: they are beside one another, above one another, or one of them is beside,
    or above, the others, as every layout of so few can be parted by straight cuts."""
    count = len(given.across)
    best = np.full(given.across.shape[1], NOWHERE)
    for flips in product((False, True) if bed.turn else (False,), repeat=count):
        sets = given
        for row in range(count):
            sets = sets.turned(row, bed) if flips[row] else sets
        across, along = sets.across.astype(np.int64), sets.along.astype(np.int64)
        laid = [(across.sum(axis=0), along.max(axis=0)), (across.max(axis=0), along.sum(axis=0))]
        for one in range(count if count == EXACT else 0):
            a, b = ((one + 1) % count, (one + 2) % count)
            beside = np.maximum(across[one], across[a] + across[b]), along[one] + np.maximum(along[a], along[b])
            above = across[one] + np.maximum(across[a], across[b]), np.maximum(along[one], along[a] + along[b])
            laid += [beside, above]
        for wide, long in laid:
            best = np.minimum(best, np.where(wide <= bed.width, long, NOWHERE))
    return best.astype(np.int32)


def _mixed_lengths(sets: Sequence[Sequence[Box]], bed: Bed, tries: int) -> Ints:
    """The shortest length found for each set, of four boxes or more."""
    kinds = by_count(sets)
    most, places = max(kinds), [at for these in kinds.values() for at in these]
    across, along = (np.zeros((most, len(sets)), np.int32) for _ in range(2))
    best = np.zeros(len(sets), np.int32)
    ends = np.cumsum([0, *map(len, kinds.values())])
    for (count, these), (begin, end) in zip(kinds.items(), pairwise(ends), strict=True):
        first, best[begin:end] = shortest(sorted_ways(fitting([sets[at] for at in these], bed), bed), bed)
        across[most - count :, begin:end], along[most - count :, begin:end] = first.across, first.along
    kind = np.repeat(np.arange(len(kinds)), np.diff(ends))
    for change in _changes(tuple(kinds), most, bed.turn, tries):
        alive()
        order = change.order[:, kind]
        wide, long = (np.take_along_axis(side, order, axis=0) for side in (across, along))
        _turn(wide, long, change.turned[kind], bed.width)
        lengths = drop(wide, long, bed.width)[2]
        better = lengths <= best
        across, along = np.where(better, wide, across), np.where(better, long, along)
        best = np.minimum(best, lengths)
    found = np.zeros(len(sets), np.int64)
    found[places] = best
    return found


def _turn(across: Short, along: Short, row: Ints, width: int) -> None:
    """Turns the box of one row of each column, wherever it then still fits across; of none where the row is -1."""
    columns = np.flatnonzero((row >= 0) & (along[row, np.arange(len(row))] <= width))
    at = row[columns], columns
    across[at], along[at] = along[at], across[at]


@lru_cache(maxsize=64)
def _changes(counts: tuple[int, ...], most: int, turn: bool, tries: int) -> Sequence[_Change]:
    """The changes of every number of boxes, made together."""
    found = []
    for one in zip(*(changes(count, turn, tries) for count in counts), strict=True):
        orders, turned = zip(*one, strict=True)
        order = [
            [*range(most - count), *(most - count + at for at in each)]
            for count, each in zip(counts, orders, strict=True)
        ]
        rows = [-1 if at is None else most - count + at for count, at in zip(counts, turned, strict=True)]
        found.append(_Change(np.array(order).T, np.array(rows)))
    return tuple(found)
