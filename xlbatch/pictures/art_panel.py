"""Pictures for the proof page: one side of a garment as it will look, large; and what is on one garment, small."""

from collections.abc import Mapping, Sequence

from xlbatch.art.decal import Decal
from xlbatch.geometry.ink import shifted
from xlbatch.geometry.path import Box, path_data
from xlbatch.paper.picture import Picture, drawn
from xlbatch.pictures.sketch import box_of
from xlbatch.pictures.swatch import UNKNOWN_GARMENT, film_piece
from xlbatch.placement.group import Group
from xlbatch.placement.place import Place
from xlbatch.trade.tables import color_hex

MARGIN = 9.0  # points around the pieces
APART = 6.0  # points between two pieces in a row
SHARP = 2.5  # dots a point
PAPER, INK, FAULT = "#ffffff", "#000000", "#b0003a"
AROUND = 0.15  # of a text's height: so much of its room is shown around it
RING = 1.5  # mm: a ring about a place too thin, the size of the fault


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


def row_picture(row: Sequence[Group], colors: Mapping[str, str], width: float, height: float) -> Picture:
    """The pieces of one garment side by side as cut, as large as they fit; of a drawing with words of the garment's own
    the words in their room. Places too thin in a ring."""
    panes = [(group, box) for group in row for box in _rooms(group)]
    across, high = sum(right - left for _, (left, _, right, _) in panes), max(box[3] - box[1] for _, box in panes)
    scale = min((width - APART * len(panes)) / across, (height - 1) / high)
    body, x = "", 0.5
    height = high * scale + 1
    for group, (left, bottom, right, top) in panes:
        wide, tall = (right - left) * scale, (top - bottom) * scale
        shapes = _shapes(group, colors, scale)
        body += (
            f'<svg x="{x:.2f}" y="{(height - tall) / 2:.2f}" width="{wide:.2f}" height="{tall:.2f}"><g '
            f'transform="matrix({scale:.5f} 0 0 {-scale:.5f} {-left * scale:.2f} {top * scale:.2f})">{shapes}</g></svg>'
        )
        x += wide + APART
    says = "As cut: " + ", ".join(decal.titled for group in row for decal in group.decals)
    return drawn(_svg(body, x, height), says, SHARP)


def _rooms(group: Group) -> list[Box]:
    """What is shown of a group, in its own box: where its texts lie, a little around them; else all of it."""
    rooms = dict.fromkeys(shifted(room, *decal.offset) for decal in group.decals for room in decal.rooms)
    apart = {tuple(round(side) for side in room): room for room in rooms}  # each once, whatever film it was told by
    return [
        (left - edge, bottom - edge, right + edge, top + edge)
        for left, bottom, right, top in apart.values()
        for edge in (AROUND * (top - bottom),)
    ] or [(0.0, 0.0, group.width, group.height)]


def _shapes(group: Group, colors: Mapping[str, str], scale: float) -> str:
    """One film in black, as ink is easiest read; several in their colors."""
    shown = [decal for decal in group.decals if not decal.border]
    if len({decal.film for decal in shown}) == 1:
        return "".join(map(_shape, shown))
    return "".join(film_piece(decal, decal.offset, colors, scale, PAPER) for decal in shown)


def _shape(decal: Decal) -> str:
    x, y = decal.offset
    if decal.outline is None:
        box = f'x="{x}" y="{y}" width="{decal.width}" height="{decal.height}"'
        return f'<rect {box} fill="none" stroke="{INK}" stroke-width="2"/>'
    rings = "".join(
        f'<circle cx="{x + across:.2f}" cy="{y + up:.2f}" r="{2 * RING}" fill="none" stroke="{FAULT}" '
        f'stroke-width="{RING}"/>'
        for across, up in decal.thin
    )
    return f'<path d="{path_data(decal.outline.segments, (1, 0, 0, 1, x, y))}" fill="{INK}"/>{rings}'


def _svg(body: str, width: float, height: float) -> str:
    return f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.2f}" height="{height:.2f}">{body}</svg>'
