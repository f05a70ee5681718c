"""Reads the list of people on a sheet: its tables, however the list lies, and what to ask about them."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import chain

from xlbatch.files.raw import RawSheet
from xlbatch.problems import Problem, problem
from xlbatch.tables.bare_list import bare_headings
from xlbatch.tables.cells import shown_value
from xlbatch.tables.column_questions import column_questions
from xlbatch.tables.heading_rows import NAMES, Headings, find_headings
from xlbatch.tables.input_table import Table, made_table
from xlbatch.tables.list_parts import ListPart, list_parts
from xlbatch.tables.list_shape import ListShape
from xlbatch.tables.one_column import lines_apart
from xlbatch.tables.other_shapes import after_sizes, other_shape, several_in_a_cell, size_and_names

MARKS = ("Row complete?",)  # headings of the blank roster's live marks: nobody typed these
_SIZE_AND_NAMES = 2  # columns


def list_tables(sheet: RawSheet) -> tuple[tuple[Table, ...], tuple[Problem, ...]]:
    """The tables of people on a sheet, several where it lies in parts, and what to ask; none where it is none."""
    problems = tuple(_of_the_sheet(sheet))
    sheet = _without_marks(sheet)
    sheet, headings, of_shape = _judged(sheet, find_headings(sheet, "Roster"))
    problems += of_shape
    if "Size" not in headings.known and len(headings.known) < 2:  # one word alone may stand in anyone's row
        return (), problems
    lists = list_parts(sheet, headings)
    problems += lists.problems + tuple(_of_the_columns(sheet, lists.parts))
    tables = tuple(made_table(sheet, "Roster", part) for part in lists.parts)
    return tables, problems + tuple(_of_garments(sheet, tables))


def _of_garments(sheet: RawSheet, tables: Iterable[Table]) -> Iterator[Problem]:
    """What titles and headings said of the garment, each at the cell that says it."""
    for text, garment in dict(chain.from_iterable(map(_garments, tables))).items():
        cells = ((row, column) for row, cells in sheet.rows.items() for column in cells)
        spots = ((row, column) for row, column in cells if shown_value(sheet.rows[row][column]).rstrip(": ") == text)
        row, column = next(spots, (1, 1))
        yield problem("list-garment", sheet.where(column, row), text, garment=garment)


def _garments(table: Table) -> Iterator[tuple[str, str]]:
    """Each text over a table or its sections that names a garment, and the garment."""
    garment, text = table.garment_said
    if garment:
        yield text.rstrip(": "), garment
    for title in dict.fromkeys(table.groups.values()):
        if garment := table.ordered_under(title).get("Garment", ""):
            yield title, garment


def _of_the_sheet(sheet: RawSheet) -> Iterator[Problem]:
    if sheet.orientation.sideways:
        yield problem("list-sideways", sheet.where(1, 1))
    if sheet.encoding:
        yield problem("encoding-judged", sheet.where(1, 1), sheet.encoding)


def _of_the_columns(sheet: RawSheet, parts: tuple[ListPart, ...]) -> Iterator[Problem]:
    """Each question about a column once, though a list lies in several parts with the same headings."""
    asked: set[tuple[str, str]] = set()
    for part in parts:
        for question in column_questions(part.headings, part.rows, sheet.name, sheet.orientation):
            if (question.code, question.found) not in asked:
                asked.add((question.code, question.found))
                yield question
    if parts and parts[0].rows and not any(NAMES & part.headings.known for part in parts):
        headings = parts[0].headings
        yield problem(
            "list-without-names", sheet.where(min(headings.matches, default=1), headings.row or min(parts[0].rows))
        )


def _judged(sheet: RawSheet, headings: Headings) -> tuple[RawSheet, Headings, tuple[Problem, ...]]:
    """The list and its headings, judged by what stands in the cells where the row of headings does not say enough."""
    below = [cells for row, cells in sheet.rows.items() if row > headings.row]
    above = [cells for row, cells in sheet.rows.items() if row < headings.row]
    lone = len(headings.known) == 1 and any(len(cells) > 1 for cells in above)  # one word may stand in anyone's row
    judged = headings.judged(below)
    if shape := _names_in_cells(sheet, judged):
        return shape
    if (
        len(headings.titles) > 1
        and not lone
        and ("Size" in judged.known)
        and (len(judged.known) > 1 or NAMES & judged.known)
    ):
        return sheet, headings if len(headings.known) > 1 else judged, ()
    if bare := bare_headings(sheet):
        beside = after_sizes(sheet) if _are_people_in_rows(sheet, len(bare.matches)) else None
        return beside or (sheet, bare, ())
    if shape := other_shape(sheet):
        return shape
    if (lines := lines_apart(sheet)) is None:
        return sheet, headings, ()
    apart, left = lines
    named = find_headings(apart, "Roster")
    bare = named if "Size" in named.known else bare_headings(apart, titled=False)
    return (apart, bare, left) if bare else (sheet, headings, ())


def _names_in_cells(sheet: RawSheet, headings: Headings) -> ListShape | None:
    """A list of sizes and names alone, maybe with a count, that has several names in a cell."""
    column_of = {match.meaning: column for column, match in headings.matches.items()}
    counts = column_of.pop("How many", 0)
    if not headings.rows or len(column_of) != _SIZE_AND_NAMES or len(headings.titles) != len(headings.matches):
        return None
    below = {row: dict(cells) for row, cells in sheet.rows.items() if row > headings.row}
    counted = {row: shown_value(cells.pop(counts)) for row, cells in below.items() if counts in cells}
    under = replace(sheet, rows={row: cells for row, cells in below.items() if cells})
    if not counts:
        return after_sizes(under) or several_in_a_cell(under)
    as_counted = all(count == str(len(size_and_names(below[row])) - 1) for row, count in counted.items())
    return after_sizes(under) if as_counted else None


def _are_people_in_rows(sheet: RawSheet, known: int) -> bool:
    """Whether the cells of a row, of more columns than are `known`, are as many people: whole names, or in each row
    another number of them."""
    rows = [[shown_value(cell) for _, cell in sorted(cells.items())] for cells in sheet.rows.values()]
    ragged = len({*map(len, rows)}) > 1
    return max(map(len, rows)) > known + 1 and (ragged or all(" " in text for texts in rows for text in texts[1:]))


def _without_marks(sheet: RawSheet) -> RawSheet:
    """The sheet less the columns of the blank roster's live marks."""
    marks = {column for cells in sheet.rows.values() for column, cell in cells.items() if cell.value in MARKS}
    if not marks:
        return sheet
    left = (
        (row, {column: cell for column, cell in cells.items() if column not in marks})
        for row, cells in sheet.rows.items()
    )
    return replace(sheet, rows={row: cells for row, cells in left if cells})
