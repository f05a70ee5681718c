"""How well the words of the hundred drawings are found: the part is the word, all of it and nothing else.

Part and word are painted and their pixels compared: resvg is the judge."""

import io
from collections.abc import Iterable
from functools import partial
from pathlib import Path
from typing import NamedTuple

import numpy as np
import resvg_py
from numpy.typing import NDArray
from PIL import Image

from tests.parts.drawn_shapes import PAGE
from tests.parts.word_drawings import Made
from xlbatch.geometry.path import contours, path_data
from xlbatch.parts.find import parts_of
from xlbatch.parts.outlines import Contour
from xlbatch.parts.part import OPEN, Part
from xlbatch.parts.set_live import text_box
from xlbatch.svg.artwork import read_layers
from xlbatch.svg.layer import Layers

SAME = 0.01  # of the word's pixels
PIXELS = 1000

Ink = NDArray[np.bool_]


class Found(NamedTuple):
    """What became of a drawing: its layers and parts, the part that is nearest to the word, and how far off that is."""

    made: Made
    layers: Layers
    parts: tuple[Part, ...]
    part: Part | None
    off: float

    @property
    def exact(self) -> bool:
        return self.off <= SAME


def look(made: Made, folder: Path) -> Found:
    """The drawing read, and the part that is nearest to its word."""
    file = folder / f"{made.name}.svg"
    file.write_text(made.svg, encoding="utf-8")
    layers = read_layers(file)
    assert isinstance(layers, Layers), (made.name, layers)
    parts = parts_of(layers, partial(text_box, folder=Path()))
    wanted = {color: _painted([path_data(shape)]) for color, shape in made.word.items()}
    loose = _painted([path_data(shape) for shape in made.loose])
    place = _painted(path_data(contour) for shape in made.word.values() for contour in contours(shape))
    offs = {part: _off(part, layers, wanted, loose, place) for part in parts if part.kind != "text"}
    best = min(offs, key=lambda part: offs[part], default=None)
    return Found(made, layers, parts, best, offs[best] if best else 1.0)


def _off(part: Part, layers: Layers, wanted: dict[str, Ink], loose: Ink, place: Ink) -> float:
    """The pixels in which part and word differ, over the word's, the worst color counting."""
    mine = {color: _ink(part, layers, color) for color in dict.fromkeys((*wanted, *_colors(part, layers)))}
    nothing = np.zeros((PIXELS, PIXELS), dtype=bool)
    off = 0.0
    for color, ink in mine.items():
        word = wanted.get(color, nothing)
        if color not in wanted:  # what else goes with it may only lie in its place
            ink = ink & ~place
        differing = np.count_nonzero((ink ^ word) & ~loose)
        off = max(off, differing / np.count_nonzero(next(iter(wanted.values()))))
    return off


def _colors(part: Part, layers: Layers) -> Iterable[str]:
    return (layers.layers[shape.layer].color for shape in part.shapes)


def _ink(part: Part, layers: Layers, color: str) -> Ink:
    unit = PAGE / layers.page[2] if layers.page else 1.0

    def data(contours: Iterable[Contour]) -> str:
        return " ".join(path_data(contour.segments, (unit, 0, 0, -unit, 0, PAGE)) for contour in contours)

    if color == OPEN:  # bellies left standing in open letters are not among the holes
        holed = {copy.layer for copy in part.copies if copy.kind == "holes"}
        bellies = [shape for shape in part.shapes if shape.layer in holed]
        return _painted([data((*part.holes, *bellies))])
    mine = [shape for shape in part.shapes if layers.layers[shape.layer].color == color]
    if any(copy.kind == "stroke" and copy.color == color for copy in part.copies):  # a line about letters, with them
        fills = [shape for shape in part.shapes if layers.layers[shape.layer].color == part.color]
        return _painted([data((s, *s.holes)) for s in (*mine, *fills)])
    return _painted([data((shape, *shape.holes)) for shape in mine])


def _painted(paths: Iterable[str]) -> Ink:
    body = "".join(f'<path fill-rule="evenodd" d="{path}"/>' for path in paths)
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {PAGE} {PAGE}">{body}</svg>'
    png = bytes(resvg_py.svg_to_bytes(svg_string=svg, width=PIXELS, skip_system_fonts=True))
    return np.asarray(Image.open(io.BytesIO(png)).convert("RGBA"))[:, :, 3] > 127
