"""Paper, and where a sheet's pages break."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise

SIDE, TOP, BOTTOM, FOOTER, HEADER = 0.3, 0.4, 0.45, 0.25, 0.2  # margins in inches
SLACK = 0.975  # viewers draw columns and rows up to 2 % larger than asked
_SIZES = {"Letter": (8.5, 11.0, 1), "A4": (8.27, 11.69, 9)}  # inches, and the workbook's own number for the paper


@dataclass(frozen=True)
class Paper:
    """A sheet of paper and the room on it in points, margins taken off."""

    number: int
    width: float
    height: float


def paper(name: str, landscape: bool) -> Paper:
    """The paper by name, upright or lying."""
    across, down, number = _SIZES[name]
    if landscape:
        across, down = down, across
    return Paper(number, (across - 2 * SIDE) * 72 * SLACK, (down - TOP - BOTTOM) * 72 * SLACK)


def page_starts(blocks: Sequence[float], first: float, rest: float) -> tuple[int, ...]:
    """The blocks that begin a new page, so that no block is split that fits on one.

    `blocks` are heights in order; `first` is the room left on the first page, `rest` that on each later one. A
    block higher than a page begins one, unless the first page has nothing else, and runs on."""
    starts: list[int] = []
    room = first
    for block_no, height in enumerate(blocks):
        if height > room and (block_no or height <= rest):
            starts.append(block_no)
            room = rest
        room -= height
        while room < 0:  # it ran on to further pages
            room += rest
    return tuple(starts)


def even_page_starts(
    blocks: Sequence[float], first: float, rest: float, *, heads: Sequence[float] = (), dear: Sequence[float] = ()
) -> tuple[int, ...]:
    """The same, in as few pages, with the room left spread over them: no page has a lone last row.

    `heads`: points that stand above a block where it begins a page; `dear`: what it costs to begin a page there, where
    an empty page costs 1. Shortest path over the blocks: the fewest pages, of these the least sum of costs and of the
    squares of the parts of pages left empty."""
    if not blocks:
        return ()
    below = [0.0, *accumulate(blocks)]
    moved = blocks[0] > first and blocks[0] <= rest  # nothing but a title on the first page
    best: list[tuple[int, float]] = [(int(moved), 0.0)]
    begins = [0]  # of the page that ends before each block
    for end in range(1, len(blocks) + 1):
        ways = []
        for start in range(end - 1, -1, -1):
            later = start > 0 or moved
            room = rest - (heads[start] if heads and start else 0.0) if later else first
            pages = 1 + max(0, math.ceil((blocks[start] - room) / rest))  # of a block that runs on
            spare = room + (pages - 1) * rest - (below[end] - below[start])
            if spare < 0 and start < end - 1:
                if below[end] - below[start] > max(first, rest):
                    break
                continue  # a page that begins earlier may have more room
            before, cost = best[start]
            more = dear[start] if dear and start else 0.0
            cost = round(cost + more + (max(0.0, spare) / rest) ** 2, 9)  # equal ways are equal on every machine
            ways.append(((before + pages, cost), start))
        least, start = min(ways)
        best.append(least)
        begins.append(start)
    starts, end = [], len(blocks)
    while end:
        end = begins[end]
        starts.append(end)
    return tuple(start for start in reversed(starts) if start or moved)


def rows_that_begin_pages(
    heights: Sequence[float], starts: Sequence[int], room: float, repeated: float
) -> tuple[int, ...]:
    """The rows that begin a further page of a sheet, so that no block is split that fits on one. `heights` of all rows
    so far, `starts` the blocks' first rows, `room` on a page, `repeated` what headings take on the further ones."""
    first = room - sum(heights[: starts[0]]) if starts else room
    blocks = [
        block
        for start, end in pairwise([*starts, len(heights)])
        for block in _blocks(heights, start, end, room - repeated)
    ]
    breaks = even_page_starts([height for _, height in blocks], first, room - repeated)
    return tuple(blocks[block_no][0] for block_no in breaks)


def _blocks(heights: Sequence[float], start: int, end: int, room: float) -> list[tuple[int, float]]:
    """Rows as one block, or, where these are higher than `room`, as a block a row: first row and height."""
    height = sum(heights[start:end])
    return [(start, height)] if height <= room else [(row, heights[row]) for row in range(start, end)]
