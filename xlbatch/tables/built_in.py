"""The built-in tables of trade/, read as if they were the person's own sheets."""

from functools import cache

from xlbatch.files.csv_text import sheet_from_text
from xlbatch.files.raw import RawSheet
from xlbatch.resources import trade_file
from xlbatch.tables.input_tables import first_row_names
from xlbatch.tables.line import Line, Units
from xlbatch.tables.rows import lines


@cache
def built_in(table: str, sheet: str) -> tuple[Line, ...]:
    """The rows of trade/`table`.csv as rows 0 of the input sheet `sheet`; its headings carry all units."""
    rows = sheet_from_text(trade_file(f"{table}.csv").read_bytes()).rows
    return tuple(lines(first_row_names(RawSheet(sheet, rows)), Units(), built_in=True))


def is_built_in(design: str) -> bool:
    """Whether a design is called as the built-in one."""
    return any(line.text("Design").casefold() == design.casefold() for line in built_in("designs", "Designs"))
