"""Which outlines are letters of a word, which go with it, and which may: a word of four L of 100 units, and marks put
about it. On a level line, on one that rises by 30 degrees, and on an arch."""

import cmath
import math
from collections.abc import Sequence

import pytest

from tests.parts.by_hand import Corners, Turned, block, ell, shape, star
from xlbatch.parts.letter_rows import rows_of

PAGE = 2000.0


def level(point: complex) -> complex:
    return point + (500 + 700j)


def rising(point: complex) -> complex:
    return point * cmath.rect(1, math.pi / 6) + (500 + 700j)


def tiny(point: complex) -> complex:
    """On a page of units that are larger than the word."""
    return level(point) / 1000


def arched(point: complex) -> complex:
    """On an arch of a radius of 800, whose top is over the middle of the word."""
    return (800 + point.imag) * 1j * cmath.exp(-1j * (point.real - 140) / 800) + (900 + 100j)


WORD = [ell(0, 0, 40, 100), ell(60, 0, 50, 100), ell(130, 0, 60, 100), ell(210, 0, 70, 100)]  # to 280


def what_becomes(mark: Corners, turned: Turned, word: Sequence[Corners] = WORD) -> str:
    """What a mark is to the word: of its letters, loose, near, or nothing to it."""
    letters, other = [shape(letter, turned) for letter in word], shape(mark, turned)
    rows = rows_of([other, *letters], PAGE / 1000 if turned is tiny else PAGE)
    (row,) = (row for row in rows if letters[1] in row.letters)
    assert set(letters) <= set(row.letters)
    kinds = {"letter": row.letters, "loose": row.loose, "near": row.near}
    return next((kind for kind, marks in kinds.items() if other in marks), "nothing")


ENDS_IN_A_BLOCK = [*WORD[:3], block(210, 0, 70, 100)]


@pytest.mark.parametrize("turned", [level, tiny, rising, arched])
@pytest.mark.parametrize(
    ("mark", "becomes"),
    [
        (ell(300, 0, 45, 100), "letter"),
        (ell(-70, 0, 55, 100), "letter"),
        (ell(300, 0, 45, 44), "letter"),  # a small letter
        (ell(300, 0, 45, 40), "nothing"),  # a sign
        (ell(300, 5, 45, 90), "letter"),  # hardly off the line
        (ell(300, -30, 45, 75), "letter"),  # it reaches below the line
        (ell(300, -46, 45, 100), "letter"),
        (ell(300, 100, 45, 80), "nothing"),  # above them all
        (ell(300, -100, 45, 90), "nothing"),
        (block(300, 0, 12, 12), "nothing"),  # a full stop beyond the last letter
        (block(116, 0, 10, 10), "loose"),  # and within the word
        (block(116, -25, 10, 10), "loose"),
        (block(116, -35, 10, 10), "nothing"),  # below it
        (block(90, 92, 10, 10), "loose"),
        (block(90, 97, 10, 10), "nothing"),  # over it
        (ell(88, 40, 16, 30), "loose"),
        (block(-16, 40, 10, 10), "loose"),  # beside the first upright
        (block(-19, 40, 10, 10), "nothing"),
        (block(285, 40, 10, 10), "loose"),  # over the last foot
        (block(292, 40, 10, 10), "nothing"),
        (block(70, 125, 10, 12), "loose"),  # a dot over the upright
        (block(70, 135, 10, 12), "nothing"),  # too far above it
        (block(70, 115, 10, 45), "loose"),
        (block(70, 115, 10, 60), "nothing"),  # too high for a dot
        (block(-30, 115, 75, 12), "loose"),
        (block(-30, 115, 85, 12), "nothing"),  # too wide
        (block(-14, 115, 10, 10), "loose"),
        (block(-20, 115, 10, 10), "nothing"),  # beside it
        (block(62, -45, 20, 35), "loose"),  # a cedilla
        (block(62, -44, 20, 45), "loose"),
        (block(62, -50, 20, 35), "nothing"),  # too far below
        (block(45, -45, 20, 35), "nothing"),  # between two
        (block(-5, -45, 20, 35), "loose"),
        (block(-15, -45, 20, 35), "nothing"),
    ],
)
def test_what_stands_about_a_word(mark: Corners, becomes: str, turned: Turned) -> None:
    assert what_becomes(mark, turned) == becomes


@pytest.mark.parametrize(
    ("mark", "becomes"),
    [
        (ell(300, 8, 45, 90), "near"),  # off the line
        (ell(300, 5, 45, 102), "letter"),
        (ell(300, 5, 45, 105), "near"),  # higher than the others
        (ell(300, -50, 45, 105), "near"),  # lower
        (ell(300, -39, 45, 80), "near"),  # too little of it is above the line
        (ell(300, -45, 45, 80), "nothing"),
        (ell(300, 15, 45, 40), "nothing"),
        (ell(300, 15, 45, 50), "near"),
        (ell(300, 55, 45, 80), "near"),
        (ell(300, 65, 45, 80), "nothing"),
        (ell(300, 15, 45, 150), "near"),
        (ell(300, 15, 45, 165), "nothing"),
        (ell(365, 15, 45, 60), "near"),
        (ell(375, 15, 45, 60), "nothing"),  # far
        (ell(-130, 15, 45, 60), "near"),
        (ell(-140, 15, 45, 60), "nothing"),
        (star(300, 15, 60), "nothing"),
        (star(65, 110, 20), "nothing"),
        (star(85, 40, 33), "nothing"),  # a star is no bit of a letter
        (star(85, 40, 20), "loose"),
        (ell(-110, 0, 100, 260), "letter"),  # a large initial
        (ell(-130, 0, 100, 260), "letter"),
        (ell(-150, 0, 100, 260), "nothing"),  # too far before
        (ell(-90, 0, 100, 260), "nothing"),  # into the next
        (ell(-110, 10, 100, 260), "letter"),
        (ell(-110, 14, 100, 260), "nothing"),
        (ell(-110, -14, 100, 260), "nothing"),
    ],
)
def test_what_stands_about_a_level_word(mark: Corners, becomes: str) -> None:
    assert what_becomes(mark, level) == becomes


def test_a_dot_that_touches_a_broad_letter_goes_with_it() -> None:
    assert what_becomes(block(240, 97, 10, 10), level, ENDS_IN_A_BLOCK) == "loose"


@pytest.mark.parametrize("turned", [level, tiny])
def test_what_reaches_a_little_beyond_a_word_lies_within_it(turned: Turned) -> None:
    """Over the feet of its ends, too far above them to go with them: an L, and before it an L in a mirror."""
    mirrored = [complex(40 - corner.real, corner.imag) for corner in ell(0, 0, 40, 100)]
    for off, becomes in ((1, "loose"), (3, "nothing")):
        assert what_becomes(block(270 + off, 60, 10, 10), turned) == becomes
        assert what_becomes(block(-off, 60, 10, 10), turned, [mirrored, *WORD[1:]]) == becomes


def words_of(
    feet: Sequence[float], gaps: Sequence[float], turned: Turned, wide: float, high: Sequence[float], together: bool
) -> list[tuple[int, ...]]:
    """The words among L that stand at such heights and so far apart: the places of their letters."""
    marks, left = [], 0.0
    for at, foot in enumerate(feet):
        own = wide * (1.0, 0.6, 0.8, 0.7, 0.9, 0.5)[at]
        marks.append(shape(ell(left, foot, own, high[at] if high else 100.0), turned))
        left += own + (gaps[at] if at < len(gaps) else gaps[-1])
    rows = rows_of(marks, PAGE, [marks] if together else ())
    return sorted(tuple(sorted(marks.index(letter) for letter in row.letters)) for row in rows)  # type: ignore[arg-type]


ALL6, PARTED = [(0, 1, 2, 3, 4, 5)], [(0, 1, 2), (3, 4, 5)]
LOWER = (0, -20, 0, -33, 0, -45)


@pytest.mark.parametrize(
    ("feet", "gaps", "turned", "words"),
    [
        ([0] * 3, [20], level, [(0, 1, 2)]),
        ([0] * 2, [20], level, []),
        ([0] * 3, [20], rising, []),  # any three may lie in a line
        ([0] * 4, [20], rising, [(0, 1, 2, 3)]),
        ([0] * 5, [60], rising, [(0, 1, 2, 3, 4)]),
        ([0] * 5, [75], rising, []),  # farther apart than on the level
        ([0] * 6, [20, 20, 100, 20, 20], level, ALL6),
        ([0] * 6, [20, 20, 120, 20, 20], level, PARTED),
        ([0] * 6, [20, 20, 240, 20, 20], level, PARTED),
        ([0] * 4, [150], level, [(0, 1, 2, 3)]),  # set far apart
        ([0] * 4, [210], level, [(0, 1, 2, 3)]),
        ([0] * 4, [230], level, []),
        ([0] * 4, [150, 190, 150], level, [(0, 1, 2, 3)]),
        ([0] * 4, [150, 200, 150], level, []),  # unevenly
        ([0] * 3, [150], level, []),
        ([0, 5, 0, 0], [150], level, []),
        ([0, 4, 0, 0], [150], level, [(0, 1, 2, 3)]),
        ([0, -5, 0, 0], [150], level, []),
        (LOWER, [20], level, ALL6),  # half of them stand on the line
        ((0, -30, -12, -45, -20, 0), [20], level, []),
        ((0, -20, 0), [20], level, [(0, 1, 2)]),
        ((0, -20, -40), [20], level, []),
    ],
)
def test_letters_that_stand_on_a_line_are_words(
    feet: Sequence[float], gaps: Sequence[float], turned: Turned, words: list[tuple[int, ...]]
) -> None:
    assert words_of(feet, gaps, turned, 50, (), together=False) == words


@pytest.mark.parametrize(
    ("wide", "gaps", "turned", "word"),
    [
        (35, [5], level, False),  # narrower than high
        (35, [15], level, True),
        (140, [-25], level, True),
        (140, [-45], level, False),  # one over the other
        (285, [20], level, True),
        (315, [20], level, False),  # too wide
        (145, [20], rising, True),
        (165, [20], rising, False),
    ],
)
def test_letters_stand_beside_one_another_and_are_not_too_wide(
    wide: float, gaps: Sequence[float], turned: Turned, word: bool
) -> None:
    count = 3 if turned is level else 4
    assert bool(words_of([0] * count, gaps, turned, wide, (), together=False)) is word


@pytest.mark.parametrize(
    ("feet", "gaps", "turned", "words"),
    [
        ([0] * 3, [20], rising, [(0, 1, 2)]),
        ([0] * 6, [20, 20, 200, 20, 20], level, ALL6),
        ([0] * 6, [20, 20, 240, 20, 20], level, PARTED),
        ([0] * 2, [20], level, []),
    ],
)
def test_letters_that_the_file_holds_together_need_be_fewer_and_less_near(
    feet: Sequence[float], gaps: Sequence[float], turned: Turned, words: list[tuple[int, ...]]
) -> None:
    assert words_of(feet, gaps, turned, 50, (), together=True) == words


@pytest.mark.parametrize(("high", "word"), [(23, True), (21, False)])
def test_specks_are_no_letters(high: float, word: bool) -> None:
    assert bool(words_of([0] * 4, [5], level, 8, [high] * 4, together=False)) is word


@pytest.mark.parametrize("turned", [level, rising, arched])
def test_a_word_s_line_height_and_length(turned: Turned) -> None:
    letters = [shape(letter, turned) for letter in WORD]
    (row,) = rows_of(letters[::-1], PAGE)
    assert row.letters == tuple(letters)
    assert row.cap == pytest.approx(100, abs=0.5)
    for along in (0, 280):
        wanted = turned(complex(along, 0))
        assert abs(row.frame.point(row.span[along > 0], 0.0) - wanted) < 1
