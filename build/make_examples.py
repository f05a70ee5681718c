"""Makes the workbooks in example_workbooks/ from the folders in build/examples/: one CSV a sheet.

Run it after a change there, with a Python that has XlsxWriter: python build/make_examples.py
"""

import csv
import re
from datetime import datetime
from pathlib import Path

import xlsxwriter
from xlsxwriter.format import Format
from xlsxwriter.worksheet import Worksheet

SOURCE = Path(__file__).resolve().parent / "examples"
EXAMPLES = SOURCE.parent.parent / "example_workbooks"
SHEETS = ("Roster", "Job", "Designs", "Drawing parts", "Garments", "Film", "Press")
TEXT = ("Number", "Size", "Text")  # where 07 must stay 07
A_NUMBER = re.compile(r"\d+(\.\d+)?")
CREATED = datetime(2025, 1, 1)  # the same bytes whenever it is made


def fill_cell(sheet: Worksheet, row: int, column: int, heading: str, value: str, money: Format) -> None:
    """Writes one cell as a person's typing would: a number where it is one, 4.20 with its two places."""
    if heading in TEXT or not A_NUMBER.fullmatch(value):
        sheet.write_string(row, column, value)
    else:
        sheet.write_number(row, column, float(value), money if re.search(r"\.\d\d$", value) else None)


def fill_sheet(sheet: Worksheet, lines: list[list[str]], bold: Format, money: Format) -> None:
    """Writes a table: a bold heading row that stays in sight, and columns as wide as what is in them."""
    headings = lines[0]
    sheet.write_row(0, 0, headings, bold)
    for row, line in enumerate(lines[1:], start=1):
        for column, value in enumerate(line):
            if value:
                fill_cell(sheet, row, column, headings[column], value, money)
    for column in range(len(headings)):
        sheet.set_column(column, column, 2 + max(len(line[column]) for line in lines))
    sheet.freeze_panes(1, 0)


def make_workbook(source: Path, target: Path) -> None:
    """Makes the workbook `target` from the folder `source`."""
    with xlsxwriter.Workbook(target) as book:
        book.set_properties({"created": CREATED})
        bold, money = book.add_format({"bold": True}), book.add_format({"num_format": "0.00"})
        for name in SHEETS:
            table = source / f"{name}.csv"
            if table.exists():
                with table.open(encoding="utf-8", newline="") as file:
                    fill_sheet(book.add_worksheet(name), list(csv.reader(file)), bold, money)


def make_all(folder: Path) -> None:
    """Makes every example workbook in `folder`."""
    for source in sorted(each for each in SOURCE.iterdir() if each.is_dir()):
        make_workbook(source, folder / f"{source.name}.xlsx")


if __name__ == "__main__":
    make_all(EXAMPLES)
