"""Turns a workbook of the old .xls kind into raw sheets.

Read with xlrd because it alone gives number formats, error cells and hidden rows: without them a number shown as 07
becomes 7, and #N/A a blank.
"""

import io
import struct
from collections.abc import Callable
from datetime import datetime
from functools import partial
from typing import Any, Literal

import xlrd
from openpyxl.utils import get_column_letter
from xlrd.biffh import XLRDError
from xlrd.compdoc import CompDocError
from xlrd.sheet import Sheet

from xlbatch.files.merged import spread_merged
from xlbatch.files.raw import Raw, RawSheet
from xlbatch.problems.refusals import Refusal

MOST_BYTES = 30_000_000
_FAULTS = (
    XLRDError, CompDocError, struct.error, AssertionError, LookupError, ValueError, TypeError, AttributeError,
    ArithmeticError, RuntimeError, NotImplementedError, MemoryError,
)  # fmt: skip # what xlrd raises on a damaged file


def xls_sheets(data: bytes, ignored: frozenset[str]) -> tuple[RawSheet, ...]:
    """The sheets of an .xls workbook; those whose lower-case name is `ignored` come empty.

    Raises Refusal for a file that is too large, protected, damaged or none."""
    if len(data) > MOST_BYTES:
        raise Refusal("too large")
    book = _read(partial(xlrd.open_workbook, file_contents=data, formatting_info=True, on_demand=True,
                         logfile=io.StringIO()))  # fmt: skip
    return tuple(
        _sheet(book, name, _read(partial(book.sheet_by_name, name)))
        if name.strip().casefold() not in ignored
        else RawSheet(name, {})
        for name in book.sheet_names()
    )


def _read(read: Callable[[], Any]) -> Any:
    """What xlrd reads. Raises Refusal."""
    try:
        return read()
    except _FAULTS as error:
        if "encrypted" in str(error):
            raise Refusal("password") from error
        raise Refusal("damaged") from error


def _sheet(book: Any, name: str, sheet: Sheet) -> RawSheet:
    rows: dict[int, dict[int, Raw]] = {}
    for row in range(sheet.nrows):
        cells = {column: raw for column, cell in enumerate(sheet.row(row), 1) if (raw := _raw(book, cell)) is not None}
        if cells:
            rows[row + 1] = cells
    spread_merged(rows, tuple(_corners(*block) for block in sheet.merged_cells))
    hidden = frozenset(row + 1 for row, info in sheet.rowinfo_map.items() if info.hidden)
    return RawSheet(name, rows, hidden, out_of_sight=bool(sheet.visibility))


def _raw(book: Any, cell: Any) -> Raw | None:
    shown = _read(lambda: book.format_map[book.xf_list[cell.xf_index].format_key].format_str)
    match cell.ctype:
        case xlrd.XL_CELL_TEXT:
            return Raw(cell.value) if cell.value.strip() else None
        case xlrd.XL_CELL_NUMBER:
            return Raw(int(cell.value) if cell.value.is_integer() else cell.value, shown)
        case xlrd.XL_CELL_DATE:
            return Raw(_when(cell.value, book.datemode), shown)
        case xlrd.XL_CELL_BOOLEAN:
            return Raw(bool(cell.value))
        case xlrd.XL_CELL_ERROR:
            return Raw(xlrd.error_text_from_code.get(cell.value, "#N/A"), fault="error")
    return None


def _when(days: float, since: Literal[0, 1]) -> object:
    """A date and time, or a time alone; since 1900 (0) or 1904 (1)."""
    when: datetime = _read(partial(xlrd.xldate_as_datetime, days, since))
    return when.time() if days < 1 else when


def _corners(top: int, below: int, left: int, right: int) -> tuple[str, str]:
    return f"{get_column_letter(left + 1)}{top + 1}", f"{get_column_letter(right)}{below}"
