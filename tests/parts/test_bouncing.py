"""Letters on no line are a word where each stands right of the one before, about as high, and not far above it."""

from collections.abc import Sequence

import pytest

from tests.parts.by_hand import Corners, block, ell, shape, star
from xlbatch.parts.bouncing import bouncing
from xlbatch.parts.frame import Straight
from xlbatch.parts.letter_rows import LetterRow

WIDE = (40, 60, 50, 70, 45, 65)


def chain(feet: Sequence[float], high: float = 100, last_gap: float = 20, last_high: float = 100) -> list[Corners]:
    """An L for each foot, 20 apart; the last as said."""
    made, left = [], 0.0
    for at, foot in enumerate(feet):
        last = at == len(feet) - 1
        left += last_gap if last else 20
        made.append(ell(left, foot, WIDE[at], last_high if last else high))
        left += WIDE[at]
    return made


@pytest.mark.parametrize(
    ("letters", "found"),
    [
        (chain((0, 30, 0, 30)), [4]),
        (chain((0, 30, 0)), []),  # three may be anything
        (chain((0, 30, 0, 30, 0)), [5]),
        (chain((0, 30, 0, 30, 0), last_gap=45), [5]),
        ([ell(26 * at, 30 * (at % 2), 14 + 2 * at, 100) for at in range(4)], [4]),  # narrow: the next two are as near
        (chain((0, 30, 0, 30, 0), last_gap=55), [4]),  # too far
        (chain((0, 30, 0, 30, 0), last_gap=-15), [5]),
        (chain((0, 30, 0, 30, 0), last_gap=-25), [4]),  # too far into the one before
        (chain((0, 30, 0, 30, 115)), [5]),
        (chain((0, 30, 0, 30, 125)), [4]),  # too far above
        (chain((0, 30, 0, 30, -55)), [5]),
        (chain((0, 30, 0, 30, -65)), [4]),
        (chain((0, 30, 0, 30, 0), last_high=82), [5]),
        (chain((0, 30, 0, 30, 0), last_high=78), [4]),  # too low
        (chain((0, 30, 0, 30, 0), last_high=122), [5]),
        (chain((0, 30, 0, 30, 0), last_high=128), [4]),  # too high
        ([*chain((0, 30, 0, 30)), star(310, 0, 100)], [4]),  # a star is no letter
        ([block(60 * at, 30 * (at % 2), 50, 100) for at in range(4)], []),  # a pattern
        ([*chain((0, 30, 0, 30)), *chain((600, 630, 600, 630))], [4, 4]),
        ([*chain((0, 30, 0, 30, 0, 30)), ell(80, 80, 62, 100)], [5]),  # a crowd: after the first stand two
    ],
)
def test_letters_that_bounce(letters: list[Corners], found: list[int]) -> None:
    marks = [shape(letter) for letter in letters]
    words = bouncing(marks[::-1], [])
    assert [len(word) for word in words] == found
    assert all([mark.box[0] for mark in word] == sorted(mark.box[0] for mark in word) for word in words)


@pytest.mark.parametrize(("known", "found"), [(4, 0), (3, 1), (0, 1)])
def test_a_row_that_has_most_of_them_is_the_word(known: int, found: int) -> None:
    marks = [shape(letter) for letter in chain((0, 30, 0, 30, 0))]
    row = LetterRow(tuple(marks[:known]), Straight(0j), 100.0, (0.0, 300.0))
    assert len(bouncing(marks, [row, LetterRow((), Straight(0j), 100.0, (0.0, 300.0))])) == found
