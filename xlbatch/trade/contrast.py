"""How well one color shows on another: the contrast ratio of WCAG 2 (W3C, 2.1, relative luminance)."""

from functools import cache

from xlbatch.trade.tables import color_hex, table

LEAST = 3.0  # WCAG 2.1, 1.4.3 and 1.4.11: large text and graphics


def contrast(color: str, other: str) -> float:
    """The ratio of two `#rrggbb` colors, from 1 to 21."""
    dark, light = sorted((_luminance(color), _luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def _luminance(color: str) -> float:
    red, green, blue = (_linear(int(color[digit : digit + 2], 16) / 255) for digit in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _linear(channel: float) -> float:
    return channel / 12.92 if channel <= 0.04045 else float(((channel + 0.055) / 1.055) ** 2.4)


@cache
def shade(color: str) -> str | None:
    """The `#rrggbb` of a color by the trade's names, else by those of CSS; None where neither has it."""
    name = color.strip().casefold().replace(" ", "")
    return color_hex(color) or next((line["Hex"] for line in table("css_colors") if line["Color"] == name), None)
