"""A decal's box on film, in whole micrometers, so that sums are exact and the same on every machine.

The gap is added once to each box and once to the width it lies in: boxes that touch are then one gap apart.
"""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from xlbatch.art.decal import Decal
from xlbatch.job.job import Film, Settings

UM = 1000  # micrometers in a millimeter
ROUNDING = 1  # µm: a decal made as wide as its film may measure that much more
Box = tuple[int, int]  # across and along, upright


class BoxSpot(NamedTuple):
    """Where a box lies in its bed: lower-left corner in µm, and whether it was turned a quarter."""

    across: int
    along: int
    turned: bool


class Packing(NamedTuple):
    """A length in µm, gap included, and where each box lies."""

    length: int
    spots: tuple[BoxSpot, ...]


@dataclass(frozen=True)
class Bed:
    """What boxes are laid in: a film's width and the longest strip, each with one gap added, in µm."""

    width: int
    longest: int
    gap: int
    turn: bool  # whether boxes may be turned a quarter

    def ways(self, box: Box) -> tuple[Box, ...]:
        """The ways round in which a box fits across."""
        both = dict.fromkeys((box, box[::-1])) if self.turn else (box,)
        return tuple(way for way in both if way[0] <= self.width)


def um(mm: float) -> int:
    """A length in whole µm."""
    return round(mm * UM)


def box_of(decal: Decal, gap: int) -> Box:
    """A decal's upright box with the gap added."""
    return um(decal.width) + gap, um(decal.height) + gap


def bed_of(film: Film, settings: Settings) -> Bed:
    """The bed of one strip of a film. A one-direction film is never turned."""
    gap = um(settings.gap)
    longest = um(min(settings.longest_strip, longest_run(film, settings) - 2 * settings.end_margin))
    turn = settings.turn and not film.one_direction
    return Bed(um(film.usable_width) + gap + ROUNDING, longest + gap + ROUNDING, gap, turn)


def longest_run(film: Film, settings: Settings) -> float:
    """The longest run of a film in mm, end margins included: no longer than the longest roll it is sold in."""
    return min([settings.longest_cut, *([max(roll.length for roll in film.rolls)] if film.rolls else [])])


class Laid(NamedTuple):
    """A kind of box, its lower-left corner, and whether it was turned a quarter."""

    kind: Box
    across: int
    along: int
    turned: bool

    @property
    def end(self) -> int:
        return self.along + self.kind[0 if self.turned else 1]


def kind_of(box: Box, bed: Bed) -> Box:
    """Boxes that differ by a turn alone are of one kind, where they may be turned."""
    return min(box, box[::-1]) if bed.turn else box


def packing_of(boxes: Sequence[Box], laid: Sequence[Laid], bed: Bed) -> Packing:
    """Where each of these boxes lies, their kinds laid so."""
    of_kind: dict[Box, list[Laid]] = defaultdict(list)
    for laid_box in reversed(laid):
        of_kind[laid_box.kind].append(laid_box)
    spots = []
    for box in boxes:
        kind, across, along, turned = of_kind[kind_of(box, bed)].pop()
        spots.append(BoxSpot(across, along, turned if box == kind else not turned))
    return Packing(max((one_box.end for one_box in laid), default=0), tuple(spots))
