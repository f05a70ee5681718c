"""Finds names in the person's tables, and the likely one where there is none."""

from collections.abc import Iterable

from rapidfuzz import fuzz, process

LIKELY = 70  # of 100: below this a suggestion helps less than it misleads


def did_you_mean(typed: str, names: Iterable[str]) -> str:
    """The most similar name, or "" where none is likely."""
    known = {name.casefold(): name for name in names}
    best = process.extractOne(typed.casefold(), list(known), scorer=fuzz.WRatio, score_cutoff=LIKELY)
    return known[best[0]] if best else ""


def same(text: str, other: str) -> bool:
    """Whether two names are the same but for case and outer spaces."""
    return text.strip().casefold() == other.strip().casefold()
