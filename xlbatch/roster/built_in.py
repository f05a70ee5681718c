"""The built-in tables of trade/, read as if they were the person's own sheets."""

from functools import cache

from xlbatch.resources import trade_file
from xlbatch.roster.csv_text import sheet_from_text
from xlbatch.roster.line import Line, Units
from xlbatch.roster.raw import RawSheet
from xlbatch.roster.rows import lines
from xlbatch.roster.tables import find_tables


@cache
def built_in(table: str, sheet: str) -> tuple[Line, ...]:
    """The rows of trade/`table`.csv as rows 0 of the input sheet `sheet`; its headings carry all units."""
    rows = sheet_from_text(trade_file(f"{table}.csv").read_bytes()).rows
    found = find_tables((RawSheet(sheet, rows),)).by_meaning[sheet]
    return tuple(lines(found, Units(), built_in=True))
