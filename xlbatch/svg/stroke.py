"""Drawn lines of a drawing as the outlines they ink."""

import math
from collections.abc import Sequence
from itertools import pairwise
from xml.etree.ElementTree import Element

import pathops

from xlbatch.geometry.path import Matrix
from xlbatch.svg.faults import Unreadable
from xlbatch.svg.paint import Style
from xlbatch.svg.shapes import in_reach, shape_path
from xlbatch.svg.viewport import View, length

_CAPS = {"butt": pathops.LineCap.BUTT_CAP, "round": pathops.LineCap.ROUND_CAP, "square": pathops.LineCap.SQUARE_CAP}
_JOINS = {
    "miter": pathops.LineJoin.MITER_JOIN,
    "round": pathops.LineJoin.ROUND_JOIN,
    "bevel": pathops.LineJoin.BEVEL_JOIN,
}
_MOST_DASHES = 1000


def stroke_path(shape: Element, view: View, matrix: Matrix, style: Style) -> pathops.Path:
    """The outline of a shape's stroke moved by `matrix`. Raises Unreadable.

    The line is drawn out in its own proportions, as large as it is welded, and then moved."""
    a, b, c, d, x, y = matrix
    scale = math.sqrt(abs(a * d - b * c))
    width = length(style["stroke-width"], view.diagonal) * scale
    if width <= 0 or style["vector-effect"] == "non-scaling-stroke":
        raise Unreadable("stroke")
    path = shape_path(shape, view, (scale, 0.0, 0.0, scale, 0.0, 0.0), even_odd=False)
    cap, join = _CAPS.get(style["stroke-linecap"]), _JOINS.get(style["stroke-linejoin"])
    if cap is None or join is None:
        raise Unreadable("stroke")
    dashes = [dash * scale for dash in _dashes(style["stroke-dasharray"], view)]
    if dashes and _far(path) / sum(dashes) > _MOST_DASHES:
        raise Unreadable("too detailed")
    offset = length(style["stroke-dashoffset"], view.diagonal) * scale
    path.stroke(width, cap, join, max(1.0, length(style["stroke-miterlimit"], 1.0)), dashes or None, offset)
    path.convertConicsToQuads()
    return in_reach(path.transform(a / scale, b / scale, c / scale, d / scale, x, y))


def _dashes(text: str, view: View) -> Sequence[float]:
    """The lengths of dashes and gaps by turns; none where the line is whole (SVG 1.1, 11.4)."""
    if text == "none":
        return ()
    dashes = [length(part, view.diagonal) for part in text.replace(",", " ").split()]
    if min(dashes, default=0.0) < 0 or not any(dashes):
        return ()
    return dashes * 2 if len(dashes) % 2 else dashes


def _far(path: pathops.Path) -> float:
    """At least a part of the path's length, to keep the number of dashes in bounds."""
    points = [point for _, points in path for point in points]
    return sum(math.dist(start, other) for start, other in pairwise(points))
