"""Tells what letters that were cut through a bar left of it from letters: it stands in a row like them."""

import numpy as np

from xlbatch.parts.letter_rows import LetterRow
from xlbatch.parts.outlines import Contour, inside

_LONG = 0.6  # of the height: the ends of a bar are at least so long
_SOLID = 0.8  # of the length: so far from its end a bar is filled, and no letter is
_ACROSS, _UP = 7, 7  # places looked at


def is_what_letters_left(row: LetterRow) -> bool:
    """Whether both ends of a row are the ends of a bar: solid from foot to top."""
    first = min(row.letters, key=lambda mark: row.frame.onto(mark.points)[0].min())
    last = max(row.letters, key=lambda mark: row.frame.onto(mark.points)[0].max())
    return _is_end_of_a_bar(row, first, from_left=True) and _is_end_of_a_bar(row, last, from_left=False)


def _is_end_of_a_bar(row: LetterRow, mark: Contour, *, from_left: bool) -> bool:
    along = row.frame.onto(mark.points)[0]
    ends = (along.min(), along.max()) if from_left else (along.max(), along.min())
    if abs(ends[1] - ends[0]) < _LONG * row.cap or getattr(mark, "holes", ()):
        return False
    far = ends[0] + _SOLID * (ends[1] - ends[0])
    return all(
        inside(row.frame.point(along, above), mark)
        for along in np.linspace(ends[0], far, _ACROSS + 2)[1:-1]
        for above in np.linspace(0.0, row.cap, _UP + 2)[1:-1]
    )
