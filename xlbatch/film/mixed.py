"""Searches few sets of different numbers of boxes together, as `drop.py` searches those of one number, to the same end.

Smaller sets are filled up with boxes of no size, dropped first, which lie at the left edge and change nothing.
"""

from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from xlbatch.film.alone import BoxInTurn, improved
from xlbatch.film.box import Bed, Box
from xlbatch.film.drop import (
    EXACT,
    Ints,
    Sets,
    Short,
    changes,
    drop,
    fitting,
    searched,
    shortest,
    sorted_ways,
)
from xlbatch.how_far import alive

FEW = 40  # sets; fewer take less time one by one
MOST = 1000  # sets; more take no less time together
NO_BOX = (0, 0)


class _Change(NamedTuple):
    """One try, a column for each number of boxes: the row each row is taken from, and the row turned, -1 for none."""

    order: Ints
    turned: Ints


def best_of(sets: Sequence[Sequence[Box]], bed: Bed, tries: int) -> Iterator[tuple[Sequence[int], Sets, Short]]:
    """The places of sets that are searched together, the best found for them, and how long it is."""
    together = [place for place, boxes in enumerate(sets) if len(boxes) > EXACT]
    if len(together) > MOST:
        together = []
    apart = sorted(set(range(len(sets))) - set(together))
    for these, (best, lengths) in searched([sets[place] for place in apart], bed, tries):
        yield [apart[place] for place in these], best, lengths
    if together:
        yield together, *_mixed([sets[place] for place in together], bed, tries)


def _mixed(sets: Sequence[Sequence[Box]], bed: Bed, tries: int) -> tuple[Sets, Short]:
    """The best found for each set of four boxes or more, and how long it is; boxes of no size come first, and have
    places before the first."""
    counts = np.array([len(boxes) for boxes in sets])
    most = int(counts.max())
    filled = [[NO_BOX] * (most - len(boxes)) + [*boxes] for boxes in sets]
    first, shortest_yet = shortest(sorted_ways(fitting(filled, bed), bed), bed)
    best = np.array(first)
    best[2] -= most - counts
    if len(sets) <= FEW:
        for place, boxes in enumerate(sets):
            own = best[:, most - len(boxes) :, place]
            in_turn = tuple(BoxInTurn(*box) for box in own.T.tolist())
            in_turn, shortest_yet[place] = improved(in_turn, int(shortest_yet[place]), bed, tries)
            own[:] = np.array(in_turn).T
        return Sets(*best), shortest_yet
    columns = np.arange(len(sets))
    kinds, kind = np.unique(counts, return_inverse=True)
    for change in _changes(tuple(kinds.tolist()), most, bed.turn, tries):
        alive()
        tried = best[:, change.order[:, kind], columns]
        across, along, _ = tried
        _turn(across, along, change.turned[kind], bed.width)
        lengths = drop(across, along, bed.width)[2]
        best = np.where(lengths <= shortest_yet, tried, best)
        shortest_yet = np.minimum(shortest_yet, lengths)
    return Sets(*best), shortest_yet


def _turn(across: Short, along: Short, row: Ints, width: int) -> None:
    """Turns the box of one row of each column, wherever it then still fits across; of none where the row is -1."""
    columns = np.flatnonzero((row >= 0) & (along[row, np.arange(len(row))] <= width))
    boxes = row[columns], columns
    across[boxes], along[boxes] = along[boxes], across[boxes]


@lru_cache(maxsize=64)
def _changes(counts: tuple[int, ...], most: int, turn: bool, tries: int) -> Sequence[_Change]:
    """The changes of every number of boxes, made together."""
    together = []
    for change in zip(*(changes(count, turn, tries) for count in counts), strict=True):
        orders, turned = zip(*change, strict=True)
        order = [
            [*range(most - count), *(most - count + row for row in of_count)]
            for count, of_count in zip(counts, orders, strict=True)
        ]
        rows = [-1 if row is None else most - count + row for count, row in zip(counts, turned, strict=True)]
        together.append(_Change(np.array(order).T, np.array(rows)))
    return tuple(together)
