"""The rules of published rulebooks for player numbers: which are legal, and how large they must be."""

import re
from dataclasses import dataclass
from functools import cache

from xlbatch.trade.tables import table, words
from xlbatch.units import parse_length

_RANGE = re.compile(r"(\d+)-(\d+)")
_NUMERALS = re.compile(r"1 to (\d) numerals")


@dataclass(frozen=True)
class NumberRule:
    """One line of number_rules.csv. Lengths in mm, None where the book says nothing."""

    name: str
    edition: str
    legal: tuple[str, ...]  # `0`, `00`, `1-5`, `1 to 4 numerals`; empty: any
    not_together: tuple[str, ...]
    front: float | None
    back: float | None
    stroke: float | None

    def allows(self, number: str) -> bool:
        """Whether a number, as typed, is legal; `07` is not 7."""
        return not self.legal or any(_is_one_of(number, part) for part in self.legal)


def _is_one_of(number: str, legal: str) -> bool:
    if ends := _RANGE.fullmatch(legal):
        return number.isdecimal() and str(int(number)) == number and int(ends[1]) <= int(number) <= int(ends[2])
    if numerals := _NUMERALS.fullmatch(legal):
        return number.isdecimal() and len(number) <= int(numerals[1])
    return number == legal


@cache
def number_rules() -> tuple[NumberRule, ...]:
    """All rules, in table order."""
    return tuple(
        NumberRule(
            name=line["Rule"],
            edition=line["Edition"],
            legal=words(line["Legal numbers"]),
            not_together=words(line["Not together"]),
            front=parse_length(line["Least height front"], "in"),
            back=parse_length(line["Least height back"], "in"),
            stroke=parse_length(line["Least stroke"], "in"),
        )
        for line in table("number_rules")
    )


def number_rule(name: str) -> NumberRule | None:
    """The rule of that name (upper or lower case alike), or None."""
    return next((rule for rule in number_rules() if rule.name.casefold() == name.strip().casefold()), None)
