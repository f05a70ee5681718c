"""What drawing the decals of one job shares: its films and chests, and everything drawn so far."""

import math
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from functools import cache, partial
from pathlib import Path

from xlbatch.art.decal import Decal
from xlbatch.art.drawing import DrawingSheet, Wanted, made_drawing, sheet_of
from xlbatch.art.few_sizes import AskedSize, beside, few_sizes
from xlbatch.art.size import Limits, chests_of, grown, letter_ratio, limits_of, ratio, shrunk
from xlbatch.art.thin import Thin, too_fine, too_thin
from xlbatch.check.garment import Garment
from xlbatch.files.beside import folder_of
from xlbatch.geometry.ink import InkPart, measured, outline
from xlbatch.geometry.outline import Outline
from xlbatch.geometry.weld import border
from xlbatch.job.job import DecalSpec, Job
from xlbatch.lettering.fonts import find_font
from xlbatch.lettering.text_line import letter
from xlbatch.parts.edit import Remade
from xlbatch.parts.looked import Looked, look_at
from xlbatch.problems import Problem
from xlbatch.problems.unreadable_drawings import Fault
from xlbatch.svg.artwork import Drawing
from xlbatch.trade.usual_sizes import artwork_width

BY_GARMENT, ONE_SIZE = "by garment size", "one size for all"  # of the setting Sizes; else few sizes

NOTHING_CUT: Mapping[tuple[int, str], float] = {}

Drawn = tuple[tuple[Decal, ...], tuple[Problem, ...]]


class Bench:
    """Draws for one job. Equal lettering or artwork at one size is drawn once, and its outline shared."""

    def __init__(
        self, job: Job, garments: Iterable[Garment] = (), cut_before: Mapping[tuple[int, str], float] = NOTHING_CUT
    ) -> None:
        self.job = job
        self.cut_before = cut_before  # pieces by garment number: how much bigger they lie cut than they would be made
        self.garments = tuple(garments)
        self.folder = folder_of(job.path)
        self.chests = chests_of(job.blanks)
        self.sheet = cache(self._sheet)
        self.made = cache(self._made_drawing)
        self.letter = cache(letter)
        self.font = cache(partial(find_font, folder=self.folder))
        self.cut = cache(_cut)
        self.bordered = cache(_bordered)
        self.ratios: dict[tuple[str, int, str], Mapping[float, float]] = {}
        self.measured: dict[tuple[int, float], tuple[tuple[Thin, ...], bool]] = {}

    def _sheet(self, file: Path, name: str) -> DrawingSheet | tuple[Fault, ...]:
        """A drawing with its lines on Drawing parts, or what keeps it from being cut."""
        looked = look_at(file)
        return sheet_of(self.job, name, looked) if isinstance(looked, Looked) else looked

    def _made_drawing(self, name: str, wanted: Wanted) -> tuple[Drawing | tuple[Fault, ...], Remade | None]:
        sheet = self.sheet(wanted.file, name)
        assert isinstance(sheet, DrawingSheet)  # else nothing is wanted of it
        return made_drawing(sheet.looked, sheet.parts, wanted)

    def film(self, name: str) -> str:
        """The film's name as the Film sheet spells it."""
        film = self.job.film_of.get(name.casefold())
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
        asked = ratio(self.chests, garment, spec)
        return grown(length, self._made(garment, spec).get(asked, asked), self.job.settings.round_sizes_to)

    def letters_high(self, garment: Garment, spec: DecalSpec, height: float) -> float:
        """A letter height of the design on this garment."""
        times = 1.0 if self.job.settings.sizes == ONE_SIZE else letter_ratio(garment, spec)
        return grown(height, times, self.job.settings.round_sizes_to)

    def _made(self, garment: Garment, spec: DecalSpec) -> Mapping[float, float]:
        """Where few sizes are wanted: the size made, over the size drawn, for each such size that garments of this
        class ask for; those of another class, such as an infant's, change nothing in it."""
        if self.job.settings.sizes == BY_GARMENT or not spec.scale:
            return {}
        for_all = self.job.settings.sizes == ONE_SIZE
        for_ = "" if for_all else garment.blank.for_
        key = spec.source.sheet, spec.source.row, for_
        if key not in self.ratios:
            most = 1 if for_all else self.job.settings.most_sizes
            asked = tuple(self._asked(spec, for_))
            anew = few_sizes(asked, most)
            self.ratios[key] = beside(asked, most, anew, self._lying(spec, for_, anew))
        return self.ratios[key]

    def _lying(self, spec: DecalSpec, for_: str, anew: Mapping[float, float]) -> Mapping[float, float]:
        """The size that lies cut, over the size drawn, for each size asked for of which a piece does."""
        length = spec.width or artwork_width(spec.position)
        return {
            asked: grown(length, anew[asked], self.job.settings.round_sizes_to) / length * bigger
            for garment in self.garments
            if for_ in ("", garment.blank.for_)
            if (asked := ratio(self.chests, garment, spec)) in anew
            if any(own.source == spec.source for own in garment.to_do)
            for piece in spec.pieces
            if (bigger := self.cut_before.get((garment.no, piece)))
        }

    def _asked(self, spec: DecalSpec, for_: str) -> Iterator[AskedSize]:
        """Each size of a piece that garments of a class (blank: of all) ask for, and, of artwork, the most that fits,
        in whole steps."""
        wide = (spec.width or artwork_width(spec.position)) if spec.what == "artwork" else 0.0
        by_ratio: dict[float, list[float]] = defaultdict(list)
        for garment in self.garments:
            if for_ in ("", garment.blank.for_) and any(own.source == spec.source for own in garment.to_do):
                fits = self.limits(garment, (spec,)).widths()[-1]
                most = shrunk(fits, 1.0, self.job.settings.round_sizes_to) / wide if wide else math.inf
                by_ratio[ratio(self.chests, garment, spec)].append(most)
        return (AskedSize(asked, len(most), min(most)) for asked, most in by_ratio.items())

    def limits(self, garment: Garment, specs: Iterable[DecalSpec]) -> Limits:
        """What limits the size of the decals that `specs` cut from one drawing."""
        specs = tuple(specs)
        names = {name.casefold() for spec in specs for name in (spec.film, spec.outline_film)}
        films = tuple(film for name, film in self.job.film_of.items() if name in names)
        return limits_of(self.job, garment, specs[0], films, edge_of(specs))


def edge_of(specs: Iterable[DecalSpec]) -> float:
    """How far the widest outline among these specs stands out, in mm."""
    return max((spec.outline_width or 0.0 for spec in specs if spec.outline_film), default=0.0)


def _cut(drawing: Drawing, color: str, scale: float) -> Outline:
    """One fill color of a drawing at `scale` mm a unit."""
    return outline((InkPart(drawing.fills[color]),), scale, scale)


def _bordered(drawn: Outline, width: float) -> Outline:
    """The outline grown by `width` mm on every side."""
    ink = measured(border(drawn.segments, width))
    assert ink is not None  # what grows has ink
    return outline((InkPart(ink),))
