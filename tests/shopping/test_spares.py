"""Spares: those that pay, against brute force, or as many as make the job as sure as was asked."""

import itertools
import math
import random
from collections import Counter
from collections.abc import Callable, Sequence
from decimal import Decimal
from functools import cache

import pytest
from scipy.stats import binom

from xlbatch.job.job import PriceBreak
from xlbatch.plan import Plan
from xlbatch.shopping.spares import Lot, cost_of, price_for, spares_for_sureness, spares_worth_having, sure_of


def lot(needed: int, price: str = "4.00", stock: int = 0, garment: str = "Tee") -> Lot:
    """`price` is one price, or `1 = 4.20; 12 = 3.60`."""
    steps = [step.split("=") if "=" in step else ("1", step) for step in price.split(";") if step]
    return Lot(garment, needed, stock, tuple(PriceBreak(int(count), Decimal(each.strip())) for count, each in steps))


def lots(*needed: int) -> list[Lot]:
    return [lot(count) for count in needed]


def expected(kinds: Sequence[Lot], spares: Sequence[int], spoil: float, second: float) -> float:
    """By scipy: what is bought, and the second order times the chance that a kind runs short."""
    return _paid(kinds, spares) + second * (1 - math.prod(map(_sure, kinds, spares, [spoil] * len(kinds))))


def _paid(kinds: Sequence[Lot], spares: Sequence[int]) -> float:
    """Each at the price for as many of its garment as are bought together."""
    bought = [max(kind.needed - kind.stock, 0) + more for kind, more in zip(kinds, spares, strict=True)]
    together: Counter[str] = Counter()
    for kind, count in zip(kinds, bought, strict=True):
        together[kind.garment] += count
    return sum(count * _price(kind, together[kind.garment]) for kind, count in zip(kinds, bought, strict=True))


def _price(kind: Lot, count: int) -> float:
    return [float(step.price) for step in kind.prices if step.count <= max(count, 1)][-1]


@cache
def _sure(kind: Lot, more: int, spoil: float) -> float:
    return float(binom.sf(kind.needed - 1, max(kind.needed, kind.stock) + more, 1 - spoil))


@pytest.mark.parametrize(
    ("need", "percent", "buy"),
    [(10, 5, 12), (12, 5, 14), (20, 5, 23), (24, 3, 26), (25, 2, 27), (30, 10, 37), (50, 5, 56), (100, 2, 105)],
)
def test_the_least_buy_of_one_kind(need: int, percent: int, buy: int) -> None:
    """Least n with P(Binomial(n, 1 - spoil) >= need) >= 0.95, by scipy.stats.binom."""
    assert need + spares_for_sureness(lots(need), percent / 100, 0.95)[0] == buy
    assert binom.sf(need - 1, buy, 1 - percent / 100) >= 0.95 > binom.sf(need - 1, buy - 1, 1 - percent / 100)


def test_many_kinds_together_are_as_sure_as_the_job_asks() -> None:
    needs = [1, 1, 2, 5, 9, 14]
    extra = spares_for_sureness(lots(*needs), 0.03, 0.95)
    sure = math.prod(float(binom.sf(n - 1, n + e, 0.97)) for n, e in zip(needs, extra, strict=True))
    assert sure >= 0.95
    assert sure == pytest.approx(sure_of(lots(*needs), extra, 0.03))
    one_less = [
        math.prod(
            float(binom.sf(n - 1, n + e - (at == i), 0.97)) for i, (n, e) in enumerate(zip(needs, extra, strict=True))
        )
        for at in range(len(needs))
        if extra[at]
    ]
    assert max(one_less) < 0.95


def test_nothing_goes_wrong_nothing_spare() -> None:
    assert spares_for_sureness(lots(3, 4), 0.0, 0.95) == (0, 0)
    assert spares_for_sureness([], 0.03, 0.95) == ()
    assert spares_worth_having(lots(3, 4), 0.0, Decimal(1000)) == (0, 0)
    assert spares_worth_having([], 0.03, Decimal(1000)) == ()


def test_of_lots_alike_the_first_gets_the_spare() -> None:
    assert spares_for_sureness(lots(5, 5, 5), 0.03, 0.7) == (1, 0, 0)


def test_a_chance_as_high_as_asked_for_is_enough() -> None:
    assert spares_for_sureness(lots(3), 0.0, 1.0) == (0,)
    assert spares_for_sureness(lots(1), 0.5, 0.5) == (0,)
    assert spares_for_sureness(lots(1), 0.5, 0.51) == (1,)


def test_the_price_of_fewer_than_the_first_break_is_the_first() -> None:
    breaks = (PriceBreak(6, Decimal(5)), PriceBreak(12, Decimal(4)))
    assert [price_for(breaks, count) for count in (0, 3, 6, 11, 12, 13)] == [5, 5, 5, 5, 4, 4]
    assert price_for((PriceBreak(1, Decimal(5)), PriceBreak(2, Decimal(4))), 0) == 5
    assert price_for((), 3) is None
    assert cost_of([lot(2), lot(3, "")], (0, 0)) is None
    assert cost_of([lot(2, "1 = 5; 4 = 4"), lot(3, "1 = 3", garment="Polo")], (1, 0)) == 3 * 5 + 3 * 3


def random_job(source: random.Random) -> tuple[list[Lot], float, Decimal]:
    prices = ("4.00", "6.5", "1 = 4.20; 12 = 3.60", "1 = 3.1234; 6 = 2.9", "9", "0.50")
    kinds = [
        lot(source.randint(1, 8), source.choice(prices), source.choice((0, 0, 2, 12)), source.choice(("Tee", "Hoodie")))
        for _ in range(source.randint(1, 4))
    ]
    return kinds, source.choice((0.01, 0.03, 0.1, 0.4)), Decimal(source.choice((0, 5, 15, 60)))


@pytest.mark.parametrize("seed", range(200))
def test_spares_that_pay_are_those_of_brute_force(seed: int) -> None:
    kinds, spoil, second = random_job(random.Random(seed))
    own = spares_worth_having(kinds, spoil, second)
    most = (12, 9, 6, 5)[len(kinds) - 1]
    best = min(
        expected(kinds, tried, spoil, float(second)) for tried in itertools.product(range(most + 1), repeat=len(kinds))
    )
    assert expected(kinds, own, spoil, float(second)) <= best + 1e-5
    assert float(cost_of(kinds, own) or 0) == pytest.approx(_paid(kinds, own))


def test_two_more_are_bought_where_the_price_for_so_many_is_lower() -> None:
    # 11 at 4.20 are 46.20, 12 at 3.60 are 43.20
    assert (
        sum(spares_worth_having([lot(6, "1 = 4.20; 12 = 3.60"), lot(5, "1 = 4.20; 12 = 3.60")], 0.0, Decimal(0))) == 1
    )


def test_where_a_price_is_missing_none_are_bought() -> None:
    assert spares_worth_having([lot(50), lot(3, "")], 0.1, Decimal(500)) == (0, 0)


ADULT, YOUTH = ("S", "M", "L", "XL", "2XL", "3XL", "4XL"), ("Youth XS", "Youth S", "Youth M", "Youth L", "Youth XL")
LADIES, SMALL = ("Ladies S", "Ladies M", "Ladies L"), ("2T", "3T", "4T")


@pytest.mark.parametrize("garments", [26, 36])
def test_a_family_in_many_sizes_buys_next_to_no_spares(garments: int, plan_of: Callable[..., Plan]) -> None:
    """At the usual values: 1 blank in 100, and what a second order usually costs."""
    sizes = [*ADULT, *YOUTH, *LADIES, *SMALL]
    names = {"Ladies": "Ladies tee", "Youth": "Crew-neck tee"}
    roster = [["Who", "Size", "Garment"]]
    for at in range(garments):
        size = sizes[at % len(sizes)]
        roster.append([f"Guest {at + 1}", size, names.get(size.split()[0], "Crew-neck tee")])
    kinds = sorted({(row[2], row[1]) for row in roster[1:]})
    plan = plan_of(roster, Garments=[["Garment", "Size", "Price"], *([*kind, "4.20"] for kind in kinds)])
    blanks = [line for line in plan.shopping if line.kind == "blank"]
    assert sum(line.needed for line in blanks) == garments
    assert sum(line.spares for line in blanks) <= 3
    none, proposed, sure = plan.spare_choices
    assert (none.count, proposed.count) == (0, sum(line.spares for line in blanks))
    assert sure.count > proposed.count
    assert sure.sure >= 0.95
    assert sure.cost == Decimal("4.20") * sure.count


def test_a_first_editions_plan_counts_95_and_3_as_not_set(plan_of: Callable[..., Plan]) -> None:
    def spoil_of(*rows: Sequence[object]) -> tuple[float, float, float | None]:
        settings = plan_of([["Who", "Size"], ["Ana", "M"]], Job=[["Setting", "Value"], *rows]).job.settings
        return settings.spoiled_blanks_per_100, settings.spoiled_film_per_100, settings.sureness

    kept = ("Last garment no.", 1)
    assert spoil_of(kept, ("Spoiled per 100", 3), ("Sureness of spares", 95)) == (1, 3, None)
    assert spoil_of(kept, ("Spoiled per 100", 5), ("Sureness of spares", 80)) == (5, 5, 80)
    assert spoil_of(("Spoiled per 100", 3), ("Sureness of spares", 95)) == (3, 3, 95)
    assert spoil_of(("Spoiled per 100", 5), ("Spoiled film per 100", 2)) == (5, 2, None)
    assert spoil_of(kept, ("Spoiled blanks per 100", 1), ("Sureness of spares", 95)) == (1, 3, 95)
    assert spoil_of(("Sureness of spares", 0)) == (1, 3, 0)
