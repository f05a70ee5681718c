"""Finds, among the lists on several sheets, those of the same people: they are one list, or asked, never doubled."""

import re
from collections.abc import Sequence
from typing import NamedTuple

from xlbatch.problems import Problem, Where, problem
from xlbatch.tables.cells import shown_value
from xlbatch.tables.input_table import Table

_SAME = 0.5  # of the shorter list's people, at least two
_OLD = re.compile(
    r"\b(old|last year|previous|prior|archived?|backup|copy|draft|template|test|alt|vorjahr|letztes jahr|ancien|"
    r"année dernière|anterior|vecchio|vorig jaar|oud|stary|starý|eski)\b",
    re.IGNORECASE,
)
_ANSWERS = re.compile(
    r"\b(responses?|answers?|raw|import|export|data|antworten|réponses|respuestas|risposte)\b", re.IGNORECASE
)
_YEAR = re.compile(r"\b(?:19|20)\d\d\b")


class ListSheet(NamedTuple):
    """A sheet with a list of people: its tables, and whether it is hidden."""

    name: str
    tables: tuple[Table, ...]
    hidden: bool


def one_list(sheets: Sequence[ListSheet]) -> tuple[frozenset[str], tuple[Problem, ...]]:
    """The names of the sheets that are read as the list, and a problem for each other one."""
    years = {sheet.name: int(max(_YEAR.findall(sheet.name), default="0")) for sheet in sheets}
    latest = max(years.values(), default=0)
    order = sorted(sheets, key=lambda sheet: _rank(sheet, 0 < years[sheet.name] < latest))
    kept: list[ListSheet] = []
    problems: list[Problem] = []
    for sheet in order:
        code, other = _left_out(sheet, kept, old=0 < years[sheet.name] < latest)
        if code:
            rows = tuple(dict.fromkeys(table.counted_on(row) for table in sheet.tables for row in table.rows))
            problems.append(problem(code, Where(sheet.name), sheet.name, other=other, count=len(rows)))
        else:
            kept.append(sheet)
    return frozenset(sheet.name for sheet in kept), tuple(problems)


def _rank(sheet: ListSheet, is_older: bool) -> tuple[bool, ...]:
    """The sheets that are most surely the list come first."""
    is_roster = sheet.name.strip().casefold() == "roster"
    is_old = is_older or bool(_OLD.search(sheet.name))
    return not is_roster, not people(sheet), sheet.hidden, is_old, bool(_ANSWERS.search(sheet.name))


def _left_out(sheet: ListSheet, kept: Sequence[ListSheet], *, old: bool) -> tuple[str, str]:
    """The code of the problem with a sheet that is not read beside those kept, or "", and the sheet that is."""
    if not kept:
        return "", ""
    for other in kept:
        if _are_same(people(sheet), people(other)):
            return "sheet-again", other.name
    if not people(sheet) and any(map(people, kept)):
        return "sheet-without-names", kept[0].name
    if sheet.hidden or old or _OLD.search(sheet.name):
        return "sheet-older", kept[0].name
    return "", ""


def _are_same(names: frozenset[str], other: frozenset[str]) -> bool:
    return len(names & other) >= max(2, _SAME * min(len(names), len(other)))


def people(sheet: ListSheet) -> frozenset[str]:
    """The names on a sheet, in small letters."""
    names = set()
    for table in sheet.tables:
        columns = [table.columns[heading] for heading in ("Who", "First name", "Last name") if heading in table.columns]
        for cells in table.rows.values():
            names.add(" ".join(shown_value(cells[column]) for column in columns if column in cells).casefold())
    return frozenset(names - {""})
