"""What fits side by side in a width, each box as often as one likes: the unbounded knapsack, here by trying all."""

import random

import numpy as np
import pytest

from xlbatch.film.bound import Slices


def brute(cells: list[int], worth: list[int], room: int) -> int:
    most = [0] * (room + 1)
    for place in range(1, room + 1):
        most[place] = max(
            [most[place - 1], *(worth[no] + most[place - wide] for no, wide in enumerate(cells) if 0 < wide <= place)]
        )
    return most[room]


@pytest.mark.parametrize("seed", range(20))
def test_the_most_that_fits_in_every_width(seed: int) -> None:
    dice = random.Random(seed)
    slices = object.__new__(Slices)
    slices.room = dice.randint(5, 40)
    slices.cells = sorted({dice.randint(1, 12) for _ in range(4)})
    worth = [dice.randint(1, 30) for _ in slices.cells]
    most = slices._most_worth(np.array(worth, np.int64))
    assert most.tolist() == [brute(slices.cells, worth, room) for room in range(slices.room + 1)]
