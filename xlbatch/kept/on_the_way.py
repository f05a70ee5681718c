"""What was ordered and what has come since the plan: both boxes of the Shopping list are counted once."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from xlbatch.job.marks import OrderKey, OrderMark
from xlbatch.kept.memory import KeptOrder
from xlbatch.trade.tables import color_name


@dataclass(frozen=True)
class Ordered:
    """Of one line: how many are on the way now, and how many have come since the plan; where it stands."""

    on_the_way: int
    came: int
    mark: OrderMark | None
    note: str = ""


def orders_now(kept: Iterable[KeptOrder], marks: Iterable[OrderMark]) -> Mapping[OrderKey, Ordered]:
    """Every line that was ever ordered or stands on the list now.

    Arrived without a number is all that was on the way, or, where nothing was, all that was to be bought; a number
    below zero takes back what was marked before."""
    orders = {line_key(order.key): Ordered(order.on_the_way, 0, None, order.note) for order in kept}
    for mark in marks:
        key = line_key(mark.key)
        before = orders.get(key, Ordered(0, 0, None))
        way = before.on_the_way + _many(mark.ordered, mark.buy)
        came = _many(mark.arrived, way or mark.buy)
        orders[key] = Ordered(max(0, way - came), before.came + came, before.mark or mark, mark.note)
    return orders


def line_key(key: OrderKey) -> OrderKey:
    """The key however its garment and color are written."""
    return key._replace(color=color_name(key.color) if key.kind == "blank" else "")


def _many(marked: bool | int | None, all_: int) -> int:
    return all_ if marked is True else int(marked or 0)
