"""What openpyxl holds of a sheet and has no public quick way to: the one place that looks inside it."""

from collections.abc import Iterable

from openpyxl.cell.cell import Cell, MergedCell
from openpyxl.worksheet.worksheet import Worksheet


def filled_cells(sheet: Worksheet) -> Iterable[tuple[tuple[int, int], Cell | MergedCell]]:
    """The cells there are, by row and column. Not iter_rows: one stray cell in the last corner would make it walk
    17 billion cells."""
    return sheet._cells.items()


def struck_fonts(sheet: Worksheet) -> frozenset[int]:
    """The workbook's fonts that strike text through, by number."""
    fonts = getattr(sheet.parent, "_fonts", ())
    return frozenset(number for number, font in enumerate(fonts) if font.strike)


def font(cell: Cell | MergedCell) -> int:
    """The number of a cell's font; openpyxl's public way to it copies the font for each cell."""
    style = getattr(cell, "_style", None)
    return style.fontId if style is not None else 0
