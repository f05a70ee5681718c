"""A drawing with its parts numbered."""

from collections.abc import Iterator
from html import escape

from xlbatch.geometry.ink import around
from xlbatch.geometry.path import Matrix, path_data
from xlbatch.geometry.weld import segments_in
from xlbatch.paper.picture import Picture, drawn
from xlbatch.parts.edit import Remade, Rules
from xlbatch.parts.looked import Looked
from xlbatch.parts.remake import remade
from xlbatch.svg.artwork import faulted

SIDE = 330.0  # points
_MARGIN = 16.0
_GROUND = "#dfe5ea"  # neither white nor black film is lost on it
_RADIUS, _LETTERS = 7.5, 8.0
_SMALL = 24.0  # a number would cover most of a part this long


def parts_picture(name: str, looked: Looked) -> Picture:
    """The drawing as it is, live text as typed, and each part's number where it lies; what is left out is pale."""
    left, bottom, right, top = around((looked.box, *(part.box for part in looked.parts)))
    scale = (SIDE - 2 * _MARGIN) / max(right - left, top - bottom)
    wide, high = (right - left) * scale + 2 * _MARGIN, (top - bottom) * scale + 2 * _MARGIN
    onto = (scale, 0.0, 0.0, -scale, _MARGIN - left * scale, high - _MARGIN + bottom * scale)
    ink = "".join(_ink(looked, onto))
    marks = "".join(_marks(looked, onto, (wide, high)))
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide:.2f}" height="{high:.2f}">'
        f'<rect width="100%" height="100%" fill="{_GROUND}"/>{ink}{marks}</svg>'
    )
    return drawn(svg, f"The parts of {escape(name, quote=False)}, numbered")


def _ink(looked: Looked, onto: Matrix) -> Iterator[str]:
    for part in looked.parts:
        if not part.use:
            for shape in part.shapes:
                yield f'<path d="{path_data(shape.segments, onto)}" fill="{part.color}" fill-opacity=".4"/>'
    rules = Rules(gap=0.0, least=0.0, narrowest=1.0, widest=1.0, font="", folder=looked.folder)
    made = faulted(lambda: remade(looked.layers, looked.parts, (), rules))
    if isinstance(made, Remade):
        for layer in made.layers.layers:
            yield f'<path d="{path_data(segments_in(layer.path), onto)}" fill="{layer.color}"/>'


def _marks(looked: Looked, onto: Matrix, size: tuple[float, float]) -> Iterator[str]:
    """The numbers; one that would cover another, or most of its part, stands beside it."""
    taken: list[tuple[float, float]] = []
    for part in looked.parts:
        x, y = (part.box[0] + part.box[2]) / 2, (part.box[1] + part.box[3]) / 2
        if part.kind == "shape" and len(part.shapes) != 1:  # on one of its shapes, not between them
            first = max(part.shapes, key=lambda shape: (shape.area, shape.box[3]))
            x, y = (first.box[0] + first.box[2]) / 2, first.box[3]
        elif part.kind == "shape" and part.shapes[0].holes:  # on the ring, not in the middle of what it surrounds
            y = part.box[3]
        small = max(part.box[2] - part.box[0], part.box[3] - part.box[1]) * onto[0] < _SMALL
        x, y = onto[0] * (part.box[2] if small else x) + onto[4] + _RADIUS * small, onto[3] * y + onto[5]
        x, y = (min(max(middle, _RADIUS), whole - _RADIUS) for middle, whole in zip((x, y), size, strict=True))
        while any(abs(x - other) < 2 * _RADIUS and abs(y - up) < 2 * _RADIUS for other, up in taken):
            x += 2 * _RADIUS + 1
        taken.append((x, y))
        yield (
            f'<circle cx="{x:.2f}" cy="{y:.2f}" r="{_RADIUS}" fill="#fff" stroke="#b0003a" stroke-width="1.2"/>'
            f'<text x="{x:.2f}" y="{y + 2.9:.2f}" font-family="Arimo" font-size="{_LETTERS}" font-weight="bold" '
            f'text-anchor="middle" fill="#b0003a">{part.label}</text>'
        )
