"""Where the pages of a sheet break: within a budget of height, evenly, so that no page has a lone last row."""

from collections.abc import Sequence
from itertools import pairwise
from typing import Protocol

from xlbatch.paper.paging import even_page_starts

PARTED, LONE = 1.0, 2.0  # what it costs to part a batch or run, and to leave one of its rows alone; an empty page: 1


class Breakable(Protocol):
    """A row: `height` in points; `joined`: on one page with the row after it; `starts_page`; `begins` what stays on one
    page where that costs none: a batch; `head`: the height of the row that began what it belongs to, 0 for none."""

    @property
    def height(self) -> float: ...
    @property
    def joined(self) -> bool: ...
    @property
    def starts_page(self) -> bool: ...
    @property
    def begins(self) -> bool: ...
    @property
    def head(self) -> float: ...


def breaks(rows: Sequence[Breakable], on_first: float, on_rest: float) -> tuple[int, ...]:
    """The rows that begin a further page. `on_first`, `on_rest`: points on the first page and on each later one."""
    cuts = [0, *(row_no for row_no, row in enumerate(rows) if row.starts_page and row_no), len(rows)]
    starts: list[int] = []
    for first, end in pairwise(cuts):
        starts += [first] * (first > 0)
        starts += _parted(rows, first, end, on_rest if first else on_first, on_rest)
    return tuple(starts)


def _parted(rows: Sequence[Breakable], first: int, end: int, on_first: float, on_rest: float) -> list[int]:
    """The breaks within some rows: as few as there can be, what belongs together on one page, the pages even."""
    blocks = _blocks(rows, first, end, on_rest)
    heads = [rows[row_no].head for row_no, _ in blocks]
    begins = [not head for head in heads] + [True]
    dear = [
        0.0 if begins[block_no] else LONE if begins[block_no - 1] or begins[block_no + 1] else PARTED
        for block_no in range(len(blocks))
    ]
    starts = even_page_starts([height for _, height in blocks], on_first, on_rest, heads=heads, dear=dear)
    return [blocks[block_no][0] for block_no in starts]


def _blocks(rows: Sequence[Breakable], first: int, end: int, room: float) -> list[tuple[int, float]]:
    """Rows that stay together: first row and height; row by row where they are higher than a page."""
    blocks: list[tuple[int, float]] = []
    row_no = first
    while row_no < end:
        last = row_no
        while rows[last].joined and last + 1 < end:
            last += 1
        height = sum(row.height for row in rows[row_no : last + 1])
        whole = height <= room
        blocks += (
            [(row_no, height)]
            if whole
            else [(inner_row, rows[inner_row].height) for inner_row in range(row_no, last + 1)]
        )
        row_no = last + 1
    return blocks
