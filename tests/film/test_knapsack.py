"""The knapsack holds as much as the best of all choices, tried one by one."""

from itertools import product

import numpy as np
from hypothesis import example, given
from hypothesis import strategies as st

from xlbatch.film.knapsack import fullest


@given(
    st.integers(0, 40),
    st.lists(
        st.tuples(st.integers(0, 20), st.sampled_from([0.0, 0.1, 0.25, 1.0, 3.5]), st.integers(0, 2)),
        min_size=1,
        max_size=6,
    ),
)
@example(0, [(0, 0.1, 1)])  # what takes no room fits into none
def test_no_other_choice_is_worth_more(room: int, kinds: list[tuple[int, float, int]]) -> None:
    kinds.sort()
    sizes, worths, counts = (np.array(column) for column in zip(*kinds, strict=True))
    filled = fullest(room, sizes, worths, counts)
    times = np.array([filled[kind] for kind in range(len(kinds))])
    assert (times <= counts).all()
    assert times @ sizes <= room
    choices = (np.array(choice) for choice in product(*(range(count + 1) for _, _, count in kinds)))
    assert times @ worths >= max(choice @ worths for choice in choices if choice @ sizes <= room) - 1e-9


def test_kinds_beyond_the_likely_ones_are_tried() -> None:
    """Thirteen dense pieces leave a rest of the room open; one that is less dense fills it."""
    sizes = np.array([50 + kind for kind in range(13)] + [99])
    worths = np.append(sizes[:-1] * 1.0 + 0.5, 99.0)
    assert fullest(99, sizes, worths, np.ones(14, np.int64)) == {13: 1}
