"""The rule about names in one group that are spelled almost alike."""

import unicodedata
from collections import defaultdict
from collections.abc import Iterable, Iterator

from rapidfuzz.distance import OSA

from xlbatch.check.garment import Garment
from xlbatch.job.job import Job
from xlbatch.problems import Problem, problem

SHORTEST = 5  # letters; Anna and Anne, Jan and Jana are two people


def names_spelled_one_way(_job: Job, garments: tuple[Garment, ...]) -> Iterator[Problem]:
    """No whole name, and no family name inside a group, is one letter or only accents off another."""
    groups: dict[str, dict[str, Garment]] = defaultdict(dict)
    for garment in garments:
        groups[garment.group.casefold()].setdefault(garment.who.casefold(), garment)
    for group, people in groups.items():
        pairs = dict(_one_off(people))
        families: dict[str, str] = {}
        for name in people if group else ():
            families.setdefault(name.split()[-1] if name.split()[1:] else "", name)
        for family, other in _one_off(families):
            pairs.setdefault(families[family], families[other])
        for name, other in pairs.items():
            row, first = people[name].row, people[other].row
            facts = {"other": first.who, "place": f"row {first.source.sheet_row}"}
            yield problem("name-alike", row.source.at("Who"), row.who, rows=(row.source.row,), **facts)


def _one_off(names: Iterable[str]) -> Iterator[tuple[str, str]]:
    """Each name that is one slip from an earlier one, with that one: names with a letter left out meet in a table."""
    seen: dict[str, str] = {}
    for name in names:
        plain = _without_accents(name)
        shapes = {plain, *(plain[:place] + plain[place + 1 :] for place in range(len(plain)) if len(plain) >= SHORTEST)}
        others = dict.fromkeys(seen[shape] for shape in sorted(shapes) if shape in seen)
        near = next((other for other in others if _is_one_slip(plain, _without_accents(other))), None)
        if near:
            yield name, near
        for shape in shapes:
            seen.setdefault(shape, name)


def _is_one_slip(word: str, other: str) -> bool:
    """Whether two names without their accents are equal, or differ as a slip of the hand makes them."""
    if word == other:
        return True
    return min(len(word), len(other)) >= SHORTEST and OSA.distance(word, other) == 1 and not _ends(word, other)


def _ends(word: str, other: str) -> bool:
    """Whether two names differ by a word's last letter, as a woman's and a man's do in many languages."""
    return any(
        a != b and (a[:-1] in (b, b[:-1]) or b[:-1] == a) for a, b in zip(word.split(), other.split(), strict=False)
    )


def _without_accents(name: str) -> str:
    if name.isascii():
        return name
    return "".join(letter for letter in unicodedata.normalize("NFD", name) if not unicodedata.combining(letter))
