"""The days a person gave on the sheet Job: read, each with its year, and what is wrong with them."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date
from typing import Any

from xlbatch.job.job import Job
from xlbatch.problems import Problem, Where, problem
from xlbatch.problems.phrases import phrase
from xlbatch.tables.days import EVERY_DAY, Day, Why, day_text, read_day, read_work_days

FIELDS: Mapping[str, str] = {"Needed by": "needed_by", "Answer by": "answer_by", "Order by": "order_by"}
CODES: Mapping[Why, str] = {"none": "day-unclear", "weekday": "weekday-wrong"}


@dataclass(frozen=True)
class PlannedDays:
    """The days given; None where none was, or none that is understood. Work days by the day of the week, Monday 0."""

    needed_by: date | None = None
    answer_by: date | None = None
    order_by: date | None = None
    work_days: frozenset[int] = EVERY_DAY


def planned_days(job: Job, today: date) -> tuple[Job, PlannedDays, tuple[Problem, ...]]:
    """The job with the year in each day given, the days, and what could not be understood.

    Only a day without a year depends on `today`, and comes back with it."""
    texts: dict[str, Any] = {}
    days: dict[str, date] = {}
    problems: list[Problem] = []
    for name, field in FIELDS.items():
        text: str = getattr(job.settings, field)
        day = read_day(text, today, month_first=job.settings.paper == "Letter")
        if isinstance(day, Day):
            texts[field], days[field] = day.text, day.day
        elif day:
            where = job.setting_cells.get(name, Where("Job"))
            problems.append(problem(CODES[day], where, text, example=day_text(today)))
    week = read_work_days(job.settings.work_days)
    if not week:
        where = job.setting_cells.get("Work days", Where("Job"))
        facts: dict[str, Any] = {
            "wanted": phrase("days of the week"),
            "used": "every day",
            "example": "Monday to Friday",
        }
        problems.append(problem("setting-unclear", where, job.settings.work_days, **facts))
        texts["work_days"] = "every day"
    changed = replace(job, settings=replace(job.settings, **texts)) if texts else job
    return changed, PlannedDays(**days, work_days=week or EVERY_DAY), tuple(problems)
