"""Finds which column of an input sheet a heading means, and the unit it carries."""

import re
import unicodedata
from collections.abc import Mapping
from functools import cache, lru_cache
from typing import NamedTuple

from rapidfuzz.distance import OSA

from xlbatch.trade.columns import InputColumn, columns
from xlbatch.units import mm_per

ALIKE = 0.82  # of 1: one slip in six letters, two in twelve
SHORTEST_ALIKE = 4  # letters; shorter headings are one slip from too many others
_UNIT = re.compile(r"\s*(?:\((?P<round>[^()]*)\)|\[(?P<square>[^\[\]]*)\]|,\s*(?P<comma>[^\s,]+))\s*:?\s*$")
_TEMPERATURES = {"°f": "°F", "f": "°F", "°c": "°C", "c": "°C"}
_LONGEST = 200  # characters of a heading that are looked at


class Match(NamedTuple):
    """What a heading means: a column's own heading ("" where none), its unit, and whether another has it already."""

    meaning: str
    unit: str = ""
    twice: bool = False


@lru_cache(maxsize=2000)
def plain(heading: str) -> str:
    """Letters and digits alone, in lower case, # beside them as a word; a heading of signs alone (#) stays as it is."""
    text = unicodedata.normalize("NFKC", heading[:_LONGEST]).casefold().strip()
    if "#" in text and re.search(r"\w", text):
        text = text.replace("#", "number")
    return re.sub(r"[\W_]", "", text) or re.sub(r"\s", "", text)


@lru_cache(maxsize=2000)
def split_unit(heading: str) -> tuple[str, str]:
    """A heading without what stands in brackets or after a comma at its end, and that."""
    match = _UNIT.search(heading[:_LONGEST])
    if not match:
        return heading, ""
    return heading[: match.start()], next(part for part in match.groups() if part is not None).strip()


def understand(headings: Mapping[int, str], sheet: str) -> dict[int, Match]:
    """What each heading of a row means on the input sheet `sheet`; headings not understood are left out.

    A column's own heading comes first, then other words for it, then words a slip or two away. The columns of a list of
    people are decided by roster_columns.py."""
    matches: dict[int, Match] = {}
    taken: set[str] = set()
    for names in (_own(sheet), _other(sheet)):
        for place, heading in headings.items():
            column = _named(heading, names)
            if column and place not in matches:
                matches[place] = Match(column.heading, _unit(heading, column), column.heading in taken)
                taken.add(column.heading)
    for place, heading in headings.items():
        likely = None if place in matches else _alike(heading, sheet)
        if likely and likely.heading not in taken:
            matches[place] = Match(likely.heading, _unit(heading, likely))
            taken.add(likely.heading)
    return matches


@cache
def _own(sheet: str) -> dict[str, InputColumn]:
    return {plain(column.heading): column for column in columns(sheet)}


@cache
def _all(sheet: str) -> dict[str, InputColumn]:
    return _other(sheet) | _own(sheet)


@cache
def _other(sheet: str) -> dict[str, InputColumn]:
    return {plain(other): column for column in columns(sheet) for other in column.other_headings}


def _named(heading: str, names: Mapping[str, InputColumn]) -> InputColumn | None:
    return names.get(plain(heading)) or names.get(plain(split_unit(heading)[0]))


def _alike(heading: str, sheet: str) -> InputColumn | None:
    return _alike_word(plain(split_unit(heading)[0]), sheet)


@lru_cache(maxsize=10_000)
def _alike_word(word: str, sheet: str) -> InputColumn | None:
    if len(word) < SHORTEST_ALIKE:
        return None
    names = _all(sheet)
    nearest = max(names, key=lambda name: OSA.normalized_similarity(word, name))
    return names[nearest] if OSA.normalized_similarity(word, nearest) >= ALIKE else None


def _unit(heading: str, column: InputColumn) -> str:
    """The unit a heading of a length or temperature carries, as the units module names it, or ""."""
    unit = split_unit(heading)[1].rstrip(".").lower()
    if column.kind == "temperature":
        return _TEMPERATURES.get(unit.replace("º", "°").replace(" ", ""), "")
    if column.kind in ("length", "rolls", "pieces"):
        return unit if _is_length_unit(unit) else ""
    return ""


def _is_length_unit(word: str) -> bool:
    try:
        return mm_per(word) > 0
    except KeyError:
        return False
