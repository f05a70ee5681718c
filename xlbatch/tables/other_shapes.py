"""Turns lists of other shapes into rows: names under size headings, several people in a cell, tallies, a chat."""

import re
from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import replace
from itertools import islice, takewhile
from typing import NamedTuple

from xlbatch.files.chat import sender_and_message
from xlbatch.files.raw import Orientation, Raw, RawSheet
from xlbatch.problems import Problem, problem
from xlbatch.tables.cells import shown_value
from xlbatch.tables.contents import kind_of_text
from xlbatch.tables.heading_rows import Headings
from xlbatch.tables.headings import Match
from xlbatch.tables.size_cell import read_size_cell
from xlbatch.tables.sizes import read_size, sizes_in

_FEWEST = 2  # people, sizes or tallies; one alone may be anything
_MOSTLY, _HALF = 0.7, 0.5  # of the cells
_PEOPLE_APART = re.compile(r"[,;\n]+")
_NAME_AND_SIZE = re.compile(r"\s*(?:[-–—:=]\s|\s[-–—=]|:|\()\s*")
_TALLY = re.compile(r"(.+?)\s*(?:[:=x×]|[-–—]|\s)\s*(\d{1,4})\s*(?:pcs|pieces|shirts?)?\.?", re.IGNORECASE)
_TALLY_FIRST = re.compile(r"(\d{1,3})\s*(?:[x×:]|[-–—])?\s+(.+?)\.?", re.IGNORECASE)
_SAID = re.compile(r"(?P<sender>[^\W\d][^:]{0,40}):\s+(?P<message>\S.*)")
_PARTS_OF_A_CELL = 50


class ListShape(NamedTuple):
    """A list as rows, what its columns are, and what to ask."""

    sheet: RawSheet
    headings: Headings
    problems: tuple[Problem, ...]


def other_shape(sheet: RawSheet) -> ListShape | None:
    """The list in a sheet that has no row a person, or None where it is none of these shapes."""
    shapes: tuple[Callable[[RawSheet], ListShape | None], ...] = (
        *(_chat, _name_over_size, _tallies, _under_sizes, _below_sizes, after_sizes, several_in_a_cell),
    )
    return next((shape for read in shapes if (shape := read(sheet))), None)


def _shape(
    sheet: RawSheet, rows: Mapping[int, list[str]], orientation: Orientation, *meanings: str, code: str = ""
) -> ListShape:
    cells = {row: {column: Raw(text) for column, text in enumerate(texts, 1) if text} for row, texts in rows.items()}
    matches = {column: Match(meaning) for column, meaning in enumerate(meanings, 1)}
    made = replace(sheet, rows=cells, orientation=orientation)
    first = min(rows)
    doubtful = tuple(rows) if code == "list-chat" else ()  # who wrote for whom only a reader can tell
    asked = (problem(code, made.where(1, first), shown_value(cells[first][1]), rows=doubtful),) if code else ()
    return ListShape(made, Headings(0, {}, matches, rows=0, fixed=True), asked)


def _texts(sheet: RawSheet) -> Iterator[tuple[int, int, str]]:
    """Row, column and text of each cell."""
    for row, cells in sheet.rows.items():
        for column, cell in cells.items():
            yield row, column, shown_value(cell)


def _left(sheet: RawSheet, read: Collection[tuple[int, int]]) -> tuple[Problem, ...]:
    """A problem for each cell of which nothing was read."""
    texts = ((row, column, text) for row, column, text in _texts(sheet) if (row, column) not in read)
    return tuple(problem("line-not-read", sheet.where(column, row), text) for row, column, text in texts)


def _cells_of(sheet: RawSheet, rows: Collection[int]) -> frozenset[tuple[int, int]]:
    return frozenset((row, column) for row, column, _ in _texts(sheet) if row in rows)


def _chat(sheet: RawSheet) -> ListShape | None:
    """Messages with a sender, most with a time: each sender with the one size in the message."""
    lines = {row: " ".join(map(shown_value, cells.values())) for row, cells in sheet.rows.items()}
    messages = {row: parted for row, line in lines.items() if (parted := sender_and_message(line))}
    if len(messages) < max(_FEWEST, _MOSTLY * len(lines)):
        messages = {row: parted for row, line in lines.items() if (parted := _said_by(line))}
        are_sizes = all(read_size_cell(message).size for _, message in messages.values())
        if len(messages) < max(_FEWEST, _MOSTLY * len(lines)) or are_sizes:
            return None
    people = {
        row: [_of_whom(message) or sender, sizes[0], message]
        for row, (sender, message) in messages.items()
        if len(sizes := sizes_in(message)) == 1
    }
    if not people:
        return None
    shape = _shape(sheet, people, Orientation(only=1), "Who", "Size", "Message", code="list-chat")
    return shape._replace(problems=shape.problems + _left(sheet, _cells_of(sheet, people)))


def _of_whom(message: str) -> str:
    """Whose size a message gives where it names someone before it: `Ned - Youth M`."""
    parts = _NAME_AND_SIZE.split(message, maxsplit=1)
    words = parts[0].split() if len(parts) > 1 and len(sizes_in(parts[1])) == 1 else []
    name = " ".join(takewhile(lambda word: word[0].isupper() and word.isalpha(), reversed(words)))
    return " ".join(reversed(name.split()))


def _name_over_size(sheet: RawSheet) -> ListShape | None:
    """A chat copied without its times, the sender in one line and the message with one size in the next."""
    lines = [(row, shown_value(*cells.values())) for row, cells in sheet.rows.items() if len(cells) == 1]
    pairs = list(zip(lines[::2], lines[1::2], strict=False))
    people = {
        row: [sender, sizes[0], message]
        for (row, sender), (_, message) in pairs
        if kind_of_text(sender) == "name" and len(sizes := sizes_in(message)) == 1
    }
    if not len(people) == len(pairs) >= _FEWEST or len(lines) != len(sheet.rows) or len(lines) % 2:
        return None
    return _shape(sheet, people, Orientation(only=1), "Who", "Size", "Message", code="list-chat")


def _said_by(line: str) -> tuple[str, str] | None:
    """Who says what in a line of a chat copied without its times: `Mira: M for me`."""
    match = _SAID.fullmatch(line.strip())
    is_name = match and kind_of_text(match["sender"]) in ("name", "words")
    return (match["sender"], match["message"]) if match and is_name else None


def _tallies(sheet: RawSheet) -> ListShape | None:
    """`M: 4` in a cell, or M and 4 in two, a row a size."""
    counted = {
        row: tally for row, cells in sheet.rows.items() if (tally := _tally(" ".join(map(shown_value, cells.values()))))
    }
    others = [row for row in sheet.rows if row not in counted]
    outside = [row for row in others if row < min(counted, default=0) or row > max(counted, default=0)]  # title, total
    if len(counted) < max(_FEWEST, _MOSTLY * (len(sheet.rows) - len(outside[:2]))):
        return None
    shape = _shape(
        sheet, counted, Orientation(only=min(min(cells) for cells in sheet.rows.values())), "Size", "How many"
    )
    return shape._replace(problems=_left(sheet, _cells_of(sheet, counted)))


def _tally(text: str) -> list[str]:
    if (match := _TALLY.fullmatch(text.strip())) and read_size(match[1]):
        return [match[1], match[2]]
    match = _TALLY_FIRST.fullmatch(text.strip())  # 5 Medium
    return [match[2], match[1]] if match and read_size(match[2]) else []


def _under_sizes(sheet: RawSheet) -> ListShape | None:
    """Names listed under size headings."""
    for top, cells in islice(sheet.rows.items(), 10):
        sizes = {column: size for column, cell in cells.items() if (size := read_size(shown_value(cell)))}
        below = [(row, column, text) for row, column, text in _texts(sheet) if row > top and column in sizes]
        named = [spot for spot in below if kind_of_text(spot[2]) in ("name", "words")]
        if len(sizes) == len(cells) >= _FEWEST and len(named) >= max(_FEWEST, _MOSTLY * len(below)):
            width = max(sizes) + 1
            people = {row * width + column - 1: [text, sizes[column]] for row, column, text in named}
            shape = _shape(sheet, people, Orientation(across=width), "Who", "Size", code="list-under-sizes")
            read = {(row, column) for row, column, _ in named} | {(top, column) for column in sizes}
            return shape._replace(problems=shape.problems + _left(sheet, frozenset(read)))
    return None


def _below_sizes(sheet: RawSheet) -> ListShape | None:
    """One column of sizes, each with names below it."""
    size, people, read = "", dict[int, list[str]](), set[tuple[int, int]]()
    for row, column, text in _texts(sheet):
        if title := read_size(re.sub(r"\(\d+\)|:", " ", text)):
            size = title
        elif size and kind_of_text(text) in ("name", "words"):
            people[row] = [text, size]
        else:
            continue
        read.add((row, column))
    sizes = {size for _, size in people.values()}
    if len(people) < max(_FEWEST, len(sizes)) or len(read) < _MOSTLY * len(list(_texts(sheet))) or not sizes:
        return None
    if any(len(cells) > 1 for cells in sheet.rows.values()):
        return None
    only = Orientation(only=min(column for _, column in read))
    shape = _shape(sheet, people, only, "Who", "Size", code="list-under-sizes")
    return shape._replace(problems=shape.problems + _left(sheet, read))


def after_sizes(sheet: RawSheet) -> ListShape | None:
    """A size and the names for it: `M: Anna, Ben` in one cell, or M in one and the names in those beside it."""
    people: dict[int, list[str]] = {}
    rows = [row for row, cells in sheet.rows.items() if len(_size_and_names(cells)) > 1]
    several = any(len(_size_and_names(sheet.rows[row])) > 1 + _FEWEST for row in rows)  # two may be `Last, First`
    once = len({_size_and_names(sheet.rows[row])[0] for row in rows}) == len(rows)
    if len(rows) < max(_FEWEST, _MOSTLY * len(sheet.rows)) or not (several and once):
        return None
    for row in rows:
        size, *names = _size_and_names(sheet.rows[row])
        people |= {
            row * _PARTS_OF_A_CELL + column: [name, size] for column, name in enumerate(names[:_PARTS_OF_A_CELL])
        }
    orientation = Orientation(across=_PARTS_OF_A_CELL, parts=_PARTS_OF_A_CELL)
    shape = _shape(sheet, people, orientation, "Who", "Size", code="list-under-sizes")
    return shape._replace(problems=shape.problems + _left(sheet, _cells_of(sheet, rows)))


def _size_and_names(cells: Mapping[int, Raw]) -> list[str]:
    """The size a row begins with, and the names after it; nothing where it is no such row."""
    first, *others = [shown_value(cells[column]) for column in sorted(cells)]
    before, _, behind = first.partition(":") if ":" in first else (first, "", "")
    parts = [part.strip() for text in (behind, *others) for part in _PEOPLE_APART.split(text) if part.strip()]
    are_names = parts and all(kind_of_text(part) in ("name", "words") for part in parts)
    return [before.strip(), *parts] if are_names and read_size(before) else []


def several_in_a_cell(sheet: RawSheet) -> ListShape | None:
    """`Anna - M, Ben - L` in the cells of one column; what alone stands beside them is their group."""
    width = max((max(cells) for cells in sheet.rows.values()), default=0) * _PARTS_OF_A_CELL + 1
    best: dict[tuple[int, int], list[list[str]]] = {}
    for only in sorted({column for _, column, _ in _texts(sheet)}):
        parts = {(row, column): _people_in(text) for row, column, text in _texts(sheet) if column == only}
        several = {spot: people for spot, people in parts.items() if people}
        if len(several) >= _HALF * len(parts) and len(several) > len(best):
            best = several
    people = {
        row * width + (column - 1) * _PARTS_OF_A_CELL + number: [*person, *_beside(sheet, row, column)]
        for (row, column), persons in best.items()
        for number, person in enumerate(persons)
    }
    if len(people) < _FEWEST or len(people) == len(best):  # a person a cell is a plain list
        return None
    orientation = Orientation(across=width, parts=_PARTS_OF_A_CELL)
    shape = _shape(sheet, people, orientation, "Who", "Size", "Group", code="list-in-cells")
    read = set(best) | {
        (row, place) for row, column in best if _beside(sheet, row, column) for place in sheet.rows[row]
    }
    return shape._replace(problems=shape.problems + _left(sheet, read))


def _people_in(text: str) -> list[list[str]]:
    """The people in a cell, each a name and a size, where all of it is people."""
    parts = [part for part in _PEOPLE_APART.split(text) if part.strip()][:_PARTS_OF_A_CELL]
    people = [person for part in parts if (person := _person(part))]
    return people if len(people) >= _MOSTLY * len(parts) else []


def _beside(sheet: RawSheet, row: int, column: int) -> list[str]:
    """The one other text in a row."""
    others = [shown_value(cell) for place, cell in sheet.rows[row].items() if place != column]
    return others if len(others) == 1 and kind_of_text(others[0]) in ("name", "words") else []


def _person(part: str) -> list[str]:
    """A name and a size, or nothing."""
    sides = [side.strip(" )") for side in _NAME_AND_SIZE.split(part.strip(), maxsplit=1)]
    if len(sides) == 1:
        words = part.split()
        sides = [" ".join(words[:-1]), words[-1]] if len(words) > 1 else []
    is_person = len(sides) == 2 and read_size(sides[1]) and not read_size(sides[0]) and sides[0]
    return sides if is_person else []
