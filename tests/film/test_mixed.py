"""Sets of different numbers of boxes, searched together."""

import random

import numpy as np

from xlbatch.film.box import Bed
from xlbatch.film.drop import drop
from xlbatch.film.mixed import FEW, best_of


def test_the_boxes_lie_as_short_as_is_said_and_each_is_there() -> None:
    """They are dropped anew in the order given, the ways round given."""
    dice, bed = random.Random(1), Bed(300_000, 900_000, 6_000, turn=True)
    sets = [
        [(dice.randrange(20_000, 200_000), dice.randrange(20_000, 90_000)) for _ in range(4 + number % 3)]
        for number in range(FEW + 20)
    ]
    for places, best, lengths in best_of(sets, bed, 40):
        assert drop(best.across, best.along, bed.width)[2].tolist() == lengths.tolist()
        for column, place in enumerate(places):
            laid = np.array([values[:, column] for values in (best.across, best.along, best.which)]).T.tolist()
            boxes = {which: {across, along} for across, along, which in laid if across}
            assert boxes == {which: set(box) for which, box in enumerate(sets[place])}


def test_sets_searched_together_come_to_the_end_that_each_comes_to_alone() -> None:
    dice, bed = random.Random(2), Bed(300_000, 900_000, 6_000, turn=True)
    sets = [
        [(dice.randrange(20_000, 200_000), dice.randrange(20_000, 90_000)) for _ in range(4 + number % 3)]
        for number in range(FEW + 20)
    ]
    ((_, _, together),) = best_of(sets, bed, 40)
    assert together.tolist() == [int(length) for boxes in sets for _, _, (length,) in best_of([boxes], bed, 40)]
