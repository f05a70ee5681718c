"""Stands a list upright whose people are side by side and whose headings are its first column."""

from itertools import islice

from xlbatch.files.raw import Orientation, Raw, RawSheet
from xlbatch.tables.cells import shown_value
from xlbatch.tables.heading_rows import find_headings
from xlbatch.tables.heading_words import names_columns

_MOST_ROWS = 40  # filled; a list of people has no more headings


def upright(sheet: RawSheet) -> RawSheet:
    """The sheet, turned if only then a row of headings with Size in it shows."""
    firsts = {row: shown_value(cells[min(cells)]) for row, cells in islice(sheet.rows.items(), _MOST_ROWS + 1)}
    if len(firsts) > _MOST_ROWS or not names_columns(firsts):
        return sheet
    turned: dict[int, dict[int, Raw]] = {}
    for row, cells in sheet.rows.items():
        for column, cell in cells.items():
            turned.setdefault(column, {})[row] = cell
    lying = RawSheet(sheet.name, dict(sorted(turned.items())), orientation=Orientation(sideways=True))
    across, down = find_headings(sheet, "Roster").known, find_headings(lying, "Roster").known
    return lying if "Size" in down and len(down) > len(across) else sheet
