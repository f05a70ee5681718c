"""Where the pages of a sheet break: within a budget of height, evenly, so that no page has a lone last row."""

from collections.abc import Sequence
from itertools import pairwise
from typing import Protocol

from xlbatch.paper.paging import page_starts


class Breakable(Protocol):
    """A row: `height` in points; `joined`: on one page with the row after it; `starts_page`; `begins` what stays on one
    page where that costs none: a batch."""

    @property
    def height(self) -> float: ...
    @property
    def joined(self) -> bool: ...
    @property
    def starts_page(self) -> bool: ...
    @property
    def begins(self) -> bool: ...


def breaks(rows: Sequence[Breakable], on_first: float, on_rest: float) -> tuple[int, ...]:
    """The rows that begin a further page. `on_first`, `on_rest`: points on the first page and on each later one."""
    cuts = [0, *(row_no for row_no, row in enumerate(rows) if row.starts_page and row_no), len(rows)]
    starts: list[int] = []
    for first, end in pairwise(cuts):
        starts += [first] * (first > 0)
        starts += _parted(rows, first, end, on_rest if first else on_first, on_rest)
    return tuple(starts)


def _parted(rows: Sequence[Breakable], first: int, end: int, on_first: float, on_rest: float) -> list[int]:
    """The breaks within some rows: as few as there can be, the pages as even as that allows."""
    blocks = _blocks(rows, first, end, on_rest)
    fewest = len(page_starts([height for _, height in blocks], on_first, on_rest))
    whole = _whole(rows, blocks, on_rest)
    if len(page_starts([height for _, height in whole], on_first, on_rest)) == fewest:
        blocks = whole
    heights = [height for _, height in blocks]
    spare = 0.0
    for step in (256.0, 128.0, 64.0, 32.0, 16.0, 8.0, 4.0, 2.0):
        room = on_rest - spare - step
        if fewest and room > 0 and len(page_starts(heights, room + on_first - on_rest, room)) == fewest:
            spare += step
    starts = page_starts(heights, on_first - spare, on_rest - spare)
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


def _whole(rows: Sequence[Breakable], blocks: Sequence[tuple[int, float]], room: float) -> list[tuple[int, float]]:
    """The same with all from one row that begins something to the next as one, where it fits on a page."""
    whole: list[tuple[int, float]] = []
    for row_no, height in blocks:
        begun = whole and rows[whole[-1][0]].begins and not rows[row_no].begins
        if begun and whole[-1][1] + height <= room:
            whole[-1] = (whole[-1][0], whole[-1][1] + height)
        else:
            whole.append((row_no, height))
    return whole
