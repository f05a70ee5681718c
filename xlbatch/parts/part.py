"""A part of a drawing: what goes together when it is left out or replaced."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from xlbatch.geometry.path import Box
from xlbatch.parts.letter_rows import LetterRow
from xlbatch.parts.outlines import Contour, Shape
from xlbatch.svg.layer import Layer, LiveText

OPEN = "open"  # the color of letters that are holes
BROKEN = "broken"  # the doubt that a word is no word, but what letters left of a shape when they broke through it
MOST_SINGLE = 12  # shapes of a part that are listed one by one
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
    row: LetterRow | None = None
    text: LiveText | None = None
    layer: int = 0  # of a live text
    use: bool = True
    doubts: tuple[str, ...] = ()
    letter: str = ""  # of one shape of a part

    @property
    def label(self) -> str:
        """What it is called on Drawing parts: 3, or 3a for one of its shapes."""
        return f"{self.number}{self.letter}"

    def unseen(self, layers: Sequence[Layer]) -> frozenset[Shape]:
        """What of it is left out though it is cut: background that is seen through its letters."""
        out = frozenset(shape for shape in self.shapes if not layers[shape.layer].use)
        return out if len(out) < len(self.shapes) else frozenset()

    @property
    def single(self) -> "tuple[Part, ...]":
        """Its shapes as parts of their own (3a, 3b …), where they are few enough to be listed."""
        mine = [shape for shape in self.shapes if not self.copies or shape.layer in {c.layer for c in self.copies[:1]}]
        if self.kind not in ("word", "shape") or not 2 <= len(mine) <= MOST_SINGLE:
            return ()
        mine.sort(key=lambda shape: (round(shape.box[0]), -round(shape.box[3])))
        return tuple(
            Part(
                self.number, "shape", self.color, shape.box, shapes=(shape,), use=self.use, letter=chr(ord("a") + place)
            )
            for place, shape in enumerate(mine)
        )
