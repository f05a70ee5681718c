"""Which outlines look alike, and which look like no letter: what tells a word from a row of stars or trees."""

from collections.abc import Collection, Mapping, Sequence

from xlbatch.parts.outlines import Contour

LEAST = 3  # of a kind: so many alike are a pattern
_SOLID = 0.97  # solidity of a box; a word has letters of other shapes too
_STARRED = 0.95  # solidity that no star has
_MOST_ALIKE = 0.7  # of a word's letters that are one letter
_AREA, _LENGTH = 1.03, 0.015  # how much larger, and longer around, outlines of one size and shape are
_WINDING, _SHAPE = 0.02, 0.05  # how unlike outlines of one shape are, larger or smaller


def is_ornament(mark: Contour) -> bool:
    """A star, disk or flower; an O, which has a hole, is none."""
    return mark.turns_alike and not getattr(mark, "holes", ())


def is_star(mark: Contour) -> bool:
    """A star or flower, and no dot."""
    return mark.turns_alike and mark.solidity < _STARRED


def is_one_pattern(marks: Sequence[Contour]) -> bool:
    """Whether most are one shape, be it larger or smaller, or all are blocks: a row of trees, of dots, of bricks."""
    alike = max(sum(_similar(mark, other) for other in marks) for mark in marks)
    return alike > _MOST_ALIKE * len(marks) or all(_is_block(mark) for mark in marks)


class Likeness:
    """Outlines by size and shape, turned or not."""

    def __init__(self, marks: Sequence[Contour]) -> None:
        self.like: Mapping[Contour, Sequence[Contour]] = _classes(marks)

    def stands_elsewhere(self, mark: Contour, those: Collection[Contour]) -> bool:
        """Whether most outlines like this one are not among `those`: one of a ring of stars that comes near a word."""
        return self._are_many(mark) and self._among(mark, those) <= len(self.like[mark]) / 2

    def is_foreign(self, mark: Contour, those: Collection[Contour]) -> bool:
        """Whether there are several like this one, and none of them among `those`."""
        return self._are_many(mark) and not self._among(mark, those)

    def _are_many(self, mark: Contour) -> bool:
        return len(self.like.get(mark, ())) >= LEAST

    def _among(self, mark: Contour, those: Collection[Contour]) -> int:
        return sum(other in those for other in self.like[mark])


def _classes(marks: Sequence[Contour]) -> dict[Contour, list[Contour]]:
    classes: dict[Contour, list[Contour]] = {}
    ordered = sorted(marks, key=lambda mark: mark.area)
    for place, mark in enumerate(ordered):
        if mark in classes:
            continue
        alike = [mark]
        for other in ordered[place + 1 :]:
            if other.area > mark.area * _AREA:
                break
            if other not in classes and abs(other.length / mark.length - 1) < _LENGTH:
                alike.append(other)
        classes |= dict.fromkeys(alike, alike)
    return classes


def _is_block(mark: Contour) -> bool:
    return mark.solidity > _SOLID and not getattr(mark, "holes", ())


def _similar(contour: Contour, other: Contour) -> bool:
    winding = contour.length / contour.area**0.5 / (other.length / other.area**0.5)
    shape = contour.width / contour.height / (other.width / other.height)
    return abs(winding - 1) < _WINDING and abs(shape - 1) < _SHAPE
