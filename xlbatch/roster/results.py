"""Turns what stands on a plan's own sheets into records: results at the press, blanks that arrived, prices told."""

from collections.abc import Iterable, Mapping
from decimal import Decimal

from xlbatch.job.costs import Costs
from xlbatch.job.marks import Delivery
from xlbatch.problems import Problem
from xlbatch.tables import boxes
from xlbatch.tables.line import Line


def read_deliveries(given: Iterable[Line]) -> tuple[tuple[Delivery, ...], tuple[str, ...], tuple[Problem, ...]]:
    """The blanks of the Shopping list, the film items that are marked as arrived, and what was wrong.

    What came is all that was to be bought, or the number written."""
    deliveries, film_came, problems = [], [], []
    for line in given:
        if line.text("Kind") != "blank":
            film_came += [line.text("Item")] if line.text("Kind") == "film" and _marked(line) else []
            continue
        needed, spares, on_hand = (line.count(heading) or 0 for heading in ("Needed", "Spares", "On hand"))
        arrived = line.arrived("Arrived")
        came = max(0, needed + spares - on_hand) if arrived is True else max(arrived or 0, -on_hand) or None
        garment, size, color = (line.text(heading) for heading in ("Garment", "Size", "Color"))
        deliveries.append(Delivery(line.source, garment, size, color, on_hand, came))
        problems += line.problems
    return tuple(deliveries), tuple(film_came), tuple(problems)


def _marked(line: Line) -> bool:
    """Whether Arrived says anything but no."""
    cell = line.cells.get("Arrived")
    return cell is not None and bool(boxes.arrived(cell))


def read_prices(
    given: Iterable[Line],
) -> tuple[Mapping[int, Decimal], Mapping[int, Costs], frozenset[int], tuple[Problem, ...]]:
    """The prices and the costs of the Money sheet by garment number, whose prices stand, and what was wrong. The
    groups' sums have no number."""
    prices, costs, told, problems = {}, {}, set(), []
    for line in given:
        number = line.count("Garment no.") if line.given("Garment no.") else None
        price = line.money("Price") if number else None
        if number and price is not None:
            prices[number] = price
            told |= {number} if line.text("Told") == "yes" else set()
            costs[number] = Costs(*(line.money(heading) for heading in ("Blank", "Film", "Supplies", "Labor")))
        problems += line.problems
    return prices, costs, frozenset(told), tuple(problems)
