"""What each garment costs and who owes what, from a shopping list, film and hours made by hand."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from decimal import Decimal
from typing import Any, Literal

import pytest

from tests.art.conftest import FILM, ROW, SPEC
from tests.kept.test_follows import decal
from tests.kept.test_what_is_remembered import job as blank_job
from xlbatch.art.decal import Decal as FilmDecal
from xlbatch.check.garment import Garment
from xlbatch.film.layout import FilmNeed, Layout
from xlbatch.job.costs import Costs
from xlbatch.job.job import Job, Paid, RosterRow
from xlbatch.job.marks import Delivery, OrderKey, Stock
from xlbatch.job.source import Source
from xlbatch.schedule.hours import TimePlan
from xlbatch.shopping.lines import BuyLine, MoneyLine
from xlbatch.shopping.prices import account, money, shared_out

TEE = replace(blank_job().blanks[0], garment="Tee", size="M", for_="adult")
YOUTH = replace(TEE, size="Youth M", for_="youth")
RED = replace(FILM, name="Red smooth")
PER = Literal["class", "job", "own cost"]


def row(no: int, **changes: Any) -> RosterRow:
    return replace(ROW, no=no, **changes)


def garment(row_: RosterRow, *, needs_blank: bool = True) -> Garment:
    blank = replace(YOUTH if row_.size == "Youth M" else TEE, garment=row_.garment)
    specs = (replace(SPEC, design=row_.design),)
    return Garment(row_, blank, row_.color, "Ana", specs, specs, needs_blank)


def blanks(needed: int, cost: str | None, size: str = "M", name: str = "Tee", *, spares: int = 0) -> BuyLine:
    """At `cost` each."""
    return BuyLine("blank", name, name, size, "white", needed, spares, 0, None if cost is None else Decimal(cost))


def supplies(cost: str | None) -> BuyLine:
    return BuyLine("supply", "Bag", "", "", "", 1, 0, 0, None if cost is None else Decimal(cost))


def layout(*costs: str | None) -> Layout:
    films = zip((FILM, RED), costs, strict=False)
    known = [(film, None if cost is None else Decimal(cost)) for film, cost in films]
    return Layout((), (), tuple(FilmNeed(film, 1, 1, 0, 0, 0, 0, 0, 0, 0, (), (), cost) for film, cost in known))


def job(
    rows: Sequence[RosterRow], per: PER = "own cost", records: Mapping[str, Any] | None = None, **changes: Any
) -> Job:
    own = blank_job()
    rules: dict[str, Any] = {
        "price_by": per, "margin": Decimal(0), "fixed_price": None, "labor_per_hour": None,
        "supplies_per_garment": None, "price_rounding": Decimal("0.01"),
        "usual_garment": "Tee", "usual_color": "white", "usual_design": "Name",
    }  # fmt: skip
    settings = replace(own.settings, **rules | changes)
    return replace(own, settings=settings, roster=tuple(rows), blanks=(TEE, YOUTH), **records or {})


def lines_of(
    own: Job,
    bought: Sequence[BuyLine],
    laid: Layout,
    decals: Sequence[FilmDecal] = (),
    seconds: float = 0,
    garments: Sequence[Garment] | None = None,
) -> tuple[Any, ...]:
    made = [garment(each) for each in own.roster if each.status != "done"] if garments is None else garments
    return money(own, tuple(made), tuple(decals), laid, tuple(bought), TimePlan((), {"press": seconds}))


def shares(lines: Sequence[MoneyLine], part: str) -> list[str]:
    return [str(getattr(line, part)) for line in lines]


TWO = (row(1), row(2, size="Youth M"))


def test_blanks_and_spares_are_shared_by_those_who_need_them() -> None:
    bought = [blanks(1, "4.00", spares=1), blanks(1, "3.00", "Youth M"), supplies("9.00")]
    assert shares(lines_of(job(TWO), bought, layout("0")), "blank") == ["6.00", "5.00"]
    in_hand = [garment(TWO[0]), garment(TWO[1], needs_blank=False)]
    assert shares(lines_of(job(TWO), [blanks(1, "4.00")], layout("0"), garments=in_hand), "blank") == ["4.00", "0.00"]
    nothing = [replace(blanks(1, None), on_hand=1), blanks(1, "3.00", "Youth M", spares=1)]
    assert shares(lines_of(job(TWO), nothing, layout("0")), "blank") == ["1.50", "4.50"]
    unknown = lines_of(job(TWO), [blanks(1, None), blanks(1, "3.00", "Youth M")], layout("0"))
    assert (shares(unknown, "blank"), shares(unknown, "price")) == (["None", "3.00"], ["None", "3.00"])


def test_film_is_shared_by_area_or_by_all_alike() -> None:
    """Of the black a third and two thirds; the red is the second one's alone."""
    red = replace(decal(4, 2), film="RED smooth")
    decals = [decal(1, 1), replace(decal(2, 2), height=120), red]
    black, with_red = layout("9.00"), layout("9.00", "5.00")
    assert shares(lines_of(job(TWO), [], black, decals), "film") == ["3.00", "6.00"]
    assert shares(lines_of(job(TWO), [], with_red, decals), "film") == ["3.00", "11.00"]
    assert shares(lines_of(job(TWO), [], layout("9.00", None), decals), "film") == ["3.00", "None"]
    for per in ("class", "job"):
        assert shares(lines_of(job(TWO, per), [], with_red, decals), "film") == ["7.00", "7.00"]
        assert shares(lines_of(job(TWO, per), [], layout("9.00", None), decals), "film") == ["None", "None"]


def test_labor_is_shared_by_decals_or_by_all_alike() -> None:
    decals = [decal(no, owner) for no, owner in enumerate((1, 2, 2), 1)]
    own = job(TWO, labor_per_hour=Decimal(18))
    assert shares(lines_of(own, [], layout("0"), decals, 1200), "labor") == ["2.00", "4.00"]
    assert shares(lines_of(own, [], layout("0"), (), 1200), "labor") == ["3.00", "3.00"]
    by_job = job(TWO, "job", labor_per_hour=Decimal(18))
    assert shares(lines_of(by_job, [], layout("0"), decals, 1201), "labor") == ["3.01", "3.00"]  # 6.005
    assert shares(lines_of(job(TWO), [], layout("0"), decals, 1200), "labor") == ["None", "None"]


def test_supplies_are_shared_by_all_where_their_price_is_given() -> None:
    bought = [supplies("0.50"), supplies("0.31"), supplies(None), blanks(2, "1.00")]
    own = job(TWO, supplies_per_garment=Decimal(1))
    assert shares(lines_of(own, bought, layout("0")), "supplies") == ["0.41", "0.40"]
    assert shares(lines_of(job(TWO), bought, layout("0")), "supplies") == ["None", "None"]


@pytest.mark.parametrize(
    ("changes", "prices"),
    [
        ({}, ["4.10", "4.10", "9.10"]),
        ({"margin": Decimal("0.1")}, ["4.51", "4.51", "10.01"]),
        ({"margin": None}, ["4.10", "4.10", "9.10"]),
        ({"price_rounding": Decimal("0.5")}, ["4.50", "4.50", "9.50"]),
        ({"price_rounding": Decimal("0.1")}, ["4.10", "4.10", "9.10"]),
        ({"price_rounding": Decimal(0)}, ["4.10", "4.10", "9.10"]),
        ({"fixed_price": Decimal("12.00")}, ["12.00"] * 3),
        ({"labor_per_hour": Decimal(18)}, ["5.10", "5.10", "10.10"]),  # 600 s, 3.00 in all
    ],
)
def test_a_price_is_the_cost_with_the_margin_rounded_up(changes: dict[str, Any], prices: list[str]) -> None:
    rows = (row(1), row(2), row(3, size="Youth M"))
    bought = [blanks(2, "4.00"), blanks(1, "9.00", "Youth M")]
    assert shares(lines_of(job(rows, "class", **changes), bought, layout("0.30"), (), 600), "price") == prices


@pytest.mark.parametrize(
    ("per", "other", "alike"),
    [
        ("class", {}, True), ("class", {"garment": "TEE", "design": "name", "color": "navy"}, True),
        ("class", {"design": "Camp"}, False), ("class", {"garment": "Polo"}, False),
        ("class", {"size": "Youth M"}, False),
        ("own cost", {"color": "White"}, True), ("own cost", {"color": "navy"}, False),
        ("own cost", {"size": "Youth M"}, False), ("own cost", {"design": "Camp"}, False),
        ("job", {"garment": "Polo", "size": "Youth M", "design": "Camp"}, True),
    ],
)  # fmt: skip
def test_what_costs_the_same_has_the_price_that_was_told_for_it(per: PER, other: dict[str, Any], alike: bool) -> None:
    """The first was told 8, as it was; the other joins late. So it is where the first is done, by its row alone."""
    rows = (row(1), row(2, **other))
    told = {"prices": {1: Decimal(8)}, "costs": {1: Costs(Decimal(4), Decimal(3), None, None)}, "told": frozenset({1})}
    bought = [blanks(1, "40.00"), blanks(1, "40.00", "Youth M"), blanks(1, "40.00", name="Polo"),
              blanks(1, "40.00", name="TEE")]  # fmt: skip
    first, late = lines_of(job(rows, per, told), bought, layout("2"), [decal(1, 1), decal(2, 2)])
    assert (first.price, first.blank, first.film, first.told, late.told) == (8, 4, 3, True, True)
    assert (late.price == 8) is alike
    done = replace(rows[0], status="done", garment="", color="", design="")
    first, late = lines_of(job((done, rows[1]), per, told), bought, layout("2"), [decal(2, 2)])
    assert (first.price, first.told, late.price == 8) == (8, True, alike)
    unknown = replace(done, size="10XL")
    assert (lines_of(job((unknown, rows[1]), per, told), bought, layout("2"))[-1].price == 8) is (per == "job")


def test_of_several_prices_told_the_one_told_most_often_counts() -> None:
    rows = [row(no) for no in range(1, 6)]
    for told, price in (((8, 9, 9, 7), 9), ((8, 9, 9, 8), 8), ((7, 8, 9, 10), 7)):
        prices = {no: Decimal(each) for no, each in enumerate(told, 1)}
        lines = lines_of(job(rows[::-1], "class", {"prices": prices, "told": frozenset({1})}), [], layout("1"))
        assert (lines[0].no, lines[-1].no, lines[-1].price) == (1, 5, price)


BLANK = OrderKey("blank", "Tee", "Tee", "M", "white")


@pytest.mark.parametrize(
    ("changes", "records", "stands"),
    [
        ({}, {}, False),
        ({"done_so_far": ("blank in hand",)}, {}, True),
        ({}, {"orders": {BLANK: Stock(0, 0, "soon")}}, False),
        ({}, {"orders": {BLANK: Stock(1, 0)}}, True),
        ({}, {"orders": {BLANK: Stock(0, 1)}}, True),
        ({}, {"told": frozenset({9})}, True),
        ({}, {"deliveries": (Delivery(Source("Shopping list"), "Tee", "M", "white", 0, None),)}, False),
        ({}, {"deliveries": (Delivery(Source("Shopping list"), "Tee", "M", "white", 0, 0),)}, True),
    ],
)
def test_prices_told_stand_once_anything_was_ordered_or_pressed(
    changes: dict[str, Any], records: dict[str, Any], stands: bool
) -> None:
    own = job([row(1, **changes)], "class", records | {"prices": {1: Decimal(8)}})
    (line,) = lines_of(own, [blanks(1, "5.00")], layout("1.00"))
    assert (line.price, line.told) == ((8, True) if stands else (6, False))


def test_done_garments_without_a_price_told_have_no_line() -> None:
    rows = (row(1, status="done"), row(2, status="done"), row(3))
    own = job(rows, "class", {"prices": {2: Decimal(8), 3: Decimal(7)}})
    lines = lines_of(own, [blanks(1, "5.00")], layout("1.00"))
    assert [(line.no, line.price, line.blank) for line in lines] == [(2, 8, 0), (3, 7, 0)]
    assert [line.no for line in lines_of(replace(own, roster=rows[:2]), [], layout())] == [2]


def test_paid_and_owed_of_a_line() -> None:
    line = MoneyLine(1, "Ana", "", None, None, None, None, Decimal(8), Decimal(5))
    amounts: list[tuple[Paid, tuple[int | None, int]]] = [
        (Decimal(5), (5, 3)), ("yes", (8, 0)), (None, (None, 8)), (Decimal(9), (9, -1))
    ]  # fmt: skip
    for paid, (was_paid, owed) in amounts:
        now = replace(line, in_roster=paid)
        assert (now.paid, now.owed) == (None if was_paid is None else Decimal(was_paid), Decimal(owed))
    assert replace(line, price=None).owed is None


@pytest.mark.parametrize(
    ("changes", "margin", "rounding"),
    [
        ({"margin": Decimal("0.25")}, "2.51", "0.48"),  # a quarter of 10.02 is 2.505
        ({"margin": None}, "0.00", "2.99"),
        ({"fixed_price": Decimal("6.50")}, "2.98", "0.01"),
    ],
)
def test_the_account_of_all_prices(changes: dict[str, Any], margin: str, rounding: str) -> None:
    costs = ((Decimal(4), Decimal(1), None, Decimal("0.02")), (Decimal(3), Decimal(1), Decimal(1), None))
    prices = (Decimal("6.51"), Decimal("6.50"))
    lines = [MoneyLine(1, "", "", *each, price, None) for each, price in zip(costs, prices, strict=True)]
    settings = job((), **changes).settings
    sums = account(lines, settings)
    assert sums is not None
    assert (str(sums.prices), str(sums.cost)) == ("13.01", "10.02")
    assert (str(sums.margin), str(sums.rounding)) == (margin, rounding)
    for lacking in (replace(lines[1], price=None), replace(lines[1], blank=None), replace(lines[1], film=None)):
        assert account([lines[0], lacking], settings) is None
    assert account([], settings) is None


@pytest.mark.parametrize(
    ("cents", "weights", "parts"),
    [
        (10, [1, 1, 1], [4, 3, 3]), (11, [1, 1, 1], [4, 4, 3]), (10, [1, 2, 2], [2, 4, 4]), (10, [0, 0], [5, 5]),
        (5, [0, 0], [3, 2]), (10, [1, 1, 4], [2, 2, 6]), (9, [0, 1], [0, 9]), (10, [1, 6], [1, 9]), (7, [], []),
    ],
)  # fmt: skip
def test_odd_cents_go_to_the_largest_remainders(cents: int, weights: list[float], parts: list[int]) -> None:
    assert [int(share * 100) for share in shared_out(Decimal(cents) / 100, weights)] == parts
