"""Paper, and where a sheet's pages break."""

from collections.abc import Sequence
from dataclasses import dataclass

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
