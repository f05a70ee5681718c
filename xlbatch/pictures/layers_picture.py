"""The films of one drawing lying on one another, with how far each one's edges lie from those of the lowest."""

from collections.abc import Iterator, Sequence

from xlbatch.geometry.path import path_data
from xlbatch.paper.picture import Picture, drawn
from xlbatch.placement.place import Extent, Place, around

INK, MEASURE = "#000000", "#0b5a5e"
LOWEST, OVER = "#b4bac0", ("#ffffff", "#5b6670", "#dfe3e6")  # so that each layer stands out from those under it
LINES = 17.0  # points beside and above the drawing for the measure lines of each layer
RING, LETTERS = 7.5, 11.0  # points
HIDES = 2.5 * RING  # a shorter measure is hidden by its number


def layers_picture(places: Sequence[Place], width: float, height: float) -> Picture:
    """The places of one drawing, the lowest first, in `width` × `height` points."""
    return drawn(layers_svg(places, width, height), " on ".join(place.decal.titled for place in reversed(places)))


def layers_svg(places: Sequence[Place], width: float, height: float) -> str:
    """SVG of the places of one drawing, the lowest first, as one looks at them; each layer's number, its top and left
    edge and how far they lie from the lowest piece's."""
    lines = LINES * (len(places) - 1)
    box = around(places)
    scale = min((width - lines - 6) / (box.right - box.left), (height - lines - 6) / (box.top - box.bottom))
    onto = scale, lines + 3 - box.left * scale, lines + 3 + box.top * scale
    body = "".join(_piece(place, onto, LOWEST if not no else OVER[(no - 1) % 3]) for no, place in enumerate(places))
    lowest = places[0].extent
    marks = "".join(mark for no, place in enumerate(places[1:], 1) for mark in _marks(no, place.extent, lowest, onto))
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.2f}" height="{height:.2f}" font-family="Arimo">'
    return f'{svg}{body}<g fill="none" stroke="{MEASURE}" stroke-width="1.2">{marks}</g></svg>'


def _piece(place: Place, onto: tuple[float, float, float], fill: str) -> str:
    """Its outline, or its box where only that is known."""
    scale, x, y = onto
    left, _, right, top = place.extent
    look = f'fill="{fill}" stroke="{INK}" stroke-width="0.7"'
    if place.decal.outline is None:
        high = place.decal.height * scale
        return (
            f'<rect x="{x + left * scale:.2f}" y="{y - top * scale:.2f}" width="{(right - left) * scale:.2f}" '
            f'height="{high:.2f}" {look}/>'
        )
    matrix = (scale, 0.0, 0.0, -scale, x + left * scale, y - place.extent.bottom * scale)
    return f'<path d="{path_data(place.decal.outline.segments, matrix)}" {look}/>'


def _marks(no: int, layer: Extent, lowest: Extent, onto: tuple[float, float, float]) -> Iterator[str]:
    """The layer's top edge led out to the left and its left edge led out to the top, the measures between them and the
    lowest piece's edges, and its number on both."""
    scale, x, y = onto
    left, top, base_left, base_top = (
        x + layer.left * scale,
        y - layer.top * scale,
        x + lowest.left * scale,
        y - lowest.top * scale,
    )
    out = LINES * (no - 0.5) + 1
    thin = 'stroke-width="0.6" stroke-dasharray="2 2"'
    yield f'<path d="M{out - 4:.2f} {top:.2f}H{left:.2f}M{out - 4:.2f} {base_top:.2f}H{base_left:.2f}" {thin}/>'
    yield f'<path d="M{left:.2f} {out - 4:.2f}V{top:.2f}M{base_left:.2f} {out - 4:.2f}V{base_top:.2f}" {thin}/>'
    yield f'<path d="M{out:.2f} {base_top:.2f}V{top:.2f}M{base_left:.2f} {out:.2f}H{left:.2f}"/>'
    yield from (
        _number(no + 1, out, _beside(top, base_top)),
        _number(no + 1, _beside(left, base_left), out),
    )


def _beside(start: float, end: float) -> float:
    """The middle of a measure, or, where the number would hide it, just before it."""
    return (start + end) / 2 if abs(start - end) > HIDES else min(start, end) - RING - 1


def _number(no: int, x: float, y: float) -> str:
    return (
        f'<circle cx="{x:.2f}" cy="{y:.2f}" r="{RING}" fill="#fff" stroke-width="0.9"/><text x="{x:.2f}" '
        f'y="{y + 3.9:.2f}" font-size="{LETTERS}" font-weight="700" text-anchor="middle" fill="{MEASURE}" '
        f'stroke="none">{no}</text>'
    )
