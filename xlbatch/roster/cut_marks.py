"""Turns the rows of a Cut list into marks: which strips are cut and weeded, and which decals went wrong since."""

import re
from collections.abc import Iterable

from xlbatch.job.marks import ALL, StripMark
from xlbatch.problems import Problem
from xlbatch.tables.line import Line

_DECAL = re.compile(r"D\d+", re.IGNORECASE)
_BETWEEN = re.compile(r"[\s,;.&+]+|\band\b", re.IGNORECASE)


def read_strips(given: Iterable[Line]) -> tuple[tuple[StripMark, ...], tuple[Problem, ...]]:
    """The strips of the Cut list, and what was wrong. Rows without a run are titles between them."""
    strips, problems = [], []
    for line in given:
        if line.given("Run") and line.given("Film") and (run := line.count("Run")) is not None:
            cut, weeded = bool(line.mark("Cut")), bool(line.mark("Weeded"))
            film, strip = line.text("Film"), line.count("Strip") or 0
            strips.append(StripMark(line.source, run, strip, film, cut, weeded, _spoiled(line)))
        problems += line.problems
    return tuple(strips), tuple(problems)


def _spoiled(line: Line) -> tuple[str, ...]:
    """The decal numbers under Spoiled; what is none is asked about."""
    typed = line.any_text("Spoiled")
    if typed.strip().casefold() == ALL:
        return (ALL,)
    words = [word for word in _BETWEEN.split(typed) if word]
    if strange := [word for word in words if not _DECAL.fullmatch(word)]:
        line.found("spoiled-unknown", "Spoiled", " ".join(strange))
    return tuple(word.upper() for word in words if _DECAL.fullmatch(word))
