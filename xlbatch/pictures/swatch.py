"""Pictures for the proof: a garment's decals as they are cut, in film color on garment color."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from xlbatch.art.decal import Decal
from xlbatch.geometry.path import path_data
from xlbatch.paper.measure import text_width
from xlbatch.paper.picture import Picture, drawn
from xlbatch.paper.widths import filled
from xlbatch.placement.group import Group, groups
from xlbatch.trade.contrast import LEAST, contrast
from xlbatch.trade.tables import color_hex

LOW, TALL = 26.0, 50.0  # points high
CAPTION = 8.5  # of these below each panel
CAPTION_SIZE = 7.0
GAP = 5.0  # between two panels
MARGIN = 3.0  # inside a panel
RING, LEAST_RING = 1.5, 2.5  # the radius of a ring around a place too thin: mm, so that it hides no more, and points
MARKED = (("#ffffff", 2.2), ("#b0003a", 1.0))  # a dark ring on a white one: seen on any film, and in gray
LEAST_SMALL, MARKED_SMALL = 1.6, (("#b0003a", 0.6),)  # where texts are small, as in a list
EDGE = 0.6  # points
UNKNOWN_FILM, UNKNOWN_GARMENT = "#7a7a7a", "#ffffff"


@dataclass(frozen=True)
class Swatch:
    """What is on a garment: its decals, a caption for each group of them, and the garment's color."""

    decals: Sequence[Decal]
    captions: Sequence[str]
    garment_color: str


def proof_picture(swatch: Swatch, film_colors: Mapping[str, str], width: float, height: float = LOW) -> Picture:
    """All decals of a garment side by side in `width` × `height` points. `film_colors`: by each film's lower-case
    name."""
    inside = _panels(swatch, film_colors, width, height)
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.2f}" height="{height}">{inside}</svg>'
    return drawn(svg, _says(swatch))


def _panels(swatch: Swatch, film_colors: Mapping[str, str], width: float, height: float) -> str:
    """A garment's decals side by side, each as large as its panel allows, a caption below each; the films of one
    drawing over one another."""
    together = groups(swatch.decals)
    shapes = [max(0.5, min(6.0, group.width / group.height)) for group in together]
    least = [text_width(caption, CAPTION_SIZE) + 2 for caption in swatch.captions]
    widths = filled(shapes, least, width - GAP * (len(together) - 1))
    panels, left = "", 0.0
    for group, caption, wide in zip(together, swatch.captions, widths, strict=True):
        panel = _panel(group, caption, (wide, height), swatch.garment_color, film_colors)
        panels += f'<g transform="translate({left:.2f} 0)">{panel}</g>'
        left += wide + GAP
    return panels


def _panel(
    group: Group, caption: str, size: tuple[float, float], garment_color: str, film_colors: Mapping[str, str]
) -> str:
    width, height = size
    ground, high = color_hex(garment_color) or UNKNOWN_GARMENT, height - CAPTION
    scale = min((width - 2 * MARGIN) / group.width, (high - 2 * MARGIN) / group.height)
    left, bottom = (width - group.width * scale) / 2, (high + group.height * scale) / 2
    layers = sorted(group.decals, key=lambda decal: (decal.spec.layer, not decal.border))
    pieces = "".join(film_piece(decal, decal.offset, film_colors, scale, ground) for decal in layers)
    return (
        f'<rect x=".5" y=".5" width="{width - 1:.2f}" height="{high - 1}" fill="{ground}" stroke="#8593a1"/>'
        f'<g transform="translate({left:.3f} {bottom:.3f}) scale({scale:.6f} {-scale:.6f})">{pieces}</g>'
        f'<text x="{width / 2:.2f}" y="{height - 2}" font-family="Arimo" font-size="{CAPTION_SIZE}" '
        f'text-anchor="middle" fill="#17202a">{caption}</text>'
    )


def film_piece(
    decal: Decal, corner: tuple[float, float], film_colors: Mapping[str, str], scale: float, ground: str
) -> str:
    """A decal in mm, `scale` points a mm, its lower left corner `at`; what is too thin for its film lies in a ring."""
    fill = color_hex(film_colors.get(decal.film.casefold(), "")) or UNKNOWN_FILM
    x, y = corner
    if decal.outline is None:  # only its size is known
        box = f'x="{x}" y="{y}" width="{decal.width}" height="{decal.height}"'
        return f'<rect {box} fill="{fill}" fill-opacity=".35" stroke="{fill}" stroke-width="2" stroke-dasharray="8 5"/>'
    shape = (
        f'<path d="{path_data(decal.outline.segments, (1, 0, 0, 1, x, y))}" fill="{fill}"{_edge(fill, ground, scale)}/>'
    )
    return shape + thin_marks(decal, corner, scale)


def thin_marks(decal: Decal, corner: tuple[float, float], scale: float, *, small: bool = False) -> str:
    """A ring about each place of a decal that is too thin for its film, about the size of the fault; arguments as
    above."""
    least, marked = (LEAST_SMALL, MARKED_SMALL) if small else (LEAST_RING, MARKED)
    return "".join(
        f'<circle cx="{corner[0] + across:.2f}" cy="{corner[1] + up:.2f}" r="{max(RING, least / scale):.2f}" '
        f'fill="none" stroke="{color}" stroke-width="{width / scale:.2f}"/>'
        for across, up in decal.thin
        for color, width in marked
    )


def _edge(fill: str, ground: str, scale: float) -> str:
    """A fine line around a shape that would hardly show on the garment."""
    if contrast(fill, ground) >= LEAST:
        return ""
    line = max(("#ffffff", "#000000"), key=lambda color: contrast(color, ground))
    return f' stroke="{line}" stroke-width="{EDGE / scale:.3f}"'


def _says(swatch: Swatch) -> str:
    parts = (" ".join(filter(None, (decal.piece, decal.text, "in", decal.film))) for decal in swatch.decals)
    return f"On {swatch.garment_color}: " + "; ".join(parts)
