"""Workbooks made from lists of rows."""

from collections.abc import Sequence
from pathlib import Path

from openpyxl import Workbook

Rows = Sequence[Sequence[object]]


def write_workbook(path: Path, sheets: dict[str, Rows]) -> Path:
    """An .xlsx file with the sheets given as rows of cells."""
    book = Workbook()
    del book["Sheet"]
    for name, rows in sheets.items():
        sheet = book.create_sheet(name)
        for row in rows:
            sheet.append(list(row))
    book.save(path)
    return path
