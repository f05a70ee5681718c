"""Finds the parts of a row that is for several people or garments: `Child 1 name`, `Child 1 size`, `Child 2 name` …;
`Tee size`, `Hoodie size`; `Size`, `Color`, `Size`, `Color`."""

import re
from collections import Counter
from collections.abc import Mapping
from typing import NamedTuple

from xlbatch.tables.heading_words import heading_scores
from xlbatch.tables.headings import plain
from xlbatch.tables.roster_columns import NAMES
from xlbatch.trade.answer_words import garment_in

Titles = Mapping[int, str]
_NUMBER = re.compile(r"\s*#?\b([1-9])\b\s*")


class NumberedPart(NamedTuple):
    """The headings of one person or garment, those it shares with the others among them, and the garment it is."""

    titles: Titles
    garment: str = ""


def parts_of_a_row(titles: Titles) -> tuple[NumberedPart, ...]:
    """The parts of a row; none where it is for one garment alone."""
    return _by_number(titles) or _by_garment(titles) or _by_repeating(titles)


def _by_number(titles: Titles) -> tuple[NumberedPart, ...]:
    """Each person's headings without the number; none where not two have the same first one."""
    numbered: dict[int, dict[int, str]] = {}
    for column, text in sorted(titles.items()):
        number, rest = _number(text)
        if number:
            numbered.setdefault(number, {})[column] = rest
    people = tuple(own for own in numbered.values() if len(own) > 1)
    begins = {next(iter(own.values())).casefold() for own in people}
    return _with_shared(titles, people) if len(people) > 1 and len(begins) == 1 else ()


def _number(text: str) -> tuple[int, str]:
    """The one number in a heading, 0 where there is none, and the heading without it."""
    numbers = _NUMBER.findall(text)
    return (int(numbers[0]), _NUMBER.sub(" ", text).strip()) if len(numbers) == 1 else (0, text)


def _by_garment(titles: Titles) -> tuple[NumberedPart, ...]:
    """A part for each column of sizes that names its garment, where these are two or more."""
    sized = [
        column
        for column, text in titles.items()
        if "Size" in heading_scores(text) and "Aside" not in heading_scores(text)
    ]
    garments = {column: garment for column in sized if (garment := garment_in(titles[column]))}
    if len(set(garments.values())) < max(2, len(sized)):
        return ()
    parts = _with_shared(titles, tuple({column: titles[column]} for column in garments))
    return tuple(part._replace(garment=garment) for part, garment in zip(parts, garments.values(), strict=True))


def _by_repeating(titles: Titles) -> tuple[NumberedPart, ...]:
    """A part for each run of columns that begins with the same heading again, with a size in it but no name."""
    counts = Counter(plain(text) for text in titles.values() if text)
    firsts = [column for column, text in sorted(titles.items()) if counts[plain(text)] > 1]
    starts = [column for column in firsts if plain(titles[column]) == plain(titles[firsts[0]])] if firsts else []
    if len(starts) < 2:
        return ()
    ends = [*starts[1:], max(titles) + 1]
    runs = [
        {column: titles[column] for column in sorted(titles) if start <= column < end}
        for start, end in zip(starts, ends, strict=True)
    ]
    own = [[plain(text) for text in run.values()] for run in runs]
    alike = len(own[0]) > 1 and all(set(run) <= set(own[0]) for run in own)
    meanings_of = [{meaning for text in run.values() for meaning in heading_scores(text)} for run in runs]
    sized = all("Size" in meanings and not meanings & {*NAMES} for meanings in meanings_of)
    return _with_shared(titles, tuple(runs)) if alike and sized else ()


def _with_shared(titles: Titles, parts: tuple[Titles, ...]) -> tuple[NumberedPart, ...]:
    shared = {column: text for column, text in titles.items() if not any(column in own for own in parts)}
    return tuple(NumberedPart({**shared, **own}) for own in parts)
