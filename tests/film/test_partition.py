"""Sets that hold every member exactly once, at the least cost: small cases by hand."""

from xlbatch.film.partition import cheapest


def test_every_member_is_held_once_though_twice_would_cost_less() -> None:
    sets = [[0, 1], [1, 2], [0], [2]]
    assert cheapest(sets, [10, 10, 60, 50], 3, 50) == (0, 3)
    assert cheapest(sets, [10, 10, 50, 60], 3, 50) == (1, 2)
    assert cheapest(sets[:2], [10, 10], 3, 50) is None
