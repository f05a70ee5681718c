"""Puts the problems in the order a person should meet them, each with the people it is about."""

from collections.abc import Iterable
from dataclasses import replace

from xlbatch.job.job import Job
from xlbatch.problems import Problem

LEVELS = ("stop", "check", "note")
MOST_NAMED = 3  # people; more are counted


def worst_first(job: Job, problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Stops first, then checks, of each those about most rows, then notes; each names its people."""
    people: dict[object, dict[str, None]] = {}
    for row in job.roster:
        for key in (row.source.row, (row.source.sheet, row.source.sheet_row)):
            people.setdefault(key, {})[row.who] = None
    named = (replace(problem, who=_who(problem, people)) for problem in problems)
    return tuple(sorted(named, key=lambda problem: (LEVELS.index(problem.level), -_rows(problem))))


def _rows(problem: Problem) -> int:
    return len(problem.rows) if problem.level != "note" else 0


def _who(problem: Problem, people: dict[object, dict[str, None]]) -> str:
    """The names in the rows a problem is about, or in the row of its cell."""
    digits = "".join(filter(str.isdigit, problem.where.cell))
    keys: tuple[object, ...] = problem.rows or ((problem.where.sheet, int(digits or 0)),)
    names = [name for name in dict.fromkeys(name for key in keys for name in people.get(key, {})) if name]
    more = len(names) - MOST_NAMED
    return ", ".join(names[:MOST_NAMED]) + (f" and {more} more" if more > 0 else "")
