"""Words whose letters stand on no line: each a little higher or lower than the one before."""

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from typing import TypeVar

from xlbatch.parts.letter_rows import LetterRow
from xlbatch.parts.likeness import is_one_pattern, is_ornament
from xlbatch.parts.outlines import Contour

Mark = TypeVar("Mark", bound=Contour)

_FEWEST = 4  # letters: fewer in no line may be anything
_ALIKE = 0.8  # how high a letter is, of the one before
_BESIDE, _INTO = 0.5, -0.2  # of their height: the gap between two, and how far one reaches into the other
_UP = 0.9  # of their height: how far one stands above the other
_COVERED = 0.8  # of the letters: a row that has so many is the word


def bouncing(marks: Sequence[Mark], rows: Iterable[LetterRow]) -> list[list[Mark]]:
    """The words among outlines of one color whose letters bounce, with the `rows` of fewer of them in mind."""
    rows = tuple(rows)
    chains = []
    for chain in _chains([mark for mark in marks if not is_ornament(mark)]):
        most = max((len(set(chain).intersection(row.letters)) for row in rows), default=0)
        if len(chain) >= _FEWEST and most < _COVERED * len(chain) and not is_one_pattern(chain):
            chains.append(chain)
    return chains


def _chains(marks: Sequence[Mark]) -> Iterator[list[Mark]]:
    """Outlines each of which stands right of the one before, and right of none other."""
    left = sorted(marks, key=lambda mark: mark.box[0])
    while left:
        chain = [left.pop(0)]
        for last in chain:
            after = [mark for mark in left if _follows(last, mark)]
            if any(not _follows(before, other) for before, other in pairwise(after)):
                break  # two lines, or a crowd
            if after:
                chain.append(after[0])
                left.remove(after[0])
        yield chain


def _follows(before: Contour, other: Contour) -> bool:
    high = max(before.height, other.height)
    gap = other.box[0] - before.box[2]
    alike = min(before.height, other.height) >= _ALIKE * high
    return alike and _INTO * high <= gap <= _BESIDE * high and abs(before.box[1] - other.box[1]) <= _UP * high
