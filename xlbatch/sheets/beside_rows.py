"""Writes what people wrote beside the rows of a plan's own sheets back there: columns of theirs, notes on cells."""

from collections.abc import Iterable, Sequence

import pandas as pd

from xlbatch.job.marks import row_key
from xlbatch.kept.memory import KeptNote
from xlbatch.paper.cell import Value
from xlbatch.paper.page import Column, Page
from xlbatch.roster.written_beside import KEYS

WIDTH = 1.5  # inches


def write_beside(
    page: Page, sheet: str, frame: pd.DataFrame, notes: Iterable[KeptNote], rows: Sequence[int] | None = None
) -> None:
    """What stands beside the rows of a table that was just written: those of `frame`, on the rows of the page given, or
    from the headings on."""
    own = {column.heading for column in page.columns}
    mine = [note for note in notes if note.sheet == sheet and (note.on_cell or note.heading not in own)]
    if not mine:
        return
    for heading in dict.fromkeys(note.heading for note in mine if note.heading not in own):
        page.add_column(Column(heading, WIDTH, outside=True))
        page.write(page.head, page.at(heading), heading, "heading")
    page.sheet.autofilter(page.head, 0, page.end, len(page.columns) - 1)
    keys = frame[list(KEYS[sheet])].itertuples(index=False, name=None)
    row_of = {_called(key): row for key, row in zip(keys, rows or range(page.head + 1, page.end + 1), strict=False)}
    for note in mine:
        if note.key not in row_of:
            continue
        place = row_of[note.key], page.at(note.heading)
        if note.on_cell:
            page.sheet.write_comment(*place, note.text, {"author": ""})
        else:
            page.write(*place, note.text, "cell", "text")


def _called(cells: Iterable[Value]) -> str:
    return row_key("" if cell is None else getattr(cell, "text", str(cell)) for cell in cells)
