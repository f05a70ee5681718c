"""Rules about the text that will be printed: filled in, a name alone, in letters of one alphabet, capitals as usual.

None of them changes a text; each asks."""

import re
import unicodedata
from collections.abc import Iterable, Iterator, Sequence
from functools import cache

from xlbatch.check.garment import Garment
from xlbatch.check.placeholders import stands_for
from xlbatch.job.job import Job
from xlbatch.problems import Problem, Where, problem
from xlbatch.trade.name_parts import whole_name, without_title
from xlbatch.trade.tables import table

_WORD = re.compile(r"[^\W\d_]+")
_MORE = re.compile(r"[()\[\]{}<>,;:/\\|@#*_+=0-9]|\s[-–—]\s")
_BRACKETS = re.compile(r"\([^()]*\)|\[[^\[\]]*\]")
_MIXING = ("LATIN", "CYRILLIC", "GREEK")  # the alphabets with letters of the same look
_SHORTEST_SHOUT = 4  # letters; JO or IAN in capitals may be initials
_FEWEST_NAMES = 4  # to tell how a list writes its names
_FEW = 0.25  # of a list's names


def name_is_filled_in(_job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """A name to be printed is no `TBD`; written in both Who and Print name it is taken for a name."""
    for garment in named(garments):
        means = "" if _is_of_the_name(garment) else stands_for(garment.print_name)
        if means:
            yield _about("name-open" if means == "open" else "name-or-none", garment)


def _is_of_the_name(garment: Garment) -> bool:
    """Whether what is printed was written twice, or is a part of the name beside it: ASK of Ana Ask."""
    printed, who = garment.row.print_name, garment.row.who
    within = 0 < len(printed) < len(who) and printed.casefold() in who.casefold().split()
    return printed == who or (within and not stands_for(who))


def letters_of_one_alphabet(_job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """No word mixes Latin, Cyrillic and Greek letters, as a word pasted from elsewhere may."""
    for garment in named(garments):
        strays = "".join(
            dict.fromkeys(letter for word in _WORD.findall(garment.print_name) for letter in _strays(word))
        )
        if strays:
            spelled = ", ".join(f"{letter} ({unicodedata.name(letter).title()})" for letter in strays)
            yield _about("letters-mixed", garment, _in_latin(garment.print_name), letters=spelled)


def _strays(word: str) -> list[str]:
    """The letters of the alphabet a word has fewer of; none where it has only one."""
    alphabets: dict[str, list[str]] = {}
    for letter in word:
        alphabet = unicodedata.name(letter, "").partition(" ")[0]
        if alphabet in _MIXING:
            alphabets.setdefault(alphabet, []).append(letter)
    return min(alphabets.values(), key=len) if len(alphabets) > 1 else []


@cache
def _look() -> dict[int, str]:
    return str.maketrans({line["Letter"]: line["Looks like"] for line in table("lookalikes")})


def _in_latin(text: str) -> str:
    """The text in Latin letters where each stray has one that looks the same, else ""."""
    latin = text.translate(_look())
    return latin if not any(_strays(word) for word in _WORD.findall(latin)) else ""


def capitals_as_usual(_job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """No name is all in small letters or has its capitals turned round; none alone in the list is all in capitals."""
    them = list(named(garments))
    names = {garment.print_name for garment in them}
    shouting = sum(_shouts(name) for name in names)
    alone = len(names) >= _FEWEST_NAMES and shouting <= _FEW * len(names)
    small = [garment for garment in them if _is_small(garment.print_name)]
    if _is_the_lists_way(small, them):
        yield problem("list-small-letters", name_cell(small[0]), small[0].print_name)
        them = [garment for garment in them if garment not in small]
    for garment in them:
        name = garment.print_name
        if _is_small(name) or _is_turned_round(name) or (alone and not garment.row.print_name and _shouts(name)):
            yield _about("capitals-odd", garment, " ".join(word.capitalize() for word in name.split()))


def name_alone(_job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """No printed name is taken from a Who with a title, remarks in brackets, a comma or digits: those are for the
    list."""
    them = [garment for garment in named(garments) if not garment.row.print_name]
    turned = [garment for garment in them if garment.print_name == whole_name(garment.row.who) != garment.row.who]
    if _is_the_lists_way(turned, them):
        first = turned[0]
        yield problem("list-last-first", name_cell(first), first.row.who, text=first.print_name)
    else:
        yield from (_about("name-turned", garment, text=garment.print_name) for garment in turned)
    them = [garment for garment in them if garment not in turned]
    titled = [garment for garment in them if without_title(garment.print_name) != garment.print_name]
    if _is_the_lists_way(titled, them):
        yield problem("list-with-titles", name_cell(titled[0]), titled[0].print_name)
        them = [garment for garment in them if garment not in titled]
    for garment in them:
        bare = without_title(garment.print_name)
        if bare != garment.print_name and not _MORE.search(garment.print_name):
            yield _about("name-and-more", garment, bare)
        if _MORE.search(garment.print_name):
            yield _about("name-and-more", garment, _the_name_in(garment.print_name))


def _is_the_lists_way(some: Sequence[Garment], them: Sequence[Garment]) -> bool:
    """Whether so many names are written in one way that it is asked about once, not for each."""
    return len(some) > 1 and len(some) > len(them) / 2


def _the_name_in(text: str) -> str:
    """The text less what stands in brackets, its family name last; "" where more than a name is left."""
    parts = [part.strip() for part in _BRACKETS.sub(" ", text).split(",")]
    name = " ".join(" ".join(reversed(parts)).split()) if len(parts) < 3 else ""
    return "" if _MORE.search(name) else name


def _is_small(name: str) -> bool:
    return name.islower() and sum(map(str.isalpha, name)) > 1 and _has_capitals(name)


def _is_turned_round(name: str) -> bool:
    return any(len(word) > 2 and word[0].islower() and word[1:].isupper() for word in _WORD.findall(name))


def _shouts(name: str) -> bool:
    return name.isupper() and sum(map(str.isalpha, name)) >= _SHORTEST_SHOUT and _has_capitals(name)


def _has_capitals(name: str) -> bool:
    """Whether names in its alphabet begin with a capital: not so in Georgian or Cherokee, which have two cases too."""
    return {unicodedata.name(letter, "").partition(" ")[0] for letter in name if letter.isalpha()} <= {
        *_MIXING,
        "ARMENIAN",
    }


def named(garments: Iterable[Garment]) -> Iterator[Garment]:
    """The garments that get a name."""
    return (
        garment
        for garment in garments
        if garment.print_name and any(spec.what == "print name" for spec in garment.to_do)
    )


def _about(code: str, garment: Garment, suggestion: str = "", **facts: str) -> Problem:
    row, rows = garment.row, (garment.row.source.row,)
    typed = row.who if "text" in facts else garment.print_name
    return problem(code, name_cell(garment), typed, suggestion=suggestion, rows=rows, who=row.who, **facts)


def name_cell(garment: Garment) -> Where:
    """The cell a printed name comes from."""
    return garment.row.source.at("Print name" if garment.row.print_name else "Who")
