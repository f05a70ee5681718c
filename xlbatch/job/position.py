"""Where a decal goes for a position: one row of the sheet Positions. Lengths in mm."""

from collections.abc import Collection
from dataclasses import dataclass

from xlbatch.job.source import Source

SLEEVES = ("left sleeve", "right sleeve")
ANY = "any"  # a row for every neckline


@dataclass(frozen=True)
class Position:
    """A place on one kind of garment. `across` is positive to the wearer's right."""

    source: Source
    position: str
    for_: str
    neckline: str
    side: str  # front, back, left sleeve, right sleeve
    measured_from: str
    distance: float
    across: float
    under: tuple[str, ...]  # positions this one goes below, where the garment has one of them
    gap: float  # to the decal above it

    @property
    def key(self) -> tuple[str, str, str]:
        """What no two rows share: its name, the kind of garment and the neckline."""
        return (self.position.casefold(), self.for_, self.neckline)

    def top_of(self, positions: Collection[str]) -> str:
        """The one of `positions` (in lower case) that this one goes below, itself where it goes below none."""
        return next((above for above in self.under if above in positions), self.position.casefold())
