"""Turns the Work times sheet into work times; what the person did not list is as in the built-in table."""

from collections.abc import Iterable
from functools import cache

from xlbatch.job.work_time import WorkTime, WorkTimes
from xlbatch.problems import Problem
from xlbatch.tables.built_in import built_in
from xlbatch.tables.line import Line


def read_work_times(given: Iterable[Line]) -> tuple[WorkTimes, tuple[Problem, ...]]:
    """The person's work times, then the built-in ones they did not list; and what was wrong. A bad row is left out."""
    lines = tuple(given)
    own = tuple(row for row in map(_own, lines) if row)
    listed = {(row.stage, row.work) for row in own}
    others = tuple(row for row in _built_in() if (row.stage, row.work) not in listed)
    return WorkTimes(own + others), tuple(dict.fromkeys(problem for line in lines for problem in line.problems))


@cache
def _built_in() -> tuple[WorkTime, ...]:
    return tuple(row for row in map(_work_time, built_in("work_times", "Work times")) if row)


def _own(line: Line) -> WorkTime | None:
    """A row of the person's: only work of that stage is counted, and in its own unit."""
    row = _work_time(line)
    units = {(usual.stage, usual.work): usual.unit for usual in _built_in()}
    if row is None:
        return None
    unit = units.get((row.stage, row.work))
    if unit is None:
        works = ", ".join(work for stage, work in units if stage == row.stage)
        line.found("value-unclear", "Work", row.work, wanted=f"one of: {works}", example=line.columns["Work"].example)
    elif row.unit not in ("", unit):
        line.found("value-unclear", "Unit", row.unit, wanted=f"the unit {unit}", example=unit)
    else:
        return WorkTime(row.source, row.stage, row.work, row.value, unit)
    return None


def _work_time(line: Line) -> WorkTime | None:
    """The work time of a row, or None where something on it cannot be read."""
    stage, work = line.needed_choice("Stage"), line.needed_choice("Work")
    if not line.given("Value"):
        line.found("value-needed", "Value", heading="Value")
    value = line.number("Value")
    unit = line.choice("Unit")
    if line.stopped or line.unclear or value is None:
        return None
    return WorkTime(line.source, stage, work, value, unit)
