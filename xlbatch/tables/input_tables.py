"""Turns raw sheets into the input tables found on them: which sheet is which, and which of them are read."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import replace
from itertools import islice

from xlbatch.files.raw import RawSheet
from xlbatch.job.job import LONGEST_TEXT
from xlbatch.problems import Problem, Where, problem
from xlbatch.problems.phrases import phrase
from xlbatch.tables.cell_notes import with_peoples_notes
from xlbatch.tables.cells import shown_value
from xlbatch.tables.heading_rows import find_headings, read_headings, repeats
from xlbatch.tables.input_table import READ_BACK, Table, Tables, heading_records, kept_columns, made_table, with_rows
from xlbatch.tables.list_parts import ListPart, ends_list
from xlbatch.tables.list_tables import list_tables
from xlbatch.tables.same_people import ListSheet, one_list
from xlbatch.tables.sideways import upright
from xlbatch.tables.typed_over import WATCHED
from xlbatch.trade.columns import columns

INPUT = (
    *("Roster", "Job", "Designs", "Drawing parts", "Garments", "Film", "Press", "Positions", "Work times"),
    *READ_BACK,
)
RETURNED = (
    "Job sheet", "Film requirement", "Roll layout", "Placement",
    "Placement pictures", "Time plan", "Bag tags", "Changes", "What if", "Fonts to choose from", "Runs", "Decals",
    "Start here",
)  # fmt: skip
_UNNAMED = re.compile(r"(sheet|table|list|tab)\s*\d*|\W*\d+\W*", re.IGNORECASE)  # names that say nothing of a group
IGNORED = frozenset(name.casefold() for name in RETURNED)  # the plan's own sheets, made anew each time
_OWN = IGNORED.union(map(str.casefold, INPUT))
NOT_OPENED = IGNORED - {name.casefold() for name in WATCHED}
MEMORY_TITLE = "Kept by the program: this plan's memory. Leave it as it is."  # in the sheet's first cell


def find_tables(sheets: Iterable[RawSheet]) -> Tables:
    """The input tables: sheets by their names, then by their headings; a lone unnamed table is the roster."""
    sheets = tuple(sheets)
    memory = next((sheet for sheet in sheets if is_memory(sheet)), None)
    sheets = tuple(sheet for sheet in sheets if sheet is not memory)
    titles = _OWN - {_plain(sheet.name) for sheet in sheets} if memory else frozenset()
    called = {sheet.name: _called(sheet, titles) for sheet in sheets}
    filled = [upright(sheet) for sheet in sheets if sheet.rows and called[sheet.name] not in IGNORED]
    watched = {name: sheet for name in WATCHED for sheet in sheets if memory and called[sheet.name] == name.casefold()}
    meanings = _meanings(filled, called)
    read = {number: _tables(filled[number], meaning) for number, meaning in meanings.items() if meaning}
    lists = [
        ListSheet(filled[number].name, tables, filled[number].out_of_sight)
        for number, (tables, _) in read.items()
        if tables and meanings[number] == "Roster"
    ]
    of_the_list, problems = (
        one_list(lists) if len(lists) > 1 else (frozenset(list_sheet.name for list_sheet in lists), ())
    )
    asked: list[Problem] = list(problems)
    by_meaning: dict[str, Table] = {}
    further: list[Table] = []
    for sheet_no, meaning in meanings.items():
        sheet, (tables, of_sheet) = filled[sheet_no], read.get(sheet_no, ((), ()))
        if tables and meaning == "Roster" and sheet.name not in of_the_list:
            continue
        if not tables or not _wanted(meaning, by_meaning):
            asked.append(_not_read(sheet.name, by_meaning.get(meaning)))
            continue
        if meaning in by_meaning:
            asked.append(problem("sheet-joined", Where(sheet.name), sheet.name))
        tables = tuple(map(_put_off, tables)) if len(of_the_list) > 1 else tables
        asked += (*_of_tables(tables), *of_sheet, *_hidden(sheet, tables))
        further += tables if meaning in by_meaning else tables[1:]
        by_meaning.setdefault(meaning, tables[0])
    told = by_meaning.get("Problems")
    by_meaning = {meaning: with_peoples_notes(table, told) for meaning, table in by_meaning.items()}
    further = [with_peoples_notes(table, told) for table in further]
    further = [replace(table, place=place) for place, table in enumerate(_grouped(by_meaning, further), 1)]
    # Tables of people who share a row share columns too.
    headings = dict.fromkeys(record for table in (*by_meaning.values(), *further) for record in heading_records(table))
    first = _first_grouped(by_meaning, further)
    asked = [with_rows(question, (*filter(None, [first.get("Roster")]), *further)) for question in dict.fromkeys(asked)]
    return Tables(first, tuple(headings), tuple(asked), tuple(further), memory, watched)


def is_memory(sheet: RawSheet) -> bool:
    """Whether a sheet is the one a plan keeps for itself, whatever it is called now."""
    return any(cell.value == MEMORY_TITLE for cells in islice(sheet.rows.values(), 3) for cell in cells.values())


def _called(sheet: RawSheet, titles: frozenset[str]) -> str:
    """What a sheet is called, in lower case. A plan's own sheet with a name of its own goes by its title, where that is
    one of those that no sheet is named after: a job's sheet has the job's name for a title, which may be `Roster`."""
    title = _plain(next((cell.value for cells in sheet.rows.values() for cell in cells.values()), None))
    name = _plain(sheet.name)
    return title if title in titles and name not in _OWN else name


def _plain(text: object) -> str:
    return str(text).strip().casefold()


def _wanted(meaning: str, tables: Mapping[str, Table]) -> bool:
    """Whether a sheet is read: the first of its meaning, and further lists beside one not expressly named Roster."""
    first = tables.get(meaning)
    return bool(meaning) and (first is None or (meaning == "Roster" and first.sheet.strip().casefold() != "roster"))


def _grouped(tables: Mapping[str, Table], further: list[Table]) -> list[Table]:
    """The list's further tables; where they stand on sheets of their own, the sheet's name says whose they are."""
    first = tables.get("Roster")
    apart = first is not None and any(table.sheet != first.sheet for table in further)
    return [_of_its_sheet(table) if apart else table for table in further]


def _first_grouped(tables: dict[str, Table], further: list[Table]) -> dict[str, Table]:
    grouped = any(table.group for table in further)
    return tables | {"Roster": _of_its_sheet(tables["Roster"])} if grouped else tables


def _of_its_sheet(table: Table) -> Table:
    return table if _UNNAMED.fullmatch(table.sheet.strip()) else replace(table, group=table.sheet)


def _meanings(sheets: list[RawSheet], called: Mapping[str, str]) -> dict[int, str]:
    """The meaning of each sheet ("" unknown) by its index; named sheets come first, so that they win."""
    names = {name.casefold(): name for name in INPUT}
    named = {sheet_no: names.get(called[sheet.name], "") for sheet_no, sheet in enumerate(sheets)}
    guessed = {sheet_no: meaning or _by_headings(sheets[sheet_no]) for sheet_no, meaning in named.items()}
    if len(sheets) == 1 and not guessed[0]:
        guessed[0] = "Roster"
    elif "Roster" not in guessed.values():  # lists whose headings alone say too little
        guessed |= {no: "Roster" for no, meaning in guessed.items() if not meaning and list_tables(sheets[no])[0]}
    return dict(sorted(guessed.items(), key=lambda item: (not named[item[0]], item[0])))


def _by_headings(sheet: RawSheet) -> str:
    """The input sheet whose needed columns, and most columns besides, a sheet has."""
    scores = {}
    for meaning in INPUT:
        known = find_headings(sheet, meaning).known
        if len(known) > 1 and all(column.heading in known for column in columns(meaning) if column.needed):
            scores[meaning] = len(known)
    return max(scores, key=lambda meaning: scores[meaning], default="")


def _tables(sheet: RawSheet, meaning: str) -> tuple[tuple[Table, ...], tuple[Problem, ...]]:
    """The tables on a sheet, and what to ask; several for a list that lies in parts."""
    if meaning == "Roster":
        return list_tables(sheet)
    headings = find_headings(sheet, meaning)
    below = {row: cells for row, cells in sheet.rows.items() if row > headings.row and not repeats(cells, headings)}
    return ((made_table(sheet, meaning, ListPart(headings, below)),) if headings.known else ()), ()


def _put_off(table: Table) -> Table:
    """The rows of one of several sheets, left out where it is called `Waiting list` or `Cancelled`."""
    if table.meaning != "Roster" or not ends_list(table.sheet):
        return table
    return replace(table, left_out=dict.fromkeys(table.rows, phrase("on the sheet", sheet=table.sheet)))


def _of_tables(tables: tuple[Table, ...]) -> list[Problem]:
    unused = [] if tables[0].meaning == "Roster" else kept_columns(tables)
    return [*unused, *(long for table in tables for long in _too_long(table))]


def _too_long(table: Table) -> list[Problem]:
    """The cells with more text than a spreadsheet's cell can hold, as one of a .csv may have."""
    return [
        problem("cell-too-long", table.where(column, row), f"{cell.value[:20]}…", count=f"{len(cell.value):,}")
        for row, cells in table.rows.items()
        for column, cell in cells.items()
        if isinstance(cell.value, str) and len(cell.value) > LONGEST_TEXT
    ]


def _hidden(sheet: RawSheet, tables: tuple[Table, ...]) -> list[Problem]:
    """The rows read that are hidden or filtered out."""
    if tables[0].meaning in READ_BACK:
        return []
    count = len({row for table in tables for row in table.rows} & sheet.hidden)
    return [problem("sheet-hidden-rows", Where(sheet.name), count, count=count)] if count else []


def _not_read(name: str, first: Table | None) -> Problem:
    if first:
        return problem("sheet-second", Where(name), name, meaning=first.meaning, first=first.sheet)
    return problem("sheet-unknown", Where(name), name)


def first_row_names(sheet: RawSheet) -> Table:
    """The table of a sheet that is called as an input sheet and has its headings in its first row."""
    (row, cells), *below = sheet.rows.items()
    headings = read_headings(row, {column: shown_value(cell) for column, cell in cells.items()}, sheet.name, [])
    return made_table(sheet, sheet.name, ListPart(headings, dict(below)))
