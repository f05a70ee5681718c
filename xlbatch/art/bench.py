"""What drawing the decals of one job shares: its films and chests, and everything drawn so far."""

from collections.abc import Iterable
from functools import cache, partial

from xlbatch.art.artwork import Drawing, read_artwork
from xlbatch.art.decal import Decal, Outline
from xlbatch.art.fonts import find_font
from xlbatch.art.ink import Piece, measured, outline
from xlbatch.art.lettering import letter
from xlbatch.art.size import Limits, chests_of, grown, limits_of, ratio
from xlbatch.art.thin import Thin, too_fine, too_thin
from xlbatch.art.weld import border
from xlbatch.check.garment import Garment
from xlbatch.problems import Problem
from xlbatch.roster.job import DecalSpec, Job

Drawn = tuple[tuple[Decal, ...], tuple[Problem, ...]]


class Bench:
    """Draws for one job. Equal lettering or artwork at one size is drawn once, and its outline shared."""

    def __init__(self, job: Job) -> None:
        self.job = job
        self.folder = job.path.parent
        self.films = {film.name.casefold(): film for film in reversed(job.films)}
        self.chests = chests_of(job.blanks)
        self.read = cache(read_artwork)
        self.letter = cache(letter)
        self.font = cache(partial(find_font, folder=self.folder))
        self.cut = cache(_cut)
        self.bordered = cache(_bordered)
        self.measured: dict[tuple[int, float], tuple[tuple[Thin, ...], bool]] = {}

    def film(self, name: str) -> str:
        """The film's name as the Film sheet spells it."""
        film = self.films.get(name.casefold())
        return film.name if film else name

    def thin(self, outline: Outline, limit: float) -> tuple[tuple[Thin, ...], bool]:
        """What of an outline is thinner than `limit` mm, and whether nothing of it would hold. Shared outlines are
        measured once; they all live as long as the bench."""
        key = id(outline), limit
        if key not in self.measured:
            self.measured[key] = too_thin(outline, limit), too_fine(outline, limit)
        return self.measured[key]

    def sized(self, garment: Garment, spec: DecalSpec, length: float) -> float:
        """A length of the design on this garment."""
        return grown(length, ratio(self.chests, garment, spec), self.job.settings.round_sizes_to)

    def limits(self, garment: Garment, specs: Iterable[DecalSpec]) -> Limits:
        """What limits the size of the decals that `specs` cut from one drawing."""
        specs = tuple(specs)
        names = {name.casefold() for spec in specs for name in (spec.film, spec.outline_film)}
        films = tuple(film for name, film in self.films.items() if name in names)
        return limits_of(self.job.settings, garment, specs[0], films, edge_of(specs))


def edge_of(specs: Iterable[DecalSpec]) -> float:
    """How far the widest outline among these specs stands out, in mm."""
    return max((spec.outline_width or 0.0 for spec in specs if spec.outline_film), default=0.0)


def _cut(drawing: Drawing, color: str, scale: float) -> Outline:
    """One fill color of a drawing at `scale` mm a unit."""
    return outline((Piece(drawing.fills[color]),), scale, scale)


def _bordered(drawn: Outline, width: float) -> Outline:
    """The outline grown by `width` mm on every side."""
    ink = measured(border(drawn.segments, width))
    assert ink is not None  # what grows has ink
    return outline((Piece(ink),))
