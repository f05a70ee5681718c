"""Pictures: SVG drawn to PNG, the same drawing only once."""

from dataclasses import dataclass
from functools import lru_cache

import resvg_py

from xlbatch.sheets.measure import ARIMO

CRISP, PLAIN = 2.0, 1.5  # dots a point: 144 dots per inch in print, fewer where there are very many pictures
_IMAGE_POINT = 72 / 96  # an unscaled picture's dot in points


@dataclass(frozen=True)
class Picture:
    """A PNG, the scale that gives it its size on the sheet, and what it says to someone who cannot see it."""

    png: bytes
    says: str
    scale: float


@lru_cache(maxsize=4096)
def drawn(svg: str, says: str, dots: float = CRISP) -> Picture:
    """The picture of an SVG whose width and height are in points."""
    png = resvg_py.svg_to_bytes(
        svg_string=svg, zoom=dots, skip_system_fonts=True, font_files=[str(ARIMO)], font_family="Arimo"
    )
    return Picture(bytes(png), says, 1 / (dots * _IMAGE_POINT))
