"""Turns the rows of a Shopping list into what was ordered and what has come."""

from collections.abc import Iterable

from xlbatch.job.marks import OrderKey, OrderMark, row_key
from xlbatch.tables.line import Line


def read_orders(given: Iterable[Line]) -> tuple[OrderMark, ...]:
    """The lines of the Shopping list; what is wrong in them is told where the deliveries are read."""
    return tuple(_order(line) for line in given if line.text("Kind"))


def _order(line: Line) -> OrderMark:
    needed, spares, on_hand, way = (_count(line, name) for name in ("Needed", "Spares", "On hand", "On the way"))
    kind, garment = line.text("Kind").casefold(), line.text("Garment")
    item = garment if kind == "blank" else line.text("Item")
    key = OrderKey(kind, item, garment, line.text("Size"), line.text("Color"))
    ordered, arrived = line.arrived("Ordered"), line.arrived("Arrived")
    row = row_key((kind, *(line.text(heading) for heading in ("Item", "Garment", "Size", "Color"))))
    buy = max(0, needed + spares - on_hand - way)
    return OrderMark(line.source, key, buy, ordered, arrived, line.any_text("Note"), row)


def _count(line: Line, heading: str) -> int:
    return line.count(heading) or 0
