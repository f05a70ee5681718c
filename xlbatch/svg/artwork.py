"""An SVG drawing → the ink of each of its fill colors."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TypeVar

import pathops

from xlbatch.geometry.ink import Ink, around, measured
from xlbatch.geometry.path import Box
from xlbatch.geometry.weld import segments_of
from xlbatch.problems.unreadable_drawings import FAULTS, Fault
from xlbatch.svg.effort import Effort
from xlbatch.svg.faults import Unreadable
from xlbatch.svg.layer import Layers
from xlbatch.svg.layers import layers_of
from xlbatch.svg.off_page import beyond_page
from xlbatch.svg.overlap import knocked_out, opened, stacked
from xlbatch.svg.safe_xml import LARGEST, parse_svg
from xlbatch.svg.viewport import page_of

T = TypeVar("T")


@dataclass(frozen=True, eq=False)
class Drawing:
    """The welded ink of each fill color (`#rrggbb`), in the order in which they are first drawn, y upward.

    `mm` is the size of one unit when the drawing is taken at its own size."""

    fills: Mapping[str, Ink]
    box: Box  # around the ink of all colors
    mm: float
    center: float  # how far from the box's left the centroid of all ink lies, in units
    base: Box  # what its width and height are measured by: the box, but for texts set in it

    @property
    def width(self) -> float:
        """Its width in mm at the drawing's own size."""
        return (self.base[2] - self.base[0]) * self.mm

    @property
    def height(self) -> float:
        """Its height in mm at the drawing's own size."""
        return (self.base[3] - self.base[1]) * self.mm


def read_layers(path: Path) -> Layers | tuple[Fault, ...]:
    """The layers of an SVG file, or all that keeps it from being cut."""

    def read() -> Layers:
        with path.open("rb") as file:
            root = parse_svg(file.read(LARGEST + 1))
        page = page_of(root)
        layers = layers_of(root, page, Effort())
        return Layers(layers, page.mm, page.clip, tuple(beyond_page(layers, page.clip)))

    return faulted(read)


def drawing_of(
    layers: Layers, apart: bool, base: Box | None = None, cut: frozenset[str] | None = None
) -> Drawing | tuple[Fault, ...]:
    """The ink of each color, or what keeps it from being cut. Where colors lie over one another, each keeps its whole
    shapes (the first drawn lowest), or, `apart`, only what is seen of it. Its size is measured by `base`.
    Of colors that are not among those `cut` nothing is left, and what they are seen on is open there."""
    return faulted(lambda: _drawing(layers, apart, base, cut))


def faulted(read: Callable[[], T]) -> T | tuple[Fault, ...]:
    """What `read` gives, or what keeps the drawing from being cut."""
    try:
        return read()
    except OSError:
        return (FAULTS["broken"],)
    except Unreadable as unreadable:
        return tuple(FAULTS[key] for key in unreadable.args)
    except pathops.PathOpsError:
        return (FAULTS["path"],)
    except RecursionError:
        return (FAULTS["too deep"],)


def _drawing(layers: Layers, apart: bool, base: Box | None, cut: frozenset[str] | None) -> Drawing:
    effort, drawn = Effort(), [layer for layer in layers.layers if layer.use and len(layer.path)]
    if cut and any(layer.color not in cut for layer in drawn):
        base = base or around(layer.path.bounds for layer in drawn)
        drawn = [layer for layer in opened(drawn, cut, effort) if len(layer.path)]
    seen = knocked_out(drawn, effort)
    fills = _inks(seen if apart else stacked(drawn, seen, effort))
    if not fills:
        raise Unreadable("no ink")
    box = around((*(ink.box for ink in fills.values()), *((base,) if base else ())))
    return Drawing(fills, box, layers.mm, _center(_inks(seen).values()) - box[0], base or box)


def _inks(paths: Mapping[str, pathops.Path]) -> dict[str, Ink]:
    return {color: ink for color, path in paths.items() if (ink := measured(segments_of(path)))}


def _center(inks: Iterable[Ink]) -> float:
    """Where, from the left, the centroid of inks side by side lies."""
    inks = tuple(inks)
    area = sum(ink.area for ink in inks)
    return sum(ink.moment for ink in inks) / area if area else 0.0
