"""Shapes that drawings with words are made of, and the letters of the words."""

import math
import random
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from xlbatch.geometry.ink import outline
from xlbatch.geometry.outline import Segment
from xlbatch.geometry.path import path_data, transform
from xlbatch.lettering.fonts import find_font
from xlbatch.lettering.typeface import set_line

PAGE = 400
STAR, RING, TREE = "star", "ring", "tree"
Shape = tuple[Segment, ...]
Points = NDArray[np.complex128]


@dataclass(frozen=True)
class FootLine:
    """The line a word stands on, as it was drawn: level at `foot`, turned by `angle` (radians, clockwise) about the
    page's middle, or on an arc of `radius` whose top is at (200, `foot`). In page units, y downward."""

    foot: float = 215.0
    angle: float = 0.0
    middle: float = 0.0  # where on an arc its top is
    radius: float = 0.0

    def onto(self, points: Points) -> Points:
        """How far along the line (real) and above it (imaginary) points of the page lie."""
        if not self.radius:
            level = (points - 200 - 200j) * np.exp(-1j * self.angle) + 200 + 200j
            return np.asarray(level.real + 1j * (self.foot - level.imag))
        side = math.copysign(1, self.radius)
        about = side * ((points.real - 200) + 1j * (self.foot - points.imag + self.radius))
        turned = np.arctan2(about.real, about.imag)
        return np.asarray(self.middle + self.radius * turned + 1j * (side * np.abs(about) - self.radius))

    def back(self, points: Points) -> Points:
        """The points of the page so far along the line and above it."""
        if not self.radius:
            level = points.real + 1j * (self.foot - points.imag)
            return np.asarray((level - 200 - 200j) * np.exp(1j * self.angle) + 200 + 200j)
        turned, reach = (points.real - self.middle) / self.radius, self.radius + points.imag
        return np.asarray(200 + reach * np.sin(turned) + 1j * (self.foot + self.radius - reach * np.cos(turned)))


@cache
def _line(font: str, text: str) -> tuple[tuple[Shape, ...], float]:
    """The shapes of a text, one letter each (accents with their letter), feet at 0 and y upward; and its cap height."""
    face = find_font(font, Path())
    assert face
    pieces = []
    for piece in set_line(face, text).pieces:
        made = outline((piece,))
        pieces.append(transform(made.segments, (1, 0, 0, 1, piece.box[0], piece.box[1])))
    return tuple(pieces), face.cap_height


def letters(font: str, text: str, cap: float, wide: float, x: float, y: float) -> list[Shape]:
    """The letters, capitals `cap` high or smaller to be at most `wide`, centered at `x`, feet at `y`; y downward."""
    shapes, height = _line(font, text)
    xs = [at[0] for shape in shapes for _, at in shape if at]
    scale = min(cap / height, wide / (max(xs) - min(xs)))
    middle = (max(xs) + min(xs)) / 2
    return [transform(shape, (scale, 0, 0, -scale, x - middle * scale, y)) for shape in shapes]


def star(x: float, y: float, r: float, points: int = 5, turn: float = 0.0) -> Shape:
    corners = []
    for corner in range(2 * points):
        far, angle = r if corner % 2 == 0 else r * 0.45, math.pi * corner / points + turn
        corners.append((x + far * math.sin(angle), y - far * math.cos(angle)))
    return polygon(corners)


def polygon(corners: Sequence[tuple[float, float]]) -> Shape:
    return (("M", corners[0]), *(("L", corner) for corner in corners[1:]), ("Z", ()))


def disk(x: float, y: float, r: float, squash: float = 1.0) -> Shape:
    k = 0.5522847498
    quarter: list[Segment] = [("M", (x + r, y))]
    for a in range(4):
        c, s = math.cos(a * math.pi / 2), math.sin(a * math.pi / 2)

        def turned(px: float, py: float, c: float = c, s: float = s) -> tuple[float, float]:
            return x + (px * c - py * s) * r, y + (px * s + py * c) * r * squash

        quarter.append(("C", (*turned(1, k), *turned(k, 1), *turned(0, 1))))
    return (*quarter, ("Z", ()))


def hollow(outer: Shape, inner: Shape) -> Shape:
    """A shape with a hole, as one path of even-odd filling."""
    return (*outer, *inner)


def box(left: float, top: float, right: float, bottom: float, slant: float = 0.0) -> Shape:
    return polygon(((left + slant, top), (right + slant, top), (right - slant, bottom), (left - slant, bottom)))


def tree(x: float, y: float, h: float) -> Shape:
    w = h / 3
    return polygon(((x, y - h), (x + w, y - h / 3), (x + w / 4, y - h / 3), (x + w / 4, y), (x - w / 4, y),
                    (x - w / 4, y - h / 3), (x - w, y - h / 3)))  # fmt: skip


def around(dice: random.Random, clear: float, color_count: int = 1) -> list[tuple[int, Shape]]:
    """What stands around a word that ends `clear` from the middle: stars, a ring, trees; with color numbers."""
    found: list[tuple[int, Shape]] = []
    r = clear + dice.uniform(12, 40)
    what = dice.choice((STAR, STAR, RING, TREE))
    if what == STAR:
        count, size, points = dice.randint(9, 14), dice.uniform(6, 13), dice.choice((4, 5, 6))
        for n in range(count):
            angle = 2 * math.pi * n / count
            found.append((0, star(200 + r * math.sin(angle), 200 - r * math.cos(angle), size, points, angle)))
    elif what == RING:
        found.append((0, hollow(disk(200, 200, r + 12), disk(200, 200, r))))
    else:
        for n in range(dice.randint(2, 4)):
            found.append((0, tree(120 + n * 45, 120, dice.uniform(40, 70))))
        found.append((0, disk(200, 330, 22)))
    if dice.random() < 0.5:
        found.append((min(1, color_count - 1), star(200, 320 - dice.uniform(0, 20), 14)))
    return found


def d(shape: Iterable[Segment]) -> str:
    return path_data(shape)


def path(shape: Iterable[Segment], color: str, more: str = "") -> str:
    return f'<path d="{d(shape)}" fill="{color}" fill-rule="evenodd"{more}/>'


def svg(body: str, style: str = "") -> str:
    return f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {PAGE} {PAGE}">{style}{body}</svg>'


def joined(shapes: Iterable[Shape]) -> Shape:
    return tuple(segment for shape in shapes for segment in shape)
