"""Decals laid on film. Lengths in mm; across from the left edge of the usable width, along from the leading end."""

from dataclasses import dataclass
from decimal import Decimal as Money
from typing import Literal

from xlbatch.art.decal import Decal
from xlbatch.roster.job import Film, Piece, Roll


@dataclass(frozen=True)
class Batch:
    """A few shirts weeded and pressed together; its number is its strip's number in every film."""

    no: int
    garments: tuple[int, ...]  # garment numbers, in pressing order


@dataclass(frozen=True)
class Lying:
    """A decal as it lies on the cutter: lower-left corner and size of its box after turning and mirroring.

    Turning (counterclockwise, of the upright decal) comes first, mirroring about a vertical line after it."""

    decal: Decal
    across: float
    along: float
    turned: Literal[0, 90, 180, 270]

    @property
    def width(self) -> float:
        return self.decal.height if self.turned in (90, 270) else self.decal.width

    @property
    def length(self) -> float:
        return self.decal.width if self.turned in (90, 270) else self.decal.height


@dataclass(frozen=True)
class Strip:
    """One batch's decals of one film, cut off straight on both sides."""

    batch: int
    start: float  # along the run, where the strip begins
    length: float
    lying: tuple[Lying, ...]


@dataclass(frozen=True)
class Run:
    """One cut in one go, from one piece of film."""

    no: int
    film: Film
    length: float  # with both end margins
    strips: tuple[Strip, ...]
    mirrored: bool
    cut_from: str  # "roll", or the piece on hand

    @property
    def lying(self) -> tuple[Lying, ...]:
        return tuple(each for strip in self.strips for each in strip.lying)


@dataclass(frozen=True)
class FilmNeed:
    """What one film of the job comes to."""

    film: Film
    decals: int
    runs: int
    length: float  # all runs, end margins included
    least: float  # a proven lower bound for these decals laid freely, without margins
    used: float  # decal area over film area, 0 to 1
    on_hand: float  # length taken from pieces on hand
    spare: float  # length to buy beyond the runs, for spoiled decals
    buy: float  # length to buy
    rolls: tuple[tuple[int, Roll], ...]  # how many of each
    left: tuple[Piece, ...]  # pieces left over
    cost: Money | None  # None where a price is missing


@dataclass(frozen=True)
class Layout:
    """All film of the job."""

    batches: tuple[Batch, ...]
    runs: tuple[Run, ...]
    needs: tuple[FilmNeed, ...]
