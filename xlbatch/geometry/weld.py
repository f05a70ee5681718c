"""Welds outlines: what overlaps becomes one outline, curves kept, counters kept, every contour closed.

Skia's path operations work with 32-bit numbers, so outlines are welded at about a thousand units across.
"""

from collections.abc import Callable, Iterable

import numpy as np
import pathops

from xlbatch.geometry.flat import Points, edges_of
from xlbatch.geometry.outline import Segment, pack
from xlbatch.geometry.path import contours, signed_area, transform

_VERBS = {
    pathops.PathVerb.MOVE: "M",
    pathops.PathVerb.LINE: "L",
    pathops.PathVerb.QUAD: "Q",
    pathops.PathVerb.CUBIC: "C",
    pathops.PathVerb.CLOSE: "Z",
}
_SCALES = (1.0, 0.731, 1.372, 0.263, 3.19)
_SLIVER = 0.5  # a contour of less than half a square unit is a rounding remnant
_BORDER_NEAR = 0.05  # mm: a border is as wide as asked to within this
_BORDER_SCALE = 32.0  # units a mm while a border is drawn: keeps its width within 0.02 mm


def tidy(path: pathops.Path) -> pathops.Path:
    """The path without overlaps, outer contours counterclockwise. Raises PathOpsError where Skia finds none."""
    return _tried(lambda paths: _simplified(paths[0]), path)


def closed(path: pathops.Path) -> pathops.Path:
    """The path with every contour closed, as it is filled; Skia leaves a simple open one open."""
    closed_path = pathops.Path(fillType=path.fillType)
    for contour in path.contours:
        contour.close()
        closed_path.addPath(contour)
    return closed_path


def common(path: pathops.Path, window: pathops.Path) -> pathops.Path:
    """What of the path lies inside the window. Raises PathOpsError."""
    return _tried(lambda paths: pathops.op(*paths, pathops.PathOp.INTERSECTION, fix_winding=True), path, window)


def without(path: pathops.Path, other: pathops.Path) -> pathops.Path:
    """What of the path lies outside the other, both tidy. Raises PathOpsError."""
    try:
        return _tried(lambda paths: pathops.op(*paths, pathops.PathOp.DIFFERENCE, fix_winding=True), path, other)
    except pathops.PathOpsError:  # Skia can often still weld both, and leave out what is in both: the other itself
        both = pathops.Path(path)
        both.addPath(other)
        both = tidy(both)
        both.addPath(other)
        both.fillType = pathops.FillType.EVEN_ODD
        return tidy(both)


def _simplified(path: pathops.Path) -> pathops.Path:
    path.simplify(fix_winding=True, keep_starting_points=False, clockwise=False)
    return path


def _tried(operation: Callable[[list[pathops.Path]], pathops.Path], *paths: pathops.Path) -> pathops.Path:
    """The operation done at the first scale at which Skia can do it: near misses depend on how numbers round."""
    for scale in _SCALES[:-1]:
        try:
            made = operation([path.transform(scale, 0, 0, scale, 0, 0) for path in paths])
            return made.transform(1 / scale, 0, 0, 1 / scale, 0, 0)
        except pathops.PathOpsError:
            continue
    return operation([path.transform(_SCALES[-1], 0, 0, _SCALES[-1], 0, 0) for path in paths]).transform(
        1 / _SCALES[-1], 0, 0, 1 / _SCALES[-1], 0, 0
    )


def weld(path: pathops.Path) -> tuple[Segment, ...]:
    """The welded outlines of what `path` fills, by its own fill rule; outer contours counterclockwise."""
    return segments_of(tidy(path))


def welded(segments: Iterable[Segment]) -> tuple[Segment, ...]:
    """Outlines in mm that may overlap, as one."""
    path = path_of(transform(segments, (_BORDER_SCALE, 0.0, 0.0, _BORDER_SCALE, 0.0, 0.0)))
    return tuple(transform(weld(path), (1 / _BORDER_SCALE, 0.0, 0.0, 1 / _BORDER_SCALE, 0.0, 0.0)))


def path_of(segments: Iterable[Segment]) -> pathops.Path:
    """The segments as a path to weld, counted by nonzero winding."""
    path = pathops.Path()
    draw = {"M": path.moveTo, "L": path.lineTo, "Q": path.quadTo, "C": path.cubicTo, "Z": path.close}
    for verb, points in segments:
        draw[verb](*points)
    return path


def border(segments: Iterable[Segment], width: float) -> tuple[Segment, ...]:
    """Outlines (mm) grown by `width` mm on every side, corners rounded, filled under what they surround."""
    segments = tuple(segments)
    path = path_of(transform(segments, (_BORDER_SCALE, 0.0, 0.0, _BORDER_SCALE, 0.0, 0.0)))
    edge = pathops.Path(path)
    edge.stroke(2 * width * _BORDER_SCALE, pathops.LineCap.ROUND_CAP, pathops.LineJoin.ROUND_JOIN, 4)
    edge.convertConicsToQuads()
    path.addPath(edge)
    grown = transform(weld(path), (1 / _BORDER_SCALE, 0.0, 0.0, 1 / _BORDER_SCALE, 0.0, 0.0))
    ink = edges_of(pack(segments), width / 8, _BORDER_NEAR).start
    return tuple(segment for contour in contours(grown) if _is_real(contour, ink, width) for segment in contour)


def _is_real(contour: tuple[Segment, ...], ink: Points, width: float) -> bool:
    """Whether no hole, or one that lies `width` from all ink: a curve tighter than that, grown, leaves false ones."""
    if signed_area(contour) > 0:
        return True
    ends = np.array([complex(*points[-2:]) for _, points in contour if points])
    return float(np.abs(ends[:, None] - ink).min()) > width - _BORDER_NEAR


def segments_of(path: pathops.Path) -> tuple[Segment, ...]:
    """The outlines of a path without overlaps, but for rounding remnants."""
    inked = (contour for contour in contours(segments_in(path)) if abs(signed_area(contour)) >= _SLIVER)
    return tuple(segment for contour in inked for segment in contour)


def segments_in(path: pathops.Path) -> tuple[Segment, ...]:
    """The path as segments, as it is."""
    return tuple((_VERBS[verb], tuple(value for point in points for value in point)) for verb, points in path)
