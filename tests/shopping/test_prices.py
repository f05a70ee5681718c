"""Money: columns that add up to the cent, and blanks where a price is not given."""

import random
from collections.abc import Callable
from decimal import Decimal

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from xlbatch.job.job import PriceBreak
from xlbatch.plan import Plan
from xlbatch.shopping.prices import account, shared_out
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
@settings(max_examples=200, deadline=None, suppress_health_check=[HealthCheck.too_slow])
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
    """Ana's garment is done and Ivo's is not; what they were told, they owe. Mei joins late, and pays what was told
    for the same thing."""
    head, ivo = ["Garment no.", "Who", "Size", "Paid", "Status"], [2, "Ivo", "L", None, ""]
    told = [["Garment no.", "Who", "Price", "Paid"], [1, "Ana", 9, 5], [2, "Ivo", 9.5, None]]
    late = [3, "Mei", "S", None, ""]
    job = [["Setting", "Value"], ["Margin or fixed price", "15.00"]]

    def owed(status: str) -> list[tuple[str, str, str]]:
        lines = plan_of([head, [1, "Ana", "M", 5, status], ivo, late], Job=job, Money=told, **PRICED).money
        return [(line.who, str(line.price), str(line.owed)) for line in lines]

    assert owed("done") == [("Ana", "9", "4"), ("Ivo", "9.5", "9.5"), ("Mei", "9", "9")]
    assert [price for _, price, _ in owed("")] == ["15.00"] * 3


def test_a_price_not_given_stays_blank(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of(ROSTER)
    assert all(line.blank is None and line.film is None and line.price is None for line in plan.money)
    assert all(line.cost is None for line in plan.shopping)
    assert sum(found.code == "price-missing" for found in plan.problems) == 1


@pytest.mark.parametrize(("count", "price"), [(1, "4.20"), (11, "4.20"), (12, "3.60"), (40, "3.60")])
def test_price_breaks(count: int, price: str) -> None:
    breaks = (PriceBreak(1, Decimal("4.20")), PriceBreak(12, Decimal("3.60")))
    assert price_for(breaks, count) == Decimal(price)


def test_blanks_on_hand_are_not_bought_again(plan_of: Callable[..., Plan]) -> None:
    garments = [["Garment", "Size", "On hand"], ["Crew-neck tee", "M", "white = 1"], ["Crew-neck tee", "L", 2]]
    plan = plan_of(ROSTER, Garments=garments)
    on_hand = {line.size: line.on_hand for line in plan.shopping if line.kind == "blank"}
    assert on_hand == {"M": 1, "L": 2, "S": 0}


def test_what_is_paid_too_much_is_a_credit(plan_of: Callable[..., Plan]) -> None:
    job = [["Setting", "Value"], ["Margin or fixed price", "15.00"]]
    (line,) = plan_of([["Who", "Size", "Paid"], ["Ana", "M", 20]], Job=job).money
    assert line.owed == Decimal("-5.00")


HAND_MADE = {
    # M and L at 4.1235, 3XL at 7.0001 each; a yard of film at 6.50: three garments in one run
    "Garments": [
        ["Garment", "Size", "For", "Price", "On hand"],
        ["Tee", "M", "adult", "4.1235", None], ["Tee", "3XL", "adult", "7.0001", None],
        ["Tee", "Youth M", "youth", "3.005", None],
    ],
    "Film": [["Film", "Rolls sold"], ["Black smooth", "3 yd = 6.50"]],
}  # fmt: skip
FAMILY = [["Who", "Size", "Garment", "Group"], ["Ana", "M", "Tee", "A"], ["Bo", "M", "Tee", "A"],
          ["Cy", "3XL", "Tee", "B"], ["Di", "Youth M", "Tee", "B"]]  # fmt: skip
RULES = [["Setting", "Value"], ["Margin or fixed price", "10 %"], ["Supplies per garment", 0.4]]


@pytest.mark.parametrize(
    ("price_by", "prices"),
    [
        # blanks: 2 x 4.1235 = 8.247, 8.25 to the cent; 7.00; 3.005, 3.01 to the cent
        # film 6.50 / 4 = 1.625, supplies 0.40
        # adult: (8.25 + 7.00) / 3 = 5.0833 + 2.025 = 7.1083, with 10 % 7.8192; youth: 3.01 + 2.025 = 5.035, 5.5385
        ("class", ["7.82", "7.82", "7.82", "5.54"]),
        # (8.25 + 7.00 + 3.01) / 4 = 4.565 + 2.025 = 6.59, with 10 % 7.249
        ("job", ["7.25", "7.25", "7.25", "7.25"]),
    ],
)
def test_prices_against_sums_made_by_hand(price_by: str, prices: list[str], plan_of: Callable[..., Plan]) -> None:
    plan = plan_of(FAMILY, Job=[*RULES, ["Price by", price_by]], **HAND_MADE)
    assert [str(line.price) for line in plan.money] == prices
    sums = account(plan.money, plan.job.settings)
    assert sums is not None
    # 8.25 + 7.00 + 3.01 blanks, 6.50 film, 1.60 supplies
    assert sums.cost == Decimal("26.36") == sum(line.cost or 0 for line in plan.shopping)
    assert sums.margin == Decimal("2.64")
    assert sums.rounding == sums.prices - Decimal("29.00")
    assert sums.prices == sum(map(Decimal, prices))


def test_by_own_cost_each_pays_for_its_own_blank_and_film(plan_of: Callable[..., Plan]) -> None:
    ana, bo, cy, di = plan_of(FAMILY, Job=[*RULES, ["Price by", "own cost"]], **HAND_MADE).money
    assert ana.price is not None
    assert cy.price is not None
    assert (cy.blank, di.blank) == (Decimal("7.00"), Decimal("3.01"))
    assert cy.price > ana.price
    assert sum(line.film or 0 for line in (ana, bo, cy, di)) == Decimal("6.50")


def test_a_late_joiner_pays_what_was_told_for_the_same_thing(plan_of: Callable[..., Plan]) -> None:
    told = [["Garment no.", "Who", "Blank", "Film", "Supplies", "Labor", "Price", "Paid"],
            [1, "Ana", 4.12, 1.62, 0.4, None, 8, None], [2, "Bo", 4.12, 1.62, 0.4, None, 8, None]]  # fmt: skip
    roster = [["Garment no.", "Who", "Size", "Garment", "Status"], [1, "Ana", "M", "Tee", "done"],
              [2, "Bo", "M", "Tee", "redo garment"], [None, "Late", "3XL", "Tee", None],
              [None, "Small", "Youth M", "Tee", None]]  # fmt: skip
    plan = plan_of(roster, Money=told, Job=RULES, **HAND_MADE)
    ana, bo, late, small = plan.money
    assert [line.price for line in (ana, bo, late)] == [8, 8, 8]
    assert small.price not in (None, 8)
    assert (ana.blank, bo.blank) == (Decimal("4.12"), Decimal("4.12"))
    sums = account(plan.money, plan.job.settings)
    assert sums is not None
    assert sums.prices == sums.cost + sums.margin + sums.rounding


def random_job(source: random.Random) -> tuple[list[list[object]], list[list[object]], list[list[object]]]:
    """Roster, Garments and Job of a small job; blank prices with up to four decimals."""
    kinds = [("Tee", "M"), ("Tee", "3XL"), ("Tee", "Youth M"), ("Hoodie", "M"), ("Hoodie", "L")]
    garments: list[list[object]] = [["Garment", "Size", "Price", "On hand"]]
    for name, size in kinds:
        price = source.choice(
            (f"{source.randint(1, 99999) / 10000:.4f}", f"1 = {source.randint(300, 900) / 100}; 3 = 2.999")
        )
        garments.append([name, size, price, source.choice((None, None, 1))])
    roster: list[list[object]] = [["Who", "Garment", "Size", "Group"]]
    for at in range(source.randint(1, 7)):
        roster.append([f"Guest {at}", *source.choice(kinds), source.choice("AB")])
    settings: list[list[object]] = [
        ["Setting", "Value"], ["Price by", source.choice(("class", "class", "job", "own cost"))],
        ["Margin or fixed price", source.choice(("0 %", "12.5 %", "33 %", "11.00"))],
        ["Price rounding", source.choice((0.01, 0.05, 0.5))], ["Labor per hour", source.choice((None, 17.77))],
        ["Supplies per garment", source.choice((None, 0.333))], ["Second order costs", source.choice((0, 15, 200))],
    ]  # fmt: skip
    return roster, garments, settings


@pytest.mark.parametrize("seed", range(12))
def test_random_jobs_add_up_and_equal_things_cost_the_same(seed: int, plan_of: Callable[..., Plan]) -> None:
    check_random_job(seed, plan_of)


def check_random_job(seed: int, plan_of: Callable[..., Plan]) -> None:
    roster, garments, job = random_job(random.Random(seed))
    film = [["Film", "Rolls sold"], ["Black smooth", "1 yd = 6.5; 5 yd = 21.123"]]
    plan = plan_of(roster, Garments=garments, Film=film, Job=job)
    settings, lines = plan.job.settings, plan.money
    for kind in ("blank", "film", "supply"):
        name = "supplies" if kind == "supply" else kind
        bought = sum(line.cost for line in plan.shopping if line.kind == kind and line.cost is not None)
        assert sum(getattr(line, name) or 0 for line in lines) == bought
    alike: dict[object, set[Decimal | None]] = {}
    for garment, line in zip(plan.garments, lines, strict=True):
        blank = garment.blank
        thing = {
            "class": (blank.garment, blank.for_),
            "job": (),
            "own cost": (garment.no,),
        }[settings.price_by]
        alike.setdefault(thing, set()).add(line.price)
    assert all(len(prices) == 1 for prices in alike.values())
    sums = account(lines, settings)
    assert sums is not None
    assert sums.prices == sums.cost + sums.margin + sums.rounding
    assert sums.prices == sum(line.price or 0 for line in lines)
    assert all(amount == amount.quantize(Decimal("0.01")) for amount in (sums.prices, sums.cost, sums.margin))
    if settings.fixed_price is None:  # rounded up, and by less than a step a garment, and a cent for the margin's own
        assert Decimal("-0.01") * len(lines) <= sums.rounding < (settings.price_rounding + Decimal("0.01")) * len(lines)
