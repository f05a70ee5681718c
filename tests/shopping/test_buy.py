"""What to buy: blanks less what is there and coming, with spares; film by the roll; supplies; and what is asked."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from tests.art.conftest import FILM, ROW
from tests.kept.test_what_is_remembered import job as blank_job
from xlbatch.check.garment import Garment
from xlbatch.film.layout import FilmNeed, Layout
from xlbatch.job.job import Blank, Job, PriceBreak, Roll
from xlbatch.job.marks import OrderKey, Stock
from xlbatch.job.source import Source
from xlbatch.shopping.arrivals import FirstPiece, first_pieces
from xlbatch.shopping.buy import shopping_list, shopping_problems, spare_choices
from xlbatch.shopping.lines import BuyLine
from xlbatch.trade.spoilage import enough

STEPS = (PriceBreak(1, Decimal(4)), PriceBreak(4, Decimal(3)))
SOURCE = Source("Garments", 3, {"On hand": "F3"})
LARGE = replace(blank_job().blanks[0], garment="Tee", size="L", prices=STEPS, on_hand={}, source=SOURCE, chest=559.0)
SMALL = replace(LARGE, size="S", chest=457.0, dots=2)
ROLL = Roll(4572, Decimal(21))


def garment(no: int, blank: Blank = LARGE, color: str = "white", *, needs_blank: bool = True) -> Garment:
    return Garment(replace(ROW, no=no), blank, color, "Ana", (), (), needs_blank)


def job(blanks: Sequence[Blank] = (LARGE, SMALL), orders: Mapping[OrderKey, Stock] | None = None, **rules: Any) -> Job:
    own = blank_job()
    usual: dict[str, Any] = {
        "spoiled_blanks_per_100": 0, "sureness": None, "second_order_costs": Decimal(0), "supplies_per_garment": None
    }  # fmt: skip
    settings = replace(own.settings, **usual | rules)
    return replace(own, settings=settings, blanks=tuple(blanks), films=(FILM,), orders=orders or {})


def bought(own: Job, garments: Sequence[Garment], rolls: int = 0) -> list[Any]:
    need = FilmNeed(FILM, 1, 1, 0, 0, 0, 0, 0, 0, 0, ((rolls, ROLL),) if rolls else (), (), None)
    return [line for line in shopping_list(own, tuple(garments), Layout((), (), (need,))) if line.kind != "supply"]


def key(color: str = "white", size: str = "L") -> OrderKey:
    return OrderKey("blank", "Tee", "Tee", size, color)


def counts(lines: Sequence[BuyLine]) -> list[tuple[str, int, int, int, int, int]]:
    """Size, needed, spares, on hand, on the way, to buy."""
    return [(it.size, it.needed, it.spares, it.on_hand, it.on_the_way, it.buy) for it in lines]


def test_blanks_are_listed_as_on_garments_by_size_then_color() -> None:
    lines = bought(job(), [garment(1, SMALL), garment(2, LARGE, "white"), garment(3, LARGE, "navy"), garment(4)])
    assert [(line.size, line.color, line.needed) for line in lines] == [
        ("L", "navy", 1), ("L", "white", 2), ("S", "white", 1),
    ]  # fmt: skip
    assert {line.price for line in lines} == {Decimal(3)}  # four together
    lines = bought(job(), [garment(1), garment(2), garment(3, SMALL), garment(4, needs_blank=False)])
    assert [(line.needed, line.price, line.cost) for line in lines] == [(2, 4, 8), (1, 4, 4)]


@pytest.mark.parametrize(
    ("on_hand", "orders", "lines"),
    [
        ({"white": 1}, {}, [("L", 3, 0, 1, 0, 2)]),
        ({"White": 5}, {}, [("L", 3, 0, 5, 0, 0)]),
        ({"navy": 1}, {}, [("L", 3, 0, 0, 0, 3)]),
        ({"": 2}, {}, [("L", 3, 0, 2, 0, 1)]),
        ({"": 2, "white": 1}, {}, [("L", 3, 0, 3, 0, 0)]),
        ({"white": 1}, {key(): Stock(1, 0)}, [("L", 3, 0, 1, 1, 1)]),
        ({}, {key(): Stock(9, 0)}, [("L", 3, 0, 0, 9, 0)]),
        ({}, {key("navy"): Stock(2, 0)}, [("L", 3, 0, 0, 0, 3), ("L", 0, 0, 0, 2, 0)]),  # still to be ticked off
        ({}, {key("navy"): Stock(0, 2)}, [("L", 3, 0, 0, 0, 3)]),
        ({}, {key(size="S"): Stock(1, 4, "soon")}, [("L", 3, 0, 0, 0, 3), ("S", 0, 0, 4, 1, 0)]),
    ],
)
def test_what_is_there_or_coming_is_not_bought(
    on_hand: Mapping[str, int], orders: Mapping[OrderKey, Stock], lines: list[tuple[Any, ...]]
) -> None:
    blank = replace(LARGE, on_hand=on_hand)
    assert counts(bought(job((blank, SMALL), orders), [garment(no, blank) for no in (1, 2, 3)])) == lines


def test_a_number_without_a_color_counts_where_one_color_is_needed_and_else_is_asked_about() -> None:
    blank = replace(LARGE, on_hand={"": 2})
    two = (garment(1, blank), garment(2, blank, "navy"))
    assert counts(bought(job((blank,)), two)) == [("L", 1, 0, 0, 0, 1)] * 2
    (asked,) = shopping_problems(job((blank,)), (), two)
    assert (asked.code, asked.where, asked.found) == ("on-hand-which-color", ("Garments", "F3"), "2")
    for blanks, garments in (
        ((blank,), (garment(1, blank), garment(2, blank, "White"))),
        ((blank, SMALL), (garment(1, blank), garment(2, SMALL, "navy"))),
        ((LARGE,), (garment(1), garment(2, color="navy"))),
    ):
        assert shopping_problems(job(blanks), (), garments) == ()


def test_spares_are_listed_beyond_what_is_there() -> None:
    """As sure as 95 in 100 with one blank in ten spoiled: two of three needed; one that is there already is enough."""
    three = [garment(no) for no in (1, 2, 3)]
    least = next(more for more in range(9) if enough(3 + more, 3, 0.1) >= 0.95)
    own = job(spoiled_blanks_per_100=10, sureness=95)
    assert counts(bought(own, three)) == [("L", 3, least, 0, 0, 3 + least)]
    assert {line.price for line in bought(own, three)} == {Decimal(3)}  # four together
    there = replace(LARGE, on_hand={"white": 4})
    more = least - 1
    lines = counts(bought(replace(own, blanks=(there,)), [garment(no, there) for no in (1, 2, 3)]))
    assert lines == [("L", 3, least if more else 0, 4, 0, more)]
    choices: tuple[Any, ...] = spare_choices(own, tuple(three))
    none, _proposed, sure = choices
    assert (none.count, none.cost, none.sure) == (0, 0, pytest.approx(0.9**3))
    assert (sure.name, sure.count, sure.cost) == ("95 in 100 sure", least, (3 + least) * (3 if least else 4) - 12)
    assert spare_choices(own, ()) == ()
    unpriced = replace(LARGE, prices=())
    assert {each.cost for each in spare_choices(replace(own, blanks=(unpriced,)), (garment(1, unpriced),))} == {None}


def test_spares_that_pay_are_bought_where_no_sureness_is_asked_for() -> None:
    """One of one spoiled in ten: a second order of 50 is 5.00 to be expected, and another blank is 4.00."""
    for costs, spares in ((50, 1), (40, 0)):
        own = job(spoiled_blanks_per_100=10, second_order_costs=Decimal(costs))
        assert counts(bought(own, [garment(1)])) == [("L", 1, spares, 0, 0, 1 + spares)]
        assert [choice.count for choice in spare_choices(own, (garment(1),))][1] == spares


OF_FILM = OrderKey("film", "Black smooth, 12 in × 5 yd roll", "", "", "")


def test_rolls_to_buy_stand_beside_those_on_the_way() -> None:
    (line,) = bought(job(), [], rolls=2)
    assert (line.item, line.color, line.needed, line.buy, line.cost) == (OF_FILM.item, "black", 2, 2, 42)
    (line,) = bought(job(orders={OF_FILM: Stock(1, 0, "soon")}), [], rolls=2)
    assert (line.needed, line.on_the_way, line.buy, line.note) == (3, 1, 2, "soon")
    (line,) = bought(job(orders={OF_FILM: Stock(1, 0)}), [])
    assert (line.color, line.needed, line.on_the_way, line.buy, line.cost) == ("black", 1, 1, 0, None)
    lines = bought(job(orders={key(size="S"): Stock(1, 0)}), [garment(1)], rolls=1)
    assert [(line.kind, line.size, line.on_the_way) for line in lines] == [
        ("blank", "L", 0), ("blank", "S", 1), ("film", "", 0),
    ]  # fmt: skip


def test_supplies_of_each_garment_carry_the_price_and_what_is_there_is_not_bought() -> None:
    orders = {OrderKey("supply", "Bag and wash card", "", "", ""): Stock(1, 1)}
    own = job(orders=orders, supplies_per_garment=Decimal("0.25"))
    lines = shopping_list(own, (garment(1), garment(2), garment(3)), Layout((), (), ()))
    bags, covers, *_ = [line for line in lines if line.kind == "supply"]
    assert (bags.needed, bags.on_hand, bags.on_the_way, bags.buy, bags.price) == (3, 1, 1, 1, Decimal("0.25"))
    assert (covers.needed, covers.on_hand, covers.price) == (2, 0, None)


def test_prices_that_are_missing_are_asked_for_once() -> None:
    blank = BuyLine("blank", "Tee", "Tee", "L", "white", 1, 0, 0, None)
    film, supply = replace(blank, kind="film", item="Gold roll"), replace(blank, kind="supply", item="Bag")
    (asked,) = shopping_problems(job(), (blank, replace(blank, size="S"), film, supply), ())
    assert (asked.where.sheet, "Tee; Gold roll" in asked.wrong + asked.todo) == ("Garments", True)
    assert "Garments and Film" in asked.wrong + asked.todo
    (asked,) = shopping_problems(job(), (film, replace(blank, price=Decimal(1))), ())
    assert asked.where.sheet == "Film"
    assert shopping_problems(job(), (replace(blank, on_hand=1), supply), ()) == ()


def test_what_to_look_at_on_the_first_of_each_garment() -> None:
    garments = [garment(1), garment(2, SMALL, "Navy"), garment(3, replace(LARGE, garment="Polo"), needs_blank=False)]
    (tee,) = first_pieces(garments)
    assert tee == FirstPiece("Tee", ("white", "navy"), LARGE.dots, (("S", 457.0), ("L", 559.0)))
    for dots, said in ((1, "care label 1 dot;"), (3, "care label 3 dots;"), (None, "write how many")):
        assert said in replace(tee, dots=dots).text("in")
    assert tee.text("cm").endswith("S 45.7 cm, L 55.9 cm")
