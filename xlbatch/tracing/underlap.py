"""Where colors touch, the lower goes on a little under the upper, so that nothing of the shirt shows between."""

import math
from collections.abc import Collection, Sequence
from contextlib import suppress
from dataclasses import replace

import pathops

from xlbatch.geometry.weld import common, tidy
from xlbatch.tracing.borders import Border
from xlbatch.tracing.curve_fit import Fit
from xlbatch.tracing.regions import Ring, rings_of
from xlbatch.trade.tables import practice

UNDER = practice("how far one color of a picture goes under the next")  # mm, where the drawing is `_USUAL` wide
_USUAL = practice("how wide artwork is on an adult M, where nothing is said")
_SMALL = 3.0  # times as wide: a hole left by the upper color no wider than this is filled
_MOST = 400  # outlines: with more, welding takes long, and colors lie edge to edge


def under(across: float) -> float:
    """How far, in dots, a color goes under another in a drawing so many dots wide."""
    return UNDER * across / _USUAL


def rings_together(
    borders: Sequence[Border], fits: Sequence[Fit], high: float, labels: Collection[int]
) -> Sequence[Ring]:
    """The outlines of several labels as if they were one."""
    sides = [(border.left in labels, border.right in labels) for border in borders]
    outer = [
        (replace(border, left=int(left), right=int(right)), fit)
        for border, fit, (left, right) in zip(borders, fits, sides, strict=True)
        if left != right
    ]
    return rings_of([border for border, _ in outer], [fit for _, fit in outer], high)[1]


def extended(path: pathops.Path, whole: pathops.Path, far: float) -> pathops.Path:
    """A color's outlines grown by `far` inside `whole`, its outlines together with those of the colors over it; as
    they are where they cannot be."""
    if len(whole) + len(path) > _MOST:
        return path
    with suppress(pathops.PathOpsError):
        grown = pathops.Path(path)
        edge = pathops.Path(path)
        edge.stroke(2 * far, pathops.LineCap.ROUND_CAP, pathops.LineJoin.ROUND_JOIN, 4)
        edge.convertConicsToQuads()
        grown.addPath(edge)
        path_extended = common(_without_small_holes(tidy(grown), far), whole)
        if _within(abs(path.area), abs(path_extended.area), abs(whole.area)):
            return path_extended
    return path


def _within(least: float, area: float, most: float) -> bool:
    """Whether Skia's answer can be right: it is at times an outline short."""
    return least * 0.999 <= area <= most * 1.001


def _without_small_holes(path: pathops.Path, far: float) -> pathops.Path:
    """The path with its small holes filled: an upper color lies over them, but where the whole has a hole too."""
    kept = pathops.Path()
    for contour in path.contours:
        if not (contour.clockwise and contour.area < math.pi * (_SMALL * far) ** 2):
            kept.addPath(contour)
    return kept
