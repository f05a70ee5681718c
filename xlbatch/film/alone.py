"""Searches a set of boxes by itself, to the same end as `mixed.py` does many sets together.

Of few sets that takes less time: a layout that was tried before is not dropped again.
"""

from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

from xlbatch.film.box import Bed
from xlbatch.film.drop import changes
from xlbatch.how_far import alive

OVER = 1 << 62  # longer than any strip


class BoxInTurn(NamedTuple):
    """How wide and long a box is as it is dropped, and its place in its set."""

    across: int
    along: int
    which: int


InTurn = tuple[BoxInTurn, ...]  # the boxes of a set, in the order of dropping


def improved(boxes: InTurn, length: int, bed: Bed, tries: int) -> tuple[InTurn, int]:
    """The best found from these boxes on, and its length; `length`: that of these."""
    alive()
    known = {boxes: length}
    for order, row in _changes(len(boxes), bed.turn, tries):
        changed = [boxes[place] for place in order]
        if row is not None and changed[row].along <= bed.width:
            across, along, which = changed[row]
            changed[row] = BoxInTurn(along, across, which)
        tried = tuple(changed)
        if tried not in known:
            known[tried] = length_of(tried, bed.width, length)
        if known[tried] <= length:
            boxes, length = tried, known[tried]
    return boxes, length


@lru_cache(maxsize=64)
def _changes(count: int, turn: bool, tries: int) -> Sequence[tuple[list[int], int | None]]:
    return tuple(changes(count, turn, tries))


def length_of(boxes: InTurn, width: int, most: int) -> int:
    """How long these boxes lie, dropped one after the other as `drop.py` drops them; OVER where it is over `most`."""
    begins = [0]  # beside the left edge or any box
    lying: list[tuple[int, int, int]] = []  # the left, right and top of each box
    longest = 0
    for across, along, _ in boxes:
        lowest = leftmost = OVER
        for begin in begins:
            end = begin + across
            if end > width and begin:
                continue
            height = 0
            for left, right, top in lying:
                if top > height and left < end and right > begin:
                    height = top
                    if height > lowest:
                        break
            if height < lowest or (height == lowest and begin < leftmost):
                lowest, leftmost = height, begin
        top = lowest + along
        if top > most:
            return OVER
        begins.append(leftmost + across)
        lying.append((leftmost, leftmost + across, top))
        longest = max(longest, top)
    return longest
