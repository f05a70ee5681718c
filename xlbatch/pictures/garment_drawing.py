"""Drawings of a garment for the press: a small one of where its pieces go, and a large one with measure lines.

Lengths in mm, from the shoulder point down; on paper in points.
"""

from collections.abc import Iterable, Mapping, Sequence

from xlbatch.paper.picture import Picture, drawn
from xlbatch.pictures.sketch import INK, SLEEVE, body_shape, box_of, piece_shape, sleeve_shape
from xlbatch.placement.place import Place

ACCENT = "#0b5a5e"
BELOW = 30.0  # mm shown below the lowest piece of a small drawing
AROUND, LEAST_WIDE = 1.15, 0.75  # of the pieces' width and of the chest: what is seen across
SEEN = 0.5  # of a garment's length is always seen
SHARP = 2.5  # dots a point: small drawings are looked at closely
UPPER = 'fill="#fff" stroke="#000" stroke-width="{line:.2f}"'
LOWER = 'fill="#3c444c" stroke="#000" stroke-width="{line:.2f}"'
ROUND = 7.5  # points: the ring of a measure's letter


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


def span_of(place: Place) -> tuple[float, float, float]:
    """The measure line of a piece: its x, and the y where it begins and ends."""
    left, top, width, height = box_of(place)
    if place.below_collar is not None:
        return left + width / 2, top - place.below_collar, top
    away = place.above_opening if place.above_opening is not None else place.above_hem or 0.0
    return left + width / 2, top + height, top + height + away


def _drop(place: Place, line: float) -> str:
    x, start, end = span_of(place)
    return f'<path d="M{x:.1f} {start:.1f}V{end:.1f}" stroke="{ACCENT}" stroke-width="{line:.2f}"/>'


def placement_drawing(places: Sequence[Place], letters: Mapping[str, str], width: float, height: float) -> Picture:
    """One side of a whole garment in `width` × `height` points, with the measure of each piece as a line with its
    letter (by decal)."""
    blank, side = places[0].garment.blank, places[0].side
    sleeve = side.endswith(SLEEVE)
    reach = (blank.sleeve_opening or 0.0) * 0.6 if sleeve else blank.chest / 2 + (blank.sleeve_length or 0.0) * 0.62
    long = (blank.sleeve_length or 0.0) if sleeve else blank.length
    hood = 75.0 if blank.neckline == "hood" else 0.0
    scale = min((width - 3) / (2 * reach), (height - 4) / (long + hood))
    origin = (width / 2, 2 + hood * scale, scale)
    lines = "".join(
        _measure(place, letters[place.decal.id], origin, way)
        for way, place in enumerate(place for place in places if place.decal.id in letters)
    )
    return drawn(
        _svg(_placed(places, side, origin, measured=False) + lines, width, height), f"{side} of {blank.garment}"
    )


def _measure(place: Place, letter: str, origin: tuple[float, float, float], way: int) -> str:
    """A line with end ticks from the seam to the piece, its letter in a ring beside it."""
    across, down, scale = origin
    x, start, end = span_of(place)
    x, y, v = across + x * scale, down + start * scale, down + end * scale
    beside = x + (12 if way % 2 == 0 else -12)
    middle = (y + v) / 2
    return (
        f'<path d="M{x:.2f} {y:.2f}V{v:.2f}M{x - 5:.2f} {y:.2f}h10M{x - 5:.2f} {v:.2f}h10" stroke="{ACCENT}" '
        f'stroke-width="1.6" fill="none"/><circle cx="{beside:.2f}" cy="{middle:.2f}" r="{ROUND}" fill="#fff" '
        f'stroke="{ACCENT}"/><text x="{beside:.2f}" y="{middle + 4:.2f}" font-size="11" font-weight="700" '
        f'text-anchor="middle" fill="{ACCENT}">{letter}</text>'
    )


def _svg(body: str, width: float, height: float) -> str:
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.2f}" height="{height:.2f}" font-family="Arimo">'
        f"{body}</svg>"
    )
