"""Finds the parts of a row that is for several people or garments: `Child 1 name`, `Child 1 size`, `Child 2 name` …;
`Tee size`, `Hoodie size`; `1st shirt`, `2nd shirt`; `Size`, `Color`, `Size`, `Color`; `Name`, `Size`, `Partner`,
`Partner's size`."""

import re
from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from itertools import chain
from math import inf
from typing import NamedTuple

from xlbatch.files.raw import Raw
from xlbatch.tables.body import is_letter
from xlbatch.tables.cells import shown_value
from xlbatch.tables.heading_words import heading_scores
from xlbatch.tables.headings import plain
from xlbatch.tables.names_and_sizes import NAMES
from xlbatch.tables.size_cell import read_size_cell
from xlbatch.trade.answer_words import PLAIN_TEE, answer, garment_in, garment_meant

Titles = Mapping[int, str]
_NUMBER = re.compile(
    r"\s*#?\b([1-9](?:st|nd|rd|th)?|first(?! *(?:name|&|and))|second(?! *name)|third|extra|additional|another)\b\s*",
    re.IGNORECASE,
)
_IN_WORDS = {"first": 1, "second": 2, "third": 3, "extra": 2, "additional": 2, "another": 2}
_PERSONS = frozenset((*NAMES, "Someone else", "Orderer", "Name wanted"))  # what the heading of a person's name may say
_OTHERS = frozenset(("Someone else", "Orderer"))
_BRACKETS = re.compile(r"\s*\([^()]*\)")  # (if any)
_OF_SIZES = 0.8  # of a column's cells
_SAYS_NOTHING = frozenset(
    ("the", "of", "s", "name", "names", "full", "first", "last", "my", "your", "own", "size", "sizes", "t", "shirt")
)


class NumberedPart(NamedTuple):
    """The headings of one person or garment, those it shares with the others among them, and the garment it is."""

    titles: Titles
    garment: str = ""


def parts_of_a_row(titles: Titles, sized: frozenset[int] = frozenset()) -> tuple[NumberedPart, ...]:
    """The parts of a row; none where it is for one garment alone. `sized` are the columns of `over_sizes`."""
    unsaid = {column for column in sized if {*heading_scores(_BRACKETS.sub("", titles[column]))} != {"Size"}}
    titles = {column: f"{text} size" if column in unsaid else text for column, text in titles.items()}
    return next(filter(None, (way(titles) for way in _WAYS)), ())


def over_sizes(titles: Titles, body: Sequence[Mapping[int, Raw]]) -> frozenset[int]:
    """The columns that are of sizes though their headings, which name a garment or a number, do not say so."""
    likely = {column for column, text in titles.items() if text and (garment_in(text) or _number(text)[0])}
    if len(likely) < 2:
        return frozenset()
    texts = {
        column: [
            text
            for cells in body
            if column in cells and (text := shown_value(cells[column])) != titles[column] and not _is_none(text)
        ]
        for column in likely
    }
    sized = {
        column
        for column, of in texts.items()
        if of and sum(bool(read_size_cell(text).size) or is_letter(text) for text in of) >= _OF_SIZES * len(of)
    }
    return frozenset(sized) if len(sized) > 1 else frozenset()


def _is_none(text: str) -> bool:
    """Whether a cell says that none is wanted: -, none."""
    return answer("Size", text) == "not wanted" or not any(map(str.isalnum, text))


def _by_number(titles: Titles) -> tuple[NumberedPart, ...]:
    """Each person's headings without the number; none where not two have the same first one."""
    numbered: dict[int, dict[int, str]] = {}
    for column, text in sorted(titles.items()):
        number, rest = _number(text)
        if number:
            numbered.setdefault(number, {})[column] = rest
    if 2 in numbered and 1 not in numbered and (first := _unnumbered(titles, numbered[2])):
        numbered = {1: first, **numbered}
    people = tuple(own for own in numbered.values() if len(own) > 1)
    people = people or tuple(own for own in numbered.values() if _is_shirts(next(iter(own.values()))))
    begins = {_BRACKETS.sub("", next(iter(own.values()))).strip().casefold() for own in people}
    return _with_shared(titles, people) if len(people) > 1 and len(begins) == 1 else ()


def _unnumbered(titles: Titles, second: Titles) -> dict[int, str]:
    """The headings of the first of two that have no number: Size, beside Size 2 or Extra shirt size."""
    rests = [text.casefold() for text in second.values()]
    first = {
        column: next(iter(second.values())) if len(second) == 1 else text
        for column, text in titles.items()
        if not _number(text)[0] and (_is_shirts(text) if len(second) == 1 else text.casefold() in rests)
    }
    return first if len(first) == len(second) else {}


def _is_shirts(text: str) -> bool:
    """Whether a heading without its number is of a shirt's size, and of nothing else such as a second choice."""
    return "Size" in heading_scores(text) and (not _whose(text) or bool(garment_meant(_whose(text))))


def _number(text: str) -> tuple[int, str]:
    """The one number in a heading, 0 where there is none, and the heading without it."""
    numbers = _NUMBER.findall(text)
    if len(numbers) != 1:
        return 0, text
    number = numbers[0].casefold()
    return _IN_WORDS.get(number) or int(number[0]), _NUMBER.sub(" ", text).strip()


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
    ends = [*starts[1:], inf]
    runs = [
        {column: titles[column] for column in sorted(titles) if start <= column < end}
        for start, end in zip(starts, ends, strict=True)
    ]
    own = [[plain(text) for text in run.values()] for run in runs]
    alike = len(own[0]) > 1 and all(set(run) <= set(own[0]) for run in own)
    meanings_of = [{meaning for text in run.values() for meaning in heading_scores(text)} for run in runs]
    sized = all("Size" in meanings and not meanings & {*NAMES} for meanings in meanings_of)
    return _with_shared(titles, tuple(runs)) if alike and sized else ()


def _by_person(titles: Titles) -> tuple[NumberedPart, ...]:
    """A part for the person a row is of, and one for each other whose name and size say whose they are."""
    sizes = {column: _whose(text) for column, text in titles.items() if _is_size(text)}
    others = {whose: column for column, whose in sizes.items() if whose}
    named = {
        column: _whose(text) for column, text in titles.items() if column not in sizes and _is_persons(text, others)
    }
    parts: list[Titles] = []
    for whose in dict.fromkeys(sizes.values()):
        names = [column for column, of in named.items() if of == whose or not (whose or of in others)]
        own = [column for column, of in sizes.items() if of == whose]
        if len(own) == 1 and names:
            parts.append({column: _named(titles[column]) for column in names} | {own[0]: titles[own[0]]})
    return _with_shared(titles, tuple(parts)) if len(parts) > 1 and len(parts) == len(sizes) else ()


def _by_pairs(titles: Titles) -> tuple[NumberedPart, ...]:
    """A part for each person where a column of sizes stands beside each: `Husband`, `Size`, `Wife`, `Size`; `Mom`,
    `Mom's size`, `Baby`, `Onesie size`."""
    places = sorted(column for column, text in titles.items() if text)
    sizes = [column for column in places if "Size" in heading_scores(titles[column])]
    owners = [places[places.index(column) - 1] for column in sizes if places[0] != column]
    texts = [titles[column] for column in owners]
    alone = len(sizes) == len(owners) > 1 and len({*map(plain, texts)}) == len(texts) and not {*sizes} & {*owners}
    if not alone or {"First name", "Last name"} & {*chain(*map(heading_scores, texts))}:
        return ()
    if not all(_is_someone(text) for text in texts) or any("Aside" in heading_scores(titles[size]) for size in sizes):
        return ()
    sized = {column: "Size" if _OTHERS & set(heading_scores(titles[column])) else titles[column] for column in sizes}
    pairs = ({owner: _named(titles[owner]), size: sized[size]} for owner, size in zip(owners, sizes, strict=True))
    garments = [garment if (garment := garment_in(titles[size])) != PLAIN_TEE else "" for size in sizes]
    parts = _with_shared(titles, tuple(pairs))
    return tuple(part._replace(garment=garment) for part, garment in zip(parts, garments, strict=True))


def _is_someone(text: str) -> bool:
    """Whether a heading says no more than whose name stands below it: Wife, Child, Mum/Dad."""
    return any(map(str.isalpha, text)) and set(heading_scores(text)) <= _PERSONS and not garment_in(text)


def _is_size(text: str) -> bool:
    return "Size" in heading_scores(text) and "Aside" not in heading_scores(text) and not garment_in(_whose(text))


def _is_persons(text: str, others: Mapping[str, int]) -> bool:
    meanings = set(heading_scores(_BRACKETS.sub("", text)))
    return (bool(meanings & {*NAMES}) and meanings <= _PERSONS) or (not meanings and _whose(text) in others)


def _named(text: str) -> str:
    """The heading of a person's name, said to be one: Plus one; Mom, who is someone else elsewhere."""
    text = _BRACKETS.sub("", text)
    scores = heading_scores(text)
    return "Who" if scores and not {*NAMES} & set(scores) else text if scores else f"{text} name"


def _whose(text: str) -> str:
    """The words of a heading that say whose name or size it is of: partner, of `Partner's T-shirt size`."""
    words = re.findall(r"[^\W\d_]+", _BRACKETS.sub("", text).casefold())
    return " ".join(word for word in words if word not in _SAYS_NOTHING)


def _with_shared(titles: Titles, parts: tuple[Titles, ...]) -> tuple[NumberedPart, ...]:
    shared = {column: text for column, text in titles.items() if not any(column in own for own in parts)}
    return tuple(NumberedPart({**shared, **own}) for own in parts)


_WAYS: tuple[Callable[[Titles], tuple[NumberedPart, ...]], ...] = (
    *(_by_number, _by_garment, _by_pairs, _by_repeating, _by_person),
)
