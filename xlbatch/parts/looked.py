"""A drawing's file looked at once: its layers and its parts."""

from collections.abc import Container, Mapping
from dataclasses import dataclass
from functools import lru_cache, partial
from pathlib import Path

from xlbatch.geometry.ink import around
from xlbatch.geometry.path import Box
from xlbatch.parts.find import parts_of
from xlbatch.parts.part import Part
from xlbatch.parts.read_file import read_file
from xlbatch.parts.set_live import text_box
from xlbatch.problems.unreadable_drawings import FAULTS, Fault
from xlbatch.svg.artwork import faulted
from xlbatch.svg.layer import Layers


@dataclass(frozen=True, eq=False)
class Looked:
    """A drawing's layers and parts, the folder it lies in, and the box its width is measured by."""

    layers: Layers
    parts: tuple[Part, ...]
    folder: Path

    def used(self, uses: Mapping[str, bool]) -> frozenset[str]:
        """The numbers of the parts that are proposed to be cut, and of those that are wanted though they are not."""
        return frozenset(part.label for part in self.parts if part.use or uses.get(part.label))

    def colors(self, used: Container[str]) -> tuple[str, ...]:
        """The colors of the parts `used`, the lowest first."""
        parts = [part for part in self.parts if part.label in used]
        layers = self.layers.layers
        shapes = (shape for part in parts for shape in part.shapes if shape not in part.unseen(layers))
        drawn = {(shape.layer, 0): layers[shape.layer].color for shape in shapes}
        for part in parts:
            paints = part.text.colors if part.text else ()
            drawn |= {(part.layer, paint_no): color for paint_no, color in enumerate(paints)}
        return tuple(dict.fromkeys(drawn[place] for place in sorted(drawn)))

    @property
    def box(self) -> Box:
        """Around the ink as drawn, without live texts; the page where there is no other ink."""
        boxes = [shape.box for part in self.parts if part.use for shape in part.shapes]
        page = self.layers.page
        return around(boxes) if boxes else page or (0.0, 0.0, 1.0, 1.0)


def look_at(path: Path) -> Looked | tuple[Fault, ...]:
    """The drawing in a file, or what keeps it from being cut. A file is read again only when it has changed."""
    try:
        stat = path.stat()
    except OSError:
        return (FAULTS["broken"],)
    return _look(path, stat.st_mtime_ns, stat.st_size)


@lru_cache(maxsize=16)
def _look(path: Path, _changed: int, _size: int) -> Looked | tuple[Fault, ...]:
    layers = read_file(path)
    if not isinstance(layers, Layers):
        return layers
    if not layers.layers:
        return (FAULTS["no ink"],)
    folder = path.parent
    return faulted(lambda: Looked(layers, parts_of(layers, partial(text_box, folder=folder)), folder))
