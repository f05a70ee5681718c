"""Workbooks made from lists of rows."""

from collections.abc import Mapping, Sequence
from pathlib import Path

from openpyxl import Workbook
from openpyxl.worksheet.worksheet import Worksheet

Rows = Sequence[Sequence[object]]


def write_workbook(path: Path, sheets: Mapping[str, Rows]) -> Path:
    """An .xlsx file with the sheets given as rows of cells."""
    book = Workbook()
    del book["Sheet"]
    for name, rows in sheets.items():
        sheet = book.create_sheet(name)
        for row in rows:
            sheet.append(list(row))
    book.save(path)
    return path


def heading_at(sheet: Worksheet, heading: str) -> tuple[int, int]:
    """Row and column (from 1) of a heading. Raises StopIteration where the sheet has none such."""
    return next(
        (down, across)
        for down, row in enumerate(sheet.iter_rows(values_only=True), 1)
        for across, value in enumerate(row, 1)
        if value == heading
    )
