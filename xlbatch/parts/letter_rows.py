"""Finds words among outlines: letters that stand on one line or arc, of one height and kind.

Nearness alone tells nothing (a ring of stars about a word is as near as its letters are to one another); what tells is
that letters share their feet, differ in shape, and don't look the same turned by a third or less."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np

from xlbatch.parts.flat_feet import on_flat_feet
from xlbatch.parts.frame import Frame, Round, Straight
from xlbatch.parts.likeness import Likeness, is_one_pattern, is_ornament, is_star
from xlbatch.parts.outlines import Contour, box_gap
from xlbatch.parts.standing import FEET, LINKED, OnLine, lines_under, standing

LEAST = 3  # letters that make a word without further evidence
_LEAST_SIZE = 0.011  # of the page: smaller is no letter but a dot or a speck
_LIKE = (0.3, 3.3)  # how many times as large a neighbor may be
_MOST = 80  # marks that the file holds together as a word

# of the cap height
_EXACT = 0.025  # how near an arc feet are: it goes nearly through any few points
_EVEN = 0.006  # how near one another feet are that are at one height
_APART = 1.1  # a gap that ends a word
_LOWEST = -0.48  # how far letters reach below their line
_HIGHEST = 1.08  # and above it
_SHORTEST = 0.42  # a lower shape is no letter but a dot or a sign
_WIDEST = 3.0  # wider is no letter, nor two that touch
_ONE_LETTER = 1.6  # nor is this one letter: on what slope or arc welded ones stand can't be told
_SPECK = 0.13  # smaller is dirt
_INITIAL = 0.75  # so high are the others where the first letter is a large one
_BEFORE = 0.4  # how far before the others it stands
_WIDE, _EVENLY = 2.2, 0.45  # gaps of a word set far apart, and how unlike they are


@dataclass(frozen=True, eq=False)
class LetterRow:
    """Letters on a line: their outlines in order, the line through their feet, and how high the tallest stands.

    `loose` are dots, accents, signs and bits that go with them; `near` are outlines that may belong too."""

    letters: tuple[Contour, ...]
    frame: Frame
    cap: float
    span: tuple[float, float]  # along the line
    loose: tuple[Contour, ...] = ()
    near: tuple[Contour, ...] = ()

    @property
    def marks(self) -> tuple[Contour, ...]:
        return self.letters + self.loose


def rows_of(marks: Sequence[Contour], page: float, together: Iterable[Sequence[Contour]] = ()) -> list[LetterRow]:
    """The words among outlines of one color. `together` are those that the file itself holds together: looked at
    first, and taken for linked however far apart they are. A mark is in one row at most."""
    large = {mark for mark in marks if mark.size >= _LEAST_SIZE * page}
    finder = _RowFinder(marks, Likeness([mark for mark in marks if mark in large]))
    for group in together:
        if LEAST <= len(group) <= _MOST:
            finder.look_among([mark for mark in group if mark in large], linked=True)
    for neighbors in _neighbors([mark for mark in marks if mark in large and mark not in finder.used]):
        finder.look_among(neighbors, linked=False)
    return finder.rows


class _RowFinder:
    def __init__(self, marks: Sequence[Contour], likeness: Likeness) -> None:
        self.marks = marks
        self.likeness = likeness
        self.used: set[Contour] = set()
        self.rows: list[LetterRow] = []

    def look_among(self, marks: Sequence[Contour], *, linked: bool) -> None:
        """Finds the words among some of the marks, the best first."""
        while len(free := [mark for mark in marks if mark not in self.used]) >= LEAST:
            letters = [mark for mark in free if not is_ornament(mark)]
            words = (word for line in lines_under(letters) for word in _words_on(line, letters, linked=linked))
            rows = filter(None, (self._of_one_kind(word) for word in words))
            best = max(rows, key=_worth, default=None)
            if best is None:
                return
            best = self._with_loose(_on_flat_feet(best))
            self.used.update(best.marks)
            self.rows.append(best)

    def _of_one_kind(self, word: "_Measured") -> LetterRow | None:
        """The word as a row, without shapes that stand elsewhere too; None where the rest is none."""
        inside = {stood.mark for stood in word.letters}
        kept = [stood for stood in word.letters if not self.likeness.stands_elsewhere(stood.mark, inside)]
        letters = tuple(stood.mark for stood in kept)
        if len(letters) < LEAST or is_one_pattern(letters):
            return None
        return LetterRow(letters, word.line, word.cap, _span(kept))

    def _with_loose(self, row: LetterRow) -> LetterRow:
        """The row with its dots, accents, signs and worn bits, and what else may belong to it."""
        members, cap = set(row.letters), row.cap
        letters = [standing(row.frame, mark) for mark in row.letters]
        left, right = row.span
        loose: list[Contour] = []
        near: list[Contour] = []
        for mark in self.marks:
            bit = standing(row.frame, mark)
            about = bit.end >= left - 0.9 * cap and bit.start <= right + 0.9 * cap
            if mark in members or mark in self.used or not about or bit.foot > 1.7 * cap or bit.top < -0.6 * cap:
                continue
            if _lies_within(bit, row) or _goes_with(bit, row, letters):
                loose.append(mark)
            elif not is_ornament(mark) and _is_beside(bit, cap) and not self.likeness.is_foreign(mark, members):
                near.append(mark)
        kept = [m for m in loose if m.size < _SPECK * cap or not self.likeness.stands_elsewhere(m, loose)]
        return LetterRow(row.letters, row.frame, cap, row.span, tuple(kept), tuple(near))


@dataclass(frozen=True)
class _Measured:
    """Letters measured on a line, in order."""

    letters: Sequence[OnLine]
    line: Frame
    cap: float


def _words_on(line: Frame, letters: Sequence[Contour], *, linked: bool) -> Iterator[_Measured]:
    """The words that stand on a line: letters whose feet are on it, descenders with them, parted at wide gaps."""
    stood = [standing(line, mark) for mark in letters]
    high = sorted(mark.high for mark in stood)[-max(1, len(stood) // 3) :][0]
    level = _level([mark.foot for mark in stood if _is_on(mark, high)], high)
    if level is None:
        return
    line = line.raised(level)
    on_line = {stands.mark for stands in stood if _is_on(stands, high)}
    level_line = isinstance(line, Straight) and line.along == 1
    least = LEAST + (isinstance(line, Round) or (not level_line and not linked))  # an arc goes through any three
    measured = sorted((standing(line, mark) for mark in letters), key=lambda stands: (stands.start, stands.end))
    tops = sorted((stands.top for stands in measured if stands.mark in on_line), reverse=True)
    caps = tops[:2] if level_line and tops[1] < _INITIAL * tops[0] else tops[:1]
    for cap in caps:
        apart = _APART * cap * (2.0 if linked else 1.0 if level_line else 0.6)
        members = [stands for stands in measured if _is_letter(stands, cap)]
        for word in (*_parted(members, apart), *_set_wide(members, cap)):
            on = [stands for stands in word if stands.mark in on_line]
            if len(word) >= least and len(on) >= max(2, 0.5 * len(word)):
                own = max(stands.top for stands in on)
                bent = isinstance(line, Round) and any(abs(stands.foot) > _EXACT * cap for stands in on)
                widest = _WIDEST if level_line else _ONE_LETTER
                if not bent and _has_the_shape_of_a_word(word, own, widest):
                    yield _with_initial(_Measured(word, line, own), measured)


def _is_on(stood: OnLine, high: float) -> bool:
    return abs(stood.foot) <= FEET * high and stood.top > 0


def _level(feet: Sequence[float], high: float) -> float | None:
    """The height at which most feet stand; of equals the highest: round letters go a little below. None where fewer
    than two stand on the line."""
    if len(feet) < 2:
        return None
    window = _EVEN * high
    best = max(feet, key=lambda foot: (sum(abs(other - foot) <= window for other in feet), foot))
    return float(np.median([foot for foot in feet if abs(foot - best) <= window]))


def _on_flat_feet(row: LetterRow) -> LetterRow:
    """The row on the line through its flat feet."""
    line = on_flat_feet(row.frame, row.letters, row.cap)
    stood = [standing(line, mark) for mark in row.letters]
    return (
        replace(row, frame=line, cap=max(mark.top for mark in stood), span=_span(stood))
        if line is not row.frame
        else row
    )


def _is_letter(stood: OnLine, cap: float) -> bool:
    """Whether something is as high as a letter and where letters are, those that reach below the line among them."""
    placed = _LOWEST * cap <= stood.foot <= 1.5 * FEET * cap and stood.top <= _HIGHEST * cap
    return placed and min(stood.top, stood.high) >= _SHORTEST * cap


def _parted(members: Sequence[OnLine], apart: float) -> Iterator[list[OnLine]]:
    word: list[OnLine] = []
    for stands in members:
        if word and stands.start - max(other.end for other in word) > apart:
            yield word
            word = []
        word.append(stands)
    yield word


def _set_wide(members: Sequence[OnLine], cap: float) -> Iterator[Sequence[OnLine]]:
    """All of them as one word set far apart, where they are as high as one another and the gaps are even."""
    gaps = [after.start - before.end for before, after in pairwise(members)]
    if len(members) <= LEAST or not _APART * cap < max(gaps) < min(gaps) + _EVENLY * cap or max(gaps) > _WIDE * cap:
        return
    if all(abs(stands.foot) < FEET * cap and stands.top > (1 - FEET) * cap for stands in members):
        yield members


def _with_initial(word: _Measured, measured: Sequence[OnLine]) -> _Measured:
    """The word with a larger letter that stands before it."""
    left, cap = word.letters[0].start, word.cap
    before = [
        stands
        for stands in measured
        if stands.top > cap / _INITIAL
        and abs(stands.foot) < FEET * stands.top
        and 0 <= left - stands.end < _BEFORE * cap
    ]
    return _Measured((before[-1], *word.letters), word.line, before[-1].top) if before else word


def _has_the_shape_of_a_word(word: Sequence[OnLine], cap: float, widest: float) -> bool:
    """Whether letters stand beside one another, and none is wider than letters are."""
    left, right = _span(word)
    overlap = sum(stands.long for stands in word) - (right - left)
    too_wide = any(stands.long > widest * cap for stands in word)
    return right - left >= 1.05 * cap and overlap <= 0.35 * (right - left) and not too_wide


def _span(word: Iterable[OnLine]) -> tuple[float, float]:
    starts, ends = zip(*((stands.start, stands.end) for stands in word), strict=True)
    return min(starts), max(ends)


def _worth(row: LetterRow) -> float:
    """How good a word a row makes: letters on the line, fewer of them off it; level before sloped before bent."""
    exact = sum(abs(standing(row.frame, mark).foot) < 0.012 * row.cap for mark in row.letters)
    plain = 0.0 if isinstance(row.frame, Round) else 0.9 if row.frame.along == 1 else 0.3
    return round(len(row.letters) + 0.5 * exact + plain, 6)


def _neighbors(marks: Sequence[Contour]) -> list[list[Contour]]:
    """Outlines joined where they are near and not too unlike in size, the largest group first."""
    left = list(marks)
    groups = []
    while left:
        group = [left.pop(0)]
        for mark in group:
            near = [other for other in left if _linked(mark, other)]
            group += near
            left = [other for other in left if other not in near]
        groups.append(group)
    return sorted(groups, key=len, reverse=True)


def _linked(contour: Contour, other: Contour) -> bool:
    ratio = contour.size / other.size
    gap, largest = box_gap(contour.box, other.box), max(contour.size, other.size)
    alike = _LIKE[0] < ratio < _LIKE[1]
    return alike and gap <= (_WIDE if _level_with(contour, other) else LINKED) * largest


def _level_with(contour: Contour, other: Contour) -> bool:
    """Whether two have foot and top at the same heights."""
    off = max(abs(contour.box[1] - other.box[1]), abs(contour.box[3] - other.box[3]))
    return off < FEET * max(contour.height, other.height)


def _lies_within(bit: OnLine, row: LetterRow) -> bool:
    """Whether something lies between a word's letters, in the band they fill."""
    cap, (left, right) = row.cap, row.span
    along = left - 0.02 * cap <= bit.start and bit.end <= right + 0.02 * cap
    in_band = bit.foot >= -0.3 * cap and bit.top <= 1.04 * cap
    return along and in_band and (bit.high < 0.25 * cap or not is_ornament(bit.mark))


def _goes_with(bit: OnLine, row: LetterRow, letters: Sequence[OnLine]) -> bool:
    """Whether something is right above ink of a letter, as dots and accents are, or right below, as a cedilla is."""
    cap, middle = row.cap, (bit.start + bit.end) / 2
    if bit.high >= 0.5 * cap or bit.long >= 0.8 * cap or is_star(bit.mark):
        return False
    for letter in letters:
        if letter.start - 0.12 * cap <= middle <= letter.end + 0.12 * cap:
            along, above = row.frame.onto(letter.mark.points)
            under = above[(np.abs(along - middle) <= 0.12 * cap + bit.long / 2) & (above < bit.foot + 0.06 * cap)]
            if len(under) and bit.foot - float(under.max()) <= 0.3 * cap:
                return True
            if letter.start <= middle <= letter.end and -0.02 * cap <= letter.foot - bit.top <= 0.12 * cap:
                return True
    return False


def _is_beside(bit: OnLine, cap: float) -> bool:
    """Whether something beside a word is as high as a letter and at its height."""
    common = min(bit.top, cap) - max(bit.foot, 0.0)
    return 0.45 * cap <= bit.high <= 1.6 * cap and common >= 0.5 * min(cap, bit.high)
