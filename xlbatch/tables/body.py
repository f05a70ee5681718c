"""Turns a body measure, an age or a child's number given as a size into the size it most likely means.

None of these is a size by itself: each is used, and asked. Chests go by EN 13402-3 (trade/body_sizes.csv),
children's numbers and heights by trade/child_sizes.csv.
"""

import re
import unicodedata
from functools import cache, lru_cache
from typing import NamedTuple

from xlbatch.job.job import Class
from xlbatch.problems.phrases import phrase
from xlbatch.tables.sizes import wearer
from xlbatch.trade.tables import table
from xlbatch.units import mm_per

_CM_PER_INCH = mm_per("in") / mm_per("cm")
_SMALLEST_CHEST = {"in": 28.0, "cm": 66.0}  # bare numbers from here on are chests; below, ages
_LARGEST_CHEST_IN = 56.0
_LARGEST_CHEST_CM = 150.0
_OLDEST = 20
_SIGNS = str.maketrans({"’": "", "'": "", "″": '"', "”": '"', "–": "-", "/": "-"})
_MEASURE = re.compile(
    r"(?P<before>[^\d]*?)(?P<low>\d+(?:[.,]\d+)?)(?:\s*(?:-|to)\s*(?P<high>\d+(?:[.,]\d+)?))?"
    r"\s*(?P<unit>inches|inch|in|cm|\"|years? old|yrs? old|years?|yrs?|yo|ans|años|jahre)?\.?(?P<after>[^\d]*)"
)
_LETTERS = {"pp": "XS", "p": "S", "gg": "XL", "xg": "2XL", "xgg": "3XL", "eg": "2XL"}  # pequeno, grande
_CHEST_WORDS = ("chest", "bust")
_AGE_WORDS = ("age", "ages", "aged", "us", "kids us")
_HEIGHT_WORDS = ("height", "eu", "tall")


class Guess(NamedTuple):
    """The size a measure most likely means, and what it was taken for."""

    size: str
    taken_for: str


class _Measure(NamedTuple):
    low: float
    high: float
    unit: str  # in, cm, years, or ""
    word: str  # what is said of it: chest, age, height, or ""
    for_: Class | None


def is_letter(text: str) -> bool:
    """Whether a text is a size by the letters of Portuguese: P, G, GG."""
    return text.strip().casefold() in _LETTERS


@lru_cache(maxsize=10_000)
def guess_size(text: str, for_hint: Class | None = None) -> Guess | None:
    """The size that `38 in`, `chest 96 cm`, `10`, `10-12` or `age 7` most likely means, or None."""
    if is_letter(text):
        return Guess(_LETTERS[text.strip().casefold()], phrase("letter"))
    measure = _measure(text, for_hint)
    if measure is None or measure.low > measure.high:
        return None
    return _by_age(measure) or _by_height(measure) or _by_chest(measure)


def _measure(text: str, for_hint: Class | None) -> _Measure | None:
    match = _MEASURE.fullmatch(unicodedata.normalize("NFKC", text).casefold().translate(_SIGNS).strip())
    if not match:
        return None
    around = re.sub(r"[\s():.,]+|\bsize\b", " ", f"{match['before']} {match['after']}").split()
    words = [word for word in around if word in _CHEST_WORDS + _AGE_WORDS + _HEIGHT_WORDS]
    rest = " ".join(word for word in around if word not in words)
    for_ = wearer(rest) if rest else for_hint
    if len(words) > 1 or (rest and for_ is None):
        return None
    low = float(match["low"].replace(",", "."))
    high = float((match["high"] or match["low"]).replace(",", "."))
    unit = match["unit"] or ""
    unit = "in" if unit in ('"', "in", "inch", "inches") else unit if unit in ("", "cm") else "years"
    return _Measure(low, high, unit, words[0] if words else "", for_)


def _by_age(measure: _Measure) -> Guess | None:
    """Ages and the numbers of children's sizes: the next size up. Of two neighbors the larger, since it will be grown
    into; None where the ends of a range lie further apart."""
    if measure.unit not in ("", "years") or measure.word not in ("", *_AGE_WORDS) or measure.high > _OLDEST:
        return None
    if measure.for_ not in (None, "youth", "toddler") or measure.low < 2:
        return None
    order = list(dict.fromkeys(line["Reads as"] for line in table("child_sizes")))
    low, high = (_next_up("US size", end) for end in (measure.low, measure.high))
    return Guess(high, phrase("age")) if order.index(high) - order.index(low) <= 1 else None


def _by_height(measure: _Measure) -> Guess | None:
    """A child's height: said so, or one of the very numbers by which children's clothes are sold in Europe."""
    of_height = measure.word in _HEIGHT_WORDS
    exact = measure.low == measure.high and f"{measure.low:g}" in {line["Height (cm)"] for line in table("child_sizes")}
    if (
        measure.unit not in ("", "cm")
        or measure.for_ in ("adult", "ladies")
        or not (of_height or (exact and not measure.word))
    ):
        return None
    if not 86 <= measure.low <= 176:
        return None
    return Guess(_next_up("Height (cm)", measure.high), phrase("height"))


def _next_up(heading: str, wanted: float) -> str:
    lines = [line for line in table("child_sizes") if float(line[heading].removesuffix("T")) >= wanted]
    return lines[0]["Reads as"] if lines else ""


def _by_chest(measure: _Measure) -> Guess | None:
    """A chest or bust: the size whose range holds its middle."""
    if measure.word not in ("", *_CHEST_WORDS) or measure.unit == "years":
        return None
    unit = measure.unit or ("in" if measure.high <= _LARGEST_CHEST_IN else "cm")
    most = _LARGEST_CHEST_IN if unit == "in" else _LARGEST_CHEST_CM
    if not _SMALLEST_CHEST[unit] <= measure.low <= measure.high <= most:
        return None
    for_ = "ladies" if measure.for_ == "ladies" or measure.word == "bust" else "adult"
    middle = (measure.low + measure.high) / 2 * (_CM_PER_INCH if unit == "in" else 1)
    for line in table("body_sizes"):
        if line["For"] == for_ and float(line["Chest from (cm)"]) <= middle < float(line["Chest to (cm)"]):
            return Guess(line["Size"], phrase("chest", measure="bust" if for_ == "ladies" else "chest", cm=middle))
    return None


@cache
def usual_chest(size: str) -> float | None:
    """Half the middle of the chest range (mm) of an adult's or ladies' size: EN 13402-3. None for other sizes."""
    for line in table("body_sizes"):
        if line["Size"] == size:
            return (float(line["Chest from (cm)"]) + float(line["Chest to (cm)"])) / 4 * mm_per("cm")
    return None
