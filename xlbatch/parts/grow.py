"""Paths grown by a border, in the drawing's units."""

import pathops

from xlbatch.geometry.path import transform
from xlbatch.geometry.weld import border, path_of, segments_in, tidy

_UNIT = 0.125  # mm a unit while a border is drawn: a page of 2,000 units as 250 mm


def grown(path: pathops.Path, wide: float) -> pathops.Path:
    """A tidy path grown by `wide` units on every side, corners rounded."""
    if not len(path) or wide <= 0:
        return path
    small = transform(segments_in(path), (_UNIT, 0.0, 0.0, _UNIT, 0.0, 0.0))
    made = border(small, wide * _UNIT)
    return path_of(transform(made, (1 / _UNIT, 0.0, 0.0, 1 / _UNIT, 0.0, 0.0)))


def lined(path: pathops.Path, wide: float) -> pathops.Path:
    """The line drawn along a tidy path's outlines, `wide` units to either side of them."""
    line = pathops.Path(path)
    line.stroke(2 * wide, pathops.LineCap.ROUND_CAP, pathops.LineJoin.ROUND_JOIN, 4)
    line.convertConicsToQuads()
    return tidy(line)
