"""What makes it unsure that the letters found are a word, all of it and no more."""

from collections.abc import Collection, Iterable, Sequence

from xlbatch.geometry.ink import around
from xlbatch.parts.left_over import is_what_letters_left
from xlbatch.parts.letter_rows import LetterRow
from xlbatch.parts.outlines import Shape, box_gap, inside
from xlbatch.parts.part import BROKEN
from xlbatch.svg.layer import Layer

_GROUND = 20  # times a word's area: what is so large lies over more than the word


def doubts_of(
    layers: Sequence[Layer], shapes: Sequence[Shape], free: Collection[Shape], row: LetterRow, taken: Collection[Shape]
) -> tuple[str, ...]:
    """The doubts about a row of letters (keys of phrases): `taken` are all the shapes that go with it, `free` those
    that belong to no word yet."""
    mine = [mark for mark in row.marks if isinstance(mark, Shape)]
    doubts = []
    near = [mark for mark in row.near if mark in free and mark not in taken]
    if near and not _held_apart(layers, shapes, mine):
        doubts.append("near")
    if _is_covered(mine, (shape for shape in shapes if shape not in taken)):
        doubts.append("covered")
    if is_what_letters_left(row):
        doubts.append(BROKEN)
    return tuple(doubts)


def _is_covered(mine: Sequence[Shape], others: Iterable[Shape]) -> bool:
    """Whether something of about a word's size lies over one of its letters."""
    box, top, area = around(shape.box for shape in mine), max(s.layer for s in mine), sum(s.area for s in mine)
    over = (s for s in others if s.layer > top and box_gap(s.box, box) == 0 and s.area < _GROUND * area)
    return any(inside(complex(point), letter) for shape in over for point in shape.points[::4] for letter in mine)


def _held_apart(layers: Sequence[Layer], shapes: Sequence[Shape], mine: Sequence[Shape]) -> bool:
    """Whether an element or group of the file holds letters and nothing else."""
    elements = [layers[shape.layer].element for shape in mine]
    shared = 0
    while elements[0] and all(len(e) > shared and e[shared] == elements[0][shared] for e in elements):
        shared += 1
    group = elements[0][:shared]
    return bool(group) and {s for s in shapes if layers[s.layer].element[:shared] == group} <= set(mine)
