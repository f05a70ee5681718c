"""What openpyxl reads of a sheet and has no public quick way to: the one place that looks inside it.

Its own cells cost as much again as reading them, and its rows fill every gap: one stray cell in the last corner would
make 17 billion of them.
"""

from collections.abc import Mapping
from typing import Any, NamedTuple

from openpyxl.styles.numbers import BUILTIN_FORMATS, BUILTIN_FORMATS_MAX_SIZE
from openpyxl.workbook.workbook import Workbook
from openpyxl.worksheet._reader import WorkSheetParser

PlainCell = Mapping[str, Any]  # row, column, value and data_type


class Style(NamedTuple):
    """What is known of a cell's style."""

    number_format: str
    struck: bool  # its font strikes text through


class PlainSheet(NamedTuple):
    """The cells that have an element in the file, each with its style, and the rows that are hidden."""

    cells: list[tuple[PlainCell, Style]]
    hidden: frozenset[int]


def plain_sheets(book: Workbook) -> list[PlainSheet]:
    """The sheets of a workbook that was opened to be read only."""
    styles = _styles(book)
    return [_plain_sheet(sheet, styles) for sheet in book.worksheets]


def _styles(book: Any) -> tuple[Style, ...]:
    """The workbook's styles, by number."""
    own, fonts = book._number_formats, book._fonts
    return tuple(
        Style(
            BUILTIN_FORMATS.get(style.numFmtId, "General")
            if style.numFmtId < BUILTIN_FORMATS_MAX_SIZE
            else own[style.numFmtId - BUILTIN_FORMATS_MAX_SIZE],
            bool(fonts[style.fontId].strike),
        )
        for style in book._cell_styles
    )


def _plain_sheet(sheet: Any, styles: tuple[Style, ...]) -> PlainSheet:
    book = sheet.parent
    with sheet._get_source() as source:
        parser = WorkSheetParser(
            source,
            sheet._shared_strings,
            data_only=book.data_only,
            epoch=book.epoch,
            date_formats=book._date_formats,
            timedelta_formats=book._timedelta_formats,
        )
        cells = [(cell, styles[cell["style_id"]]) for _, row in parser.parse() for cell in row]
    hidden = (
        int(row) for row, attributes in parser.row_dimensions.items() if attributes.get("hidden") in ("1", "true")
    )
    return PlainSheet(cells, frozenset(hidden))
