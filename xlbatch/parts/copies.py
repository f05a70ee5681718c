"""The other copies of a word's letters in a drawing: borders, lines about them, shadows, same-shaped holes."""

from collections.abc import Sequence
from dataclasses import replace

import pathops

from xlbatch.geometry.ink import around
from xlbatch.geometry.path import Box
from xlbatch.geometry.weld import common, tidy
from xlbatch.parts.grow import grown
from xlbatch.parts.letter_rows import LetterRow
from xlbatch.parts.outlines import Contour, Shape, box_gap, path_of_shapes
from xlbatch.parts.part import Copy
from xlbatch.svg.layer import Layer

_REACH = 0.45  # of the cap height: how far a border or shadow reaches beyond the letters
_SAME = 0.05  # of the cap height: how near a hole's box is to its letter's
_FEWEST = 0.6  # of the letters that must have a hole of their shape
_FULL = 0.95  # of the letters that lie on their border
_NEAR = 0.15  # how near the area of a border is to that of the letters grown as far


class Copies:
    """What belongs to a word besides its own letters: `shapes` and `holes` that go with it, and how to make each copy
    `found` anew."""

    def __init__(self, layers: Sequence[Layer], shapes: Sequence[Shape], row: LetterRow, mine: Sequence[Shape]) -> None:
        self.layers = layers
        self.all = shapes
        self.row = row
        self.mine = set(mine)
        self.own = tuple(shape for shape in mine if shape in set(row.marks))
        self.shapes: tuple[Shape, ...] = ()
        self.holes: tuple[Contour, ...] = ()
        self.found: tuple[Copy, ...] = tuple(
            Copy(layer_no, layers[layer_no].color, "letters")
            for layer_no in sorted({shape.layer for shape in self.own})[-1:]
        )
        if self.own:
            self._find_grown()
        self._find_holes()

    def as_holes(self, layer: int) -> tuple[Copy, ...]:
        """The copies of letters that are themselves holes of a layer."""
        mine = Copy(layer, self.layers[layer].color, "holes")
        return (mine, *(copy for copy in self.found if copy.layer != layer))

    def _find_grown(self) -> None:
        letters = tidy(path_of_shapes(self.own))
        box = around(shape.box for shape in self.own)
        reach = _REACH * self.row.cap
        wide = box[0] - reach, box[1] - reach, box[2] + reach, box[3] + reach
        near: dict[int, list[Shape]] = {}
        for shape in self.all:
            if shape not in self.mine and _within(shape.box, wide) and box_gap(shape.box, box) == 0:
                near.setdefault(shape.layer, []).append(shape)
        by_color: dict[tuple[str, bool], list[int]] = {}
        elements = {self.layers[shape.layer].element for shape in self.own}
        own = {shape.layer for shape in self.own}
        for layer in near:
            stroke = layer not in own and bool(self.layers[layer].element) and self.layers[layer].element in elements
            by_color.setdefault((self.layers[layer].color, stroke), []).append(layer)
        for (color, stroke), layer_nos in by_color.items():
            shapes = [shape for layer in layer_nos for shape in near[layer]]
            copy = self._copy(letters, box, shapes, stroke=stroke)
            if copy:
                self.shapes += tuple(shapes)
                self.found = (*self.found, replace(copy, layer=layer_nos[-1], color=color))

    def _copy(self, letters: pathops.Path, box: Box, shapes: Sequence[Shape], *, stroke: bool) -> Copy | None:
        """What kind of copy shapes of one color are."""
        theirs = around(shape.box for shape in shapes)
        sides = (box[0] - theirs[0], box[1] - theirs[1], theirs[2] - box[2], theirs[3] - box[3])
        moved = complex(theirs[0] + theirs[2] - box[0] - box[2], theirs[1] + theirs[3] - box[1] - box[3]) / 2
        wide = sum(sides) / 4
        if stroke:
            return Copy(0, "", "stroke", wide) if wide > 0 else None
        whole = tidy(path_of_shapes([Shape(s.segments, s.box, s.area, s.points, s.layer) for s in shapes]))
        if abs(wide) < 0.02 * self.row.cap and abs(moved) > 1e-6:
            inked = abs(whole.area), abs(letters.area)
            filled = abs(tidy(path_of_shapes(tuple(Shape(s.segments, s.box, s.area, s.points) for s in self.own))).area)
            if abs(inked[0] / filled - 1) < 0.06:
                return Copy(0, "", "letters", moved=moved)
        if wide < 0.005 * self.row.cap:
            return None
        if max(sides) - min(sides) > 0.1 * self.row.cap:
            return None
        on_it = common(letters, whole)
        if abs(on_it.area) < _FULL * abs(letters.area):
            return None
        theirs_area = abs(whole.area)
        expected = abs(tidy(_filled(grown(letters, wide))).area)
        return Copy(0, "", "border", wide) if abs(theirs_area / expected - 1) < _NEAR else None

    def _find_holes(self) -> None:
        """Holes of other shapes that are as the letters are."""
        letters, near = self.row.letters, _SAME * self.row.cap
        own = {id(mark.segments) for mark in self.row.marks}
        for layer in range(len(self.layers)):
            holes = [
                hole
                for shape in self.all
                if shape.layer == layer
                for hole in shape.holes
                if id(hole.segments) not in own
            ]
            matched = [hole for hole in holes if any(_same(hole, mark, near) for mark in self.row.marks)]
            if sum(any(_same(hole, mark, near) for hole in matched) for mark in letters) < _FEWEST * len(letters):
                continue
            self.holes += tuple(matched)
            islands = tuple(
                shape
                for shape in self.all
                if shape.layer == layer
                and any(_within(shape.box, hole.box) for hole in matched)
                and shape not in self.mine
            )
            self.shapes += islands
            self.found = (*self.found, Copy(layer, self.layers[layer].color, "holes"))


def _filled(path: pathops.Path) -> pathops.Path:
    """The path without its holes."""
    filled = pathops.Path()
    for contour in path.contours:
        if contour.area > 0:
            filled.addPath(contour)
    return filled


def _same(contour: Contour, other: Contour, near: float) -> bool:
    sides = all(abs(a - b) <= near for a, b in zip(contour.box, other.box, strict=True))
    return sides and abs(contour.area / other.area - 1) < 0.2


def _within(inner: Box, other: Box) -> bool:
    return inner[0] >= other[0] and inner[1] >= other[1] and inner[2] <= other[2] and inner[3] <= other[3]
