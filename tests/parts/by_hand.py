"""Shapes of straight edges whose corners are given, in a drawing's units, y upward."""

import cmath
import math
from collections.abc import Callable, Sequence

import numpy as np
import pathops

from xlbatch.geometry.outline import Segment
from xlbatch.geometry.weld import path_of, tidy
from xlbatch.parts.outlines import Shape
from xlbatch.svg.layer import Layer, Layers

Corners = Sequence[complex]
Turned = Callable[[complex], complex]


def shape(corners: Corners, turned: Turned = lambda point: point) -> Shape:
    """A shape of straight edges, as points 2 units apart or nearer."""
    points = []
    for start, end in zip(corners, [*corners[1:], corners[0]], strict=True):
        steps = max(1, round(abs(end - start) / 2))
        points += [turned(start + (end - start) * step / steps) for step in range(steps)]
    along = np.array(points)
    box = (along.real.min(), along.imag.min(), along.real.max(), along.imag.max())
    after = np.roll(along, -1)
    area = float(abs(np.sum(along.real * after.imag - after.real * along.imag)) / 2)
    return Shape(outline([turned(corner) for corner in corners]), box, area, along)


def outline(corners: Corners) -> tuple[Segment, ...]:
    first, *others = ((corner.real, corner.imag) for corner in corners)
    return (("M", first), *(("L", at) for at in others), ("Z", ()))


def ell(left: float, foot: float, wide: float, high: float) -> Corners:
    """A letter L: upright, with a flat foot."""
    corners = (0, wide, wide + 0.2j * high, 0.3 * wide + 0.2j * high, 0.3 * wide + 1j * high, 1j * high)
    return [complex(left, foot) + corner for corner in corners]


def block(left: float, foot: float, wide: float, high: float) -> Corners:
    return [complex(left, foot) + corner for corner in (0, wide, wide + 1j * high, 1j * high)]


def star(left: float, foot: float, size: float) -> Corners:
    middle = complex(left + size / 2, foot + size / 2)
    return [middle + cmath.rect(size / 2 if at % 2 else size / 4, math.pi * at / 5) for at in range(10)]


def layer(color: str, *outlines: Corners, element: tuple[int, ...] = (), use: bool = True) -> Layer:
    """A layer of outlines; one within another is a hole in it."""
    path = path_of(segment for corners in outlines for segment in outline(corners))
    path.fillType = pathops.FillType.EVEN_ODD
    return Layer(color, tidy(path), element, use)


def drawing(*layers: Layer) -> Layers:
    """A drawing on a page of 2,000 x 2,000."""
    return Layers(layers, 0.127, (0.0, 0.0, 2000.0, 2000.0))
