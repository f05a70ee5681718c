"""How many to get when some go wrong, against scipy's binomial distribution."""

import pytest
from scipy.stats import binom

from xlbatch.trade.spoilage import enough, least_buy


@pytest.mark.parametrize(
    ("need", "spoiled_per_100", "buy"),
    [(10, 5, 12), (12, 5, 14), (20, 5, 23), (24, 3, 26), (25, 2, 27), (30, 10, 37), (50, 5, 56), (100, 2, 105)],
)
def test_least_buy_for_95_jobs_in_100(need: int, spoiled_per_100: int, buy: int) -> None:
    spoil = spoiled_per_100 / 100
    assert least_buy(need, spoil, 0.95) == buy
    # the same by scipy: at least `need` good ones of `buy`, and not of one fewer
    assert binom.sf(need - 1, buy, 1 - spoil) >= 0.95 > binom.sf(need - 1, buy - 1, 1 - spoil)


@pytest.mark.parametrize(("bought", "need", "spoil"), [(12, 10, 0.05), (10_000, 9_700, 0.03), (3, 5, 0.1), (5, 5, 0.0)])
def test_the_chance_of_enough_is_the_binomial_one(bought: int, need: int, spoil: float) -> None:
    assert enough(bought, need, spoil) == pytest.approx(binom.sf(need - 1, bought, 1 - spoil), abs=1e-9)


def test_nothing_spoiled_needs_no_spares() -> None:
    assert least_buy(40, 0.0, 0.95) == 40
    assert least_buy(0, 0.03, 0.95) == 0


def test_where_nothing_is_needed_there_is_always_enough() -> None:
    assert [enough(bought, 0, 1.0) for bought in (0, 3)] == [1, 1]
    assert enough(3, 1, 1.0) == 0


def test_certainty_cannot_be_bought() -> None:
    with pytest.raises(ValueError, match="below 1"):
        least_buy(10, 0.03, 1.0)
