"""Drawings of a garment for the press: a small one of where its pieces go, and a large one with measure lines.

Lengths in mm, from the shoulder point down; on paper in points.
"""

from collections.abc import Iterable, Mapping, Sequence

from xlbatch.paper.picture import Picture, drawn
from xlbatch.pictures.labels import Box
from xlbatch.pictures.measure_marks import ACCENT, Origin, measure_marks, span_of
from xlbatch.pictures.sketch import INK, SLEEVE, body_shape, box_of, piece_shape, sleeve_shape
from xlbatch.placement.place import Place

BELOW = 30.0  # mm shown below the lowest piece of a small drawing
AROUND, LEAST_WIDE = 1.15, 0.75  # of the pieces' width and of the chest: what is seen across
SEEN = 0.5  # of a garment's length is always seen
SHARP = 2.5  # dots a point: small drawings are looked at closely
UPPER = 'fill="#fff" stroke="#000" stroke-width="{line:.2f}"'
LOWER = 'fill="#3c444c" stroke="#000" stroke-width="{line:.2f}"'


def by_side(places: Iterable[Place]) -> Mapping[str, Sequence[Place]]:
    """The places side by side, the front first."""
    places_by_side: dict[str, list[Place]] = {}
    for place in places:
        places_by_side.setdefault(place.side, []).append(place)
    order = ("front", "back")
    return dict(
        sorted(places_by_side.items(), key=lambda item: order.index(item[0]) if item[0] in order else len(order))
    )


def card_picture(places: Sequence[Place], width: float, height: float) -> Picture:
    """The sides of one garment that are pressed, side by side in `width` × `height` points; sleeves and hem run out of
    the frame, so that the pieces are large."""
    sides = by_side(places)
    across = width / len(sides)
    body = "".join(
        f'<svg x="{side_no * across:.2f}" y="0" width="{across - 2:.2f}" height="{height:.2f}">'
        f"{_small(here, side, across - 2, height)}</svg>"
        for side_no, (side, here) in enumerate(sides.items())
    )
    says = "; ".join(f"{side}: {', '.join(place.decal.titled for place in here)}" for side, here in sides.items())
    return drawn(_svg(body, width, height), says, SHARP)


def _small(places: Sequence[Place], side: str, width: float, height: float) -> str:
    blank = places[0].garment.blank
    sleeve = side.endswith(SLEEVE)
    long = (blank.sleeve_length or 0.0) if sleeve else blank.length
    low = max(top + high for _, top, _, high in map(box_of, places))
    shown = min(long + 10, max(low + BELOW, SEEN * long))
    across = 2 * max(max(-left, left + wide) for left, _, wide, _ in map(box_of, places))
    wide = (blank.sleeve_opening or 0.0) * 1.25 if sleeve else max(across * AROUND, blank.chest * LEAST_WIDE)
    scale = min((height - 2) / shown, width / wide)
    return _placed(places, side, (width / 2, 1.0, scale), measured=True)


def _placed(places: Sequence[Place], side: str, origin: tuple[float, float, float], *, measured: bool) -> str:
    """The garment and its pieces; `at`: where its center line and shoulder point come, and points a mm."""
    x, y, scale = origin
    blank = places[0].garment.blank
    shape = sleeve_shape(blank) if side.endswith(SLEEVE) else body_shape(blank, side)
    pieces, line = "", 0.5 / scale
    for above, place in enumerate(places):
        covers = any(_touch(place, below) for below in places[:above])
        pieces += piece_shape(place, (UPPER if covers else LOWER).format(line=line))
    marks = "".join(_drop(place, 1.4 / scale) for place in places if not place.register) if measured else ""
    return (
        f'<g transform="translate({x:.2f} {y:.2f}) scale({scale:.5f})" fill="none" stroke="{INK}" '
        f'stroke-width="{0.9 / scale:.2f}" stroke-linejoin="round">{shape}{pieces}{marks}</g>'
    )


def _touch(place: Place, other: Place) -> bool:
    (x, y, width, height), (u, v, wide, high) = box_of(place), box_of(other)
    return x < u + wide and u < x + width and y < v + high and v < y + height


def _drop(place: Place, line: float) -> str:
    x, start, end = span_of(place)
    return f'<path d="M{x:.1f} {start:.1f}V{end:.1f}" stroke="{ACCENT}" stroke-width="{line:.2f}"/>'


def placement_drawing(places: Sequence[Place], letters: Mapping[str, str], width: float, height: float) -> Picture:
    """One side of a whole garment in `width` × `height` points, with the measure of each piece as a line with its
    letter (by decal)."""
    blank, side = places[0].garment.blank, places[0].side
    across, down, hood = _seen(places)
    scale = min((width - 3) / across, (height - 4) / down)
    origin = Origin(width / 2, 2 + hood * scale, scale)
    marks = measure_marks(places, letters, origin, Box(0, 0, width, height))
    return drawn(
        _svg(_placed(places, side, origin, measured=False) + marks, width, height), f"{side} of {blank.garment}"
    )


def placement_height(places: Sequence[Place], width: float, height: float) -> float:
    """How high such a drawing is at most: less than `height` points where the width is what limits it."""
    across, down, _ = _seen(places)
    return min(height, down * (width - 3) / across + 4)


def _seen(places: Sequence[Place]) -> tuple[float, float, float]:
    """What is seen of a side in mm: across and down, and of that what stands above the shoulder point."""
    blank, side = places[0].garment.blank, places[0].side
    if side.endswith(SLEEVE):
        return (blank.sleeve_opening or 0.0) * 1.2, blank.sleeve_length or 0.0, 0.0
    hood = 75.0 if blank.neckline == "hood" else 0.0
    return blank.chest + 2 * (blank.sleeve_length or 0.0) * 0.62, blank.length + hood, hood


def _svg(body: str, width: float, height: float) -> str:
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.2f}" height="{height:.2f}" font-family="Arimo">'
        f"{body}</svg>"
    )
