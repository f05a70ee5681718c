"""The integer knapsack: which pieces fit side by side and are worth the most, each only so often."""

from collections import Counter

import numpy as np
from numpy.typing import NDArray

from xlbatch.how_far import alive

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]

LIKELY = 12  # kinds tried first
SAFE = 1e-9  # of worth, against floating-point error


def fullest(room: int, sizes: Ints, worths: Floats, counts: Ints) -> Counter[int]:
    """How many of each kind (by its place) are worth the most together in so much room; `sizes` of a kind, not falling,
    how much one is worth, and how many there are.

    The most that can be reached with one of a kind is its worth and what the rest of the room holds at best if pieces
    could be cut (Dantzig, 1957). So a few kinds are tried first, and after that only those that could do better."""
    alive()
    fitting = np.where(sizes > 0, room // np.maximum(sizes, 1), counts)
    counts = np.where(worths > 0, np.minimum(counts, fitting), 0)
    reach = _reach(room, sizes, worths, counts)
    likely = reach >= np.sort(reach)[-min(LIKELY, len(reach))]
    filled = _filled(room, sizes, worths, np.where(likely, counts, 0))
    better = reach >= sum(worths[kind] * times for kind, times in filled.items()) - SAFE
    return _filled(room, sizes, worths, np.where(better, counts, 0)) if (better & ~likely).any() else filled


def _reach(room: int, sizes: Ints, worths: Floats, counts: Ints) -> Floats:
    """The bound of each kind; 0 where there is none of it."""
    kinds = np.flatnonzero(counts)
    densest = kinds[np.argsort(-worths[kinds] / np.maximum(sizes[kinds], SAFE), kind="stable")]
    filled, worth = (np.cumsum(np.append(0, (value * counts)[densest])) for value in (sizes, worths))
    return np.where(counts > 0, worths + np.interp(room - sizes, filled, worth), 0.0)


def _filled(room: int, sizes: Ints, worths: Floats, counts: Ints) -> Counter[int]:
    """The knapsack by dynamic programming, piece after piece over every room up to this."""
    pieces = np.repeat(np.arange(len(sizes)), counts).tolist()
    best, with_it = np.zeros(room + 1), np.zeros(room + 1)
    taken = np.zeros((len(pieces), room + 1), dtype=bool)
    for piece, kind in enumerate(pieces):
        size = int(sizes[kind])
        without, with_this = best[size:], with_it[size:]
        np.add(best[: room + 1 - size], worths[kind], out=with_this)
        np.greater(with_this, without, out=taken[piece, size:])
        np.maximum(with_this, without, out=without)
    filled: Counter[int] = Counter()
    for piece in range(len(pieces) - 1, -1, -1):
        if taken[piece, room]:
            filled[pieces[piece]] += 1
            room -= int(sizes[pieces[piece]])
    return filled
