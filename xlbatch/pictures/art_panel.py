"""Pictures for the proof page: one side of a garment as it will look, large; and what is on one garment, small."""

from collections.abc import Mapping, Sequence

from xlbatch.art.decal import Decal
from xlbatch.geometry.path import path_data
from xlbatch.paper.picture import Picture, drawn
from xlbatch.pictures.sketch import box_of
from xlbatch.pictures.swatch import UNKNOWN_GARMENT, film_piece, thin_marks
from xlbatch.placement.group import Group
from xlbatch.placement.place import Place
from xlbatch.trade.tables import color_hex

MARGIN = 9.0  # points around the pieces
APART = 6.0  # points between two pieces in a row
SHARP = 2.5  # dots a point
INK = "#000000"


def art_panel(places: Sequence[Place], film_colors: Mapping[str, str], width: float, height: float) -> Picture:
    """The pieces of one side in their true places to one another, in film colors on the garment's color."""
    ground = color_hex(places[0].garment.color) or UNKNOWN_GARMENT
    boxes = [box_of(place) for place in places]
    left, top = min(box[0] for box in boxes), min(box[1] for box in boxes)
    right, low = max(box[0] + box[2] for box in boxes), max(box[1] + box[3] for box in boxes)
    scale = min((width - 2 * MARGIN) / (right - left), (height - 2 * MARGIN) / (low - top))
    x, y = (width - (right - left) * scale) / 2, (height + (low - top) * scale) / 2
    pieces = "".join(
        film_piece(place.decal, (box[0] - left, low - box[1] - box[3]), film_colors, scale, ground)
        for place, box in zip(places, boxes, strict=True)
    )
    body = (
        f'<rect x=".5" y=".5" width="{width - 1:.2f}" height="{height - 1:.2f}" fill="{ground}" stroke="#8593a1"/>'
        f'<g transform="translate({x:.2f} {y:.2f}) scale({scale:.5f} {-scale:.5f})">{pieces}</g>'
    )
    says = f"{places[0].side}, {places[0].garment.color}: {', '.join(place.decal.titled for place in places)}"
    return drawn(_svg(body, width, height), says)


def row_picture(row: Sequence[Group], width: float, height: float) -> Picture:
    """The pieces of one garment side by side as cut, all as high as the widest allows; places too thin in a ring."""
    high = height - 1
    wide = sum(group.width / group.height * high for group in row)
    high *= min(1.0, (width - APART * len(row)) / wide)
    body, x = "", 0.5
    for group in row:
        scale = high / group.height
        shapes = "".join(_shape(decal, scale) for decal in group.decals if not decal.border)
        body += f'<g transform="translate({x:.2f} {high + 0.5:.2f}) scale({scale:.5f} {-scale:.5f})">{shapes}</g>'
        x += group.width * scale + APART
    says = "As cut: " + ", ".join(decal.titled for group in row for decal in group.decals)
    return drawn(_svg(body, x, high + 1), says, SHARP)


def _shape(decal: Decal, scale: float) -> str:
    x, y = decal.offset
    if decal.outline is None:
        box = f'x="{x}" y="{y}" width="{decal.width}" height="{decal.height}"'
        return f'<rect {box} fill="none" stroke="{INK}" stroke-width="2"/>'
    shape = f'<path d="{path_data(decal.outline.segments, (1, 0, 0, 1, x, y))}" fill="{INK}"/>'
    return shape + thin_marks(decal, (x, y), scale)


def _svg(body: str, width: float, height: float) -> str:
    return f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.2f}" height="{height:.2f}">{body}</svg>'
