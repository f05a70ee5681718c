"""Words replaced for five families, judged from the files to cut alone. The generator of each drawing says where its
word stands and on what line; the name's letters are set anew with HarfBuzz and fontTools, laid on what was added to the
cut file, and must be the same. Nothing the program thinks of its parts is asked, but the number of the word's part.

Run: -m tests.parts.replaced_cut [KIND...]      prints what is not right; exit code 1 where a name is wrong
"""

import sys
import tempfile
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import NamedTuple

import numpy as np
import shapely
import uharfbuzz as hb
from fontTools.pens.recordingPen import DecomposingRecordingPen
from fontTools.ttLib import TTFont
from shapely.affinity import translate
from shapely.geometry.base import BaseGeometry

from tests.parts.cut_regions import Cut, ToPlan, colors_of, drawn_outlines, marked, outlines, planned, region
from tests.parts.drawn_shapes import Points, Shape
from tests.parts.find_score import look
from tests.parts.word_drawings import Made, drawings
from xlbatch.geometry.path import contours, path_data

NAMES = ("HIL", "Tarn", "BOEHM", "KIM", "HILLEMANTHEIMLINTELHEIM")  # the last three times as long as most samples
FONT, FONT_FILE = "Anton", ("fontpkg_anton", "Anton-Regular.ttf")
HEIGHT, FOOT, CENTER = 0.02, 0.3, 0.5  # of the height; mm; mm
UNLIKE = 0.02  # of a name's area: what may differ between its letters as cut and as set anew
BEYOND = 0.1  # of one wider than its sample on an arc: the arc is known only where the sample stood
BORDER = 0.15  # mm: how near a border is as wide as it was
SLIVER = 0.06  # units: narrower is no ink, but how curves were cut small
NOTHING = 0.5  # square units
STANDS = 0.05  # of its height: how near the line a letter stands
HELD, RIGHT = "held back", "right"


class Judged(NamedTuple):
    """What is wrong with a name in a drawing; nothing where all is right."""

    made: Made
    name: str
    faults: tuple[str, ...]

    @property
    def verdict(self) -> str:
        return RIGHT if not self.faults else HELD if self.faults == (HELD,) else "wrong"


def judged(some: Sequence[Made], folder: Path) -> Iterator[Judged]:
    """Each drawing with each name."""
    found = [(made, ToPlan(made.name, marked(made.svg), _number(made, folder))) for made in some]
    listed = [(made, to_plan) for made, to_plan in found if to_plan.part]
    for made in some:
        if made not in [made_ for made_, _ in listed]:
            yield from (Judged(made, name, ("its word is not one part",)) for name in NAMES)
    cuts = planned([to_plan for _, to_plan in listed], NAMES, FONT, folder)
    for (made, _), (plain, *replaced) in zip(listed, cuts, strict=True):
        for name, cut in zip(NAMES, replaced, strict=True):
            assert plain
            yield Judged(made, name, tuple(_Judge(made, name, plain, cut).faults()) if cut else (HELD,))


def _number(made: Made, folder: Path) -> str:
    """The number under which the word stands on Drawing parts, where it is listed alone."""
    looked = look(replace(made, svg=marked(made.svg)), folder)
    return looked.part.label if looked.part and looked.exact else ""


class Fitted(NamedTuple):
    """A name's letters as they lie on the page, and how they were laid: the height of their capitals, their foot, and
    their middle, along and above the line; in units."""

    ink: BaseGeometry
    cap: float
    foot: float
    middle: float


class _Judge:
    def __init__(self, made: Made, name: str, plain: Cut, cut: Cut) -> None:
        self.made, self.name, self.plain, self.cut = made, name, plain, cut
        self.word = {color: _drawn([shape]) for color, shape in made.word.items()}
        self.color = next(iter(made.word))  # that the letters are seen in
        self.loose = _drawn(made.loose)

    def faults(self) -> Iterator[str]:
        if not self.cut.whole:
            yield "an outline crosses another, or is cut twice"
        ink = self.new(self.color)
        if isinstance(ink, str):
            yield ink
            return
        fitted, unlike = _fitted(self.name, ink, self.made), self._unlike(ink)
        if unlike > (BEYOND if self._is_long and self.made.line.radius else UNLIKE):
            yield f"{100 * unlike:.1f} % of the new ink is not the name's letters"
        yield from self._copies(ink)
        yield from self._over_others(fitted.ink)
        on_line, in_box = list(self._on_line(fitted)), list(self._in_box(ink, fitted))
        yield from in_box if self.made.kind == "script" and not in_box else on_line

    def _unlike(self, ink: BaseGeometry) -> float:
        """How much of ink is not the name's letters, of their area."""
        fitted = _fitted(self.name, ink, self.made)
        return float(ink.symmetric_difference(fitted.ink).area / fitted.ink.area)

    def new(self, color: str) -> BaseGeometry | str:
        """The ink of a color (or its opening) that was not in the drawing; or what else became of the drawing."""
        ground = self._ground(color)
        plain, now, word = self.plain.regions[ground], self.cut.regions[ground], self.word[color]
        if f'stroke="{color}"' in self.made.svg:  # a line about the letters, which lie on its inner half
            plain, now = plain.union(self.plain.regions[self.color]), now.union(self.cut.regions[self.color])
        if color == "open":
            filled = shapely.union_all([shapely.Polygon(ring.exterior) for ring in _polygons(word)])
            rest = plain.union(filled)
            if _opened(plain.intersection(word)).area > NOTHING:
                return "the sample was not cut as drawn"
            lost = _opened(now.difference(rest))
            fresh = _opened(rest.difference(now))
        else:
            if _opened(word.difference(plain)).area > NOTHING:
                return "the sample was not cut as drawn"
            rest = _opened(plain.difference(word).difference(self.loose))
            lost = _opened(rest.difference(now))
            fresh = _opened(now.difference(rest).difference(self.loose))
            touching = [part for part in _polygons(fresh) if part.distance(rest) < SLIVER]
            bared = [part for part in touching if word.buffer(2 * SLIVER).contains(part)]  # the sample lay over them
            if bared and color == self.color:  # or the name lies over them as the sample did
                fresh = min(fresh, fresh.difference(shapely.union_all(bared)), key=self._unlike)
        return f"{lost.area:.1f} square units around the word changed" if lost.area > NOTHING else fresh

    def _ground(self, color: str) -> str:
        return {"open": "#1f4630", "border": "#1a1a1a"}[self.made.kind] if color == "open" else color

    def _copies(self, ink: BaseGeometry) -> Iterator[str]:
        """Borders as wide as they were, shadows as far off, openings the same."""
        for color, (grown, moved) in self.made.copies.items():
            copy = self.new(color)
            if isinstance(copy, str):
                yield f"{color}: {copy}"
                continue
            wanted = translate(ink.buffer(grown, quad_segs=32), moved.real, moved.imag)
            near = BORDER / self.cut.mm
            beyond = copy.difference(wanted.buffer(near)), wanted.buffer(-near).difference(copy)
            if any(_opened(part).area > NOTHING for part in beyond):
                yield f"{color}: the name's copy is not as the sample's was"

    def _over_others(self, ink: BaseGeometry) -> Iterator[str]:
        """Whether it lies over what the sample did not, or beyond what the sample lay within."""
        word = _opened(self.word[self.color])
        for color in colors_of(self.made.svg):
            if "open" in self.word and color == self._ground("open"):
                continue  # what breaks through its edge is not the name's letters any more
            own = [self.word[name] for name in self.word if self._ground(name) == color and name != "open"]
            for part in _polygons(_opened(self.plain.regions[color].difference(shapely.union_all(own)))):
                shape = part.difference(self.loose)
                was, over = (mine.intersection(shape).area / mine.area for mine in (word, ink))
                if was < 0.002 < over - 0.003:
                    yield f"{100 * over:.1f} % lies over a shape of {color}"
                if was > 0.998 > over + 0.003:
                    yield f"{100 - 100 * over:.1f} % lies beyond the {color} it stood on"

    def _on_line(self, fitted: Fitted) -> Iterator[str]:
        mm, sample = self.cut.mm, _flat(self.made, self.word[self.color])
        cap = _cap(sample)
        along = np.concatenate([ring.real for ring in sample])
        left, right = along.min(), along.max()
        feet = [ring.imag.min() for ring in sample if ring.imag.min() < cap / 2]
        shared = max(feet, key=lambda foot: (sum(abs(other - foot) * mm < FOOT / 3 for other in feet), foot))
        lines = (0.0, shared) if self.made.kind == "script" else (0.0,)  # welded letters have few feet of their own
        off_line = min((fitted.foot - line for line in lines), key=abs)
        if abs(off_line) * mm > FOOT and not (self._is_long and self.made.line.radius):
            yield f"foot {off_line * mm:+.2f} mm"
        if abs(off := (fitted.middle - (left + right) / 2) * mm) > CENTER:
            yield f"center {off:+.2f} mm"
        if not self._is_long and not self.cut.smaller and abs(fitted.cap / cap - 1) > HEIGHT:
            yield f"height {fitted.cap / cap:.3f}"

    @property
    def _is_long(self) -> bool:
        """Whether the name is wider than the sample where it is as high."""
        sample = _flat(self.made, self.word[self.color])
        wide = np.ptp(np.concatenate([ring.real for ring in sample]))
        return bool(_letters(self.name).wide / _letters(self.name).cap * _cap(sample) > wide)

    def _in_box(self, ink: BaseGeometry, fitted: Fitted) -> Iterator[str]:
        """A name in the box of a sample whose line can't be told."""
        left, top, right, bottom = self.word[self.color].bounds
        own, mm = ink.bounds, self.cut.mm
        beyond = max(left - own[0], top - own[1], own[2] - right, own[3] - bottom) * mm
        if beyond > FOOT:
            yield f"{beyond:.2f} mm beyond the sample's box"
        if abs(own[0] + own[2] - left - right) / 2 * mm > CENTER:
            yield "not in the middle of the sample's box"
        if len(self.name) <= len(self.made.text) and fitted.cap < (bottom - top) / 2:
            yield f"capitals {fitted.cap / (bottom - top):.2f} of the sample's box"


class Letters(NamedTuple):
    """A name set in the font, in font units, y upward."""

    rings: Sequence[Points]
    wide: float
    cap: float


@cache
def _letters(name: str) -> Letters:
    """A name shaped by HarfBuzz, its glyphs drawn by fontTools."""
    file = Path(str(files(FONT_FILE[0]))) / "files" / FONT_FILE[1]
    font, glyphs = hb.Font(hb.Face(hb.Blob(file.read_bytes()))), TTFont(file).getGlyphSet()
    order, buffer = TTFont(file).getGlyphOrder(), hb.Buffer()
    buffer.add_str(name)
    buffer.guess_segment_properties()
    hb.shape(font, buffer)
    rings: list[Points] = []
    start = 0
    for info, place in zip(buffer.glyph_infos, buffer.glyph_positions, strict=True):
        pen = DecomposingRecordingPen(glyphs)
        glyphs[order[info.codepoint]].draw(pen)
        rings += [ring + complex(start + place.x_offset, place.y_offset) for ring in drawn_outlines(pen.value)]
        start += place.x_advance
    pen = DecomposingRecordingPen(glyphs)
    glyphs["H"].draw(pen)
    along = np.concatenate([ring.real for ring in rings])
    return Letters(rings, float(np.ptp(along)), max(float(ring.imag.max()) for ring in drawn_outlines(pen.value)))


def _fitted(name: str, ink: BaseGeometry, made: Made) -> Fitted:
    """The name's letters laid onto ink: as wide and as high as it along and above the word's line."""
    set_, new = _letters(name), np.concatenate(_flat(made, ink))
    font = np.concatenate(set_.rings)
    across, up = np.ptp(new.real) / np.ptp(font.real), np.ptp(new.imag) / np.ptp(font.imag)
    left, foot = new.real.min() - font.real.min() * across, new.imag.min() - font.imag.min() * up
    laid = [made.line.back(left + ring.real * across + 1j * (foot + ring.imag * up)) for ring in set_.rings]
    middle = (new.real.min() + new.real.max()) / 2
    return Fitted(region(laid), set_.cap * up, float(foot), float(middle))


def _cap(sample: Iterable[Points]) -> float:
    """How high above its line the tallest letter of a word stands; dots and accents stand on none."""
    rings = list(sample)
    on_line = [ring for ring in rings if abs(ring.imag.min()) < STANDS * np.ptp(ring.imag)]
    return max(float(ring.imag.max()) for ring in on_line or rings)


def _flat(made: Made, ink: BaseGeometry) -> list[Points]:
    """The outer contours of ink as points along and above the word's line."""
    return [made.line.onto(np.array(part.exterior.coords) @ np.array([1, 1j])) for part in _polygons(ink)]


def _drawn(shapes: Iterable[Shape]) -> BaseGeometry:
    return region([ring for shape in shapes for contour in contours(shape) for ring in outlines(path_data(contour))])


def _opened(ink: BaseGeometry) -> BaseGeometry:
    """The ink without slivers."""
    return ink.buffer(-SLIVER).buffer(SLIVER)


def _polygons(ink: BaseGeometry) -> list[shapely.Polygon]:
    parts = shapely.get_parts(ink)
    return [part for part in parts if part.geom_type == "Polygon" and part.area > NOTHING]


def main() -> int:
    """Judges the hundred, or those of the kinds named; prints what is not right."""
    wanted = [made for made in drawings() if not sys.argv[1:] or made.kind in sys.argv[1:]]
    with tempfile.TemporaryDirectory() as folder:
        verdicts = list(judged(wanted, Path(folder)))
    for verdict in verdicts:
        if verdict.faults:
            print(f"{verdict.made.name}, {verdict.made.text} as {verdict.name}: {'; '.join(verdict.faults)}")
    counts = Counter((verdict.made.kind, verdict.verdict) for verdict in verdicts)
    for (kind, what), count in sorted(counts.items()):
        print(f"{kind}: {count} {what}")
    wrong = sum(verdict.verdict not in (RIGHT, HELD) for verdict in verdicts)
    print(f"{len(verdicts)} names: {wrong} wrong, {sum(verdict.verdict == HELD for verdict in verdicts)} held back")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
