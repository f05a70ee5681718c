"""Money: columns that add up to the cent, and blanks where a price is not given."""

from collections.abc import Callable
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from xlbatch.job.job import PriceBreak
from xlbatch.plan import Plan
from xlbatch.shopping.prices import shared_out
from xlbatch.shopping.spares import price_for

ROSTER = [
    ["Who", "Size", "Paid", "Group"],
    ["Ana", "M", "yes", "Novak"],
    ["Ivo", "L", 5, "Novak"],
    ["Mei", "S", None, "Lin"],
]
PRICED = {
    "Garments": [["Garment", "Size", "Price"], *(["Crew-neck tee", size, "1 = 4.20; 12 = 3.60"] for size in "SML")],
    "Film": [["Film", "Rolls sold"], ["Black smooth", "1 yd = 6.50; 5 yd = 21.00"]],
}


@given(cents=st.integers(0, 10_000_000), weights=st.lists(st.floats(0, 1000), min_size=1, max_size=40))
@settings(derandomize=True, max_examples=200)
def test_shares_add_up_to_the_cent(cents: int, weights: list[float]) -> None:
    amount = Decimal(cents) / 100
    shares = shared_out(amount, weights)
    assert sum(shares) == amount
    assert all(share >= 0 for share in shares)


def test_columns_add_up_to_the_shopping_list(plan_of: Callable[..., Plan]) -> None:
    job = [["Setting", "Value"], ["Labor per hour", 18], ["Margin or fixed price", "25 %"], ["Price rounding", 0.5]]
    plan = plan_of(ROSTER, Job=job, **PRICED)
    for kind in ("blank", "film"):
        bought = sum(line.cost or 0 for line in plan.shopping if line.kind == kind)
        assert sum(getattr(line, kind) for line in plan.money) == bought > 0
    assert sum(line.labor or 0 for line in plan.money) == (
        Decimal(18) * Decimal(str(plan.time.seconds)) / 3600
    ).quantize(Decimal("0.01"))
    assert all(line.price is not None and line.price % Decimal("0.50") == 0 for line in plan.money)


def test_paid_and_owed(plan_of: Callable[..., Plan]) -> None:
    job = [["Setting", "Value"], ["Margin or fixed price", "15.00"]]
    ana, ivo, mei = plan_of(ROSTER, Job=job, **PRICED).money
    assert [(line.paid, line.owed) for line in (ana, ivo, mei)] == [
        (Decimal("15.00"), Decimal("0.00")),
        (Decimal("5"), Decimal("10.00")),
        (None, Decimal("15.00")),
    ]


def test_a_price_told_stands_once_pressing_has_begun(plan_of: Callable[..., Plan]) -> None:
    """Ana's garment is done and Ivo's is not; what they were told, they owe."""
    head, ivo = ["Garment no.", "Who", "Size", "Paid", "Status"], [2, "Ivo", "L", None, ""]
    told = [["Garment no.", "Who", "Price", "Paid"], [1, "Ana", 9, 5], [2, "Ivo", 9.5, None]]
    late = [3, "Mei", "S", None, ""]
    job = [["Setting", "Value"], ["Margin or fixed price", "15.00"]]

    def owed(status: str) -> list[tuple[str, str, str]]:
        lines = plan_of([head, [1, "Ana", "M", 5, status], ivo, late], Job=job, Money=told, **PRICED).money
        return [(line.who, str(line.price), str(line.owed)) for line in lines]

    assert owed("done") == [("Ana", "9", "4"), ("Ivo", "9.5", "9.5"), ("Mei", "15.00", "15.00")]
    assert [price for _, price, _ in owed("")] == ["15.00"] * 3


def test_a_price_not_given_stays_blank(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of(ROSTER)
    assert all(line.blank is None and line.film is None and line.price is None for line in plan.money)
    assert all(line.cost is None for line in plan.shopping)
    assert sum(found.code == "price-missing" for found in plan.problems) == 2


@pytest.mark.parametrize(("count", "price"), [(1, "4.20"), (11, "4.20"), (12, "3.60"), (40, "3.60")])
def test_price_breaks(count: int, price: str) -> None:
    breaks = (PriceBreak(1, Decimal("4.20")), PriceBreak(12, Decimal("3.60")))
    assert price_for(breaks, count) == Decimal(price)


def test_blanks_on_hand_are_not_bought_again(plan_of: Callable[..., Plan]) -> None:
    garments = [["Garment", "Size", "On hand"], ["Crew-neck tee", "M", "white = 1"], ["Crew-neck tee", "L", 2]]
    plan = plan_of(ROSTER, Garments=garments)
    on_hand = {line.size: line.on_hand for line in plan.shopping if line.kind == "blank"}
    assert on_hand == {"M": 1, "L": 2, "S": 0}
