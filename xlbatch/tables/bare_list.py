"""Finds the names and sizes of a list without headings by what stands in its columns."""

from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import replace

from openpyxl.utils import get_column_letter

from xlbatch.files.raw import Raw, RawSheet
from xlbatch.problems import Problem, problem
from xlbatch.tables.cells import shown_value
from xlbatch.tables.heading_rows import Cells, Headings
from xlbatch.tables.headings import Match
from xlbatch.tables.sizes import read_size
from xlbatch.trade.contrast import shade

_MOSTLY = 0.7  # of a column's cells
_FEWEST = 2  # rows; one alone may be anything


def bare_headings(sheet: RawSheet) -> tuple[Headings, tuple[Problem, ...]] | None:
    """Which column holds the sizes and which the names, and the problem that says so; None where neither shows."""
    full = _full(sheet.rows)
    size = _column(full, lambda cell: bool(read_size(shown_value(cell))))
    who = _column(full, lambda cell: isinstance(cell.value, str) and not read_size(shown_value(cell)))
    if not size or not who:
        return None
    color = _column(full, lambda cell: shade(shown_value(cell)) is not None)
    columns = {who: "Who", size: "Size"} | ({color: "Color"} if color else {})
    first = min(full)
    found = shown_value(sheet.rows[first].get(who, Raw("")))
    said = problem("headings-missing", sheet.where(who, first), found, read=_read_as(sheet, columns))
    matches = {at: Match(meaning) for at, meaning in columns.items()}
    return Headings(_titles(sheet, first), {}, matches, rows=0), (said,)


def _read_as(sheet: RawSheet, columns: Mapping[int, str]) -> str:
    """What was made of the columns, in words."""
    if sheet.lie.only:
        parts = ", ".join(f"part {at} was read as {meaning}" for at, meaning in columns.items())
        return f"each line was taken apart, and {parts}"
    return ", ".join(f"column {get_column_letter(at)} was read as {meaning}" for at, meaning in columns.items())


def _titles(sheet: RawSheet, first: int) -> int:
    """The last row of the titles above the first full row; the one next to it may be its group's and is none."""
    above = [row for row in sheet.rows if row < first]
    return ([0, *above[:-1]] if above and above[-1] == first - 1 else [0, *above])[-1]


def sizes_below(sheet: RawSheet, headings: Headings) -> tuple[Headings, tuple[Problem, ...]] | None:
    """The headings with the column that holds sizes read as Size, whatever it is called; None where none shows.

    One word alone makes no row of headings where rows of several cells stand above it."""
    above = [cells for row, cells in sheet.rows.items() if row < headings.row]
    if len(headings.known) == 1 and any(len(cells) > 1 for cells in above):
        return None
    below = _full({row: cells for row, cells in sheet.rows.items() if row > headings.row})
    size = _column(below, lambda cell: bool(read_size(shown_value(cell))))
    if not size or not headings.known - {headings.matches.get(size, Match("")).meaning}:
        return None
    found, where = headings.titles.get(size, ""), sheet.where(size, headings.row)
    matches = {**headings.matches, size: Match("Size")}
    return replace(headings, matches=matches), (problem("heading-by-content", where, found),)


def _full(rows: Mapping[int, Cells]) -> Mapping[int, Cells]:
    """The rows of several cells; the others are titles."""
    return {row: cells for row, cells in rows.items() if len(cells) > 1}


def _column(rows: Mapping[int, Cells], holds: Callable[[Raw], bool]) -> int:
    """The first column most of whose cells, and of whose rows, hold it; 0 where there is none."""
    good = Counter(at for cells in rows.values() for at, cell in cells.items() if holds(cell))
    filled = Counter(at for cells in rows.values() for at in cells)
    most = max(filled.values(), default=0)
    wide = (at for at in sorted(good) if good[at] >= max(_FEWEST, _MOSTLY * filled[at], _MOSTLY * most))
    return next(wide, 0)
