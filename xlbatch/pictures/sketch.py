"""A simple drawing of a garment, lying flat, with its decals to scale. Lengths in mm, from the shoulder point down."""

from collections.abc import Iterable

from xlbatch.geometry.path import path_data
from xlbatch.job.job import Blank
from xlbatch.placement.place import Place
from xlbatch.trade.tables import practice

INK, PIECE = "#17202a", "#4d5966"
KEPT_CLEAR = 'fill="#d5d9dd" fill-opacity=".6" stroke-dasharray="14 8" stroke-width="3"'
FILLED = f'fill="{PIECE}" stroke="none"'
NECK = practice("how wide the neck opening is, of the chest width")
SLEEVE = "sleeve"  # ends the name of a sleeve's side


def sketch(places: Iterable[Place], width: float, height: float) -> str:
    """SVG of the places of one side of one garment, in `width` × `height` points; the drawing's top left is (0, 0)."""
    placed = tuple(places)
    blank, side = placed[0].garment.blank, placed[0].side
    if side.endswith(SLEEVE):
        return _fitted(
            sleeve_shape(blank), placed, (blank.sleeve_opening or 0.0, blank.sleeve_length or 0.0), width, height
        )
    reach = blank.chest / 2 + (blank.sleeve_length or 0.0) * 0.62
    return _fitted(body_shape(blank, side), placed, (2 * reach, blank.length), width, height)


def _fitted(outline: str, places: Iterable[Place], size: tuple[float, float], width: float, height: float) -> str:
    across, down = size
    scale = min(width / (across * 1.04), height / (down * 1.08))
    pieces = "".join(piece_shape(place, FILLED) for place in places)
    return (
        f'<g transform="translate({width / 2:.2f} {down * 0.05 * scale + 1:.2f}) scale({scale:.5f})" fill="none" '
        f'stroke="{INK}" stroke-width="{1 / scale:.2f}" stroke-linejoin="round">{outline}{pieces}</g>'
    )


def body_shape(blank: Blank, side: str, *, fill: str = "#fff", marked: bool = True) -> str:
    """Body and sleeves, then the collar seam of this side; `marked`: a dotted center crease and what to keep clear."""
    neck, half, long = blank.chest * NECK / 2, blank.chest / 2, blank.length
    right = ((neck, 0.0), *_arm(blank), (half, long))
    edge = (*right, *((-x, y) for x, y in reversed(right)))
    seam = blank.drop_front if side == "front" else blank.drop_back
    return (
        f'<path d="M{" L".join(f"{x:.1f} {y:.1f}" for x, y in edge)}" fill="{fill}"/>'
        f'<path d="{_collar(blank, side, neck)}"/>'
        + (_crease(seam, long) + _kept_clear(blank, side, seam) if marked else "")
    )


def _kept_clear(blank: Blank, side: str, seam: float) -> str:
    """A shaded box for each place not to press on."""
    boxes = (
        (feature, seam if feature.at == "collar" else blank.length - feature.height)
        for feature in blank.keep_clear
        if feature.side == side
    )
    return "".join(
        f'<rect x="{-feature.width / 2:.1f}" y="{top:.1f}" width="{feature.width:.1f}" height="{feature.height:.1f}" '
        f"{KEPT_CLEAR}/>"
        for feature, top in boxes
    )


def _arm(blank: Blank) -> tuple[tuple[float, float], ...]:
    """From the shoulder's tip around the sleeve, or the bare armhole, to the armpit."""
    half, down = blank.chest / 2, blank.length * 0.06
    armpit = (half, down + (blank.sleeve_opening or blank.chest * 0.3) * 1.25)
    if not blank.sleeve_length:
        strap = (blank.between_armholes or blank.chest * 0.7) / 2
        return (strap, down * 0.5), (strap, armpit[1] * 0.6), (strap + (half - strap) * 0.35, armpit[1] * 0.9), armpit
    tip, opening = (half * 0.92, down), armpit[1] - down
    out = (tip[0] + blank.sleeve_length * 0.78, tip[1] + blank.sleeve_length * 0.62)
    return tip, out, (out[0] - opening / 1.25 * 0.62, out[1] + opening / 1.25 * 0.78), armpit


def _collar(blank: Blank, side: str, neck: float) -> str:
    """The collar seam, and what makes the neckline known at a glance."""
    drop = blank.drop_front if side == "front" else blank.drop_back
    curve = f"M{-neck:.1f} 0 Q0 {2 * drop:.1f} {neck:.1f} 0"
    if side != "front":
        return curve
    match blank.neckline:
        case "V":
            return f"M{-neck:.1f} 0 L0 {drop:.1f} L{neck:.1f} 0"
        case "polo":
            flaps = f"M{-neck:.1f} 0 l{neck - 20:.1f} {drop + 45:.1f} l20 -45 l20 45 L{neck:.1f} 0"
            return f"{curve} M-14 {drop:.1f} v130 h28 v-130 {flaps}"
        case "hood":
            return f"{curve} M{-neck:.1f} 0 C{-neck:.1f} -60 {neck:.1f} -60 {neck:.1f} 0"
        case _:
            return curve


def sleeve_shape(blank: Blank, *, fill: str = "#fff", marked: bool = True) -> str:
    half, long = (blank.sleeve_opening or 0.0) / 2, blank.sleeve_length or 0.0
    return (
        f'<path d="M{-half:.1f} {long:.1f} L{-half * 1.2:.1f} 0 H{half * 1.2:.1f} L{half:.1f} {long:.1f} Z" '
        f'fill="{fill}"/>' + (_crease(0.0, long) if marked else "")
    )


def _crease(start: float, end: float) -> str:
    return f'<path d="M0 {start:.1f} V{end:.1f}" stroke-dasharray="8 14" stroke-width="2"/>'


def box_of(place: Place) -> tuple[float, float, float, float]:
    """Left, top, width and height of a decal as it will be seen: on the front the wearer's right is at the left."""
    blank, decal = place.garment.blank, place.decal
    middle = place.from_center if place.side == "back" else -place.from_center
    if place.above_opening is not None:
        bottom = (blank.sleeve_length or 0.0) - place.above_opening
    else:
        bottom = blank.length - (place.clear_hem or 0.0)
    return middle - decal.width / 2, bottom - decal.height, decal.width, decal.height


def piece_shape(place: Place, look: str) -> str:
    """The decal's outline with these attributes of SVG, or its box where only that is known."""
    left, top, width, height = box_of(place)
    if place.decal.outline is None:
        return f'<rect x="{left:.2f}" y="{top:.2f}" width="{width}" height="{height}" {look} fill-opacity=".4"/>'
    onto = (1.0, 0.0, 0.0, -1.0, left, top + height)
    return f'<path d="{path_data(place.decal.outline.segments, onto)}" {look}/>'
