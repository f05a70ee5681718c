"""An SVG drawing → the ink of each of its fill colors."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from xml.etree.ElementTree import Element

import pathops

from xlbatch.art.faults import FAULTS, Fault, Unreadable
from xlbatch.art.ink import Ink, around, measured
from xlbatch.art.layers import layers_of
from xlbatch.art.overlap import Layer, knocked_out, stacked
from xlbatch.art.page import page_of
from xlbatch.art.path import Box
from xlbatch.art.svg import LARGEST, parse_svg
from xlbatch.art.weld import clipped, weld


@dataclass(frozen=True, eq=False)
class Drawing:
    """The welded ink of each fill color (`#rrggbb`), in the order in which they are first drawn, y upward.

    `mm` is the size of one unit when the drawing is taken at its own size."""

    fills: Mapping[str, Ink]
    box: Box  # around the ink of all colors
    mm: float
    center: float  # how far from the box's left the centroid of all ink lies, in units

    @property
    def width(self) -> float:
        """The ink's width in mm at the drawing's own size."""
        return (self.box[2] - self.box[0]) * self.mm

    @property
    def height(self) -> float:
        """The ink's height in mm at the drawing's own size."""
        return (self.box[3] - self.box[1]) * self.mm


def read_artwork(path: Path, apart: bool = False) -> Drawing | tuple[Fault, ...]:
    """The drawing in an SVG file, or all that keeps it from being cut. Where colors lie over one another, each keeps
    its whole shapes (the first drawn lowest), or, `apart`, only what is seen of it."""
    try:
        with path.open("rb") as file:
            return _drawing(parse_svg(file.read(LARGEST + 1)), apart)
    except OSError:
        return (FAULTS["broken"],)
    except Unreadable as unreadable:
        return tuple(FAULTS[key] for key in unreadable.args)
    except pathops.PathOpsError:
        return (FAULTS["path"],)


def _drawing(root: Element, apart: bool) -> Drawing:
    page = page_of(root)
    layers = [Layer(color, clipped(path, page.clip)) for color, path in layers_of(root, page)]
    found = knocked_out(layers) if apart else stacked(layers)
    fills = {color: ink for color, path in found.items() if (ink := measured(weld(path)))}
    if not fills:
        raise Unreadable("no ink")
    box = around(ink.box for ink in fills.values())
    return Drawing(fills, box, page.mm, _center(layers) - box[0])


def _center(layers: Iterable[Layer]) -> float:
    """Where, from the left, the centroid of all ink lies."""
    together = pathops.Path()
    for layer in layers:
        together.addPath(layer.path)
    ink = measured(weld(together))
    return ink.moment / ink.area if ink else 0.0
