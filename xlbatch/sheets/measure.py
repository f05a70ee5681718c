"""How much room text takes, so that rows are high enough in every viewer and no line is cut off.

Sheets are set in Arial; the widths are those of Arimo, a free font made to Arial's metrics.
"""

from functools import cache
from importlib.resources import files
from pathlib import Path

from fontTools.ttLib import TTFont

ARIMO = Path(str(files("fontpkg_arimo"))) / "files" / "Arimo[wght].ttf"
BOLD = 1.09  # bold lettering over regular, about
LINE = 1.22  # line height over font size


@cache
def _advances() -> dict[int, float]:
    """The advance of each character, in font sizes."""
    with TTFont(ARIMO, lazy=True) as font:
        widths, em = font["hmtx"].metrics, font["head"].unitsPerEm
        return {code: widths[name][0] / em for code, name in font.getBestCmap().items()}


@cache
def text_width(text: str, size: float, bold: bool = False) -> float:
    """The width in points of one line of text; a character Arimo lacks counts as a full square."""
    advances = _advances()
    return size * (BOLD if bold else 1.0) * sum(advances.get(ord(sign), 1.0) for sign in text)


@cache
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
