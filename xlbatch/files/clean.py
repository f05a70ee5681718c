"""Cleans the text of a cell: spaces and invisible characters only, never a letter."""

import re
import unicodedata
from functools import lru_cache
from typing import NamedTuple

# A carriage return or other control character as workbooks spell it (ECMA-376 part 1, 22.9.2.19).
_SPELLED_CONTROL = re.compile(r"_x00([01][0-9A-Fa-f]|7F)_")
_SPACES = re.compile(r" {2,}")
_JOINERS = "\u200c\u200d"
_FIRST_JOINING_SCRIPT = "\u0600"  # Arabic; the scripts of India and the emoji stand above it
_LEFT_OUT = {"Cf", "Cc", "Cs", "Cn"}


class Cleaned(NamedTuple):
    """The text, and whether more than outer plain spaces was changed."""

    text: str
    changed: bool


@lru_cache(maxsize=50_000)
def clean(raw: str) -> Cleaned:
    """The text without hidden characters and superfluous spaces, in Unicode's composed form (NFC)."""
    outer = raw.strip(" ")
    if outer.isascii() and outer.isprintable() and "  " not in outer and "_x" not in outer:
        return Cleaned(outer, False)
    text = _SPELLED_CONTROL.sub(" ", outer)
    text = "".join(_kept(text, place) for place in range(len(text)))
    text = unicodedata.normalize("NFC", _SPACES.sub(" ", text)).strip()
    return Cleaned(text, text != outer)


def _kept(text: str, place: int) -> str:
    sign = text[place]
    kind = unicodedata.category(sign)
    if sign.isspace() or kind in ("Zs", "Zl", "Zp"):
        return " "
    if sign in _JOINERS:
        return sign if _joins(text, place) else ""
    return "" if kind in _LEFT_OUT else sign


def _joins(text: str, place: int) -> bool:
    """Whether a joiner stands where it shapes the letters on both sides."""
    return 0 < place < len(text) - 1 and all(
        neighbor >= _FIRST_JOINING_SCRIPT and unicodedata.category(neighbor)[0] in "LMS"
        for neighbor in (text[place - 1], text[place + 1])
    )


def shown(raw: str) -> str:
    """The text as it can be shown to a person: hidden characters as `·`."""
    return "".join(sign if sign.isprintable() else "·" for sign in raw)
