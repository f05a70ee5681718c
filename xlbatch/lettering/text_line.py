"""A line of text at its size: as high as asked, condensed or made smaller where it is too wide. Lengths in mm."""

from functools import lru_cache
from typing import NamedTuple

from xlbatch.geometry.ink import InkPart, measured, outline
from xlbatch.geometry.outline import Outline
from xlbatch.geometry.path import Box
from xlbatch.lettering.arch import arc_of, bent, strongest
from xlbatch.lettering.typeface import SetLine, Typeface, set_line
from xlbatch.trade.tables import practice

NARROWEST = practice("how narrow letters become, of their width")  # unless asked otherwise
_NEAR = 1e-9


class Scale(NamedTuple):
    """Millimeters a font unit, across and up."""

    across: float
    up: float


class TooLong(NamedTuple):
    """The text does not fit; at the least letter height it needs `needed` mm."""

    needed: float


def most_bent(face: Typeface, text: str) -> float:
    """The most degrees this text can be bent."""
    left, bottom, right, top = _box(set_line(face, text))
    return strongest(right - left, top - bottom)


def fit(
    face: Typeface,
    text: str,
    cap_height: float,
    widest: float,
    least: float,
    arch: float = 0.0,
    narrowest: float = NARROWEST,
) -> Scale | TooLong:
    """The scale at which `text`, bent by `arch` degrees, is at most `widest` mm wide (infinite: as wide as it is).

    The cap height is kept as long as condensing (to the part `narrowest` at most) is enough; then the text is made
    smaller, down to `least` mm cap height."""
    up = cap_height / face.cap_height
    room = widest / up
    if _width(face, text, 1.0, arch) <= room + _NEAR:
        return Scale(up, up)
    narrow = _width(face, text, narrowest, arch)
    if narrow <= room:
        return Scale(up * _condensed(face, text, room, arch, narrowest), up)
    smaller = room * up / narrow
    if smaller * face.cap_height >= min(least, cap_height) - _NEAR:
        return Scale(narrowest * smaller, smaller)
    return TooLong(narrow * min(least, cap_height) / face.cap_height)


def letter(face: Typeface, text: str, scale: Scale, arch: float = 0.0) -> Outline:
    """The outline of `text`, which must have ink, bent by `arch` degrees."""
    if arch:
        return outline((_bent(face, text, scale, arch),))
    return outline(set_line(face, text).pieces, scale.across, scale.up)


def _bent(face: Typeface, text: str, scale: Scale, arch: float) -> InkPart:
    """The text bent so that it spans `arch` degrees; what stands at half the cap height keeps its length."""
    line = set_line(face, text)
    straight = outline(line.pieces, scale.across, scale.up)
    arc = arc_of(0.0, straight.width, (face.cap_height / 2 - _box(line)[1]) * scale.up, arch)
    ink = measured(bent(straight.segments, arc))
    assert ink is not None  # bending leaves the ink there
    return InkPart(ink)


@lru_cache(maxsize=4096)
def _width(face: Typeface, text: str, condensed: float, arch: float) -> float:
    """The ink width in font units of the text condensed to this part of its width, then bent."""
    if arch:
        left, _, right, _ = _bent(face, text, Scale(condensed, 1.0), arch).box
        return right - left
    left, _, right, _ = _box(set_line(face, text))
    return (right - left) * condensed


def _condensed(face: Typeface, text: str, room: float, arch: float, narrowest: float) -> float:
    """How far to condense a text that is to be `room` font units wide: by halving, as bending is not linear."""
    if not arch:
        return room / _width(face, text, 1.0, 0.0)
    low, high = narrowest, 1.0
    for _ in range(20):
        middle = (low + high) / 2
        low, high = (middle, high) if _width(face, text, middle, arch) <= room else (low, middle)
    return low


def _box(line: SetLine) -> Box:
    assert line.box is not None, "a text without ink has no size"
    return line.box
