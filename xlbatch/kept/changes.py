"""What is not as the plan wrote it, one line a change."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from functools import lru_cache

from xlbatch.job.job import Settings
from xlbatch.kept.input_rows import GivenRow, as_planned
from xlbatch.kept.memory import KeptChange, Memory
from xlbatch.trade.columns import columns
from xlbatch.trade.tables import table
from xlbatch.units import printed_text, temperature_text

_OWN = {("Job", "Last garment no.")}  # the program's own counts
ROSTER = "Roster"
ADDED, DELETED = "row added", "row deleted"


def changes_since(memory: Memory, given: Iterable[GivenRow], settings: Settings) -> tuple[KeptChange, ...]:
    """The changes in sheet order, lengths and temperatures in the job's units. Empty where there is no memory."""
    changes = _changes(memory, tuple(given)) if memory.rows else ()
    return tuple(_in_units(change, settings) for change in changes)


def _in_units(change: KeptChange, settings: Settings) -> KeptChange:
    kind = _kind(change.sheet, change.who if change.sheet == "Job" else change.what)
    return replace(change, before=_shown(change.before, kind, settings), now=_shown(change.now, kind, settings))


@lru_cache(maxsize=1000)
def _kind(sheet: str, name: str) -> str:
    """How the values of a column, or of a setting, are read."""
    if sheet == "Job":
        return next((line["Kind"] for line in table("job") if line["Setting"] == name), "")
    return next((column.kind for column in columns(sheet) if column.heading == name), "")


def _shown(value: str, kind: str, settings: Settings) -> str:
    """A value as the memory has it, in mm or °C, as the job's sheets show it."""
    try:
        if kind == "length" and value:
            return printed_text(float(value.removesuffix(" mm")), settings.length_unit)
        if kind == "temperature" and value:
            return temperature_text(float(value), settings.temperature_unit)
    except ValueError:  # as typed, where it could not be read
        pass
    return value


def _changes(memory: Memory, given: tuple[GivenRow, ...]) -> Iterator[KeptChange]:
    before = as_planned(memory)
    sheets = {sheet for sheet, _ in before}
    plan = memory.plan + 1
    for row in given:
        old = before.pop((row.sheet, row.key), None)
        who = f"No. {row.key} {row.values.get('Who', '')}".strip() if row.sheet == ROSTER else row.key
        if old is None:
            if row.sheet in sheets:
                yield KeptChange(plan, row.sheet, row.source.at("").cell, who, ADDED, "", _said(row.values), "")
        elif (row.sheet, row.key) not in _OWN:
            for heading, now in row.values.items():
                if (had := old.get(heading, "")) != now and (heading in old or _is_peoples(row.sheet, heading)):
                    yield KeptChange(plan, row.sheet, row.source.at(heading).cell, who, heading, had, now, "")
    for (sheet, key), values in before.items():
        who = f"No. {key} {values.get('Who', '')}".strip() if sheet == ROSTER else key
        yield KeptChange(plan, sheet, "", who, DELETED, _said(values), "", "")


@lru_cache(maxsize=1000)
def _is_peoples(sheet: str, heading: str) -> bool:
    """Whether a column is no column of this edition's own, which the plan of an earlier one could not have."""
    return all(column.heading != heading for column in columns(sheet))


def _said(values: Mapping[str, str]) -> str:
    """A row in a few words."""
    return ", ".join([value for value in values.values() if value][:6])
