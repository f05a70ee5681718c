"""Finds the columns of a list by what stands in them, where no row of headings says enough."""

from collections.abc import Iterator

from xlbatch.files.raw import RawSheet
from xlbatch.tables.cells import shown_value
from xlbatch.tables.heading_rows import NAMES, Cells, Headings
from xlbatch.tables.roster_columns import decide
from xlbatch.tables.size_cell import read_size_cell

_FEWEST = 2  # rows with a size; one alone may be anything


def bare_headings(sheet: RawSheet, *, titled: bool = True) -> Headings | None:
    """Which column holds the sizes and which the names; None where neither shows.

    A first row whose cell over the sizes is no size has headings that are not in the tables, unless the list is of
    lines without headings (`titled`)."""
    full = {row: cells for row, cells in sheet.rows.items() if len(cells) > 1}
    bare = next(
        (judged for judged in _with_or_without_first(list(full.values())) if "Size" in judged.known), Headings(0, {})
    )
    size = next((column for column, match in bare.matches.items() if match.meaning == "Size"), 0)
    if not NAMES & bare.known or sum(_is_size(cells, size) for cells in full.values()) < _FEWEST:
        return None
    first = min(full)
    if titled and _are_titles(full[first], size):
        titles = {column: shown_value(cell) for column, cell in full[first].items()}
        below = [cells for row, cells in full.items() if row > first]
        return Headings(first, titles, decide(titles, ()).matches).judged(below)
    return Headings(_titles(sheet, first), {}, rows=0).judged(list(full.values()))


def _with_or_without_first(rows: list[Cells]) -> Iterator[Headings]:
    """What the columns are by their contents; where the first row hides it, by those below."""
    yield Headings(0, {}, rows=0).judged(rows)
    yield Headings(0, {}, rows=0).judged(rows[1:])


def _is_size(cells: Cells, column: int) -> bool:
    return column in cells and bool(read_size_cell(shown_value(cells[column])).size)


def _are_titles(cells: Cells, size: int) -> bool:
    texts = all(isinstance(cell.value, str) and not any(map(str.isdigit, cell.value)) for cell in cells.values())
    return texts and size in cells and not _is_size(cells, size)


def _titles(sheet: RawSheet, first: int) -> int:
    """The last row of the titles above the first full row; the one next to it may be its group's and is none."""
    above = [row for row in sheet.rows if row < first]
    return ([0, *above[:-1]] if above and above[-1] == first - 1 else [0, *above])[-1]
