"""Backward from the day everything is needed: by when to answer, to order, to cut and to press."""

import math
from collections.abc import Set
from dataclasses import dataclass
from datetime import date, timedelta

from xlbatch.check.planned_days import PlannedDays
from xlbatch.job.job import Settings
from xlbatch.schedule.hours import TimePlan

MOST_DAYS = 3660  # of work that are counted back


@dataclass(frozen=True)
class Dates:
    """The days of a job; None where they are not known. `ready_by`: everything bought is there and was looked at."""

    answer_by: date | None = None
    order_by: date | None = None
    ready_by: date | None = None
    cut_by: date | None = None
    press_by: date | None = None
    hand_out: date | None = None


def dates(days: PlannedDays, settings: Settings, time: TimePlan, buys: Set[str]) -> Dates:
    """Pressing ends on the last work day before the day of handing out, and the days of the time plan are counted back
    from it. What is bought is there the day before work begins, so that it can be looked at; it is ordered as many days
    before that as delivery takes; answers are in the day before the order. `buys`: kinds of lines to buy."""
    if days.needed_by is None:
        return Dates(days.answer_by or _before(days.order_by), days.order_by)
    whole = max((work.ends_day for work in time.work), default=1)
    cut = max((work.ends_day for work in time.work if work.stage == "cut"), default=0)
    work = _work_days_before(days.needed_by, whole, days.work_days)
    ready = work[0] - timedelta(days=1)
    delivery = [
        settings.delivery_days_of_blanks if "blank" in buys else None,
        settings.delivery_days_of_film if "film" in buys else None,
    ]
    known = [math.ceil(wait) for wait in delivery if wait is not None]
    reckoned = ready - timedelta(days=max(known)) if known else None
    order = days.order_by or reckoned
    return Dates(
        answer_by=days.answer_by or _before(order or work[0]),
        order_by=order,
        ready_by=ready if known else None,
        cut_by=work[cut - 1] if cut else None,
        press_by=work[-1],
        hand_out=days.needed_by,
    )


def _work_days_before(day: date, count: int, week: frozenset[int]) -> list[date]:
    """The last work days before a day, the first of them first."""
    back = (day - timedelta(days=days) for days in range(1, MOST_DAYS))
    worked = [day_ for _, day_ in zip(range(count), (day_ for day_ in back if day_.weekday() in week), strict=False)]
    return worked[::-1] or [day - timedelta(days=1)]


def _before(day: date | None) -> date | None:
    return day - timedelta(days=1) if day else None
