"""The texts of a workbook of pages, sheet by sheet."""

from pathlib import Path

from openpyxl import load_workbook


def texts_of(pages: Path, sheet: str) -> list[str]:
    """Every text of a sheet, row by row."""
    return [
        str(cell.value) for row in load_workbook(pages)[sheet].iter_rows() for cell in row if cell.value is not None
    ]
