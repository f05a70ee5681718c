"""A part of a drawing: what goes together when it is left out or replaced."""

from dataclasses import dataclass
from typing import Literal

from xlbatch.geometry.path import Box
from xlbatch.parts.rows import Row
from xlbatch.parts.shapes import Contour, Shape
from xlbatch.svg.layer import LiveText

OPEN = "open"  # the color of letters that are holes
MOST = 40  # parts of a drawing; the last holds the rest

Kind = Literal["word", "text", "shape", "rest"]


@dataclass(frozen=True, eq=False)
class Copy:
    """The letters of a part once more, on a layer: as they are, `grown` to a border, as a line about them, moved as a
    shadow, or as holes of another color. In the drawing's units."""

    layer: int
    color: str
    kind: Literal["letters", "border", "stroke", "holes"]
    grown: float = 0.0
    moved: complex = 0j


@dataclass(frozen=True, eq=False)
class Part:
    """A part. `shapes` and `holes` are all that goes when it goes, whatever their color; `color` is that of its top.

    `doubts` say why the program may be wrong about it (keys of DOUBTS)."""

    number: int
    kind: Kind
    color: str
    box: Box
    shapes: tuple[Shape, ...] = ()
    holes: tuple[Contour, ...] = ()
    copies: tuple[Copy, ...] = ()
    row: Row | None = None
    text: LiveText | None = None
    layer: int = 0  # of a live text
    use: bool = True
    doubts: tuple[str, ...] = ()

    @property
    def listed(self) -> tuple[Shape, ...]:
        """The shapes that are listed one by one (3a, 3b …), where they are few."""
        mine = tuple(shape for shape in self.shapes if shape.layer == self.shapes[-1].layer or self.kind == "shape")
        return mine if self.kind in ("shape", "word") and 2 <= len(mine) <= 12 else ()
