"""Plans the same list anew with each change, really and at the same effort, side by side on the machine's cores."""

from collections.abc import Callable
from decimal import Decimal
from functools import partial

from xlbatch.film.cores import spread
from xlbatch.plan import Figures, Plan, Tried
from xlbatch.roster.read import Reading
from xlbatch.what_if.changes_to_try import changes

A_CENT, A_BIT = Decimal("0.01"), 0.5  # from where on it is something: money; mm of film, or minutes

Make = Callable[[Reading], Plan]


def tried(reading: Reading, plan: Plan, make: Make) -> tuple[Tried, ...]:
    """The changes that save money, film or minutes, with their figures; `make` plans a list.

    A change that makes fewer garments possible is left out."""
    own, wanted = figures(plan), changes(reading, plan)
    results = spread(partial(_of, make), [change.reading for change in wanted], pays=len(wanted) > 1)
    return tuple(
        Tried(change.name, change.how, result)
        for change, (result, garments) in zip(wanted, results, strict=True)
        if garments == len(plan.garments) and saves(own, result)
    )


def saves(plan: Figures, other: Figures) -> bool:
    """Whether there is less of anything."""
    money = plan.money is not None and other.money is not None and plan.money - other.money >= A_CENT
    return money or plan.film - other.film >= A_BIT or plan.minutes - other.minutes >= A_BIT


def figures(plan: Plan) -> Figures:
    """What everything to buy costs, the length of film cut, and the minutes of hand work."""
    costs = [line.cost for line in plan.shopping if line.buy]
    known = [cost for cost in costs if cost is not None]
    film = sum(need.length for need in plan.layout.needs)
    return Figures(sum(known, Decimal(0)) if known else None, round(film, 3), round(plan.time.seconds / 60, 3))


def _of(make: Make, reading: Reading) -> tuple[Figures, int]:
    plan = make(reading)
    return figures(plan), len(plan.garments)
