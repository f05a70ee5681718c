"""How short each of many small sets of boxes can be laid, without saying how: as `drop.py` lays them, in less time.

Of up to three boxes it is a sum.
"""

from collections.abc import Sequence
from itertools import product

import numpy as np

from xlbatch.film.box import Bed, Box
from xlbatch.film.drop import EXACT, NOWHERE, Ints, Sets, Short, alike, fitting
from xlbatch.film.mixed import best_of


def least_lengths(sets: Sequence[Sequence[Box]], bed: Bed, tries: int) -> Ints:
    """The shortest length found for each set (µm, gap included); more tries never make it longer."""
    lengths = np.zeros(len(sets), np.int64)
    few = [set_no for set_no, boxes in enumerate(sets) if 0 < len(boxes) <= EXACT]
    for these in alike([sets[set_no] for set_no in few]):
        lengths[[few[few_no] for few_no in these]] = _least_of_few(
            fitting([sets[few[few_no]] for few_no in these], bed), bed
        )
    many = [set_no for set_no, boxes in enumerate(sets) if len(boxes) > EXACT]
    for places, _, lengths_ in best_of([sets[set_no] for set_no in many], bed, tries):
        lengths[[many[place] for place in places]] = lengths_
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
        for first in range(count if count == EXACT else 0):
            a, b = ((first + 1) % count, (first + 2) % count)
            beside = np.maximum(across[first], across[a] + across[b]), along[first] + np.maximum(along[a], along[b])
            above = across[first] + np.maximum(across[a], across[b]), np.maximum(along[first], along[a] + along[b])
            laid += [beside, above]
        for wide, long in laid:
            best = np.minimum(best, np.where(wide <= bed.width, long, NOWHERE))
    return best.astype(np.int32)
