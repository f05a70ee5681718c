"""Blanks on hand: those of the plan, and what came since, less what was used; of too few it is asked once."""

from collections import Counter
from collections.abc import Collection, Mapping
from dataclasses import replace

import pytest

from tests.kept.test_what_is_remembered import job
from xlbatch.check.stock import BlankKind
from xlbatch.job.marks import OrderKey, OrderMark
from xlbatch.job.source import Source
from xlbatch.kept.blanks import Shelf, shelf, used_since
from xlbatch.kept.memory import KeptGarment
from xlbatch.kept.on_the_way import Ordered

TEE = replace(job().blanks[0], garment="Tee", size="M", colors=("White", "Navy"))
WHITE: BlankKind = ("tee", "M", "white")
NAVY: BlankKind = ("tee", "M", "navy")
RED: BlankKind = ("tee", "M", "red")


def there(
    on_hand: Mapping[str, int],
    came: Mapping[str, int] | None = None,
    used: Mapping[BlankKind, int] | None = None,
    short: Mapping[BlankKind, int] | None = None,
    counted: Collection[tuple[str, str]] = (),
) -> Shelf:
    orders = {}
    for row, (color, count) in enumerate((came or {}).items(), 5):
        key = OrderKey("blank", "Tee", "Tee", "M", color)
        mark = OrderMark(Source("Shopping list", row, {"Arrived": f"K{row}"}), key, 9, None, count)
        orders[key] = Ordered(0, count, mark)
    orders[OrderKey("supply", "Tee", "Tee", "M", "white")] = Ordered(0, 50, None)
    other = replace(TEE, size="L", on_hand={"white": 5})
    now = shelf((other, replace(TEE, on_hand=on_hand)), orders, Counter(used or {}), short or {}, counted)
    assert now.blanks[0] == other
    return now


@pytest.mark.parametrize(
    ("on_hand", "came", "used", "now"),
    [
        ({"white": 3}, {}, {}, {"white": 3}),
        ({"white": 3}, {"white": 2}, {}, {"white": 5}),
        ({"White": 3}, {"white": 2}, {WHITE: 4}, {"White": 1}),
        ({"white": 3}, {}, {WHITE: 3}, {"white": 0}),
        ({"white": 3}, {}, {WHITE: -1}, {"white": 4}),  # it was not used after all
        ({"": 3}, {"white": 2}, {WHITE: 1}, {"": 4}),  # no color was said, and there is but one
        ({"": 3}, {"white": 2}, {NAVY: 1}, {"": 3, "white": 2}),
        ({"white": 3}, {"navy": 2}, {}, {"white": 3, "navy": 2}),
        ({"white": 3}, {"navy": 2}, {WHITE: 1, NAVY: 2}, {"white": 2}),
        ({}, {"white": -2}, {}, {}),
    ],
)
def test_what_came_is_there_and_what_was_used_is_not(
    on_hand: Mapping[str, int], came: Mapping[str, int], used: Mapping[BlankKind, int], now: Mapping[str, int]
) -> None:
    after = there(on_hand, came, used)
    assert after.blanks[1].on_hand == now
    lacking = {NAVY: 1} if "" in on_hand and NAVY in used else {WHITE: 2} if not on_hand else {}
    assert (after.short, len(after.problems)) == (lacking, len(lacking))


def test_what_was_used_before_it_came_is_short_until_it_comes() -> None:
    short = there({"white": 1}, {"navy": 1}, {WHITE: 3, NAVY: 2})
    assert (short.short, short.blanks[1].on_hand) == ({WHITE: 2, NAVY: 1}, {"white": 0})
    (asked,) = short.problems
    assert (asked.where.cell, "tee M navy, tee M white" in asked.wrong) == ("K5", True)
    later = there({"white": 0}, {"white": 5}, {WHITE: 1}, {WHITE: 2})
    assert (later.short, later.blanks[1].on_hand, later.problems) == ({}, {"white": 2}, ())
    assert there({"white": 1}, {}, {WHITE: 3}).problems[0].where == ("Shopping list", "")
    assert there({}, {}, {("polo", "M", "white"): 3}).problems == ()  # no such blank is listed


def test_a_count_by_hand_is_as_of_now() -> None:
    now = there({"white": 3}, {"white": 5}, {WHITE: 9}, {WHITE: 2}, [("tee", "M")])
    assert (now.blanks[1].on_hand, now.short, now.problems) == ({"white": 3}, {}, ())


def test_used_is_what_was_planned_not_what_the_list_says_now() -> None:
    garments = [KeptGarment(1, "Tee", "M", "White", ""), KeptGarment(2, "TEE", "M", "white", "begun")]
    assert used_since({1: 2, 2: 1}, garments) == {WHITE: 3}
    assert used_since({2: -1}, garments) == {WHITE: -1}
