"""Tells people's notes on cells from those that a plan wrote there itself: what is wrong with a cell."""

from collections.abc import Mapping
from dataclasses import replace

from xlbatch.files.raw import Raw
from xlbatch.tables.cells import shown_value
from xlbatch.tables.input_table import Table

EXAMPLE = "For example: "  # how the notes of a blank workbook begin


def with_peoples_notes(table: Table, problems: Table | None) -> Table:
    """The table without the lines of notes that stand on the sheet Problems."""
    if not table.notes:
        return table
    told = frozenset(_told(problems)) if problems else frozenset()
    notes = {place: "\n".join(_others(text, told)) for place, text in table.notes.items()}
    return replace(table, notes={place: text for place, text in notes.items() if text})


def _others(text: str, told: frozenset[str]) -> list[str]:
    return [line for line in text.split("\n") if _plain(line) not in told and not line.startswith(EXAMPLE)]


def _told(problems: Table) -> list[str]:
    """What a plan's notes say, from its sheet of problems."""
    column_of = {heading: column for column, heading in problems.titles.items()}
    return [_as_noted(row, column_of) for row in problems.rows.values()]


def _as_noted(row: Mapping[int, Raw], column_of: Mapping[str, int]) -> str:
    level, wrong, todo, hint = (
        shown_value(row[column_of[heading]]) if column_of.get(heading) in row else ""
        for heading in ("Level", "What is wrong", "What to do", "Suggestion")
    )
    return _plain(f"{level}: {wrong} {todo}" + (f" Did you mean {hint}?" if hint else ""))


def _plain(text: str) -> str:
    return " ".join(text.split())
