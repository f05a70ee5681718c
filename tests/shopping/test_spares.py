"""Spares: enough that the job finishes without a second order."""

import math

import pytest
from scipy.stats import binom

from xlbatch.shopping.spares import spares


@pytest.mark.parametrize(
    ("need", "percent", "buy"),
    [(10, 5, 12), (12, 5, 14), (20, 5, 23), (24, 3, 26), (25, 2, 27), (30, 10, 37), (50, 5, 56), (100, 2, 105)],
)
def test_the_least_buy_of_one_kind(need: int, percent: int, buy: int) -> None:
    """Least n with P(Binomial(n, 1 - spoil) >= need) >= 0.95, by scipy.stats.binom."""
    assert need + spares([need], percent / 100, 0.95)[0] == buy
    assert binom.sf(need - 1, buy, 1 - percent / 100) >= 0.95 > binom.sf(need - 1, buy - 1, 1 - percent / 100)


def test_many_kinds_together_are_as_sure_as_the_job_asks() -> None:
    needs = [1, 1, 2, 5, 9, 14]
    extra = spares(needs, 0.03, 0.95)
    sure = math.prod(float(binom.sf(n - 1, n + e, 0.97)) for n, e in zip(needs, extra, strict=True))
    assert sure >= 0.95
    one_less = [
        math.prod(
            float(binom.sf(n - 1, n + e - (at == i), 0.97)) for i, (n, e) in enumerate(zip(needs, extra, strict=True))
        )
        for at in range(len(needs))
        if extra[at]
    ]
    assert max(one_less) < 0.95


def test_nothing_goes_wrong_nothing_spare() -> None:
    assert spares([3, 4], 0.0, 0.95) == (0, 0)
    assert spares([], 0.03, 0.95) == ()
