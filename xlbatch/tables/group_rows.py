"""Finds the rows of a list that say whose the rows below them are: `Novak family`, `Room 12:`."""

import re
from collections.abc import Mapping
from itertools import pairwise

from xlbatch.tables.cells import shown_value
from xlbatch.tables.heading_rows import Cells, Headings
from xlbatch.tables.sizes import read_size, wearer_in
from xlbatch.trade.answer_words import garment_in

_SAYS_GROUP = re.compile(
    r"\b(family|families|household|cousins|branch|team|class|grade|room|cabin|troop|patrol|den|pack|squad|group|table|"
    r"boat|bus|booth|stall|tent|shift|section|coaches|adults|kids|children|"
    r"familie|famille|famiglia|familia|família|rodzina|rodina|aile|ailesi|klasse|classe|klasa|třída|sınıf|gruppe|groupe|"
    r"gruppo|grupo|groep|grupa|skupina|équipe|equipo|squadra|ploeg|drużyna|zastęp|oddíl|[ub]-?\d{1,2})\b|:\s*$",
    re.IGNORECASE,
)
_FEWEST = 2  # titles by their place alone


def group_titles(headings: Headings, titles: frozenset[int], rows: Mapping[int, Cells]) -> dict[int, str]:
    """The titles among a list's rows: lone texts above full rows, that say so or begin each block between blank rows.

    A list with a column Group has none; those of `titles`, above headings, must say so."""
    if "Group" in headings.known:
        return {}
    left = min((column for cells in rows.values() for column in cells), default=0)
    lone = {
        row: shown_value(cells[left])
        for (row, cells), (_, below) in pairwise(rows.items())
        if set(cells) == {left} and isinstance(cells[left].value, str) and len(below) > 1
    }
    lone = {row: text for row, text in lone.items() if not read_size(text)}
    sure = {row for row, text in lone.items() if _SAYS_GROUP.search(text) or wearer_in(text) or garment_in(text)}
    blocks = {row for row in rows if row - 1 not in rows and row - 1 != headings.row}
    if len(blocks) >= _FEWEST and blocks <= set(lone):
        sure |= blocks - titles
    names = [shown_value(cells[left]) for row, cells in rows.items() if left in cells and row not in lone]
    if not any(map(str.isupper, names)):
        sure |= {row for row, text in lone.items() if text.isupper()}
    if len(lone) >= _FEWEST and min(rows) in lone and all(" " in name for name in names):
        sure |= {row for row, text in lone.items() if " " not in text} if set(lone) - titles else set()
    sure |= ({min(rows)} & set(lone)) - titles if sure else set()
    return {row: text.rstrip(": ") for row, text in lone.items() if row in sure}
