"""Finds the columns of a list with several people a row: `Child 1 name`, `Child 1 size`, `Child 2 name` …"""

import re
from collections.abc import Mapping

Titles = Mapping[int, str]
_NUMBER = re.compile(r"\s*#?\b([1-9])\b\s*")


def people_of_a_row(titles: Titles) -> tuple[Titles, ...]:
    """Each person's headings without the number; none where not two have the same first one."""
    found: dict[int, dict[int, str]] = {}
    for at, text in sorted(titles.items()):
        number, rest = _number(text)
        if number:
            found.setdefault(number, {})[at] = rest
    people = tuple(each for each in found.values() if len(each) > 1)
    begins = {next(iter(each.values())).casefold() for each in people}
    return people if len(people) > 1 and len(begins) == 1 else ()


def _number(text: str) -> tuple[int, str]:
    """The one number in a heading, 0 where there is none, and the heading without it."""
    found = _NUMBER.findall(text)
    return (int(found[0]), _NUMBER.sub(" ", text).strip()) if len(found) == 1 else (0, text)
