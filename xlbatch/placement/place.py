"""Where a decal goes on its garment."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import NamedTuple

from xlbatch.art.decal import Decal
from xlbatch.check.garment import Garment
from xlbatch.placement.sections import Section


class Extent(NamedTuple):
    """Where a decal's box lies on its side of the garment (mm): to the right of the middle as one looks at it, and up
    from the hem or the sleeve's opening."""

    left: float
    bottom: float
    right: float
    top: float

    def meets(self, other: "Extent", near: float = 0.01) -> bool:
        """Whether the boxes lie on one another by more than `near` mm."""
        across = min(self.right, other.right) - max(self.left, other.left)
        return across > near and min(self.top, other.top) - max(self.bottom, other.bottom) > near


def around(places: Iterable["Place"]) -> Extent:
    """The box around all of them."""
    lefts, bottoms, rights, tops = zip(*(place.extent for place in places), strict=True)
    return Extent(min(lefts), min(bottoms), max(rights), max(tops))


class Register(NamedTuple):
    """How a layer lies on the lowest layer of its drawing (mm): from that piece's top edge down and from its left edge
    to the right, as one looks at the garment, edge to edge."""

    on: str  # the lowest decal
    from_top: float
    from_left: float


@dataclass(frozen=True)
class Place:
    """One decal on one garment. Lengths in mm; a distance that does not apply is None."""

    garment: Garment
    decal: Decal
    side: str  # front, back, left sleeve, right sleeve
    measured_from: str  # front collar seam, point of the V, side of the collar seam, sleeve opening, hem …
    below_collar: float | None  # top of the decal below the collar seam of its side
    above_opening: float | None  # bottom of the decal above the sleeve opening
    above_hem: float | None  # bottom of the decal above the hem, where the position is measured from there
    from_center: float  # middle of the decal from the center line, positive to the wearer's right
    clear_side: float
    clear_hem: float | None
    sections: tuple[Section, ...]  # plate placements that cover it, in order
    register: Register | None = None  # of a layer that goes on a lower one: it is not measured from the garment

    @property
    def presses(self) -> int:
        """How many plate placements cover it."""
        return len(self.sections)

    @property
    def extent(self) -> Extent:
        """Where its box lies on its side."""
        middle = self.from_center if self.side == "back" else -self.from_center
        bottom = (self.clear_hem if self.above_opening is None else self.above_opening) or 0.0
        half = self.decal.width / 2
        return Extent(middle - half, bottom, middle + half, bottom + self.decal.height)
