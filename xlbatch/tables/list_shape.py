"""A list of another shape, made rows of: what its columns are, and what to ask."""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import replace
from typing import NamedTuple

from xlbatch.files.raw import Orientation, Raw, RawSheet
from xlbatch.problems import Problem, problem
from xlbatch.tables.cells import shown_value
from xlbatch.tables.heading_rows import Headings
from xlbatch.tables.headings import Match

_FEW_SHOWN = 3  # texts of a column that was not read


class ListShape(NamedTuple):
    """A list as rows, what its columns are, and what to ask."""

    sheet: RawSheet
    headings: Headings
    problems: tuple[Problem, ...]


def made_shape(
    sheet: RawSheet, rows: Mapping[int, list[str]], orientation: Orientation, *meanings: str, code: str = ""
) -> ListShape:
    cells = {row: {column: Raw(text) for column, text in enumerate(texts, 1) if text} for row, texts in rows.items()}
    matches = {column: Match(meaning) for column, meaning in enumerate(meanings, 1)}
    made = replace(sheet, rows=cells, orientation=orientation)
    first = min(rows)
    doubtful = tuple(rows) if code == "list-chat" else ()  # who wrote for whom only a reader can tell
    asked = (problem(code, made.where(1, first), shown_value(cells[first][1]), rows=doubtful),) if code else ()
    return ListShape(made, Headings(0, {}, matches, rows=0, fixed=True), asked)


def texts_of(sheet: RawSheet) -> Iterator[tuple[int, int, str]]:
    """Row, column and text of each cell."""
    for row, cells in sheet.rows.items():
        for column, cell in cells.items():
            yield row, column, shown_value(cell)


def left_over(sheet: RawSheet, read: Collection[tuple[int, int]]) -> tuple[Problem, ...]:
    """A problem for each line of which nothing was read; where the sheet has columns, for each of these."""
    left: dict[object, list[tuple[int, int, str]]] = {}
    one_column = len({column for _, column, _ in texts_of(sheet)}) == 1
    for row, column, text in texts_of(sheet):
        if (row, column) not in read:
            left.setdefault(row if one_column else (column,), []).append((row, column, text))
    return tuple(
        problem("line-not-read", sheet.where(of[0][1], of[0][0]), " … ".join(text for _, _, text in of[:_FEW_SHOWN]))
        for of in left.values()
    )


def cells_of(sheet: RawSheet, rows: Collection[int]) -> frozenset[tuple[int, int]]:
    return frozenset((row, column) for row, column, _ in texts_of(sheet) if row in rows)
