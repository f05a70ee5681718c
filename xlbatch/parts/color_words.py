"""The colors of a drawing by name: which a word means, what one is called, and the film nearest to it."""

import math
from collections.abc import Iterable, Sequence

from xlbatch.job.job import Film
from xlbatch.svg.paint import css_color
from xlbatch.trade.tables import color_hex, color_name, table

Lab = tuple[float, float, float]


def color_in(colors: Sequence[str], typed: str) -> str | None:
    """The color of a drawing that a cell means: as the drawing has it, a CSS or trade color, or a word that only one
    of its colors is called by; where the cell is blank, the only one there is."""
    if not typed:
        return colors[0] if len(colors) == 1 else None
    wanted = typed.strip().casefold()
    exact = next((color for color in (wanted, css_color(typed), color_hex(typed)) if color in colors), None)
    if exact:
        return exact
    called = [color for color in colors if color.startswith("#") and word_for(color) == color_name(typed)]
    return called[0] if len(called) == 1 else None


def word_for(color: str) -> str:
    """What a color (#rrggbb) is called: the trade color nearest to it."""
    return min(table("colors"), key=lambda line: difference(color, line["Hex"]))["Color"]


def words_for(colors: Sequence[str]) -> dict[str, str]:
    """A word for each color, or its code where another of them has the same word."""
    words = {color: word_for(color) if color.startswith("#") else color for color in colors}
    return {color: word if list(words.values()).count(word) == 1 else color for color, word in words.items()}


def nearest_film(color: str, films: Iterable[Film]) -> Film | None:
    """The film whose color is nearest to `color`; of equals the first."""
    known = [(film, shade) for film in films if (shade := color_hex(film.color) or css_color(film.color))]
    return min(known, key=lambda pair: difference(color, pair[1]))[0] if known else None


def difference(color: str, other: str) -> float:
    """How different two colors look: the distance in CIELAB (CIE 1976)."""
    return math.dist(_lab(color), _lab(other))


def _lab(color: str) -> Lab:
    """A color in CIELAB under D65 (IEC 61966-2-1 to XYZ, then CIE 15)."""
    red, green, blue = (_linear(int(color[digit : digit + 2], 16) / 255) for digit in (1, 3, 5))
    x = (0.4124 * red + 0.3576 * green + 0.1805 * blue) / 0.95047
    y = 0.2126 * red + 0.7152 * green + 0.0722 * blue
    z = (0.0193 * red + 0.1192 * green + 0.9505 * blue) / 1.08883
    fx, fy, fz = (_curve(value) for value in (x, y, z))
    return 116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)


def _linear(value: float) -> float:
    return value / 12.92 if value <= 0.04045 else float(((value + 0.055) / 1.055) ** 2.4)


def _curve(value: float) -> float:
    return float(value ** (1 / 3)) if value > 216 / 24389 else (24389 / 27 * value + 16) / 116
