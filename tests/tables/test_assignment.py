"""The best joint assignment has the greatest sum that any has."""

import random
from itertools import permutations

import pytest

from xlbatch.tables.assignment import best_assignment


@pytest.mark.parametrize("seed", range(40))
def test_no_assignment_has_a_greater_sum(seed: int) -> None:
    dice = random.Random(seed)
    columns = dice.randint(1, 6)
    scores = [
        [dice.choice((0.0, dice.randint(-9, 20) / 2)) for _ in range(columns)] for _ in range(dice.randint(1, columns))
    ]
    chosen = best_assignment(scores)
    assert len(set(chosen)) == len(scores)
    every = (sum(map(list.__getitem__, scores, columns_)) for columns_ in permutations(range(columns), len(scores)))
    assert sum(map(list.__getitem__, scores, chosen)) == max(every)


def test_nothing_to_assign() -> None:
    assert best_assignment([]) == ()
