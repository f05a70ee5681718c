"""How much room text takes, so that rows are high enough in every viewer and no line is cut off.

Sheets are set in Arial; the widths are those of Arimo, a free font made to Arial's metrics.
"""

from functools import cache, lru_cache
from importlib.resources import files
from pathlib import Path

import uharfbuzz as hb

ARIMO = Path(str(files("fontpkg_arimo"))) / "files" / "Arimo[wght].ttf"
REGULAR, BOLD = 400, 700  # the font's weights
LINE = 1.22  # line height over font size
_KEPT = 1 << 15  # measures kept: a sheet is measured twice, and a large job's texts would take much memory


@cache
def arimo(bold: bool) -> hb.Font:
    """Arimo in one of its two weights. Lengths in font units."""
    font = hb.Font(hb.Face(hb.Blob.from_file_path(str(ARIMO))))
    font.set_variations({"wght": BOLD if bold else REGULAR})
    return font


@cache
def _advance(sign: str, bold: bool) -> float:
    """The advance of a character in font sizes; one that Arimo lacks counts as a full square."""
    font = arimo(bold)
    glyph = font.get_nominal_glyph(ord(sign))
    return font.get_glyph_h_advance(glyph) / font.face.upem if glyph else 1.0


@lru_cache(maxsize=_KEPT)
def text_width(text: str, size: float, bold: bool = False) -> float:
    """The width in points of one line of text."""
    return size * sum(_advance(sign, bold) for sign in text)


@lru_cache(maxsize=_KEPT)
def line_count(text: str, room: float, size: float, bold: bool = False) -> int:
    """The lines that text wrapped into `room` points takes."""
    return sum(_wrapped(part, room, size, bold) for part in text.split("\n"))


def text_height(text: str, room: float, size: float, bold: bool = False) -> float:
    """The height in points of text wrapped into `room` points."""
    return line_count(text, room, size, bold) * size * LINE


def _wrapped(text: str, room: float, size: float, bold: bool) -> int:
    lines, used = 1, 0.0
    space = text_width(" ", size, bold)
    for word in text.split(" "):
        width = text_width(word, size, bold)
        if used and used + space + width > room:
            lines, used = lines + 1, 0.0
        if width > room:  # broken wherever the cell ends
            lines, width = lines + int(width // room), width % room
        used += width + (space if used else 0.0)
    return lines
