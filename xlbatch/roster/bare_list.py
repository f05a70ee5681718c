"""Finds the names and sizes of a list without headings by what stands in its columns."""

from collections import Counter
from collections.abc import Callable
from dataclasses import replace

from openpyxl.utils import get_column_letter

from xlbatch.problems import Problem, problem
from xlbatch.roster.cells import shown_value
from xlbatch.roster.heading_rows import Headings
from xlbatch.roster.headings import Match
from xlbatch.roster.raw import Raw, RawSheet
from xlbatch.roster.sizes import read_size

_MOSTLY = 0.7  # of a column's cells
_FEWEST = 2  # rows; one alone may be anything


def bare_headings(sheet: RawSheet) -> tuple[Headings, tuple[Problem, ...]] | None:
    """Which column holds the sizes and which the names, and the problem that says so; None where neither shows."""
    size = _column(sheet, lambda cell: bool(read_size(shown_value(cell))))
    who = _column(sheet, lambda cell: isinstance(cell.value, str) and not read_size(shown_value(cell)))
    if not size or not who:
        return None
    read = f"column {get_column_letter(who)} was read as Who, {get_column_letter(size)} as Size"
    first = min(sheet.rows)
    where = sheet.where(who, first)
    found = shown_value(sheet.rows[first].get(who, Raw("")))
    matches = {who: Match("Who"), size: Match("Size")}
    return Headings(0, {}, matches), (problem("headings-missing", where, found, read=read),)


def sizes_below(sheet: RawSheet, headings: Headings) -> tuple[Headings, tuple[Problem, ...]] | None:
    """The headings with the column that holds sizes read as Size, whatever it is called; None where none shows.

    One word alone makes no row of headings where rows of several cells stand above it."""
    above = [cells for row, cells in sheet.rows.items() if row < headings.row]
    if len(headings.known) == 1 and any(len(cells) > 1 for cells in above):
        return None
    below = RawSheet(sheet.name, {row: cells for row, cells in sheet.rows.items() if row > headings.row})
    size = _column(below, lambda cell: bool(read_size(shown_value(cell))))
    if not size or not headings.known - {headings.matches.get(size, Match("")).meaning}:
        return None
    found, where = headings.titles.get(size, ""), sheet.where(size, headings.row)
    matches = {**headings.matches, size: Match("Size")}
    return replace(headings, matches=matches), (problem("heading-by-content", where, found),)


def _column(sheet: RawSheet, holds: Callable[[Raw], bool]) -> int:
    """The first column most of whose cells, and of whose rows, hold it; 0 where there is none."""
    good = Counter(at for cells in sheet.rows.values() for at, cell in cells.items() if holds(cell))
    filled = Counter(at for cells in sheet.rows.values() for at in cells)
    most = max(filled.values(), default=0)
    wide = (at for at in sorted(good) if good[at] >= max(_FEWEST, _MOSTLY * filled[at], _MOSTLY * most))
    return next(wide, 0)
