"""Where a decal goes on its garment."""

from dataclasses import dataclass

from xlbatch.art.decal import Decal
from xlbatch.check.garment import Garment
from xlbatch.placement.sections import Section


@dataclass(frozen=True)
class Place:
    """One decal on one garment. Lengths in mm; a distance that does not apply is None."""

    garment: Garment
    decal: Decal
    side: str  # front, back, left sleeve, right sleeve
    below_collar: float | None  # top of the decal below the collar seam of its side
    above_opening: float | None  # bottom of the decal above the sleeve opening
    above_hem: float | None  # bottom of the decal above the hem, where the position is measured from there
    from_center: float  # middle of the decal from the center line, positive to the wearer's right
    clear_side: float
    clear_hem: float | None
    sections: tuple[Section, ...]  # plate placements that cover it, in order
    line_up_by: str

    @property
    def presses(self) -> int:
        """How many plate placements cover it."""
        return len(self.sections)
