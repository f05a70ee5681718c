"""The shapes of an SVG drawing as paths to weld, and their transforms."""

import math
import re
from collections.abc import Callable, Mapping
from xml.etree.ElementTree import Element

import pathops
from fontTools.misc.transform import Transform
from fontTools.pens.transformPen import TransformPen
from fontTools.svgLib.path import parse_path

from xlbatch.art.faults import Unreadable
from xlbatch.art.page import Page, length, numbers
from xlbatch.art.path import IDENTITY, Matrix, product

_TRANSFORM = re.compile(r"\s*,?\s*([a-zA-Z]+)\s*\(([^)]*)\)\s*,?\s*")


def matrix_of(text: str) -> Matrix:
    """The matrix of a transform attribute. Raises Unreadable."""
    matrix, at = IDENTITY, 0
    while at < len(text.rstrip()):
        found = _TRANSFORM.match(text, at)
        if not found or found[1] not in _MATRICES:
            raise Unreadable("number")
        try:
            matrix = product(_MATRICES[found[1]](*numbers(found[2])), matrix)
        except TypeError as error:  # too few or too many numbers
            raise Unreadable("number") from error
        at = found.end()
    return matrix


def _rotated(angle: float, x: float = 0.0, y: float = 0.0) -> Matrix:
    sine, cosine = math.sin(math.radians(angle)), math.cos(math.radians(angle))
    return cosine, sine, -sine, cosine, x - x * cosine + y * sine, y - x * sine - y * cosine


_MATRICES: Mapping[str, Callable[..., Matrix]] = {
    "matrix": lambda a, b, c, d, e, f: (a, b, c, d, e, f),
    "translate": lambda x, y=0.0: (1.0, 0.0, 0.0, 1.0, x, y),
    "scale": lambda x, y=None: (x, 0.0, 0.0, x if y is None else y, 0.0, 0.0),
    "rotate": _rotated,
    "skewX": lambda angle: (1.0, 0.0, math.tan(math.radians(angle)), 1.0, 0.0, 0.0),
    "skewY": lambda angle: (1.0, math.tan(math.radians(angle)), 0.0, 1.0, 0.0, 0.0),
}


def shape_path(shape: Element, page: Page, matrix: Matrix, *, even_odd: bool) -> pathops.Path:
    """The path of a basic shape or path element moved by `matrix`, with its fill rule. Raises Unreadable."""
    path = pathops.Path(fillType=pathops.FillType.EVEN_ODD if even_odd else pathops.FillType.WINDING)
    try:
        parse_path(DATA[shape.tag](shape, page), TransformPen(path.getPen(), Transform(*matrix)))
    except (ValueError, IndexError, ArithmeticError, pathops.PathOpsError) as error:
        raise Unreadable("path") from error
    return path


def _rect(shape: Element, page: Page) -> str:
    x, y = length(shape.get("x"), page.width), length(shape.get("y"), page.height)
    width, height = length(shape.get("width"), page.width), length(shape.get("height"), page.height)
    if width <= 0 or height <= 0:
        return ""
    rx = length(shape.get("rx"), page.width, -1.0)
    ry = length(shape.get("ry"), page.height, -1.0)
    rx, ry = min(rx if rx >= 0 else max(ry, 0), width / 2), min(ry if ry >= 0 else max(rx, 0), height / 2)
    if not rx or not ry:
        return f"M{x},{y} h{width} v{height} h{-width} z"
    return (
        f"M{x + rx},{y} H{x + width - rx} A{rx},{ry} 0 0 1 {x + width},{y + ry} V{y + height - ry} "
        f"A{rx},{ry} 0 0 1 {x + width - rx},{y + height} H{x + rx} A{rx},{ry} 0 0 1 {x},{y + height - ry} "
        f"V{y + ry} A{rx},{ry} 0 0 1 {x + rx},{y} z"
    )


def _circle(shape: Element, page: Page) -> str:
    radius = length(shape.get("r"), page.diagonal)
    return _oval(shape, page, radius, radius)


def _ellipse(shape: Element, page: Page) -> str:
    rx, ry = length(shape.get("rx"), page.width, -1.0), length(shape.get("ry"), page.height, -1.0)
    return _oval(shape, page, rx if rx >= 0 else ry, ry if ry >= 0 else rx)


def _oval(shape: Element, page: Page, rx: float, ry: float) -> str:
    x, y = length(shape.get("cx"), page.width), length(shape.get("cy"), page.height)
    if rx <= 0 or ry <= 0:
        return ""
    return f"M{x - rx},{y} A{rx},{ry} 0 0 1 {x + rx},{y} A{rx},{ry} 0 0 1 {x - rx},{y} z"


def _polygon(shape: Element, _page: Page) -> str:
    points = numbers(shape.get("points", ""))
    pairs = [f"{x},{y}" for x, y in zip(points[::2], points[1::2], strict=False)]
    return f"M{' '.join(pairs)} z" if len(pairs) > 2 else ""


DATA: Mapping[str, Callable[[Element, Page], str]] = {
    "path": lambda shape, _page: shape.get("d", ""),
    "line": lambda _shape, _page: "",  # has no inside to fill
    "rect": _rect,
    "circle": _circle,
    "ellipse": _ellipse,
    "polygon": _polygon,
    "polyline": _polygon,
}
