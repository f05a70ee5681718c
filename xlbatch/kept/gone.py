"""Rows of the Roster that the plan knows and that were deleted: they come back as cancelled, and are asked about."""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import cast

from xlbatch.job.job import Job, Paid, RosterRow
from xlbatch.job.source import Source
from xlbatch.kept.input_rows import as_planned
from xlbatch.kept.memory import Memory
from xlbatch.problems import Problem, Where, problem
from xlbatch.tables.cells import amount
from xlbatch.trade.columns import columns

ROSTER = "Roster"


def with_deleted(job: Job, memory: Memory) -> tuple[Job, tuple[Problem, ...]]:
    """The job with the deleted rows in their places by number: done where they were done, else cancelled."""
    there = {row.no for row in job.roster}
    planned = {int(key): values for (sheet, key), values in as_planned(memory).items() if _is_number(sheet, key)}
    noted: dict[int, dict[str, str]] = {}
    for note in memory.notes:
        if note.sheet == ROSTER:
            noted.setdefault(int(note.key), {})[note.heading] = note.text
    gone = [_row(no, values, noted.get(no, {})) for no, values in planned.items() if no not in there]
    if not gone:
        return job, ()
    asked = tuple(problem("row-deleted", Where(ROSTER), row.no, who=row.who or "no name") for row in gone)
    return replace(job, roster=_in_order(job.roster, gone)), asked


def _is_number(sheet: str, key: str) -> bool:
    return sheet == ROSTER and key.isdecimal()


def _in_order(roster: Iterable[RosterRow], gone: Iterable[RosterRow]) -> tuple[RosterRow, ...]:
    """Each deleted row before the first with a higher number, the others as they stand."""
    rows = list(roster)
    for row in gone:
        place = next((place_ for place_, other in enumerate(rows) if other.no > row.no), len(rows))
        rows.insert(place, row)
    return tuple(rows)


def _row(number: int, values: Mapping[str, str], notes: Mapping[str, str]) -> RosterRow:
    own = {column.heading for column in columns(ROSTER)}
    extra = {heading: text for heading, text in values.items() if text and heading not in own}
    paid = values.get("Paid", "")
    return RosterRow(
        source=Source(ROSTER, extra=extra, notes=notes),
        no=number,
        who=values.get("Who", ""),
        group=values.get("Group", ""),
        garment=values.get("Garment", ""),
        size=values.get("Size", ""),
        color=values.get("Color", ""),
        design=values.get("Design", ""),
        print_name=values.get("Print name", ""),
        number=values.get("Number", ""),
        note=values.get("Note", ""),
        paid=cast(Paid, paid) if paid == "yes" else amount(paid) if paid else None,
        status="done" if values.get("Status") == "done" else "cancelled",
        done_so_far=tuple(filter(None, values.get("Done so far", "").split("; "))),
        first_name=values.get("First name", ""),
        last_name=values.get("Last name", ""),
    )
