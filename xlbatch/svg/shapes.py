"""The shapes of an SVG drawing as paths to weld, and their transforms."""

import math
import re
from collections.abc import Callable, Mapping
from xml.etree.ElementTree import Element

import pathops
from fontTools.misc.transform import Transform
from fontTools.pens.transformPen import TransformPen
from fontTools.svgLib.path import parse_path

from xlbatch.geometry.path import IDENTITY, Matrix, product
from xlbatch.svg.faults import Unreadable
from xlbatch.svg.viewport import NUMBER, View, length, numbers

_PATH = re.compile(rf"\s*+(?:[MmLlHhVvCcSsQqTtAaZz]\s*+(?:{NUMBER}\s*+(?:,\s*+)?+)*+)*+")
_TRANSFORM = re.compile(r"\s*+,?\s*+([a-zA-Z]++)\s*+\(([^)]*+)\)\s*+,?\s*+")
_FARTHEST = 1e6  # units; a page is 2,000, and what lies farther gets lost in Skia's 32-bit numbers


def matrix_of(text: str) -> Matrix:
    """The matrix of a transform attribute. Raises Unreadable."""
    matrix, place = IDENTITY, 0
    while place < len(text.rstrip()):
        match = _TRANSFORM.match(text, place)
        given = numbers(match[2]) if match else []
        if not match or len(given) not in _TAKES.get(match[1], ()):
            raise Unreadable("number")
        matrix = product(_MATRICES[match[1]](*given), matrix)
        place = match.end()
    return matrix


def _rotated(angle: float, x: float = 0.0, y: float = 0.0) -> Matrix:
    sine, cosine = math.sin(math.radians(angle)), math.cos(math.radians(angle))
    return cosine, sine, -sine, cosine, x - x * cosine + y * sine, y - x * sine - y * cosine


_TAKES = {"matrix": (6,), "translate": (1, 2), "scale": (1, 2), "rotate": (1, 2, 3), "skewX": (1,), "skewY": (1,)}
_MATRICES: Mapping[str, Callable[..., Matrix]] = {
    "matrix": lambda a, b, c, d, e, f: (a, b, c, d, e, f),
    "translate": lambda x, y=0.0: (1.0, 0.0, 0.0, 1.0, x, y),
    "scale": lambda x, y=None: (x, 0.0, 0.0, x if y is None else y, 0.0, 0.0),
    "rotate": _rotated,
    "skewX": lambda angle: (1.0, 0.0, math.tan(math.radians(angle)), 1.0, 0.0, 0.0),
    "skewY": lambda angle: (1.0, math.tan(math.radians(angle)), 0.0, 1.0, 0.0, 0.0),
}


def shape_path(shape: Element, view: View, matrix: Matrix, *, even_odd: bool) -> pathops.Path:
    """The path of a basic shape or path element moved by `matrix`, with its fill rule. Raises Unreadable."""
    data = DATA[shape.tag](shape, view)
    if not _PATH.fullmatch(data):  # else read on past what is no path data
        raise Unreadable("path")
    path = pathops.Path(fillType=pathops.FillType.EVEN_ODD if even_odd else pathops.FillType.WINDING)
    try:
        parse_path(data, TransformPen(path.getPen(), Transform(*matrix)))
    except (ValueError, IndexError, ArithmeticError, pathops.PathOpsError) as error:
        raise Unreadable("path") from error
    return in_reach(path)


def in_reach(path: pathops.Path) -> pathops.Path:
    """The path itself. Raises Unreadable where it goes too far away to be welded."""
    box = path.controlPointBounds if len(path) else (0.0,)
    if box is None or not all(abs(side) < _FARTHEST for side in box):
        raise Unreadable("path")
    return path


def _rect(shape: Element, view: View) -> str:
    x, y = length(shape.get("x"), view.width), length(shape.get("y"), view.height)
    width, height = length(shape.get("width"), view.width), length(shape.get("height"), view.height)
    if width <= 0 or height <= 0:
        return ""
    rx = length(shape.get("rx"), view.width, -1.0)
    ry = length(shape.get("ry"), view.height, -1.0)
    rx, ry = min(rx if rx >= 0 else max(ry, 0), width / 2), min(ry if ry >= 0 else max(rx, 0), height / 2)
    if not rx or not ry:
        return f"M{x},{y} h{width} v{height} h{-width} z"
    return (
        f"M{x + rx},{y} H{x + width - rx} A{rx},{ry} 0 0 1 {x + width},{y + ry} V{y + height - ry} "
        f"A{rx},{ry} 0 0 1 {x + width - rx},{y + height} H{x + rx} A{rx},{ry} 0 0 1 {x},{y + height - ry} "
        f"V{y + ry} A{rx},{ry} 0 0 1 {x + rx},{y} z"
    )


def _circle(shape: Element, view: View) -> str:
    radius = length(shape.get("r"), view.diagonal)
    return _oval(shape, view, radius, radius)


def _ellipse(shape: Element, view: View) -> str:
    rx, ry = length(shape.get("rx"), view.width, -1.0), length(shape.get("ry"), view.height, -1.0)
    return _oval(shape, view, rx if rx >= 0 else ry, ry if ry >= 0 else rx)


def _oval(shape: Element, view: View, rx: float, ry: float) -> str:
    x, y = length(shape.get("cx"), view.width), length(shape.get("cy"), view.height)
    if rx <= 0 or ry <= 0:
        return ""
    return f"M{x + rx},{y} A{rx},{ry} 0 0 1 {x - rx},{y} A{rx},{ry} 0 0 1 {x + rx},{y} z"


def _line(shape: Element, view: View) -> str:
    x1, x2 = (length(shape.get(name), view.width) for name in ("x1", "x2"))
    y1, y2 = (length(shape.get(name), view.height) for name in ("y1", "y2"))
    return f"M{x1},{y1} L{x2},{y2}"


def _polyline(shape: Element, _view: View) -> str:
    points = numbers(shape.get("points", ""))
    pairs = [f"{x},{y}" for x, y in zip(points[::2], points[1::2], strict=False)]
    return f"M{' '.join(pairs)}" if len(pairs) > 1 else ""


def _polygon(shape: Element, view: View) -> str:
    open_line = _polyline(shape, view)
    return f"{open_line} z" if open_line else ""


DATA: Mapping[str, Callable[[Element, View], str]] = {
    "path": lambda shape, _view: shape.get("d", ""),
    "line": _line,
    "rect": _rect,
    "circle": _circle,
    "ellipse": _ellipse,
    "polygon": _polygon,
    "polyline": _polyline,
}
