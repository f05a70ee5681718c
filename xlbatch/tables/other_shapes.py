"""Turns lists of other shapes into rows: names under size headings, several people in a cell, tallies, a chat."""

import re
from collections.abc import Callable, Iterator, Mapping
from itertools import islice

from xlbatch.files.raw import Orientation, Raw, RawSheet
from xlbatch.tables.cells import shown_value
from xlbatch.tables.chats import chat, name_over_message
from xlbatch.tables.contents import kind_of_text
from xlbatch.tables.list_shape import ListShape, cells_of, left_over, made_shape, texts_of
from xlbatch.tables.size_columns import pieces
from xlbatch.tables.sizes import read_size, sizes_in, wearer

_FEWEST = 2  # people, sizes or tallies; one alone may be anything
_MOSTLY, _HALF = 0.7, 0.5  # of the cells
_PEOPLE_APART = re.compile(r"[,;\n]+")
_AND = re.compile(r"\s+(?:and|&|\+)\s+", re.IGNORECASE)
_NAME_AND_SIZE = re.compile(r"\s*(?:[-–—:=]\s|\s[-–—=]|:|\()\s*")
_TALLY = re.compile(r"(.+?)\s*(?:[:=x×]|[-–—]|\s)\s*(\d{1,4})\s*(?:pcs|pieces|shirts?)?\.?", re.IGNORECASE)
_TALLY_FIRST = re.compile(r"(\d{1,3})\s*(?:[x×:]|[-–—])?\s+(.+?)\.?", re.IGNORECASE)
_PARTS_OF_A_CELL = 50
_LONGEST_SIZE = 3  # words


def other_shape(sheet: RawSheet) -> ListShape | None:
    """The list in a sheet that has no row a person, or None where it is none of these shapes."""
    shapes: tuple[Callable[[RawSheet], ListShape | None], ...] = (
        *(chat, name_over_message, _size_grid, _tallies, _under_sizes, _below_sizes, after_sizes, several_in_a_cell),
    )
    return next((shape for read in shapes if (shape := read(sheet))), None)


def _size_grid(sheet: RawSheet) -> ListShape | None:
    """Counts of sizes, a row a size, a column for each kind of wearer: `Youth`, `Adult` over Small, Medium, Large."""
    for top, cells in islice(sheet.rows.items(), 10):
        whose = {column: whom for column, cell in cells.items() if (whom := wearer(shown_value(cell)))}
        body = {row: below for row, below in sheet.rows.items() if row > top and len(below) > 1}
        first = min(whose, default=1) - 1
        counted = {
            (row, column): [f"{whose[column]} {shown_value(below[first])}", shown_value(below[column])]
            for row, below in body.items()
            for column in whose
            if column in below and first in below and read_size(shown_value(below[first]))
        }
        sizes = {spot: texts for spot, texts in counted.items() if pieces(sheet.rows[spot[0]][spot[1]]) != 0}
        if not sizes or len(whose) < _FEWEST or len({row for row, _ in counted}) < max(_FEWEST, _MOSTLY * len(body)):
            continue
        width = max(whose) + 1
        rows = {row * width + column - 1: texts for (row, column), texts in sizes.items()}
        shape = made_shape(sheet, rows, Orientation(across=width), "Size", "How many")
        read = {*counted, *((row, first) for row, _ in counted), *((top, column) for column in cells)}
        return shape._replace(problems=left_over(sheet, read))
    return None


def _tallies(sheet: RawSheet) -> ListShape | None:
    """`M: 4` in a cell, or M and 4 in two, a row a size."""
    counted = {
        row: tally for row, cells in sheet.rows.items() if (tally := _tally(" ".join(map(shown_value, cells.values()))))
    }
    others = [row for row in sheet.rows if row not in counted]
    outside = [row for row in others if row < min(counted, default=0) or row > max(counted, default=0)]  # title, total
    if len(counted) < max(_FEWEST, _MOSTLY * (len(sheet.rows) - len(outside[:2]))):
        return None
    shape = made_shape(
        sheet, counted, Orientation(only=min(min(cells) for cells in sheet.rows.values())), "Size", "How many"
    )
    return shape._replace(problems=left_over(sheet, cells_of(sheet, counted)))


def _tally(text: str) -> list[str]:
    if (match := _TALLY.fullmatch(text.strip())) and read_size(match[1]):
        return [match[1], match[2]]
    match = _TALLY_FIRST.fullmatch(text.strip())  # 5 Medium
    return [match[2], match[1]] if match and read_size(match[2]) else []


def _under_sizes(sheet: RawSheet) -> ListShape | None:
    """Names listed under size headings."""
    for top, cells in islice(sheet.rows.items(), 10):
        sizes = {column: size for column, cell in cells.items() if (size := read_size(shown_value(cell)))}
        below = [(row, column, text) for row, column, text in texts_of(sheet) if row > top and column in sizes]
        named = [spot for spot in below if kind_of_text(spot[2]) in ("name", "words")]
        if len(sizes) == len(cells) >= _FEWEST and len(named) >= max(_FEWEST, _MOSTLY * len(below)):
            width = max(sizes) + 1
            people = {row * width + column - 1: [text, sizes[column]] for row, column, text in named}
            shape = made_shape(sheet, people, Orientation(across=width), "Who", "Size", code="list-under-sizes")
            read = {(row, column) for row, column, _ in named} | {(top, column) for column in sizes}
            return shape._replace(problems=shape.problems + left_over(sheet, frozenset(read)))
    return None


def _below_sizes(sheet: RawSheet) -> ListShape | None:
    """One column of sizes, each with names below it."""
    size, people, read = "", dict[int, list[str]](), set[tuple[int, int]]()
    for row, column, text in texts_of(sheet):
        if title := read_size(re.sub(r"\(\d+\)|:", " ", text)):
            size = title
        elif size and kind_of_text(text) in ("name", "words"):
            people[row] = [text, size]
        else:
            continue
        read.add((row, column))
    sizes = {size for _, size in people.values()}
    if len(people) < max(_FEWEST, len(sizes)) or len(read) < _MOSTLY * len(list(texts_of(sheet))) or not sizes:
        return None
    if any(len(cells) > 1 for cells in sheet.rows.values()):
        return None
    only = Orientation(only=min(column for _, column in read))
    shape = made_shape(sheet, people, only, "Who", "Size", code="list-under-sizes")
    return shape._replace(problems=shape.problems + left_over(sheet, read))


def after_sizes(sheet: RawSheet) -> ListShape | None:
    """A size and the names for it: `M: Anna, Ben` in one cell, or M in one and the names in those beside it."""
    people: dict[int, list[str]] = {}
    rows = [row for row, cells in sheet.rows.items() if len(size_and_names(cells)) > 1]
    several = any(len(size_and_names(sheet.rows[row])) > 1 + _FEWEST for row in rows)  # two may be `Last, First`
    once = len({size_and_names(sheet.rows[row])[0] for row in rows}) == len(rows)
    if len(rows) < max(_FEWEST, _MOSTLY * len(sheet.rows)) or not (several and once):
        return None
    for row in rows:
        size, *names = size_and_names(sheet.rows[row])
        people |= {row * _PARTS_OF_A_CELL + column: [name, size] for column, name in enumerate(names)}
    orientation = Orientation(across=_PARTS_OF_A_CELL, parts=_PARTS_OF_A_CELL)
    shape = made_shape(sheet, people, orientation, "Who", "Size", code="list-under-sizes")
    return shape._replace(problems=shape.problems + left_over(sheet, cells_of(sheet, rows)))


def size_and_names(cells: Mapping[int, Raw]) -> list[str]:
    """The size a row begins with, and the names after it; nothing where it is no such row."""
    first, *others = [shown_value(cells[column]) for column in sorted(cells)]
    before, _, behind = first.partition(":") if ":" in first else (first, "", "")
    parts = [part.strip() for text in (behind, *others) for part in _each_of(text) if part.strip()]
    are_names = 0 < len(parts) <= _PARTS_OF_A_CELL and all(kind_of_text(part) in ("name", "words") for part in parts)
    return [before.strip(), *parts] if are_names and read_size(before) else []


def _each_of(text: str) -> Iterator[str]:
    """The people of a text, whole names with an and between them too."""
    for part in _PEOPLE_APART.split(text):
        names = _AND.split(part.strip())
        yield from names if all(" " in name for name in names) else (part,)


def several_in_a_cell(sheet: RawSheet) -> ListShape | None:
    """`Anna - M, Ben - L` in the cells of one column; what alone stands beside them is their group."""
    width = max((max(cells) for cells in sheet.rows.values()), default=0) * _PARTS_OF_A_CELL + 1
    best: dict[tuple[int, int], list[list[str]]] = {}
    for only in sorted({column for _, column, _ in texts_of(sheet)}):
        parts = {(row, column): _people_in(text) for row, column, text in texts_of(sheet) if column == only}
        several = {spot: people for spot, people in parts.items() if people}
        if len(several) >= _HALF * len(parts) and len(several) > len(best):
            best = several
    people = {
        row * width + (column - 1) * _PARTS_OF_A_CELL + number: [*person, *_beside(sheet, row, column).values()]
        for (row, column), persons in best.items()
        for number, person in enumerate(persons)
    }
    if len(people) < _FEWEST or len(people) == len(best):  # a person a cell is a plain list
        return None
    orientation = Orientation(across=width, parts=_PARTS_OF_A_CELL)
    shape = made_shape(sheet, people, orientation, "Who", "Size", "Group", code="list-in-cells")
    read = set(best) | {(row, place) for row, column in best for place in _beside(sheet, row, column)}
    top = max((row for row in sheet.rows if row < min(best)[0]), default=0)
    if not any(sizes_in(text) for row, _, text in texts_of(sheet) if row == top):  # their headings
        read |= {(top, column) for _, column in read}
    return shape._replace(problems=shape.problems + left_over(sheet, read))


def _people_in(text: str) -> list[list[str]]:
    """The people in a cell, each a name and a size, where nearly all of it is people."""
    before, _, behind = text.partition(": ")  # Parents: Ben XL, Claire M
    text = behind if not sizes_in(before) and len(_PEOPLE_APART.split(behind)) > 1 else text
    parts = [part for part in _PEOPLE_APART.split(text) if part.strip()]
    people = [_person(part) or [part.strip(), ""] for part in parts]  # one without a size is asked about
    sized = sum(bool(size) for _, size in people)
    return people if _MOSTLY * len(people) <= sized and len(people) <= _PARTS_OF_A_CELL else []


def _beside(sheet: RawSheet, row: int, column: int) -> Mapping[int, str]:
    """The first other cell in a row that may be a name, by its column."""
    texts = {place: shown_value(cell) for place, cell in sheet.rows[row].items() if place != column}
    return dict([(place, text) for place, text in texts.items() if kind_of_text(text) in ("name", "words")][:1])


def _person(part: str) -> list[str]:
    """A name and a size, or nothing."""
    sides = [side.strip(" )") for side in _NAME_AND_SIZE.split(part.strip(), maxsplit=1)]
    if len(sides) == 1:
        words = part.split()
        ends = (many for many in range(min(_LONGEST_SIZE, len(words) - 1), 0, -1) if read_size(" ".join(words[-many:])))
        many = next(ends, 0)
        sides = [" ".join(words[:-many]), " ".join(words[-many:])] if many else []
    is_person = len(sides) == 2 and read_size(sides[1]) and not read_size(sides[0]) and any(map(str.isalpha, sides[0]))
    return sides if is_person else []
