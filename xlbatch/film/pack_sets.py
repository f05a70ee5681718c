"""Where the boxes of many sets lie, each set in a strip as short as a counted search can make it."""

from collections.abc import Sequence

import numpy as np

from xlbatch.film.box import Bed, Box, BoxSpot, Packing
from xlbatch.film.drop import drop
from xlbatch.film.mixed import best_of


def pack_sets(sets: Sequence[Sequence[Box]], bed: Bed, tries: int) -> list[Packing]:
    """Where the boxes of each set lie, at the lengths `least_lengths` finds with as many tries."""
    packings = [Packing(0, ())] * len(sets)
    for these, best, lengths in best_of(sets, bed, tries):
        x, y, _ = drop(best.across, best.along, bed.width)
        back = np.argsort(best.which, axis=0)
        columns = (np.take_along_axis(side, back, axis=0).T.tolist() for side in (x, y, best.across))
        for place, length, *lying in zip(these, lengths.tolist(), *columns, strict=True):
            boxes = sets[place]
            own = (rows[-len(boxes) :] for rows in lying)  # without those of no size
            spots = (
                BoxSpot(across, along, width != box[0]) for across, along, width, box in zip(*own, boxes, strict=True)
            )
            packings[place] = Packing(length, tuple(spots))
    return packings
