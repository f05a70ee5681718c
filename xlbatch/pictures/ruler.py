"""A paper ruler at its true size, with this job's drops marked."""

import math
from collections.abc import Iterable, Mapping

from xlbatch.paper.picture import Picture, drawn
from xlbatch.units import print_step, printed_number, printed_text

WIDTH = 132.0  # points
POINT = 72 / 25.4  # points a mm
SCALE = 42.0  # points: the part with the ticks
LONGEST = {"in": 8.75 * 25.4, "cm": 222.0, "mm": 222.0}  # mm, as much as fits on the paper
CHECK = {"in": (101.6, "4 in"), "cm": (100.0, "10 cm"), "mm": (100.0, "100 mm")}
TOP = 12.0  # points above zero
BELOW = 7.0  # points below the last mark of a plain ruler, for its number
APART = 9.5  # points between two labels
INK = "#17202a"


def ruler_height(unit: str) -> float:
    """How high the picture is, in points."""
    return TOP + LONGEST[unit] * POINT + 4


def ruler(drops: Mapping[float, Iterable[str]], unit: str) -> Picture:
    """`drops`: what is pressed at each distance (mm) below the seam."""
    height = ruler_height(unit)
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{WIDTH}" height="{height:.3f}" font-family="Arimo" '
        f'fill="{INK}" stroke="none"><rect x=".5" y="{TOP}" width="{SCALE}" height="{LONGEST[unit] * POINT:.3f}" '
        f'fill="#fff" stroke="{INK}"/><text x="2" y="9" font-size="8" font-weight="700">0 = the seam</text>'
        f"{_ticks(unit, LONGEST[unit])}{_check(unit)}{_marks(drops, unit)}</svg>"
    )
    return drawn(svg, f"A ruler at its true size: {CHECK[unit][1]} from 0 to the line marked so")


def plain_ruler(longest: float, unit: str) -> Picture:
    """A ruler without this job's drops, a little longer than `longest` mm where the paper holds that."""
    whole = 25.4 if unit == "in" else 10.0
    length = min(LONGEST[unit] - BELOW / POINT, (math.ceil(max(longest, CHECK[unit][0]) / whole) + 1) * whole)
    height = TOP + length * POINT + BELOW + 2
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{SCALE}" height="{height:.3f}" font-family="Arimo" '
        f'fill="{INK}" stroke="none"><rect x=".5" y="{TOP}" width="{SCALE - 1}" height="{length * POINT + BELOW:.3f}" '
        f'fill="#fff" stroke="{INK}"/><text x="1" y="10" font-size="11" font-weight="700">0 seam</text>'
        f"{_ticks(unit, length)}</svg>"
    )
    return drawn(svg, f"A ruler at its true size, {printed_text(length, unit)} long")


def _ticks(unit: str, length: float) -> str:
    """A tick each 1/8 in or mm; longer ones at the half and the whole, these with their number."""
    step = print_step(unit)
    whole = 8 if unit == "in" else 10
    marks = []
    for tick in range(round(length / step) + 1):
        y = TOP + tick * step * POINT
        long = 20 if tick % whole == 0 else 13 if tick % (whole // 2) == 0 else 7
        marks.append(f'<rect x="0" y="{y - 0.3:.3f}" width="{long}" height=".6"/>')
        if tick % whole == 0 and tick:
            number = tick if unit == "mm" else tick // whole
            marks.append(f'<text x="21.5" y="{y + 3.9:.3f}" font-size="11" font-weight="700">{number}</text>')
    return "".join(marks)


def _check(unit: str) -> str:
    length, says = CHECK[unit]
    y = TOP + length * POINT
    return (
        f'<rect x="0" y="{y - 0.75:.3f}" width="20" height="1.5"/>'
        f'<rect x="34" y="{y - 0.75:.3f}" width="{SCALE - 34}" height="1.5"/>'
        f'<text transform="translate({SCALE - 7} {TOP + 4}) rotate(90)" font-size="8">'
        f"0 to the thick line must measure {says}</text>"
    )


def _marks(drops: Mapping[float, Iterable[str]], unit: str) -> str:
    """An arrow at each drop that fits, with its length and what is pressed there."""
    below, marks = 0.0, []
    for drop in sorted(drop for drop in drops if 0 < drop <= LONGEST[unit]):
        y = TOP + drop * POINT
        below = max(below + APART, y)
        text = f"{printed_number(drop, unit)}  {', '.join(drops[drop])}"
        marks.append(
            f'<path d="M{SCALE} {y:.3f} l4 -2 v4 z"/>'
            f'<path d="M{SCALE + 4} {y:.3f} L{SCALE + 9} {below:.3f}" stroke="{INK}" stroke-width=".5"/>'
            f'<text x="{SCALE + 10}" y="{below + 2.3:.3f}" font-size="8">{text}</text>'
        )
    return "".join(marks)
