"""Takes a list apart whose lines stand each in one cell, as in a message: `Maria - M - blue`, `1. Jo (youth L)`."""

import re
from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from xlbatch.files.raw import Orientation, Raw, RawSheet
from xlbatch.problems import Problem, problem
from xlbatch.tables.cells import shown_value
from xlbatch.tables.sizes import read_size

_FEWEST = 2  # lines with a size; one alone may be anything
_HALF = 0.5  # of the lines; the others are greetings
_SOME, _THIRD = 3, 0.35  # lines with a size within a longer letter
_BULLET = re.compile(r"^\s*(?:[-–—*•·>]|\d+\s*[.)])\s+")
_SIGNS = tuple(
    re.compile(rf"\s*{sign}\s*")
    for sign in (r"\t", r"\|", ";", "[:=]", r"(?<=\s)[-–—](?=\s)", ",", r"(?<=\s)/(?=\s)", r"[()]")
)
_LONGEST_SIZE = 3  # words, at the end of a line without signs

Split = Callable[[str], Sequence[str]]


def lines_apart(sheet: RawSheet) -> tuple[RawSheet, tuple[Problem, ...]] | None:
    """The sheet with its lines in columns, and a problem for each line without a size; None where they are no list."""
    alone = Counter(min(cells) for cells in sheet.rows.values() if len(cells) == 1)
    only = max(alone, key=lambda column: alone[column], default=0)
    lines = {row: _BULLET.sub("", _text(cells)) for row, cells in sheet.rows.items() if set(cells) == {only}}
    splits: list[Split] = [sign.split for sign in _SIGNS]
    for split in (*splits, _size_last, _size_first):
        parts = {row: _parts(split, line) for row, line in lines.items()}
        people = sum(map(_is_person, parts.values()))
        if people >= max(_FEWEST, _HALF * len(sheet.rows)) or people >= max(_SOME, _THIRD * len(sheet.rows)):
            others = {row: _apart(lines[row], splits) for row in parts if not _is_person(parts[row])}
            parts |= {row: apart for row, apart in others.items() if apart}
            return _in_columns(sheet, only, parts)
    return None


def _parts(split: Split, line: str) -> list[str]:
    return [part.strip("- ") for part in split(line) if part.strip("- ")]


def _apart(line: str, splits: Sequence[Split]) -> list[str]:
    """A line that the others' sign does not part into a name and a size, parted by another; [] where none does."""
    return next((parts for split in (*splits, _size_last, _size_first) if _is_person(parts := _parts(split, line))), [])


def _is_person(parts: Sequence[str]) -> bool:
    sizes = sum(bool(read_size(part)) for part in parts)
    return 0 < sizes < len(parts)


def _size_last(line: str) -> Sequence[str]:
    """A line cut before the size it ends with."""
    words = line.rstrip(".!").split()
    for many in range(min(_LONGEST_SIZE, len(words) - 1), 0, -1):
        if read_size(" ".join(words[-many:])):
            return " ".join(words[:-many]), " ".join(words[-many:])
    return (line,)


def _size_first(line: str) -> Sequence[str]:
    """A line cut behind the size it begins with."""
    words = line.split()
    for many in range(min(_LONGEST_SIZE, len(words) - 1), 0, -1):
        if read_size(" ".join(words[:many])):
            return " ".join(words[many:]), " ".join(words[:many])
    return (line,)


def _in_columns(sheet: RawSheet, only: int, parts: dict[int, list[str]]) -> tuple[RawSheet, tuple[Problem, ...]]:
    rows = {row: dict(enumerate(map(Raw, texts), 1)) for row, texts in parts.items() if len(texts) > 1}
    left = {row: cells for row, cells in sheet.rows.items() if row not in rows}
    problems = (problem("line-not-read", sheet.where(min(cells), row), _text(cells)) for row, cells in left.items())
    return replace(sheet, rows=rows, orientation=Orientation(only=only)), tuple(problems)


def _text(cells: Mapping[int, Raw]) -> str:
    return shown_value(cells[min(cells)])
