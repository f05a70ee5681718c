"""Pictures for the proof: a garment's decals as they are cut, in film color on garment color."""

from collections.abc import Iterable, Mapping, Sequence

from xlbatch.art.decal import Decal
from xlbatch.art.path import path_data
from xlbatch.placement.group import Group, groups
from xlbatch.sheets.measure import text_width
from xlbatch.sheets.picture import Picture, drawn
from xlbatch.sheets.widths import filled
from xlbatch.trade.contrast import LEAST, contrast
from xlbatch.trade.tables import color_hex

LOW, TALL = 26.0, 50.0  # points high
CAPTION = 8.5  # of these below each panel
CAPTION_SIZE = 7.0
GAP = 5.0  # between two panels
MARGIN = 3.0  # inside a panel
MARK, MARKED = 4.0, "#d81b60"  # the ring around a place too thin to cut: its radius in points
EDGE = 0.6  # points
UNKNOWN_FILM, UNKNOWN_GARMENT = "#7a7a7a", "#ffffff"


def proof_picture(
    decals: Sequence[Decal],
    captions: Sequence[str],
    garment_color: str,
    film_colors: Mapping[str, str],
    width: float,
    height: float = LOW,
) -> Picture:
    """All decals of a garment side by side in `width` × `height` points, each as large as its panel allows, a caption
    below each; the films of one drawing over one another. `film_colors`: by each film's lower-case name."""
    together = groups(decals)
    room = width - GAP * (len(together) - 1)
    shapes = [max(0.5, min(6.0, group.width / group.height)) for group in together]
    least = [text_width(caption, CAPTION_SIZE) + 2 for caption in captions]
    widths = filled(shapes, least, room)
    panels, left = "", 0.0
    for group, caption, wide in zip(together, captions, widths, strict=True):
        panels += (
            f'<g transform="translate({left:.2f} 0)">'
            f"{_panel(group, caption, (wide, height), garment_color, film_colors)}</g>"
        )
        left += wide + GAP
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.2f}" height="{height}">{panels}</svg>'
    return drawn(svg, _says(decals, garment_color))


def _panel(
    group: Group, caption: str, size: tuple[float, float], garment_color: str, film_colors: Mapping[str, str]
) -> str:
    width, height = size
    ground, high = color_hex(garment_color) or UNKNOWN_GARMENT, height - CAPTION
    scale = min((width - 2 * MARGIN) / group.width, (high - 2 * MARGIN) / group.height)
    left, bottom = (width - group.width * scale) / 2, (high + group.height * scale) / 2
    layers = sorted(group.decals, key=lambda decal: (decal.spec.layer, not decal.border))
    pieces = "".join(_piece(decal, film_colors, scale, ground) for decal in layers)
    return (
        f'<rect x=".5" y=".5" width="{width - 1:.2f}" height="{high - 1}" fill="{ground}" stroke="#8593a1"/>'
        f'<g transform="translate({left:.3f} {bottom:.3f}) scale({scale:.6f} {-scale:.6f})">{pieces}</g>'
        f'<text x="{width / 2:.2f}" y="{height - 2}" font-family="Arimo" font-size="{CAPTION_SIZE}" '
        f'text-anchor="middle" fill="#17202a">{caption}</text>'
    )


def _piece(decal: Decal, film_colors: Mapping[str, str], scale: float, ground: str) -> str:
    """A decal in mm, `scale` points a mm; what is too thin for its film lies in a ring."""
    fill = color_hex(film_colors.get(decal.film.casefold(), "")) or UNKNOWN_FILM
    x, y = decal.offset
    if decal.outline is None:  # only its size is known
        box = f'x="{x}" y="{y}" width="{decal.width}" height="{decal.height}"'
        return f'<rect {box} fill="{fill}" fill-opacity=".35" stroke="{fill}" stroke-width="2" stroke-dasharray="8 5"/>'
    marks = "".join(
        f'<circle cx="{x + across:.2f}" cy="{y + up:.2f}" r="{MARK / scale:.2f}" fill="none" stroke="{MARKED}" '
        f'stroke-width="{1 / scale:.2f}"/>'
        for across, up in decal.thin
    )
    shape = (
        f'<path d="{path_data(decal.outline.segments, (1, 0, 0, 1, x, y))}" fill="{fill}"{_edge(fill, ground, scale)}/>'
    )
    return shape + marks


def _edge(fill: str, ground: str, scale: float) -> str:
    """A fine line around a shape that would hardly show on the garment."""
    if contrast(fill, ground) >= LEAST:
        return ""
    line = max(("#ffffff", "#000000"), key=lambda color: contrast(color, ground))
    return f' stroke="{line}" stroke-width="{EDGE / scale:.3f}"'


def _says(decals: Iterable[Decal], garment_color: str) -> str:
    parts = (" ".join(filter(None, (decal.piece, decal.text, "in", decal.film))) for decal in decals)
    return f"On {garment_color}: " + "; ".join(parts)
