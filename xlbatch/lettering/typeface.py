"""One font, and lines of text set in it. Lengths in font units, y upward from the baseline."""

import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache, lru_cache
from pathlib import Path

import pathops
import uharfbuzz as hb
from fontTools.unicodedata import script

from xlbatch.geometry.ink import Ink, InkPart, around, measured
from xlbatch.geometry.path import Box
from xlbatch.geometry.weld import weld
from xlbatch.lettering.bidi import visual_runs

_NEIGHBORS = 12  # no letter reaches farther than over this many others

Placed = tuple[int, int, int]  # a glyph number and where its origin stands


@dataclass(frozen=True, eq=False)
class Typeface:
    """A font ready to set text in. `cap_height` is the ink height of its H."""

    name: str
    font: hb.Font
    cap_height: float


@dataclass(frozen=True)
class SetLine:
    """A text set in one line."""

    pieces: tuple[InkPart, ...]  # glyphs that touch are one piece
    box: Box | None  # the ink box; None where the text has no ink
    lacks: tuple[str, ...]  # the characters the font has no glyph for
    advance: float = 0.0  # where the next letter would stand


def open_typeface(name: str, path: Path, weight: int | None = None) -> Typeface | None:
    """The font in the file at `path`, a variable one at `weight`; None where the file is no font."""
    face = hb.Face(hb.Blob(path.read_bytes()))
    if not face.glyph_count:
        return None
    font = hb.Font(face)
    if weight is not None:
        font.set_variations({"wght": weight})
    return Typeface(name, font, _cap_height(font))


def _cap_height(font: hb.Font) -> float:
    """The ink height of H, or what a font without one says its capitals measure."""
    glyph = font.get_nominal_glyph(ord("H"))
    ink = font.get_glyph_extents(glyph) if glyph else None
    return float(-ink.height if ink else font.get_metric_position_with_fallback(hb.OTMetricsTag.CAP_HEIGHT))


@lru_cache(maxsize=4096)
def set_line(face: Typeface, text: str) -> SetLine:
    """Sets `text` (first brought to its composed form, NFC) with kerning, ligatures and marks, and welds it."""
    text = unicodedata.normalize("NFC", text)
    placed, lacks, advance = _placed(face, text)
    pieces = tuple(_piece(face, group) for group in _touching_groups(face, placed))
    return SetLine(pieces, around(piece.box for piece in pieces) if pieces else None, lacks, advance)


@lru_cache(maxsize=4096)
def lacking(face: Typeface, text: str) -> tuple[str, ...]:
    """The characters of `text` that the font has no glyph for, as `set_line` tells them, without drawing it."""
    parts = ((part, _shaped(face, part, right)) for part, right in _parts(unicodedata.normalize("NFC", text)))
    return tuple(
        dict.fromkeys(
            part[info.cluster] for part, buffer in parts for info in buffer.glyph_infos if info.codepoint == 0
        )
    )


def unwelded(face: Typeface, text: str) -> pathops.Path:
    """The glyphs of a line as they are, for a picture: to weld them takes a hundred times as long."""
    path, x, y = pathops.Path(), 0, 0
    for part, right in _parts(unicodedata.normalize("NFC", text)):
        buffer = _shaped(face, part, right)
        for info, position in zip(buffer.glyph_infos, buffer.glyph_positions or (), strict=True):
            _add(path, face, (info.codepoint, x + position.x_offset, y + position.y_offset))
            x, y = x + position.x_advance, y + position.y_advance
    return path


def _add(path: pathops.Path, face: Typeface, placed: Placed) -> None:
    glyph, x, y = placed
    drawn = pathops.Path()
    face.font.draw_glyph_with_pen(glyph, drawn.getPen())
    path.addPath(drawn.transform(1, 0, 0, 1, x, y))


def _shaped(face: Typeface, text: str, right: bool) -> hb.Buffer:
    """HarfBuzz's glyphs for a text in one script, read one way, and where they stand."""
    buffer = hb.Buffer()
    buffer.add_codepoints([ord(letter) for letter in text])
    buffer.direction = "rtl" if right else "ltr"
    buffer.language = "und"  # not the computer's: the same text is set alike everywhere
    buffer.guess_segment_properties()
    buffer.cluster_level = hb.BufferClusterLevel.MONOTONE_CHARACTERS
    hb.shape(face.font, buffer)
    return buffer


def _placed(face: Typeface, text: str) -> tuple[list[Placed], tuple[str, ...], float]:
    """The glyphs with ink, where they stand, the characters that have no glyph, and where the line ends."""
    placed: list[Placed] = []
    lacks: dict[str, None] = {}
    x = y = 0
    for part, right in _parts(text):
        buffer = _shaped(face, part, right)
        for info, position in zip(buffer.glyph_infos, buffer.glyph_positions or (), strict=True):
            if info.codepoint == 0:
                lacks[part[info.cluster]] = None
            elif glyphs(face, ((info.codepoint, 0, 0),)):
                placed.append((info.codepoint, x + position.x_offset, y + position.y_offset))
            x, y = x + position.x_advance, y + position.y_advance
    return placed, tuple(lacks), float(x)


def _parts(text: str) -> Iterator[tuple[str, bool]]:
    """The parts of a text in one script that read one way, from left to right as they stand; True: from the right."""
    for run in visual_runs(text):
        parts = _by_script(text[run.start : run.end])
        yield from ((part, run.right) for part in (reversed(parts) if run.right else parts))


def _by_script(text: str) -> list[str]:
    """The text cut where its script changes; signs and marks go with what is before them."""
    parts: list[str] = []
    last = ""
    for letter in text:
        kind = script(letter)
        if kind in ("Zyyy", "Zinh", "Zzzz", last) or not last:
            parts[-1:] = ["".join(parts[-1:]) + letter]
        else:
            parts.append(letter)
        last = last if kind in ("Zyyy", "Zinh", "Zzzz") else kind
    return parts


@lru_cache(maxsize=65536)
def glyphs(face: Typeface, placed: tuple[Placed, ...]) -> Ink | None:
    """The welded ink of glyphs; lines share it. None where they have none."""
    path = pathops.Path()
    for glyph in placed:
        _add(path, face, glyph)
    return measured(weld(path))


def _touching_groups(face: Typeface, placed: list[Placed]) -> list[list[Placed]]:
    """The glyphs sorted into groups that touch: only those need welding together."""
    groups: list[tuple[Box, list[Placed]]] = []
    for glyph in placed:
        box = _box(face, glyph)
        near = [
            group
            for group in groups[-_NEIGHBORS:]
            if not _apart(group[0], box) and any(_touch(face, other, glyph) for other in group[1])
        ]
        for group in near:
            groups.remove(group)
        members = [member for _, group in near for member in group]
        groups.append((around([box, *(group_box for group_box, _ in near)]), [*members, glyph]))
    return [members for _, members in groups]


def _box(face: Typeface, placed: Placed) -> Box:
    glyph, x, y = placed
    ink = glyphs(face, ((glyph, 0, 0),))
    assert ink is not None  # only glyphs with ink are placed
    return InkPart(ink, x, y).box


def _touch(face: Typeface, glyph: Placed, other: Placed) -> bool:
    return _pair_touches(face, glyph[0], other[0], other[1] - glyph[1], other[2] - glyph[2])


@cache
def _pair_touches(face: Typeface, glyph: int, other: int, x: int, y: int) -> bool:
    """True where the second glyph, its origin at (x, y), touches the first: welding then changes something."""
    a, b = glyphs(face, ((glyph, 0, 0),)), glyphs(face, ((other, 0, 0),))
    if a is None or b is None or _apart(a.box, InkPart(b, x, y).box):
        return False
    both = glyphs(face, ((glyph, 0, 0), (other, x, y)))
    return both is None or both.verbs.count("M") != (a.verbs + b.verbs).count("M") or both.area < a.area + b.area - 1


def _apart(a: Box, b: Box) -> bool:
    return a[2] < b[0] or b[2] < a[0] or a[3] < b[1] or b[3] < a[1]


def _piece(face: Typeface, group: list[Placed]) -> InkPart:
    """The group welded about its first glyph's origin, so that equal groups share their ink."""
    _, x, y = group[0]
    ink = glyphs(face, tuple((glyph, gx - x, gy - y) for glyph, gx, gy in group))
    assert ink is not None  # only glyphs with ink are placed
    return InkPart(ink, x, y)
