"""Turns a cell that holds a list (`a; b; c`) into its parts: names, prices, rolls, pieces of film, stock."""

import re
from collections.abc import Callable
from typing import TypeVar

from xlbatch.files.raw import Raw
from xlbatch.job.job import FilmPiece, PriceBreak, Roll
from xlbatch.tables.cells import Unclear, amount, decimal, shown_value
from xlbatch.units import parse_length

T = TypeVar("T")

_EQUALS = re.compile(r"\s*[=:]\s*")
_TIMES = re.compile(r"\s*(?:[x×*]|\bby\b)\s*", re.IGNORECASE)
_UNIT = re.compile(r"[^\W\d]+\.?$|[\"'″′”’]+$")
_COUNTED = re.compile(r"(.*?)\s*[=:]?\s*(\d+)")


def names(cell: Raw) -> tuple[str, ...]:
    """The names between semicolons; between commas where there is no semicolon."""
    typed = shown_value(cell)
    return _parts(typed, ";" if ";" in typed else ",")


def pieces_done(cell: Raw) -> tuple[str, ...]:
    """The names between semicolons; a name may hold a comma."""
    return _parts(shown_value(cell), ";")


def _parts(typed: str, sign: str = ";") -> tuple[str, ...]:
    return tuple(part for part in (piece.strip() for piece in typed.split(sign)) if part)


def _each(typed: str, read: Callable[[str], T | None]) -> tuple[T, ...] | Unclear:
    values = [read(part) for part in _parts(typed)]
    known = tuple(value for value in values if value is not None)
    return known if known and len(known) == len(values) else Unclear()


def prices(cell: Raw) -> tuple[PriceBreak, ...] | Unclear:
    """`4.20`, or `1 = 4.20; 12 = 3.60`: from that many pieces on, each at that price; fewest first."""
    if isinstance(cell.value, bool):
        return Unclear()
    breaks = _each(shown_value(Raw(cell.value)), _price)
    if isinstance(breaks, Unclear) or len({price.count for price in breaks}) < len(breaks):
        return Unclear()
    return tuple(sorted(breaks, key=lambda price: price.count))


def _price(part: str) -> PriceBreak | None:
    sides = _EQUALS.split(part)
    count, price = (_whole(sides[0]), amount(sides[1])) if len(sides) == 2 else (1, amount(part))
    return PriceBreak(count, price) if count and price is not None else None


def _whole(typed: str) -> int | None:
    value = decimal(typed.strip().removesuffix("+"))
    return int(value) if value is not None and 0 <= value <= 999_999 and value == int(value) else None


def rolls(cell: Raw, unit: str = "") -> tuple[Roll, ...] | Unclear:
    """`5 yd = 21.00; 25 yd`: lengths as sold and their prices; a bare length only where the heading says its unit."""
    return _each(shown_value(cell), lambda part: _roll(part, unit))


def _roll(part: str, unit: str) -> Roll | None:
    long, *price = _EQUALS.split(part)
    if len(price) > 1 or not (unit or _UNIT.search(long)):
        return None
    length = parse_length(long, unit or "in")
    cost = amount(price[0]) if price else None
    return Roll(length, cost) if length and (cost is not None or not price) else None


def pieces(cell: Raw, unit: str) -> tuple[FilmPiece, ...] | Unclear:
    """`12 in x 40 in; 12 in x 9 ft`: width by length; a side without a unit is in the other's, else in `unit`."""
    return _each(shown_value(cell), lambda part: _piece(part, unit))


def _piece(part: str, unit: str) -> FilmPiece | None:
    sides = _TIMES.split(part)
    if len(sides) != 2:
        return None
    side_unit = next((unit_sign[0].rstrip(".") for side in sides[::-1] if (unit_sign := _UNIT.search(side))), unit)
    width, length = (_side(side, side_unit, unit) for side in sides)
    return FilmPiece(width, length) if width and length else None


def _side(typed: str, side_unit: str, unit: str) -> float | None:
    try:
        return parse_length(typed, side_unit)
    except KeyError:  # the word after the other side is no unit
        return parse_length(typed, unit)


def stock(cell: Raw) -> dict[str, int] | Unclear:
    """`3`, or `white = 3; navy = 1`: how many, by color; "" where no color is said."""
    if isinstance(cell.value, bool):
        return Unclear()
    counts = _each(shown_value(Raw(cell.value)), _counted)
    if isinstance(counts, Unclear) or len(dict(counts)) < len(counts):
        return Unclear()
    return dict(counts)


def _counted(part: str) -> tuple[str, int] | None:
    match = _COUNTED.fullmatch(part)
    return (match[1], int(match[2])) if match and len(match[2]) <= 6 and not re.search(r"[\d.]", match[1]) else None
