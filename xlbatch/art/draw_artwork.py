"""The artwork of one garment → decals, and problems with the drawing, its colors or its size."""

from collections.abc import Iterable
from typing import Any

from xlbatch.art.bench import Bench, Drawn
from xlbatch.art.drawing import DrawingSheet, Wanted, edits_of, note_problems, rules_of
from xlbatch.art.joined import TEXTS
from xlbatch.art.row_cut import Cut, decals_of
from xlbatch.art.size import Limits, shrunk
from xlbatch.check.garment import Garment
from xlbatch.check.names import did_you_mean, same
from xlbatch.files.beside import beside
from xlbatch.geometry.ink import scaled, shifted
from xlbatch.geometry.path import Box
from xlbatch.job.job import DecalSpec
from xlbatch.parts.color_layers import pressed_as_drawn
from xlbatch.parts.color_words import color_in
from xlbatch.problems import Problem, problem
from xlbatch.problems.phrases import phrase
from xlbatch.problems.unreadable_drawings import Fault
from xlbatch.svg.artwork import Drawing
from xlbatch.svg.layer import Layers
from xlbatch.trade.usual_sizes import artwork_width
from xlbatch.units import length_text, print_step, printed_text

Size = tuple[float, float]


def draw_artwork(bench: Bench, garment: Garment, spec: DecalSpec) -> Drawn:
    """The decals one row of artwork makes: from its drawing, or a plain box where only its size is given."""
    artwork = _Artwork(bench, garment, spec)
    cut = artwork.cut() if spec.artwork else artwork.box()
    decals = decals_of(bench, garment, spec, cut, artwork.together) if cut else ()
    return decals, tuple(artwork.problems)


class _Artwork:
    """One artwork row on one garment, and the problems found on the way to its outline."""

    def __init__(self, bench: Bench, garment: Garment, spec: DecalSpec) -> None:
        self.bench = bench
        self.garment = garment
        self.spec = spec
        self.together = _together(garment, spec)
        self.sizing = next((row for row in (spec, *self.together) if row.width or row.height), spec)
        self.file = bench.folder
        self.words = ""  # set in the drawing for this garment
        self.rooms: tuple[Box, ...] = ()  # where in the drawing they lie
        self.problems: list[Problem] = []

    def cut(self) -> Cut | None:
        """The row's fill color of its drawing, at its size; None, unreported, where this garment has none of it."""
        sheet = self._sheet()
        color = self._color(sheet) if sheet else None
        drawing = self._drawing(sheet) if sheet and color else None
        size = self._fitted(self._size((drawing.width, drawing.height))) if drawing else None
        if drawing is None or color is None or size is None or color not in drawing.fills:
            return None
        if sheet and self.spec == self.together[0]:
            self._note_picture(sheet.looked.layers, size[0])
        left, bottom, right, top = drawing.box
        scale = size[0] / (drawing.base[2] - drawing.base[0])
        outline = self.bench.cut(drawing, color, scale)
        ink = drawing.fills[color].box
        whole = round((right - left) * scale, 3), round((top - bottom) * scale, 3)
        return Cut(
            outline,
            outline.width,
            outline.height,
            offset=((ink[0] - left) * scale, (ink[1] - bottom) * scale),
            whole=whole if len(drawing.fills) > 1 or drawing.box != ink else None,
            center=drawing.center * scale,
            text=self.words,
            rooms=tuple(scaled(shifted(room, -ink[0], -ink[1]), scale) for room in self.rooms),
            base=scaled(shifted(drawing.base, -ink[0], -ink[1]), scale),
        )

    def box(self) -> Cut | None:
        """A plain box of the width and height given."""
        for heading, value in (("Width", self.spec.width), ("Height", self.spec.height)):
            if value is None:
                self._report("value-needed", heading, heading=heading)
        if self.spec.width is None or self.spec.height is None:
            return None
        size = self._fitted((self._sized(self.spec.width), self._sized(self.spec.height)))
        return size and Cut(None, *size)

    def _sheet(self) -> DrawingSheet | None:
        name = self.spec.artwork
        file = beside(self.bench.folder, name)
        if file is None:
            near = did_you_mean(name, (path.name for path in sorted(self.bench.folder.glob("*.*"))))
            self._report("artwork-missing", "Artwork", name, suggestion=near)
            return None
        self.file = file
        sheet = self.bench.sheet(file, name)
        if isinstance(sheet, DrawingSheet):
            return sheet
        self._unreadable(sheet)
        return None

    def _unreadable(self, faults: Iterable[Fault]) -> None:
        for fault in faults:
            self._report("artwork-unreadable", "Artwork", self.spec.artwork, reason=fault.reason, remedy=fault.remedy)

    def _drawing(self, sheet: DrawingSheet) -> Drawing | None:
        job = self.bench.job
        edits, faults = edits_of(job, self.garment, self.spec, sheet)
        if self.spec == self.together[0]:
            self.problems += faults
        if any(fault.level == "stop" for fault in faults):
            return None
        box = sheet.looked.box
        shape = (box[3] - box[1]) / (box[2] - box[0])
        width = self.sizing.width or (self.sizing.height / shape if self.sizing.height else self._usual)
        cut = frozenset(filter(None, (color_in(sheet.colors, row.artwork_color) for row in self.together)))
        apart = job.settings.overlapping_colors == "side by side" or not self._pressed_in_order(sheet)
        wanted = Wanted(self.file, edits, rules_of(job, sheet.looked, width), apart, cut)
        drawing, made = self.bench.made(self.spec.artwork, wanted)
        self.rooms = made.rooms if made else ()
        if made and self.spec == self.together[0]:
            self.words = TEXTS.join(made.texts)
            self.problems += note_problems(self.bench.job, self.garment, self.spec, sheet, made)
        if isinstance(drawing, Drawing):
            return drawing
        self._unreadable(drawing)
        return None

    def _note_picture(self, layers: Layers, width: float) -> None:
        """What had to be done to read the drawing, and how wide it may be where it has too few dots for its width."""
        for note in layers.notes:
            facts: dict[str, Any] = dict(note.facts)
            self._report(note.code, "Artwork", self.spec.artwork, **facts)
        if layers.widest and width > layers.widest:
            unit = self.bench.job.settings.length_unit
            step = print_step(unit)
            widest = length_text(int(layers.widest / step) * step, unit)
            facts = {"width": printed_text(width, unit), "widest": widest}
            self._report("picture-coarse", "Width", self.spec.artwork, **facts)

    def _pressed_in_order(self, sheet: DrawingSheet) -> bool:
        """Whether the colors are pressed in the order in which they are drawn: else one would cover another that is
        to be seen, and they are laid side by side."""
        order_of = {
            color_in(sheet.colors, row.artwork_color): (row.layer, row_no) for row_no, row in enumerate(self.together)
        }
        return pressed_as_drawn(
            sheet.looked, sheet.used, tuple((color, order_of[color]) for color in sheet.colors if color in order_of)
        )

    def _color(self, sheet: DrawingSheet) -> str | None:
        """The fill color this row cuts; colors no row of the design cuts are reported."""
        typed = self.spec.artwork_color
        known = color_in(sheet.colors, typed)
        if known is None:
            code = "artwork-color-missing" if typed else "artwork-color-needed"
            self._report(code, "Artwork color", typed, colors=", ".join(sheet.colors))
        elif self.spec == self.together[0]:
            cut = {color_in(sheet.colors, row.artwork_color) for row in self.together}
            for color in sheet.colors if None not in cut else ():
                if color not in cut:
                    self._report("artwork-color-unused", "Artwork", color)
        return known

    def _size(self, own: Size) -> Size:
        """The size of the whole drawing on this garment, its shape kept, before it is fitted."""
        shape, spec = own[1] / own[0], self.sizing
        if not spec.width and not spec.height and self.spec == self.together[0]:
            usual = length_text(self._usual, self.bench.job.settings.length_unit)
            used = phrase("wide", decal=spec.decal, width=usual)
            self._report("assumed", "Width", what=phrase("width"), used=used, sheet="Designs")
        width = spec.width or (None if spec.height else self._usual)
        widths = [self._sized(length) for length in (width, spec.widest) if length]
        if spec.height:
            widths.append(round(self._sized(spec.height) / shape, 3))
        return min(widths), round(min(widths) * shape, 3)

    @property
    def _usual(self) -> float:
        return artwork_width(self.sizing.position)

    def _sized(self, length: float) -> float:
        return self.bench.sized(self.garment, self.sizing, length)

    def _fitted(self, size: Size) -> Size | None:
        """The size made smaller to fit film and garment where it may be scaled; else reported where it does not fit."""
        limits = self.bench.limits(self.garment, self.together)
        part = limits.shrink(*size)
        if part == 1:
            return size
        if self.sizing.scale and part > 0:
            width = shrunk(size[0], part, self.bench.job.settings.round_sizes_to)
            return width, round(size[1] * width / size[0], 3)
        self._too_big(size, part, limits)
        return None

    def _too_big(self, size: Size, part: float, limits: Limits) -> None:
        unit = self.bench.job.settings.length_unit
        step = print_step(unit)
        fits = length_text(max(0.0, int(size[0] * part / step) * step), unit)
        width, height = (printed_text(side, unit) for side in size)
        facts = {"decal": self.spec.decal, "width": width, "height": height, "fits": fits}
        if size[0] > limits.across:
            blank = self.garment.blank
            facts |= {
                "fits": phrase("at most", size=fits),
                "garment": blank.garment,
                "size": blank.size,
                "position": self.spec.position,
            }
            self._report("decal-off-garment", "Width", f"{width} × {height}", **facts)
        else:
            film = self.bench.film(self.spec.film)
            facts |= {"film": film, "usable": length_text(limits.usable, unit)}
            self._report("decal-wider-than-film", "Width", f"{width} × {height}", **facts)

    def _report(self, code: str, column: str, typed: str = "", *, suggestion: str = "", **facts: object) -> None:
        where, rows = self.spec.source.at(column), (self.garment.row.source.row,)
        self.problems.append(problem(code, where, typed, suggestion=suggestion, rows=rows, **facts))


def _together(garment: Garment, spec: DecalSpec) -> tuple[DecalSpec, ...]:
    """The rows of the design that cut the same drawing, this one among them; a plain box stands alone."""
    if not spec.artwork:
        return (spec,)
    return tuple(row for row in garment.design if same(row.artwork, spec.artwork)) or (spec,)
