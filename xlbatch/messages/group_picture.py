"""A picture of a group's garments to send along with its message: what they will look like, for whom, in which size.

It is as wide as a phone's screen, and small enough to be sent at once.
"""

from collections.abc import Mapping, Sequence
from html import escape
from io import BytesIO
from math import ceil
from typing import NamedTuple

import resvg_py
from PIL import Image

from xlbatch.geometry.path import path_data
from xlbatch.how_far import alive
from xlbatch.paper.measure import ARIMO, text_width
from xlbatch.pictures.garment_drawing import by_side
from xlbatch.pictures.sketch import INK, SLEEVE, body_shape, box_of, sleeve_shape
from xlbatch.placement.place import Place
from xlbatch.trade.contrast import LEAST, contrast
from xlbatch.trade.tables import color_hex

WIDE = 1080  # dots across
LARGEST = 400_000  # bytes, and less
MOST = 60  # garments drawn: a phone shows no more of them well
FEW = 6  # garments, up to which front and back of each have the whole width
TALLEST = 0.95  # of the width of its place: how high a garment is drawn
MARGIN, NAME, WORDS = 24.0, 34.0, 26.0  # dots: around a garment; its name's and its size's letters
COLORS = 64
ACROSS = {6: 2, 15: 3, MOST: 4}  # beside one another, of up to so many garments
UNKNOWN_FILM, UNKNOWN_GARMENT, EDGE = "#7a7a7a", "#ffffff", 1.5
GROUND = "#eceff1"  # behind the garments, so that a white one is seen


class GarmentShown(NamedTuple):
    """One garment: its places, and the two lines below it."""

    places: Sequence[Place]
    name: str
    words: str


def group_picture(garments: Sequence[GarmentShown], film_colors: Mapping[str, str], across: int = 0) -> bytes:
    """A PNG 1,080 dots wide and under 400 kB; `film_colors` by the films' lower-case names. Of very many garments the
    first ones are shown. `across`: how many stand beside one another; 0: as many as suits their number."""
    garments = garments[:MOST]
    sides = max((len(by_side(shown.places)) for shown in garments), default=1)
    usual = next(beside for most, beside in ACROSS.items() if len(garments) <= most)
    across = across or (1 if sides > 1 and len(garments) <= FEW else usual)
    while True:
        png = _few_colors(_drawn(garments, across, film_colors))
        if len(png) < LARGEST:
            return png
        across += 1


def _drawn(garments: Sequence[GarmentShown], across: int, film_colors: Mapping[str, str]) -> Image.Image:
    """Row by row, so that a large group can be stopped between two."""
    rows = [garments[first : first + across] for first in range(0, len(garments), across)]
    bands = [_band(row, WIDE / across, film_colors) for row in rows]
    top = round(MARGIN / 2)
    image = Image.new("RGB", (WIDE, 2 * top + sum(band.height for band in bands)), GROUND)
    for band in bands:
        image.paste(band, (0, top))
        top += band.height
    return image


def _band(row: Sequence[GarmentShown], wide: float, film_colors: Mapping[str, str]) -> Image.Image:
    """Garments beside one another, with half the margin above and below them."""
    high = ceil(max(_height(shown, wide) for shown in row) + MARGIN)
    tiles = "".join(
        f'<g transform="translate({column * wide:.1f} {MARGIN / 2})">{_tile(shown, wide, film_colors)}</g>'
        for column, shown in enumerate(row)
    )
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{WIDE}" height="{high}" font-family="Arimo">'
        f'<rect width="{WIDE}" height="{high}" fill="{GROUND}"/>{tiles}</svg>'
    )
    alive()
    png = resvg_py.svg_to_bytes(
        svg_string=svg, background="white", skip_system_fonts=True, font_files=[str(ARIMO)], font_family="Arimo"
    )
    return Image.open(BytesIO(bytes(png))).convert("RGB")


def _few_colors(image: Image.Image) -> bytes:
    alive()
    with BytesIO() as file:
        few = image.quantize(COLORS, method=Image.Quantize.FASTOCTREE, dither=Image.Dither.NONE)
        few.save(file, "PNG", compress_level=6)
        return file.getvalue()


def _scale(shown: GarmentShown, wide: float) -> float:
    """Dots a mm, for all sides of a garment beside one another."""
    sides = by_side(shown.places)
    room = (wide - 2 * MARGIN) / max(1, len(sides)) - MARGIN
    sizes = [_size(here[0], side) for side, here in sides.items()]
    return min((min(room / across, wide * TALLEST / down) for across, down in sizes), default=1.0)


def _size(place: Place, side: str) -> tuple[float, float]:
    """How wide and high the drawing of a side is, in mm."""
    blank = place.garment.blank
    if side.endswith(SLEEVE):
        return (blank.sleeve_opening or 0.0) * 1.3, blank.sleeve_length or 0.0
    return blank.chest + (blank.sleeve_length or 0.0) * 1.24, blank.length + (75 if blank.neckline == "hood" else 0)


def _height(shown: GarmentShown, wide: float) -> float:
    scale = _scale(shown, wide)
    down = max((_size(here[0], side)[1] for side, here in by_side(shown.places).items()), default=0.0)
    lines = len(_lines(shown.name, NAME, wide)) * NAME + len(_lines(shown.words, WORDS, wide)) * WORDS
    return down * scale + lines * 1.25 + MARGIN


def _tile(shown: GarmentShown, wide: float, film_colors: Mapping[str, str]) -> str:
    scale, sides = _scale(shown, wide), by_side(shown.places)
    own = (wide - 2 * MARGIN) / max(1, len(sides))
    body, low = "", 0.0
    for column, (side, here) in enumerate(sides.items()):
        hood = 75.0 if here[0].garment.blank.neckline == "hood" and not side.endswith(SLEEVE) else 0.0
        x = MARGIN + own * (column + 0.5)
        body += (
            f'<g transform="translate({x:.1f} {hood * scale:.1f}) scale({scale:.5f})">'
            f"{_side(here, side, scale, film_colors)}</g>"
        )
        low = max(low, _size(here[0], side)[1] * scale)
    y = low
    for text, size, weight in ((shown.name, NAME, 700), (shown.words, WORDS, 400)):
        for line in _lines(text, size, wide):
            y += size * 1.25
            body += (
                f'<text x="{wide / 2:.1f}" y="{y:.1f}" font-size="{size}" font-weight="{weight}" text-anchor="middle" '
                f'fill="{INK}">{escape(line, quote=False)}</text>'
            )
    return body


def _side(places: Sequence[Place], side: str, scale: float, film_colors: Mapping[str, str]) -> str:
    """One side of a garment in its color, its pieces in theirs, the lower layers first."""
    blank, color = places[0].garment.blank, places[0].garment.color
    ground = color_hex(color) or UNKNOWN_GARMENT
    line = max((INK, "#ffffff"), key=lambda color: contrast(color, ground))
    if side.endswith(SLEEVE):
        shape = sleeve_shape(blank, fill=ground, marked=False)
    else:
        shape = body_shape(blank, side, fill=ground, marked=False)
    under = sorted(places, key=lambda place: (place.decal.spec.layer, not place.decal.border))
    pieces = "".join(_piece(place, ground, scale, film_colors) for place in under)
    return (
        f'<g fill="none" stroke="{line}" stroke-width="{1.5 / scale:.2f}" stroke-linejoin="round">{shape}</g>{pieces}'
    )


def _piece(place: Place, ground: str, scale: float, film_colors: Mapping[str, str]) -> str:
    decal = place.decal
    fill = color_hex(film_colors.get(decal.film.casefold(), "")) or UNKNOWN_FILM
    left, top, width, height = box_of(place)
    if decal.outline is None:  # only its size is known
        return (
            f'<rect x="{left:.2f}" y="{top:.2f}" width="{width:.2f}" height="{height:.2f}" fill="{fill}" '
            f'fill-opacity=".4"/>'
        )
    edge = ""
    if contrast(fill, ground) < LEAST:  # it would hardly show: a fine line around it
        line = max(("#ffffff", "#000000"), key=lambda color: contrast(color, ground))
        edge = f' stroke="{line}" stroke-width="{EDGE / scale:.2f}"'
    return f'<path d="{path_data(decal.outline.segments, (1, 0, 0, -1, left, top + height))}" fill="{fill}"{edge}/>'


def _lines(text: str, size: float, wide: float) -> list[str]:
    """The words in lines that fit below a garment."""
    lines: list[str] = []
    for word in text.split():
        joined = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(joined, size, bold=True) > wide - MARGIN:
            lines.append(word)
        else:
            lines[-1:] = [joined]
    return lines
