"""An SVG drawing → the ink of each of its fill colors."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from xml.etree.ElementTree import Element

import pathops

from xlbatch.art.faults import FAULTS, Fault, Unreadable
from xlbatch.art.ink import Ink, around, measured
from xlbatch.art.page import Page, page_of
from xlbatch.art.paint import INITIAL, Style, fill_of, paint_faults, style_faults, style_of
from xlbatch.art.path import Box, Matrix, product
from xlbatch.art.shapes import DATA, matrix_of, shape_path
from xlbatch.art.svg import LARGEST, parse_svg
from xlbatch.art.weld import clipped, weld

_GROUPS = ("g", "a")
_UNSEEN = (
    *("defs", "title", "desc", "metadata", "symbol", "marker", "view", "other"),
    *("linearGradient", "radialGradient", "pattern", "clipPath", "mask", "filter"),
)
_UNCUT = {
    **dict.fromkeys(("text", "tspan", "textPath", "foreignObject"), "text"),
    **dict.fromkeys(("script", "animate", "animateTransform", "animateMotion", "set"), "moving"),
    **{"image": "image", "use": "use", "style": "style sheet", "svg": "inner drawing"},
}

MOST_CONTOURS, MOST_POINTS = 5_000, 50_000  # more take long to weld, and no one could weed them


@dataclass(frozen=True, eq=False)
class Drawing:
    """The welded ink of each fill color (`#rrggbb`), in the order in which they are first drawn, y upward.

    `mm` is the size of one unit when the drawing is taken at its own size."""

    fills: Mapping[str, Ink]
    box: Box  # around the ink of all colors
    mm: float

    @property
    def width(self) -> float:
        """The ink's width in mm at the drawing's own size."""
        return (self.box[2] - self.box[0]) * self.mm

    @property
    def height(self) -> float:
        """The ink's height in mm at the drawing's own size."""
        return (self.box[3] - self.box[1]) * self.mm


def read_artwork(path: Path) -> Drawing | tuple[Fault, ...]:
    """The drawing in an SVG file, or all that keeps it from being cut."""
    try:
        with path.open("rb") as file:
            return _drawing(parse_svg(file.read(LARGEST + 1)))
    except OSError:
        return (FAULTS["broken"],)
    except Unreadable as unreadable:
        return tuple(FAULTS[key] for key in unreadable.args)
    except pathops.PathOpsError:
        return (FAULTS["path"],)


def _drawing(root: Element) -> Drawing:
    page = page_of(root)
    reader = _Reader(root, page)
    reader.read(root, INITIAL, page.matrix)
    if reader.faults:
        raise Unreadable(*reader.faults)
    seen = {color: clipped(path, page.clip) for color, path in reader.fills.items()}
    fills = {color: ink for color, path in seen.items() if (ink := measured(weld(path)))}
    if not fills:
        raise Unreadable("no ink")
    return Drawing(fills, around(ink.box for ink in fills.values()), page.mm)


class _Reader:
    """Collects the shapes of each fill color, and what cannot be cut."""

    def __init__(self, root: Element, page: Page) -> None:
        self.root = root
        self.page = page
        self.fills: dict[str, pathops.Path] = {}
        self.faults: dict[str, None] = {}
        self.contours = 0
        self.points = 0

    def read(self, element: Element, inherited: Style, matrix: Matrix) -> None:
        """Reads an element and what is in it; `matrix` takes its parent's units to those welded in."""
        style = style_of(element, inherited)
        if style["display"] == "none" or element.tag in _UNSEEN:
            return
        try:
            self.faults.update(dict.fromkeys(style_faults(style)))
            matrix = product(matrix_of(element.get("transform", "")), matrix)
            self._read_kind(element, style, matrix)
        except Unreadable as unreadable:
            self.faults.update(dict.fromkeys(unreadable.args))

    def _read_kind(self, element: Element, style: Style, matrix: Matrix) -> None:
        if element is self.root or element.tag in _GROUPS:
            for child in element:
                self.read(child, style, matrix)
        elif element.tag not in DATA:
            raise Unreadable(_UNCUT.get(element.tag, "unknown"))
        elif style["visibility"] == "visible":
            self._fill(element, style, matrix)

    def _fill(self, shape: Element, style: Style, matrix: Matrix) -> None:
        self.faults.update(dict.fromkeys(paint_faults(style)))
        color = fill_of(style, self.root)
        if color is None:
            return
        path = shape_path(shape, self.page, matrix, even_odd=style["fill-rule"] == "evenodd")
        self.contours += len(path)
        self.points += len(path.verbs)
        if self.contours > MOST_CONTOURS or self.points > MOST_POINTS:
            raise Unreadable("too detailed")
        path.simplify(fix_winding=True, keep_starting_points=False)
        self.fills.setdefault(color, pathops.Path()).addPath(path)
