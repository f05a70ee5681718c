"""Finds words among outlines: letters that stand on one line or arc, of one height and kind.

Nearness alone tells nothing (a ring of stars about a word is as near as its letters are to one another); what tells is
that letters share their feet, differ in shape, and don't look the same turned by a third or less."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

import numpy as np

from xlbatch.parts.frame import Frame, Round, Straight, arc_through, sloped
from xlbatch.parts.outlines import Contour, box_gap

LEAST = 3  # letters that make a word without further evidence
_LEAST_SIZE = 0.011  # of the page: smaller is no letter but a dot or a speck
_FEET = 0.045  # of the cap height: how near the line feet are that stand on it
_EXACT = 0.025  # of the cap height: how near an arc they are
_LINKED = 0.6  # of the larger one's size: how far neighbors may be apart
_LIKE = (0.3, 3.3)  # how many times as large a neighbor may be
_APART = 1.1  # of the cap height: a gap that ends a word
_LOWEST, _HIGHEST = -0.48, 1.6  # of the cap height: how far letters reach below and above their line
_SHORTEST = 0.42  # of the cap height: a lower shape is no letter but a dot or a sign
_SOLID = 0.97  # solidity of a box; a word has letters of other shapes too
_MOST_ALIKE = 0.7  # of a word's letters that are one letter
_STEEPEST = 0.71  # the sine of 45 degrees: letters on a steeper line are stacked, or no letters
_WIDEST = 3.0  # of the cap height: wider is no letter, nor two that touch
_MOST = 80  # outlines of which all pairs are tried


@dataclass(frozen=True, eq=False)
class Row:
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


@dataclass(frozen=True, eq=False)
class _Fit:
    frame: Frame
    standing: tuple[Contour, ...]
    cap: float


def rows_of(marks: Sequence[Contour], page: float, together: Iterable[Sequence[Contour]] = ()) -> list[Row]:
    """The words among outlines of one color. `together` are those that the file itself holds together: looked at
    first, and taken for linked however far apart they are. A mark is in one row at most."""
    least = _LEAST_SIZE * page
    classes = _classes([mark for mark in marks if mark.size >= least])
    rows: list[Row] = []
    used: set[Contour] = set()
    for group in together:
        if LEAST <= len(group) <= _MOST:
            free = [mark for mark in group if mark.size >= least and mark not in used]
            rows += _rows(free, marks, classes, used, linked=True)
    free = [mark for mark in marks if mark.size >= least and mark not in used]
    for component in _components(free):
        rows += _rows(component, marks, classes, used, linked=False)
    return rows


def _rows(
    free: list[Contour],
    marks: Sequence[Contour],
    classes: dict[Contour, list[Contour]],
    used: set[Contour],
    *,
    linked: bool,
) -> Iterator[Row]:
    while len(free) >= LEAST:
        row = _best_row(free, classes, linked)
        if row is None:
            return
        row = _with_loose(row, [mark for mark in marks if mark not in used], classes)
        used.update(row.marks)
        free = [mark for mark in free if mark not in used]
        yield row


def _best_row(free: list[Contour], classes: dict[Contour, list[Contour]], linked: bool) -> Row | None:
    letters = [mark for mark in free if not _is_ornament(mark)]
    fits = (fit for frame in _frames(letters) if (fit := _fit(frame, letters)))
    best: Row | None = None
    most = 0.0
    for fit in fits:
        for row in _split(fit, letters, linked):
            kept = _of_one_kind(row, classes)
            if kept is None:
                continue
            worth = _worth(kept)
            if worth > most + 1e-6:
                best, most = kept, worth
    return best


def _is_ornament(mark: Contour) -> bool:
    """A star, disk or flower; an O, which has a hole, is none."""
    return mark.turns_alike and not getattr(mark, "holes", ())


def _frames(letters: list[Contour]) -> Iterator[Frame]:
    """Lines that letters may stand on: level ones, sloped ones through neighbors' feet, and arcs."""
    ordered = sorted(letters, key=lambda mark: (mark.box[1], mark.box[0]))
    for mark in ordered:
        yield Straight(complex(0.0, mark.box[1]))
    if len(ordered) < LEAST or len(ordered) > _MOST:
        return
    for one, other in combinations(ordered, 2):
        if box_gap(one.box, other.box) <= _LINKED * max(one.size, other.size):
            yield from _slopes(one, other)
    chain = sorted(letters, key=lambda mark: (mark.center.real, mark.center.imag))
    for step in range(1, 1 + max(1, (len(chain) - 1) // 2)):
        for first in range(0, len(chain) - 2 * step):
            three = chain[first], chain[first + step], chain[first + 2 * step]
            yield from _arcs(three, letters)


def _slopes(one: Contour, other: Contour) -> Iterator[Straight]:
    if abs(one.center - other.center) < 1e-6:
        return
    frame = sloped(one.center, other.center)
    for _ in range(2):
        feet = _foot_point(frame, one), _foot_point(frame, other)
        if abs(feet[0] - feet[1]) < 1e-6:
            return
        frame = sloped(*feet)
        if abs(frame.along.imag) > _STEEPEST:
            return
    yield frame


def _arcs(three: Sequence[Contour], letters: list[Contour]) -> Iterator[Round]:
    for heads_out in (True, False):
        arc = arc_through(np.array([mark.center for mark in three]), heads_out)
        members: Sequence[Contour] = three
        for _ in range(4):
            if arc is None or abs(arc.radius) < 0.8 * max(mark.size for mark in three):
                break
            arc = arc_through(np.array([_foot_point(arc, mark) for mark in members]), heads_out)
            if arc is not None:
                high = float(np.median([mark.size for mark in three]))
                near = [mark for mark in letters if abs(float(arc.onto(mark.points)[1].min())) < _FEET * 1.5 * high]
                members = near if len(near) >= LEAST else members
        if arc is not None and abs(arc.radius) < 20 * max(mark.size for mark in three):
            yield arc


def _foot_point(frame: Frame, mark: Contour) -> complex:
    """Where a mark's lowest part over the line has its middle."""
    above = frame.onto(mark.points)[1]
    low = above <= above.min() + 0.01 * mark.size
    point = mark.points[low]
    return complex(point[np.argmin(above[low])]) if isinstance(frame, Straight) else complex(point.mean())


def _fit(frame: Frame, letters: list[Contour]) -> _Fit | None:
    """The letters whose feet are on a line, where they are enough."""
    reach = {mark: _reach(frame, mark) for mark in letters}
    high = sorted(top - foot for foot, top in reach.values())[-max(1, len(reach) // 3) :][0]
    standing = [mark for mark, (foot, top) in reach.items() if abs(foot) <= _FEET * high and top > 0]
    if len(standing) < 2:
        return None
    level = _level([reach[mark][0] for mark in standing], high)
    tops = sorted((reach[mark][1] for mark in standing), reverse=True)
    return _Fit(frame.raised(level), tuple(standing), tops[0] - level)


def _level(feet: Sequence[float], high: float) -> float:
    """The height at which most feet stand; of equals the highest: round letters go a little below."""
    window = 0.006 * high
    best = max(feet, key=lambda foot: (sum(abs(other - foot) <= window for other in feet), foot))
    same = [foot for foot in feet if abs(foot - best) <= window]
    return float(np.median(same))


def _reach(frame: Frame, mark: Contour) -> tuple[float, float]:
    above = frame.onto(mark.points)[1]
    return float(above.min()), float(above.max())


def _span(frame: Frame, mark: Contour) -> tuple[float, float]:
    along = frame.onto(mark.points)[0]
    return float(along.min()), float(along.max())


def _split(fit: _Fit, letters: list[Contour], linked: bool) -> Iterator[Row]:
    """The letters on a line as words: descenders with them, parted where the gaps are wide."""
    cap = fit.cap
    members = []
    for mark in letters:
        foot, top = _reach(fit.frame, mark)
        below = _LOWEST * cap <= foot <= 1.5 * _FEET * cap
        if below and _SHORTEST * cap <= top <= 1.08 * cap and top - foot >= _SHORTEST * cap:
            members.append((*_span(fit.frame, mark), mark))
    members.sort(key=lambda each: each[:2])
    level = isinstance(fit.frame, Straight) and fit.frame.along == 1
    apart = _APART * (2.0 if linked else 1.0 if level else 0.6)
    word: list[tuple[float, float, Contour]] = []
    for each in members:
        if word and each[0] - max(end for _, end, _ in word) > apart * cap:
            yield from _row(fit, word, linked=linked)
            word = []
        word.append(each)
    yield from _row(fit, word, linked=linked)


def _row(fit: _Fit, word: list[tuple[float, float, Contour]], *, linked: bool) -> Iterator[Row]:
    standing = [mark for _, _, mark in word if mark in fit.standing]
    level = isinstance(fit.frame, Straight) and fit.frame.along == 1
    if len(word) < LEAST + (not level and not linked) or len(standing) < max(2, 0.5 * len(word)):
        return
    if isinstance(fit.frame, Round) and any(
        abs(_reach(fit.frame, mark)[0]) > _EXACT * fit.cap and mark in fit.standing for _, _, mark in word
    ):
        return  # an arc goes nearly through any few points: round letters alone go a little below it
    left, right = min(start for start, _, _ in word), max(end for _, end, _ in word)
    cap = max(_reach(fit.frame, mark)[1] for mark in standing)
    overlap = sum(end - start for start, end, _ in word) - (right - left)
    if right - left < 1.05 * cap or overlap > 0.35 * (right - left):
        return
    if any(end - start > _WIDEST * cap for start, end, _ in word):
        return
    yield Row(tuple(mark for _, _, mark in word), fit.frame, cap, (left, right))


def _of_one_kind(row: Row, classes: dict[Contour, list[Contour]]) -> Row | None:
    """The row without shapes that stand elsewhere too; None where its shapes are all alike."""
    inside = set(row.letters)
    letters = tuple(
        mark
        for mark in row.letters
        if len(others := classes.get(mark, [mark])) < LEAST
        or sum(other in inside for other in others) > len(others) / 2
    )
    if len(letters) < LEAST or _all_alike(letters) or all(_is_block(mark) for mark in letters):
        return None
    if len(letters) == len(row.letters):
        return row
    spans = [_span(row.frame, mark) for mark in letters]
    return Row(letters, row.frame, row.cap, (min(a for a, _ in spans), max(b for _, b in spans)))


def _is_block(mark: Contour) -> bool:
    return mark.solidity > _SOLID and not getattr(mark, "holes", ())


def _all_alike(letters: Sequence[Contour]) -> bool:
    """Whether most are one shape, be it larger or smaller: a row of trees, of dots."""
    alike = max(sum(_similar(mark, other) for other in letters) for mark in letters)
    return alike > _MOST_ALIKE * len(letters)


def _similar(one: Contour, other: Contour) -> bool:
    winding = one.length / one.area**0.5 / (other.length / other.area**0.5)
    return abs(winding - 1) < 0.02 and abs(one.width / one.height / (other.width / other.height) - 1) < 0.05


def _worth(row: Row) -> float:
    """How good a word a row makes: letters on the line, fewer of them off it; level before sloped before bent."""
    exact = sum(abs(_reach(row.frame, mark)[0]) < 0.012 * row.cap for mark in row.letters)
    plain = {True: 0.9, False: 0.3}[isinstance(row.frame, Straight) and row.frame.along == 1]
    plain = 0.0 if isinstance(row.frame, Round) else plain
    return len(row.letters) + 0.5 * exact + plain


def _classes(marks: Sequence[Contour]) -> dict[Contour, list[Contour]]:
    """For each outline those of its size and shape, turned or not, itself among them."""
    found: dict[Contour, list[Contour]] = {}
    ordered = sorted(marks, key=lambda mark: mark.area)
    for at, mark in enumerate(ordered):
        if mark in found:
            continue
        alike = [mark]
        for other in ordered[at + 1 :]:
            if other.area > mark.area * 1.03:
                break
            if other not in found and abs(other.length / mark.length - 1) < 0.015:
                alike.append(other)
        for each in alike:
            found[each] = alike
    return found


def _components(marks: list[Contour]) -> list[list[Contour]]:
    """Outlines joined where neighbors are near and not too unlike in size, the largest first."""
    left = list(marks)
    found = []
    while left:
        group = [left.pop(0)]
        for mark in group:
            near = [other for other in left if _linked(mark, other)]
            group += near
            left = [other for other in left if other not in near]
        found.append(group)
    return sorted(found, key=len, reverse=True)


def _linked(one: Contour, other: Contour) -> bool:
    ratio = one.size / other.size
    return _LIKE[0] < ratio < _LIKE[1] and box_gap(one.box, other.box) <= _LINKED * max(one.size, other.size)


def _with_loose(row: Row, marks: Iterable[Contour], classes: dict[Contour, list[Contour]]) -> Row:
    """The row with its dots, accents, signs and worn bits, and what else may belong to it."""
    members, cap = set(row.letters), row.cap
    loose: list[Contour] = []
    near: list[Contour] = []
    spans = [(*_span(row.frame, mark), *_reach(row.frame, mark)) for mark in row.letters]
    left, right = row.span
    for mark in marks:
        if mark in members:
            continue
        start, end = _span(row.frame, mark)
        foot, top = _reach(row.frame, mark)
        if end < left - 0.9 * cap or start > right + 0.9 * cap or foot > 1.7 * cap or top < -0.6 * cap:
            continue
        within = left - 0.02 * cap <= start and end <= right + 0.02 * cap
        small = top - foot < 0.5 * cap and end - start < 0.8 * cap
        speck = max(top - foot, end - start) < 0.13 * cap
        in_band = foot >= -0.3 * cap and top <= 1.04 * cap
        if (within and in_band and (speck or not _is_ornament(mark) or top - foot < 0.25 * cap)) or (
            small and not _is_star(mark) and _goes_with(row, mark, spans)
        ):
            loose.append(mark)
        elif not _is_ornament(mark) and _beside(top, foot, cap) and not _repeats(mark, classes, members):
            near.append(mark)
    loose = [mark for mark in loose if mark.size < 0.13 * cap or not _strewn(mark, classes, loose)]
    return Row(row.letters, row.frame, cap, row.span, tuple(loose), tuple(near))


def _is_star(mark: Contour) -> bool:
    return mark.turns_alike and mark.solidity < 0.95


def _goes_with(row: Row, mark: Contour, spans: list[tuple[float, float, float, float]]) -> bool:
    """Whether something is right above ink of a letter, as dots and accents are, or right below, as a cedilla is."""
    (start, end), (foot, top), cap = _span(row.frame, mark), _reach(row.frame, mark), row.cap
    for letter, (left, right, low, _) in zip(row.letters, spans, strict=True):
        if left - 0.12 * cap <= (start + end) / 2 <= right + 0.12 * cap:
            along, above = row.frame.onto(letter.points)
            wide = 0.12 * cap + (end - start) / 2
            local = above[(np.abs(along - (start + end) / 2) <= wide) & (above < foot + 0.06 * cap)]
            if len(local) and foot - float(local.max()) <= 0.3 * cap:
                return True
            if left <= (start + end) / 2 <= right and -0.02 * cap <= low - top <= 0.12 * cap:
                return True
    return False


def _beside(top: float, foot: float, cap: float) -> bool:
    """Whether something beside a word is as high as a letter and at its height."""
    common = min(top, cap) - max(foot, 0.0)
    return 0.45 * cap <= top - foot <= 1.6 * cap and common >= 0.5 * min(cap, top - foot)


def _repeats(mark: Contour, classes: dict[Contour, list[Contour]], members: set[Contour]) -> bool:
    """Whether its like stands elsewhere too, away from the word."""
    others = classes.get(mark, [mark])
    return len(others) >= LEAST and not any(other in members for other in others)


def _strewn(mark: Contour, classes: dict[Contour, list[Contour]], loose: list[Contour]) -> bool:
    """Whether most of its like are not with the word: a ring of stars that comes near it."""
    others = classes.get(mark, [mark])
    return len(others) >= LEAST and sum(other in loose for other in others) <= len(others) / 2
