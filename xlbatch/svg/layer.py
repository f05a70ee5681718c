"""The layers of a drawing: every shape as drawn, lowest first, y upward; a page is about 2,000 units across."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import NamedTuple

import pathops

from xlbatch.geometry.path import Box, Matrix


@dataclass(frozen=True)
class Letters:
    """How letters of a live text look. Lengths in the text's own units, before its matrix."""

    fonts: tuple[str, ...]  # families asked for, the wanted first
    bold: bool
    italic: bool
    size: float
    spacing: float  # added after each letter
    word_spacing: float  # added after each space
    anchor: str  # start, middle or end
    raised: float  # above the line
    paints: tuple[tuple[str, float], ...]  # #rrggbb and, of a stroke, its width (0: a fill), in drawing order


class Spot(NamedTuple):
    """Where a letter stands: `x`, `y` (None: on from the letter before), moved from there, and turned by degrees."""

    x: float | None = None
    y: float | None = None
    dx: float = 0.0
    dy: float = 0.0
    turned: float = 0.0


@dataclass(frozen=True)
class TextSpan:
    """Letters of a live text of one look; `spots` of the first letters, those of the others being plain."""

    text: str
    look: Letters
    spots: tuple[Spot, ...] = ()


@dataclass(frozen=True, eq=False)
class LiveText:
    """A text of a drawing that is still letters, not outlines."""

    spans: tuple[TextSpan, ...]
    matrix: Matrix  # from the text's own units to the drawing's
    along: pathops.Path | None = None  # the line it runs along, in the text's own units
    offset: float = 0.0  # how far along that line it starts
    clip: pathops.Path | None = None
    long: float | None = None  # how long the drawing says it is, letters moved apart for it, or `widened`
    widened: bool = False
    stretched: float = 1.0  # how much wider its letters are than the font's

    @property
    def colors(self) -> tuple[str, ...]:
        """The colors of its letters, in drawing order."""
        return tuple(dict.fromkeys(color for span in self.spans for color, _ in span.look.paints))

    @property
    def words(self) -> str:
        """The text as one line."""
        return " ".join("".join(span.text for span in self.spans).split())


class Layer(NamedTuple):
    """A shape and the `#rrggbb` it is filled with; later layers lie over earlier ones.

    `path` has closed contours that do not overlap. `element` numbers the groups it lies in, outermost first, and
    itself. `use` is False where it is proposed to be left out. A live text has no path until it is set."""

    color: str
    path: pathops.Path
    element: tuple[int, ...] = ()
    use: bool = True
    text: LiveText | None = None


class Note(NamedTuple):
    """Something to tell about a drawing: a problem's code, and the facts in its texts."""

    code: str
    facts: Mapping[str, object] = {}


@dataclass(frozen=True, eq=False)
class Layers:
    """A drawing as its layers. `mm` is the size of one unit when the drawing is taken at its own size."""

    layers: tuple[Layer, ...]
    mm: float
    page: Box | None = None  # what is seen of the drawing
    notes: tuple[Note, ...] = field(default=())
    widest: float | None = None  # in mm: wider, and its outlines are too coarse
