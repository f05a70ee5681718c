"""Pictures for the proof page: one side of a garment as it will look, large; and what is on one garment, small."""

from collections.abc import Iterable, Iterator, Mapping, Sequence

from xlbatch.art.decal import Decal
from xlbatch.geometry.ink import around, shifted
from xlbatch.geometry.outline import Segment
from xlbatch.geometry.path import Box, bounds, contours, path_data
from xlbatch.paper.picture import Picture, drawn
from xlbatch.pictures.sketch import box_of
from xlbatch.pictures.swatch import UNKNOWN_GARMENT, film_piece, thin_marks
from xlbatch.placement.group import Group
from xlbatch.placement.place import Place
from xlbatch.trade.tables import color_hex

MARGIN = 9.0  # points around the pieces
APART = 6.0  # points between two pieces in a row
SHARP, COARSE = 2.5, 1.5  # dots a point
PAPER, INK = "#ffffff", "#000000"
Drawings = tuple[tuple[str, str], ...]  # the designs and pieces of a group
Rooms = Mapping[Drawings, Sequence[Box]]
AROUND = 0.15  # of a text's height: so much of its room is shown around it


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


def row_picture(
    row: Sequence[Group], rooms: Rooms, colors: Mapping[str, str], size: tuple[float, float], dots: float = SHARP
) -> Picture:
    """The pieces of one garment side by side as cut, all as high as the widest allows; of a drawing with words of the
    garment's own the words in their room. Places too thin in a ring. `size`: width and height in points."""
    panes = [(group, room) for group in row for room in shown_rooms(group, rooms)]
    wide = sum((right - left) / (top - bottom) for _, (left, bottom, right, top) in panes)
    high = min(size[1] - 1, (size[0] - APART * len(panes)) / wide)
    body, x = "", 0.5
    for group, room in panes:
        left, bottom, right, top = room
        scale = high / (top - bottom)
        across = (right - left) * scale
        onto = f"matrix({scale:.5f} 0 0 {-scale:.5f} {x - left * scale:.2f} {0.5 + top * scale:.2f})"
        shapes = f'<g transform="{onto}">{_shapes(group, room, colors, scale)}</g>'
        if not _within(group, room):  # slower to draw
            clip = f'<rect x="{left}" y="{bottom}" width="{right - left}" height="{top - bottom}" transform="{onto}"/>'
            name = f"pane{x:.0f}"
            shapes = f'<clipPath id="{name}">{clip}</clipPath><g clip-path="url(#{name})">{shapes}</g>'
        body += shapes
        x += across + APART
    says = "As cut: " + ", ".join(decal.titled for group in row for decal in group.decals)
    decals = [decal for group in row for decal in group.decals]
    gray = len({decal.film for decal in decals}) == 1 and not any(decal.thin for decal in decals)
    return drawn(_svg(body, x, high + 1), says, dots, gray=gray)


def _within(group: Group, room: Box) -> bool:
    """Whether all that is drawn of a group lies in a room."""
    left, bottom, right, top = room
    inside = left <= 0 and bottom <= 0 and right >= group.width and top >= group.height
    return inside and not any(decal.thin for decal in group.decals)


def word_rooms(shown: Iterable[Group]) -> Rooms:
    """What is shown of each drawing with words of the garments' own, in widths and heights of the drawing as it was
    drawn: the room that the longest of them take and a little around it, the same on every garment."""
    rooms: dict[Drawings, list[Box]] = {}
    for group in shown:
        if own := list(_own_rooms(group)):
            rooms[_drawings(group)] = _merged([*rooms.get(_drawings(group), ()), *own])
    return rooms


def _drawings(group: Group) -> Drawings:
    return tuple((decal.spec.design, decal.piece) for decal in group.decals)


def _own_rooms(group: Group) -> Iterator[Box]:
    """Where the texts of a group lie and a little around them, in widths and heights of its drawing."""
    x, y, right_end, upper_end = _drawn_box(group)
    across, up = right_end - x, upper_end - y
    for decal in group.decals:
        for left, bottom, right, top in (shifted(room, *decal.offset) for room in decal.rooms):
            edge = AROUND * (top - bottom)
            shown = left - edge, bottom - edge, right + edge, top + edge
            yield (shown[0] - x) / across, (shown[1] - y) / up, (shown[2] - x) / across, (shown[3] - y) / up


def _drawn_box(group: Group) -> Box:
    """The box of a group's drawing as it was drawn, whatever words are set in it; of others that of their ink."""
    bases = (shifted(decal.base, *decal.offset) for decal in group.decals if decal.base and decal.rooms)
    return next(bases, (0.0, 0.0, group.width, group.height))


def _merged(boxes: Iterable[Box]) -> list[Box]:
    """Those that overlap as one."""
    merged: list[Box] = []
    for box in boxes:
        while touched := [other for other in merged if _overlap(box, other)]:
            merged = [other for other in merged if other not in touched]
            box = around([box, *touched])
        merged.append(box)
    return merged


def _overlap(box: Box, other: Box) -> bool:
    return all(box[side] < other[side + 2] and other[side] < box[side + 2] for side in (0, 1))


def shown_rooms(group: Group, rooms: Rooms) -> list[Box]:
    """What is shown of a group, in its own box in mm: the room of its texts, else all of it."""
    if _drawings(group) not in rooms:
        return [(0.0, 0.0, group.width, group.height)]
    x, y, right_end, upper_end = _drawn_box(group)
    across, up = right_end - x, upper_end - y
    return [
        (x + left * across, y + bottom * up, x + right * across, y + top * up)
        for left, bottom, right, top in rooms[_drawings(group)]
    ]


def _shapes(group: Group, room: Box, colors: Mapping[str, str], scale: float) -> str:
    """One film in black, as ink is easiest read; several in their colors."""
    shown = [decal for decal in group.decals if not decal.border]
    if len({decal.film for decal in shown}) == 1:
        return "".join(_shape(decal, room, scale) for decal in shown)
    return "".join(film_piece(decal, decal.offset, colors, scale, PAPER) for decal in shown)


def _shape(decal: Decal, room: Box, scale: float) -> str:
    x, y = decal.offset
    if decal.outline is None:
        box = f'x="{x}" y="{y}" width="{decal.width}" height="{decal.height}"'
        return f'<rect {box} fill="none" stroke="{INK}" stroke-width="2"/>'
    shape = f'<path d="{path_data(seen_in(decal, room), (1, 0, 0, 1, x, y))}" fill="{INK}"/>'
    return shape + thin_marks(decal, (x, y), scale, small=True)


def seen_in(decal: Decal, room: Box) -> Iterable[Segment]:
    """The outline of a decal as it is shown in a room of its group: small shapes that the room's edge would cut
    through, letters of a neighboring word among them, are left out with their bellies."""
    assert decal.outline
    segments = decal.outline.segments
    if not decal.rooms:
        return segments
    boxed = [(contour, box) for contour in contours(segments) if (box := bounds(contour))]
    edge = shifted(room, -decal.offset[0], -decal.offset[1])
    small = [box for _, box in boxed if box[3] - box[1] < edge[3] - edge[1]]
    out = [box for box in small if _overlap(box, edge) and not _holds(edge, box)]
    return [segment for contour, box in boxed if not any(_holds(cut, box) for cut in out) for segment in contour]


def _holds(box: Box, inner: Box) -> bool:
    return inner[0] >= box[0] and inner[1] >= box[1] and inner[2] <= box[2] and inner[3] <= box[3]


def _svg(body: str, width: float, height: float) -> str:
    return f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.2f}" height="{height:.2f}">{body}</svg>'
