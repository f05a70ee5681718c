"""Lengths and temperatures as people write them, and as they are printed.

Inside the program a length is in millimeters, rounded to 0.001 mm, and a temperature in °C, rounded to
0.000001 °C; cells carry them to enough places that a written cell reads back as the same value.
Factors come from pint's registry (NIST SP 811: 1 in = 25.4 mm, 1 ft = 304.8 mm, 1 yd = 914.4 mm).
"""

import math
import re
from collections.abc import Iterable
from fractions import Fraction
from functools import cache, lru_cache
from typing import Literal

from xlbatch.unit_registry import registry

LengthUnit = Literal["in", "cm", "mm"]
TemperatureUnit = Literal["°F", "°C"]

_LENGTH_WORDS = {
    "inch": ("in", "ins", "inch", "inches", '"', "″", "”", "''"),
    "foot": ("ft", "foot", "feet", "'", "′", "’"),
    "yard": ("yd", "yds", "yard", "yards"),
    "millimeter": ("mm", "millimeter", "millimeters", "millimetre", "millimetres"),
    "centimeter": ("cm", "cms", "centimeter", "centimeters", "centimetre", "centimetres"),
    "meter": ("m", "meter", "meters", "metre", "metres"),
}
_UNIT_OF_WORD = {word: unit for unit, words in _LENGTH_WORDS.items() for word in words}
_VULGAR = {"¼": " 1/4", "½": " 1/2", "¾": " 3/4", "⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8"}
_NUMBER = r"\d+(?:\s+|\s*-\s*)\d+/\d+|\d+/\d+|\d+(?:[.,]\d+)?|[.,]\d+"
_WORDS = "|".join(sorted((re.escape(w) for w in _UNIT_OF_WORD), key=len, reverse=True))
_LENGTH_PART = re.compile(rf"\s*({_NUMBER})\s*-?\s*({_WORDS})?\.?(?![a-z])\s*", re.IGNORECASE)
_KEPT = 4096  # lengths told: a job has few different ones, each on many sheets
_TEMPERATURE = re.compile(r"\s*(-?\d+(?:[.,]\d+)?)\s*(?:°|º|deg(?:rees)?\.?)?\s*([FC])?[a-z]*\s*", re.IGNORECASE)


@cache
def mm_per(unit: str) -> float:
    """Millimeters in one `unit` (any length word a person may write).

    Raises KeyError for a word that is no length unit."""
    return float(registry().Quantity(1, _UNIT_OF_WORD[unit.lower()]).to("millimeter").magnitude)


@cache
def _celsius(degrees: float, unit: str) -> float:
    return float(registry().Quantity(degrees, "degF" if unit == "°F" else "degC").to("degC").magnitude)


@cache
def _fahrenheit(celsius: float) -> float:
    return float(registry().Quantity(celsius, "degC").to("degF").magnitude)


def number(text: str) -> Fraction:
    """The value of `10`, `10.5`, `10,5`, `1/2` or `10 1/2`. Raises ValueError or ZeroDivisionError."""
    return sum((Fraction(part.replace(",", ".")) for part in text.replace("-", " ").split()), Fraction(0))


def parse_length(value: object, unit: str) -> float | None:
    """The length in mm of a cell (`10 1/2"`, `27 cm`, `3 ft 6 in`, or a bare number in `unit`), or None."""
    if isinstance(value, bool) or value is None:
        return None
    if isinstance(value, int | float):
        return round(value * mm_per(unit), 3) if math.isfinite(value) else None
    return _length_of(str(value).strip(), unit)


@lru_cache(maxsize=_KEPT)
def _length_of(text: str, unit: str) -> float | None:
    for sign, plain in _VULGAR.items():
        text = text.replace(sign, plain)
    total, start = 0.0, 0
    while start < len(text):
        part = _LENGTH_PART.match(text, start)
        whole = part is not None and start == 0 and part.end() == len(text)
        if part is None or (part[2] is None and not whole):  # only a lone number may go without its unit
            return None
        try:
            total += float(number(part[1])) * mm_per(part[2] or unit)
        except (ValueError, ZeroDivisionError):
            return None
        start = part.end()
    return round(total, 3) if start else None


def parse_temperature(value: object, unit: str) -> float | None:
    """The temperature in °C of a cell (`330 °F`, `165C`, or a bare number in `unit`), or None."""
    if isinstance(value, bool) or value is None:
        return None
    match = _TEMPERATURE.fullmatch(str(value))
    if match is None:
        return None
    return round(_celsius(float(match[1].replace(",", ".")), f"°{match[2].upper()}" if match[2] else unit), 6)


def length_in(mm: float, unit: str) -> float:
    """A length in `unit`, to six places: the value an input sheet carries."""
    return round(mm / mm_per(unit), 6)


def temperature_in(celsius: float, unit: str) -> float:
    """A temperature in °F, to three places, or in °C, to six: the value an input sheet carries."""
    return round(_fahrenheit(celsius), 3) if unit == "°F" else round(celsius, 6)


def print_step(unit: str) -> float:
    """The step printed lengths are rounded to, in mm: 1/8 in, or 1 mm."""
    return mm_per("in") / 8 if unit == "in" else 1.0


def printed_length(mm: float, unit: str, *, up: bool = False) -> float:
    """A length in `unit`, rounded to 1/8 in or 1 mm: to the nearest, or up (film to buy or cut)."""
    steps = mm / print_step(unit)
    whole = math.ceil(steps - 1e-6) if up else math.floor(steps + 0.5)
    return round(whole * print_step(unit) / mm_per(unit), 6)


@lru_cache(maxsize=_KEPT)
def length_text(mm: float, unit: str, places: int = 2) -> str:
    """A length to read: `10 1/2 in`, `26.7 cm`; to so many decimal places where it is no 1/64 in."""
    return f"{length_number(mm, unit, places)} {unit}"


@lru_cache(maxsize=_KEPT)
def length_number(mm: float, unit: str, places: int = 2) -> str:
    """A length to read without its unit: `10 1/2`, `26.7`."""
    value = length_in(mm, unit)
    if unit == "in":
        nearest = Fraction(round(value * 64), 64)
        if abs(float(nearest) - value) < 2e-6:
            whole, rest = divmod(nearest, 1)
            words = [str(whole)] if whole or not rest else []
            return " ".join([*words, *([str(rest)] if rest else [])])
    return f"{value:.{places}f}".rstrip("0").rstrip(".")


def thin_text(mm: float, unit: str, *, down: bool = False) -> str:
    """The width of something thin, to read: `0.038 in`; `0.94 mm` where the unit is metric. Rounded `down`, what is
    less than a limit also reads so."""
    if down:
        step = mm_per("in") / 1000 if unit == "in" else 0.01
        mm = math.floor(mm / step + 1e-9) * step  # against floating-point error
    return length_text(mm, unit, places=3) if unit == "in" else f"{mm:.2f}".rstrip("0").rstrip(".") + " mm"


def exact_length_text(mm: float, unit: str) -> str:
    """A length to read that also reads back as the same."""
    return length_text(mm, unit, places=6)


@lru_cache(maxsize=_KEPT)
def printed_text(mm: float, unit: str, *, up: bool = False) -> str:
    """A length to read, rounded as printed lengths are."""
    return f"{printed_number(mm, unit, up=up)} {unit}"


@lru_cache(maxsize=_KEPT)
def printed_number(mm: float, unit: str, *, up: bool = False) -> str:
    """A printed length without its unit: `3 1/8`."""
    return length_number(round(printed_length(mm, unit, up=up) * mm_per(unit), 3), unit)


def temperature_text(celsius: float, unit: str) -> str:
    """A temperature to read, to the whole degree: `330 °F`."""
    return f"{round(temperature_in(celsius, unit))} {unit}"


def long_text(mm: float, unit: str) -> str:
    """A roll's or piece's length to read, in the largest unit it is a whole number of: `5 yd`, `40 in`, `5 m`."""
    for name in ("yd", "ft", "m", "in", "cm"):
        count = mm / mm_per(name)
        if abs(count - round(count)) < 1e-6 and round(count) > 0:
            return f"{round(count)} {name}"
    return exact_length_text(mm, unit)


def printed_sum(lengths: Iterable[float], unit: str) -> float:
    """The sum in mm of some lengths of film as each is printed, rounded up: what a person adds up from the sheets."""
    return round(sum(printed_length(mm, unit, up=True) for mm in lengths) * mm_per(unit), 3)


def film_text(mm: float, unit: str) -> str:
    """A length of film to read, in the job's measure and the other: `17 ft 3 in (5.26 m)`, `5.26 m (17 ft 3 in)`."""
    feet, inches = divmod(math.ceil(round(mm / mm_per("in"), 6)), 12)
    imperial = " ".join(filter(None, [f"{feet} ft" * bool(feet), f"{inches} in" * bool(inches)])) or "0 in"
    metric = f"{math.ceil(round(mm / 10, 6)) / 100:.2f} m"
    return f"{imperial} ({metric})" if unit == "in" else f"{metric} ({imperial})"
