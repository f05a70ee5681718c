"""The page of an SVG drawing: how its own units become the units it is welded in. Also SVG's lengths and numbers."""

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass
from xml.etree.ElementTree import Element

from xlbatch.geometry.path import Box, Matrix
from xlbatch.svg.faults import Unreadable
from xlbatch.units import mm_per

_PX = mm_per("in") / 96  # mm: CSS says 96 px are an inch
_ACROSS = 2000.0  # a drawing is welded at this many units across, whatever its own size
_LEAST, _MOST = 1e-3, 1e6  # units: a page smaller or larger has no size to speak of
_DEFAULT = (300.0, 150.0)  # px, where the drawing does not say (CSS)
NUMBER = r"[-+]?(?:\d++\.?\d*+|\.\d++)(?:[eE][-+]?\d++)?"
_LENGTH = re.compile(rf"\s*({NUMBER})\s*(px|in|cm|mm|Q|pt|pc|%)?\s*")
_UNITS = {
    "": 1.0,
    "px": 1.0,
    "in": 96.0,
    "cm": mm_per("cm") / _PX,
    "mm": mm_per("mm") / _PX,
    "Q": mm_per("mm") / 4 / _PX,
    "pt": 96 / 72,
    "pc": 16.0,
}
_ALIGN = {"Min": 0.0, "Mid": 0.5, "Max": 1.0}


@dataclass(frozen=True)
class View:
    """What 100 % means, in the units of what is drawn in it."""

    width: float
    height: float

    @property
    def diagonal(self) -> float:
        """What 100 % of a radius means (SVG 1.1, 7.10)."""
        return math.hypot(self.width, self.height) / math.sqrt(2)


@dataclass(frozen=True)
class DrawingPage:
    """`matrix` takes the drawing's own units, those of its `view`, to the units welded in, y upward; `mm` is one such
    unit; `clip` is what can be seen of the drawing, None where it is all."""

    view: View
    matrix: Matrix
    mm: float
    clip: Box | None


def page_of(root: Element) -> DrawingPage:
    """The page of a drawing. Raises Unreadable."""
    box = numbers(root.get("viewBox", ""))
    sized = len(box) == 4 and box[2] > 0 and box[3] > 0
    left, top, inner_width, inner_height = box if sized else (0.0, 0.0, 0.0, 0.0)
    width, height = _outer(root, inner_width, inner_height)
    if not sized:
        inner_width, inner_height = width, height
    if not all(_LEAST < side < _MOST for side in (width, height, inner_width, inner_height)):
        raise Unreadable("no size")
    across, _, _, down, x, y = fitted(
        View(width, height), (left, top, inner_width, inner_height), root.get("preserveAspectRatio", "")
    )
    unit = _ACROSS / max(width, height)
    bounded = sized or (root.get("width") and root.get("height"))
    return DrawingPage(
        View(inner_width, inner_height),
        (across * unit, 0.0, 0.0, -down * unit, x * unit, (height - y) * unit),
        _PX / unit,
        (0.0, 0.0, width * unit, height * unit) if bounded else None,
    )


def fitted(view: View, box: Sequence[float], aspect: str) -> Matrix:
    """The matrix that fits a view box (left, top, width, height) into a view (SVG 1.1, 7.8)."""
    left, top, width, height = box
    across, down, x, y = _placed(view.width / width, view.height / height, aspect)
    x, y = x * (view.width - width * across) - left * across, y * (view.height - height * down) - top * down
    return across, 0.0, 0.0, down, x, y


def length(text: str | None, whole: float, default: float = 0.0) -> float:
    """A length in px; `whole` is what 100 % means. Raises Unreadable."""
    if text is None or text.strip() == "auto":
        return default
    match = _LENGTH.fullmatch(text)
    if not match:
        raise Unreadable("number")
    value, unit = _finite(match[1]), match[2] or ""
    return value * whole / 100 if unit == "%" else value * _UNITS[unit]


def numbers(text: str) -> list[float]:
    """The numbers of a list with spaces or commas between. Raises Unreadable."""
    return [_finite(number) for number in re.findall(NUMBER, text)]


def _finite(text: str) -> float:
    value = float(text)
    if not math.isfinite(value):
        raise Unreadable("number")
    return value


def _outer(root: Element, inner_width: float, inner_height: float) -> tuple[float, float]:
    """The drawing's width and height in px; where only one is given, the other keeps the view box's shape."""
    width, height = (_given(root.get(name)) for name in ("width", "height"))
    if not inner_width:
        return width or _DEFAULT[0], height or _DEFAULT[1]
    shape = inner_width / inner_height
    return width or (height * shape if height else inner_width), height or (width / shape if width else inner_height)


def _given(text: str | None) -> float | None:
    """A page measure in px; one in percent of a window that does not exist is none."""
    return None if text is None or "%" in text else length(text, 0.0) or None


def _placed(across: float, down: float, aspect: str) -> tuple[float, float, float, float]:
    """The scale across and down, and which part of the spare room goes before the drawing (SVG 1.1, 7.8)."""
    align, _, meet = aspect.strip().removeprefix("defer").strip().partition(" ")
    if align == "none":
        return across, down, 0.0, 0.0
    scale = max(across, down) if meet.strip() == "slice" else min(across, down)
    match = re.fullmatch(r"x(Min|Mid|Max)Y(Min|Mid|Max)", align)
    return (scale, scale, _ALIGN[match[1]], _ALIGN[match[2]]) if match else (scale, scale, 0.5, 0.5)
