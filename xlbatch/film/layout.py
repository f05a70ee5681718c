"""Decals laid on film. Lengths in mm; across from the left edge of the usable width, along from the leading end."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal as Money
from typing import Literal, NamedTuple

from xlbatch.art.decal import Decal
from xlbatch.file_names import plain_name
from xlbatch.geometry.path import Matrix
from xlbatch.job.job import CutFileKind, Film, FilmPiece, Roll
from xlbatch.trade.tables import practice

KINDS: Mapping[CutFileKind, tuple[str, ...]] = {"SVG": ("svg",), "DXF": ("dxf",), "both": ("svg", "dxf")}


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

    def matrix(self, *, mirrored: bool) -> Matrix:
        """Takes the decal's upright outline to where it lies on the film: x across it, y along it.

        Mirroring about a vertical line is matrix(-1 0 0 1 W 0) of SVG, W here the width of the box."""
        width, height = self.decal.width, self.decal.height
        turns: dict[int, Matrix] = {
            0: (1, 0, 0, 1, 0, 0),
            90: (0, 1, -1, 0, height, 0),
            180: (-1, 0, 0, -1, width, height),
            270: (0, -1, 1, 0, 0, width),
        }
        a, b, c, d, e, f = turns[self.turned]
        if mirrored:
            a, c, e = -a, -c, self.width - e
        return a, b, c, d, e + self.across, f + self.along


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
    cut_file_kind: CutFileKind = "SVG"
    test_cut: float = 0.0  # side of the square cut as a test at the left of the leading margin; 0: none
    test_gap: float = 0.0  # at least so far from the square to the first decal

    @property
    def lying(self) -> tuple[Lying, ...]:
        return tuple(lying for strip in self.strips for lying in strip.lying)

    @property
    def outlined(self) -> tuple[Lying, ...]:
        """The decals whose outlines are cut."""
        return tuple(lying for lying in self.lying if lying.decal.outline is not None)

    @property
    def cut_file(self) -> str:
        """The name of the file to cut, the SVG where there are two; "" where no decal has an outline."""
        return self.cut_files[0] if self.outlined else ""

    @property
    def cut_files(self) -> tuple[str, ...]:
        """The names of the files to cut, alike but for their endings."""
        what = "already mirrored" if self.mirrored else "not mirrored"
        return tuple(self._named(what, kind) for kind in KINDS[self.cut_file_kind]) if self.outlined else ()

    @property
    def guide_file(self) -> str:
        return self._named("guide", "svg")

    def _named(self, what: str, kind: str) -> str:
        return f"{self.no:02d} {plain_name(self.film.name)} - {what}.{kind}"

    @property
    def ink_box(self) -> tuple[float, float] | None:
        """How far the outlines reach across and along, as the opened cut file should measure."""
        if not self.outlined:
            return None
        left, lead = min(lying.across for lying in self.outlined), min(lying.along for lying in self.outlined)
        right = max(lying.across + lying.width for lying in self.outlined)
        end = max(lying.along + lying.length for lying in self.outlined)
        if self.test_cut:
            left, lead = 0.0, self.test_along
        return round(right - left, 3), round(end - lead, 3)

    @property
    def weeded_together(self) -> tuple[tuple[Strip, ...], ...]:
        """The strips, those too short to hold with the next ones as one piece, until all of them are weeded."""
        least = practice("the shortest strip that a hand can hold to weed it")
        pieces: list[tuple[Strip, ...]] = []
        piece: tuple[Strip, ...] = ()
        for strip in self.strips:
            piece = (*piece, strip)
            if strip.start + strip.length - piece[0].start >= least:
                pieces.append(piece)
                piece = ()
        if piece:  # what is left at the end stays on the last piece
            pieces[-1:] = [(*(pieces[-1] if pieces else ()), *piece)]
        return tuple(pieces)

    def weeded_with(self, strip: Strip) -> tuple[int, ...]:
        """The numbers of the strips that are weeded as one piece with this one, its own among them; () where it is one
        by itself."""
        piece = next(piece for piece in self.weeded_together if strip in piece)
        return tuple(part.batch for part in piece) if len(piece) > 1 else ()

    @property
    def test_along(self) -> float:
        """Where the test cut begins along the run: in the middle of its margin, or the gap before the first decal."""
        room = self.strips[0].start - self.test_cut
        return max(0.0, min(room / 2, room - self.test_gap))

    def matrix(self, lying: Lying) -> Matrix:
        """Takes a decal's upright outline to where it lies on the run's page: y downward from its far end."""
        a, b, c, d, e, f = lying.matrix(mirrored=self.mirrored)
        return a, -b, c, -d, e, self.length - f


@dataclass(frozen=True)
class FilmNeed:
    """What one film of the job comes to."""

    film: Film
    decals: int
    runs: int
    length: float  # all runs, end margins included
    least: float  # a proven lower bound for these decals laid freely, without margins
    free: float  # what their boxes take laid freely, not in strips, as far as a short search finds; without margins
    used: float  # decal area over film area, 0 to 1: of their boxes, or of their shapes where they interlock
    on_hand: float  # length taken from pieces on hand
    spare: float  # length to buy beyond the runs, for spoiled decals
    buy: float  # length to buy
    rolls: tuple[tuple[int, Roll], ...]  # how many of each
    left: tuple[FilmPiece, ...]  # pieces left over
    cost: Money | None  # None where a price is missing
    sure: float = 1.0  # the chance that what is left is enough for the decals that go wrong
    cheaper: Money = Money(0)  # so much less it might cost at most, as far as is proven; without prices, mm of rolls


class Lever(NamedTuple):
    """A setting that was tried at another value, and the film in mm that takes less at least, margins apart."""

    setting: str
    value: str
    saves: float


@dataclass(frozen=True)
class Layout:
    """All film of the job."""

    batches: tuple[Batch, ...]
    runs: tuple[Run, ...]
    needs: tuple[FilmNeed, ...]
    lever: Lever | None = None  # what would save film by longer or fuller strips, if anything that was tried does
