"""What is wrong with the days of a job: those that have passed, and an answer asked for too late."""

from datetime import date

from xlbatch.check.planned_days import PlannedDays
from xlbatch.job.job import Job
from xlbatch.problems import Problem, Where, problem
from xlbatch.schedule.dates import Dates
from xlbatch.tables.days import day_text


def late(job: Job, days: PlannedDays, dates: Dates, today: date, *, confirmed: bool = False) -> tuple[Problem, ...]:
    """`confirmed`: nobody has to answer any more."""
    return (*_answers_late(job, days, dates), *_passed(job, days, dates, today, confirmed))


def _answers_late(job: Job, days: PlannedDays, dates: Dates) -> tuple[Problem, ...]:
    last = dates.order_by or dates.hand_out
    if days.answer_by is None or last is None or days.answer_by < last:
        return ()
    where = job.setting_cells.get("Answer by", Where("Job"))
    return (problem("answers-late", where, job.settings.answer_by, day=day_text(last)),)


def _passed(job: Job, days: PlannedDays, dates: Dates, today: date, confirmed: bool) -> tuple[Problem, ...]:
    named = {
        "Answer by": None if confirmed else dates.answer_by,
        "Order by": dates.order_by,
        "Cut by": dates.cut_by,
        "Press by": dates.press_by,
        "Needed by": dates.hand_out,
    }
    passed = {name: day for name, day in named.items() if day is not None and day < today}
    if not passed:
        return ()
    given = {"Answer by": days.answer_by, "Order by": days.order_by}
    setting = next((name for name in passed if given.get(name)), "Needed by")
    where = job.setting_cells.get(setting, Where("Job"))
    what = ", ".join(f"{name} {day_text(day)}" for name, day in passed.items())
    return (problem("day-passed", where, "", what=what),)
