"""Workbooks spoiled in further ways: what spreadsheet programs, people and bad disks do besides.

The rows that must not be lost are counted by openpyxl itself, not by the program's own reading.
"""

import io
import random
from collections.abc import Callable, Iterator
from datetime import date, time
from pathlib import Path
from typing import Any

from openpyxl import Workbook, load_workbook
from openpyxl.cell.rich_text import CellRichText, TextBlock
from openpyxl.cell.text import InlineFont
from openpyxl.comments import Comment
from openpyxl.utils import get_column_letter
from openpyxl.workbook.defined_name import DefinedName
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.table import Table
from openpyxl.worksheet.worksheet import Worksheet

from tests.mutations import any_sheet, base_book, faults_of, spoil_cell
from tests.spoiled_parts import spoil_parts, with_formulas
from xlbatch.files.raw import Raw, RawSheet

HEADING_ROW = 2  # of the base book's roster


def spoiled_further(seed: int) -> tuple[str, bytes]:
    """The kind of spoiling, and the workbook spoiled by it; the same for the same seed."""
    dice = random.Random(f"further {seed}")
    kind = dice.choice(("cells", "structure", "structure", "formulas", "bytes"))
    book = base_book()
    for _ in range(dice.randint(1, 4)):
        dice.choice(CELLS if kind == "cells" else STRUCTURE)(dice, book)
    if dice.random() < 0.3:
        spoil_cell(dice, book)
    if dice.random() < 0.1:
        far_cell(dice, book)  # last: openpyxl moves rows cell by cell
    file = io.BytesIO()
    book.save(file)
    data = file.getvalue()
    if kind == "formulas":
        data = with_formulas(dice, data)
    return kind, spoil_parts(dice, data) if kind == "bytes" else data


def _any_cell(dice: random.Random, book: Workbook) -> tuple[Worksheet, int, int]:
    sheet = any_sheet(dice, book)
    return sheet, dice.randint(1, sheet.max_row), dice.randint(1, sheet.max_column)


def _put(dice: random.Random, book: Workbook, value: Any, form: str = "General") -> None:
    sheet, row, column = _any_cell(dice, book)
    cell = sheet.cell(row, column)
    if type(cell).__name__ != "MergedCell":
        cell.value = value
        cell.number_format = form


def put_date(dice: random.Random, book: Workbook) -> None:
    value = dice.choice((date(2026, 3, 5), date(2010, 12, 10), time(9, 30)))
    _put(dice, book, value, dice.choice(("d-mmm", "mm-dd-yy", "yyyy-mm-dd", "[h]:mm", "General")))


def put_boolean(dice: random.Random, book: Workbook) -> None:
    _put(dice, book, dice.choice((True, False)))


def put_error(dice: random.Random, book: Workbook) -> None:
    _put(dice, book, dice.choice(("#N/A", "#REF!", "#VALUE!", "#DIV/0!", "#NAME?", "#NULL!", "#NUM!")))


def put_formula_without_value(dice: random.Random, book: Workbook) -> None:
    _put(dice, book, dice.choice(("=A1", '=IF(TRUE,"M","L")', "=SUM(B1:B9)", "=1/0", '=HYPERLINK("x","Ana")')))


def put_rich_text(dice: random.Random, book: Workbook) -> None:
    sheet, row, column = _any_cell(dice, book)
    text = str(sheet.cell(row, column).value or "Eva")
    _put(dice, book, CellRichText(text[:1], TextBlock(InlineFont(b=True), text[1:] or "x")))


def put_format(dice: random.Random, book: Workbook) -> None:
    sheet, row, column = _any_cell(dice, book)
    cell = sheet.cell(row, column)
    cell.number_format = dice.choice(
        ("00", "000", "0%", "@", ";;;", '"no. "0', "$0.00", "# ?/?", "0.00E+00", "0;-0;;@")
    )


def put_long_text(dice: random.Random, book: Workbook) -> None:
    _put(dice, book, dice.choice(("Ana " * 5000, "M\nL", "M, L", "Ana\r\nNovak", "\t", "_x000D_M", "'07", "Mei & Bo")))


def comment(dice: random.Random, book: Workbook) -> None:
    sheet, row, column = _any_cell(dice, book)
    sheet.cell(row, column).comment = Comment("ask again", "Ana")


def link(dice: random.Random, book: Workbook) -> None:
    sheet, row, column = _any_cell(dice, book)
    if type(cell := sheet.cell(row, column)).__name__ != "MergedCell":
        cell.hyperlink = "https://example.org/"


def defined_name(dice: random.Random, book: Workbook) -> None:
    where = dice.choice(("Roster!$A$1:$B$3", "#REF!", "Nowhere!$A$1", "[1]Other!$A$1"))
    book.defined_names["sizes"] = DefinedName("sizes", attr_text=where)


def table(dice: random.Random, book: Workbook) -> None:
    sheet = dice.choice(book.worksheets)
    if not sheet.tables:
        last = f"{get_column_letter(sheet.max_column)}{sheet.max_row}"
        name = f"T{book.worksheets.index(sheet)}"
        sheet.add_table(Table(displayName=name, ref=f"A{min(2, sheet.max_row)}:{last}"))


def filtered(dice: random.Random, book: Workbook) -> None:
    sheet = any_sheet(dice, book)
    sheet.auto_filter.ref = sheet.dimensions
    sheet.auto_filter.add_filter_column(0, ["Ana Novak"])
    for row in range(3, sheet.max_row + 1):
        sheet.row_dimensions[row].hidden = dice.random() < 0.5


def hidden_column(dice: random.Random, book: Workbook) -> None:
    sheet, _, column = _any_cell(dice, book)
    sheet.column_dimensions[get_column_letter(column)].hidden = True


def hidden_sheet(dice: random.Random, book: Workbook) -> None:
    sheet = dice.choice(book.worksheets[1:] or book.worksheets)
    if sheet is not book.active:
        sheet.sheet_state = dice.choice(("hidden", "veryHidden"))


def reorder(dice: random.Random, book: Workbook) -> None:
    book.move_sheet(any_sheet(dice, book), dice.randint(-3, 3))


def rename_to_another(dice: random.Random, book: Workbook) -> None:
    any_sheet(dice, book).title = dice.choice(
        ("Liste", "roster ", "DESIGNS", "Garment", "Films", "Money", "Équipe", "1")
    )


def empty_sheet(dice: random.Random, book: Workbook) -> None:
    book.create_sheet(dice.choice(("Sheet1", "Read me", "Roster 1")), dice.randint(0, 3))


def chart_sheet(_dice: random.Random, book: Workbook) -> None:
    book.create_chartsheet()


def titles(dice: random.Random, book: Workbook) -> None:
    sheet = any_sheet(dice, book)
    sheet.insert_rows(1, amount := dice.randint(1, 4))
    for row in range(1, amount + 1):
        sheet.cell(row, dice.randint(1, 3)).value = dice.choice(
            ("Spring 2026", "Sizes", "Team: Red", "Name of event", 2026)
        )


def totals(dice: random.Random, book: Workbook) -> None:
    sheet = book.worksheets[0]
    sheet.append(
        dice.choice((["Total", None, None, 5], [None, None, None, None, None, None, 6], ["Sum: 5"], ["Grand total"]))
    )


def duplicate_heading(dice: random.Random, book: Workbook) -> None:
    sheet = book.worksheets[0]
    texts = [sheet.cell(HEADING_ROW, at).value for at in range(1, sheet.max_column + 1)]
    sheet.cell(HEADING_ROW, dice.randint(1, sheet.max_column + 1)).value = dice.choice(
        [text for text in texts if text] or ["Who"]
    )


def group_titles(dice: random.Random, book: Workbook) -> None:
    sheet = book.worksheets[0]
    sheet.insert_rows(at := dice.randint(3, max(3, sheet.max_row)))
    sheet.cell(at, 1).value = dice.choice(("Novak family", "Team Red:", "Helpers", "KIDS", "Eva Lind"))


def turn(_dice: random.Random, book: Workbook) -> None:
    """The roster on its side, people beside one another."""
    sheet = book.worksheets[0]
    if sheet.merged_cells.ranges:
        return
    values = [[cell.value for cell in row] for row in sheet.iter_rows(min_row=HEADING_ROW)]
    sheet.delete_rows(1, sheet.max_row)
    for row in zip(*values, strict=True):
        sheet.append(row)


def one_column(dice: random.Random, book: Workbook) -> None:
    """Each row of the roster in one cell, as in a message."""
    sheet = book.worksheets[0]
    if sheet.merged_cells.ranges:
        return
    sign = dice.choice((" - ", ", ", "; ", ": ", " "))
    lines = [sign.join(str(cell.value) for cell in row if cell.value not in (None, "")) for row in sheet.iter_rows()]
    sheet.delete_rows(1, sheet.max_row)
    for line in lines:
        sheet.append([line])


def choices(dice: random.Random, book: Workbook) -> None:
    sheet = any_sheet(dice, book)
    sheet.add_data_validation(rule := DataValidation(type="list", formula1='"S,M,L"'))
    rule.add(f"D1:D{sheet.max_row}")


def far_cell(dice: random.Random, book: Workbook) -> None:
    any_sheet(dice, book).cell(dice.choice((3, 500, 40_000)), dice.choice((1, 30, 16_384))).value = dice.choice(
        ("x", "M", 1)
    )


CELLS: tuple[Callable[[random.Random, Workbook], None], ...] = (
    put_date, put_boolean, put_error, put_formula_without_value, put_rich_text, put_format, put_long_text, comment,
    link,
)  # fmt: skip
STRUCTURE: tuple[Callable[[random.Random, Workbook], None], ...] = (
    defined_name, table, filtered, hidden_column, hidden_sheet, reorder, rename_to_another, empty_sheet, chart_sheet,
    titles, totals, duplicate_heading, group_titles, turn, one_column, choices,
)  # fmt: skip


def further_faults(seed: int, folder: Path, *, write: bool = False) -> Iterator[str]:
    """What does not hold of the workbook spoiled by `seed`; with `write` the plan is written too."""
    kind, data = spoiled_further(seed)
    yield from faults_of(seed, kind, data, folder, write=write, rows_of=filled_rows)


def filled_rows(path: Path) -> Iterator[RawSheet]:
    """The filled cells of each sheet, by openpyxl; nothing where it cannot open the file."""
    try:
        book = load_workbook(path)
    except Exception:  # whatever openpyxl raises on a spoiled file: then the program's own words count
        return
    for sheet in book.worksheets:
        rows: dict[int, dict[int, Raw]] = {}
        for (row, column), cell in sorted(sheet._cells.items()):
            if cell.value is not None and str(cell.value).strip():
                rows.setdefault(row, {})[column] = Raw(cell.value)
        yield RawSheet(sheet.title, rows)
