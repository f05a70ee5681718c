"""Cells and sheets as they stand in a file, before anything in them is understood."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Literal, NamedTuple

from xlsxwriter.utility import xl_col_to_name

from xlbatch.problems import Where


class Raw(NamedTuple):
    """One cell: its value (text, number, bool, date, time), its number format, and what is wrong with it."""

    value: object
    format: str = "General"
    fault: Literal["", "error", "unsaved"] = ""


class Orientation(NamedTuple):
    """How a list lies on its sheet, where not as rows of cells: people side by side, a line or a person a cell."""

    sideways: bool = False
    only: int = 0  # the one column the lines stand in
    across: int = 0  # where a cell, or a part of one, is a row: how many of these rows a row of the sheet makes
    parts: int = 1  # how many of them a cell makes

    def cell(self, column: int, row: int) -> str:
        """The cell as it is called on the sheet, "" without a row."""
        if self.sideways:
            column, row = row, column
        if self.across:
            row, part = divmod(row, self.across)
            column = part // self.parts + 1
        return f"{_letters(self.only or column)}{row}" if row else ""

    def column(self, number: int) -> str:
        """What a column without a heading is called."""
        return (
            f"Row {number}"
            if self.sideways
            else f"Part {number}"
            if self.only
            else f"Column {xl_col_to_name(number - 1)}"
        )


@lru_cache(maxsize=1000)
def _letters(column: int) -> str:
    return str(xl_col_to_name(column - 1))


AS_ROWS = Orientation()


@dataclass(frozen=True)
class RawSheet:
    """The filled rows of a sheet, from row number to (column number to cell), both counted from 1."""

    name: str
    rows: Mapping[int, Mapping[int, Raw]]
    hidden: frozenset[int] = frozenset()  # rows
    struck: frozenset[int] = frozenset()  # rows whose text is struck through
    out_of_sight: bool = False  # a hidden sheet
    encoding: str = ""  # of a text that does not say it: what it was judged to be, and the names concerned
    orientation: Orientation = AS_ROWS
    notes: Mapping[tuple[int, int], str] = field(default_factory=dict)  # on cells, by row and column
    formulas: frozenset[tuple[int, int]] = frozenset()  # the cells that hold one, by row and column

    def where(self, column: int, row: int) -> Where:
        """A cell, as it is called on the sheet itself."""
        return Where(self.name, self.orientation.cell(column, row))


@dataclass(frozen=True)
class UnreadableFile:
    """Why a file cannot be read at all, in a plain sentence or two."""

    sentence: str
