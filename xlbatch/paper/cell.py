"""One cell: written with an explicit type, so that what looks like a formula or a number stays the text it is."""

import re
from dataclasses import dataclass
from datetime import time
from decimal import Decimal

from xlsxwriter.format import Format
from xlsxwriter.utility import xl_rowcol_to_cell
from xlsxwriter.worksheet import Worksheet

from xlbatch.job.job import LONGEST_TEXT

_MEASURE = re.compile(r"\d+(?: \d+/\d+)?(?: (?:(?:in|cm|mm|ft|yd|s|min|h|°[CF])\b|%))?")
_UNPRINTABLE = re.compile("[\x00-\x09\x0b-\x1f\x7f\ud800-\udfff\ufffe\uffff]")


@dataclass(frozen=True)
class Formula:
    """A live formula with its computed value. {Heading} stands for this row's cell under that heading."""

    text: str
    value: Decimal | float | int | str


@dataclass(frozen=True)
class Link:
    """Text that leads to a cell of this workbook (row and column from 0)."""

    text: str
    sheet: str
    row: int = 0
    column: int = 0

    @property
    def target(self) -> str:
        quoted = self.sheet.replace("'", "''")
        return f"internal:'{quoted}'!{xl_rowcol_to_cell(self.row, self.column)}"


Value = str | int | float | Decimal | time | Formula | Link | None


def put(sheet: Worksheet, row: int, column: int, value: Value, look: Format) -> None:
    """Writes one cell; None and "" are blank."""
    if isinstance(value, str) and value:
        sheet.write_string(row, column, printable(value), look)
    elif isinstance(value, Formula):
        cached = float(value.value) if isinstance(value.value, Decimal) else value.value
        sheet.write_formula(row, column, f"={value.text}", look, cached)
    elif isinstance(value, Link):
        sheet.write_url(row, column, value.target, look, printable(value.text))
    elif isinstance(value, time):
        sheet.write_number(row, column, round((value.hour * 60 + value.minute) / 1440, 9), look)
    elif isinstance(value, int | float | Decimal):
        sheet.write_number(row, column, float(value), look)
    else:
        sheet.write_blank(row, column, None, look)


def unbroken(text: str) -> str:
    """The text with its mixed numbers and units held together: `7 1/8 in` is never parted at the end of a line."""
    return _MEASURE.sub(lambda match: match[0].replace(" ", "\u00a0"), text)


def printable(text: str) -> str:
    """The text without characters that a workbook cannot hold, no longer than a cell."""
    return (text if text.isprintable() else _UNPRINTABLE.sub("", text))[:LONGEST_TEXT]
