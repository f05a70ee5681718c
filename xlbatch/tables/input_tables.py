"""Turns raw sheets into the input tables found on them: which sheet is which, and what its columns mean."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from itertools import islice

from xlbatch.files.raw import AS_ROWS, Lie, Raw, RawSheet
from xlbatch.job.job import LONGEST_TEXT, Class, Heading
from xlbatch.job.source import MOST_SHEET_ROWS
from xlbatch.problems import Problem, Where, problem
from xlbatch.tables.bare_list import bare_headings, sizes_below
from xlbatch.tables.heading_rows import Headings, find_headings, repeats
from xlbatch.tables.headings import understand
from xlbatch.tables.one_column import lines_apart
from xlbatch.tables.sideways import upright
from xlbatch.tables.stretches import Stretch, stretches
from xlbatch.trade.columns import columns

READ_BACK = ("Cut list", "Press log", "Shopping list", "Money")  # a plan's own sheets of which a few columns are read
INPUT = ("Roster", "Job", "Designs", "Garments", "Film", "Press", "Positions", "Work times", *READ_BACK)
RETURNED = (
    "Job sheet", "Problems", "Proof", "Film requirement", "Roll layout", "Placement",
    "Placement pictures", "Time plan", "Bag tags", "Runs", "Decals", "Start here",
)  # fmt: skip
_UNNAMED = re.compile(r"(sheet|table|list|tab)\s*\d*|\W*\d+\W*", re.IGNORECASE)  # names that say nothing of a group
IGNORED = frozenset(name.casefold() for name in RETURNED)  # the plan's own sheets, made anew each time
MEMORY_TITLE = "Kept by the program: this plan's memory. Leave it as it is."  # in the sheet's first cell
MARKS = ("Row complete?",)  # headings of the blank roster's live marks: nobody typed these


@dataclass(frozen=True)
class Table:
    """An input sheet, or a part of it: its columns by meaning and by number, their units, and its filled rows."""

    meaning: str
    sheet: str
    heading_row: int  # 0 where there is none
    titles: Mapping[int, str]
    columns: Mapping[str, int]
    units: Mapping[str, str]
    extra: Mapping[int, str]  # columns not understood: their headings
    rows: Mapping[int, Mapping[int, Raw]]
    sizes: Mapping[int, str] = field(default_factory=dict)  # columns that count one size each
    wearers: Mapping[int, Class] = field(default_factory=dict)  # columns with the sizes of some people only
    group: str = ""  # whose rows these are, where the list does not say but its sheet's name does
    place: int = 0  # 1 for the second table of a list, and so on
    lie: Lie = AS_ROWS
    groups: Mapping[int, str] = field(default_factory=dict)  # whose each row is, by the rows among them that say so

    def where(self, column: int, row: int) -> Where:
        """A cell of the sheet."""
        return Where(self.sheet, self.lie.cell(column, row))

    def counted_on(self, row: int) -> int:
        """The number of a row when the tables of a list are counted through as one."""
        return self.place * MOST_SHEET_ROWS + row


@dataclass(frozen=True)
class Tables:
    """The input tables of a workbook by meaning, the list's first; what became of each heading; what was odd."""

    by_meaning: Mapping[str, Table]
    headings: tuple[Heading, ...]
    problems: tuple[Problem, ...]
    further: tuple[Table, ...] = ()  # the list's other tables
    kept: RawSheet | None = None  # a plan's memory

    @property
    def list_(self) -> tuple[Table, ...]:
        """All tables of the list of people."""
        first = self.by_meaning.get("Roster")
        return (first, *self.further) if first else ()


def find_tables(sheets: Iterable[RawSheet]) -> Tables:
    """The input tables: sheets by their names, then by their headings; a lone unnamed table is the roster."""
    sheets = tuple(sheets)
    memory = next((sheet for sheet in sheets if is_memory(sheet)), None)
    sheets = tuple(sheet for sheet in sheets if sheet is not memory)
    filled = [upright(sheet) for sheet in sheets if sheet.rows and sheet.name.strip().casefold() not in IGNORED]
    found: dict[str, Table] = {}
    further: list[Table] = []
    odd: list[Problem] = []
    for at, meaning in _meanings(filled).items():
        sheet = filled[at]
        tables, strange = _tables(sheet, meaning) if _wanted(meaning, found) else ((), ())
        if not tables:
            odd.append(_not_read(sheet.name, found.get(meaning)))
            continue
        if meaning in found:
            odd.append(problem("sheet-joined", Where(sheet.name), sheet.name))
        odd += (
            *(each for table in tables for each in (*_oddities(table), *_too_long(table))),
            *strange,
            *_hidden(sheet, tables),
        )
        further += tables if meaning in found else tables[1:]
        found.setdefault(meaning, tables[0])
    further = [replace(table, place=place) for place, table in enumerate(_grouped(found, further), 1)]
    # Tables of people who share a row share columns too.
    headings = dict.fromkeys(heading for table in (*found.values(), *further) for heading in _headings(table))
    return Tables(_first_grouped(found, further), tuple(headings), tuple(dict.fromkeys(odd)), tuple(further), memory)


def is_memory(sheet: RawSheet) -> bool:
    """Whether a sheet is the one a plan keeps for itself, whatever it is called now."""
    return any(cell.value == MEMORY_TITLE for cells in islice(sheet.rows.values(), 3) for cell in cells.values())


def _wanted(meaning: str, found: Mapping[str, Table]) -> bool:
    """Whether a sheet is read: the first of its meaning, and further lists beside one not expressly named Roster."""
    first = found.get(meaning)
    return bool(meaning) and (first is None or (meaning == "Roster" and first.sheet.strip().casefold() != "roster"))


def _grouped(found: Mapping[str, Table], further: list[Table]) -> list[Table]:
    """The list's further tables; where they stand on sheets of their own, the sheet's name says whose they are."""
    first = found.get("Roster")
    apart = first is not None and any(table.sheet != first.sheet for table in further)
    return [_of_its_sheet(table) if apart else table for table in further]


def _first_grouped(found: dict[str, Table], further: list[Table]) -> dict[str, Table]:
    grouped = any(table.group for table in further)
    return found | {"Roster": _of_its_sheet(found["Roster"])} if grouped else found


def _of_its_sheet(table: Table) -> Table:
    return table if _UNNAMED.fullmatch(table.sheet.strip()) else replace(table, group=table.sheet)


def _meanings(sheets: list[RawSheet]) -> dict[int, str]:
    """The meaning of each sheet ("" unknown) by its index; named sheets come first, so that they win."""
    names = {name.casefold(): name for name in INPUT}
    named = {at: names.get(sheet.name.strip().casefold(), "") for at, sheet in enumerate(sheets)}
    guessed = {at: meaning or _by_headings(sheets[at]) for at, meaning in named.items()}
    if len(sheets) == 1 and not guessed[0]:
        guessed[0] = "Roster"
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
    """The tables on a sheet, and what was odd; several for a list that lies in parts."""
    sheet = _without_marks(sheet) if meaning == "Roster" else sheet
    headings = find_headings(sheet, meaning)
    odd: tuple[Problem, ...] = (problem("list-sideways", sheet.where(1, 1)),) if sheet.lie.sideways else ()
    if meaning == "Roster":
        if headings.known <= {"Size"} or "Size" not in headings.known:
            sheet, headings, said = _by_content(sheet, headings)
            odd += said
        sure = "Size" in headings.known or len(headings.known) > 1  # one word alone may stand in anyone's row
        found = stretches(sheet, headings) if sure else None
        parts, odd = (found.stretches, odd + found.problems) if found else ((), odd)
    else:
        below = {row: cells for row, cells in sheet.rows.items() if row > headings.row and not repeats(cells, headings)}
        parts = (Stretch(headings, below),) if headings.known else ()
    return tuple(_table(sheet, meaning, part) for part in parts), odd


def _by_content(sheet: RawSheet, headings: Headings) -> tuple[RawSheet, Headings, tuple[Problem, ...]]:
    """The list and its headings by what stands in the cells, where no row of headings says enough."""
    if "Size" not in headings.known and (found := sizes_below(sheet, headings) or bare_headings(sheet)):
        return (sheet, *found)
    if (lines := lines_apart(sheet)) is None:
        return sheet, headings, ()
    apart, left = lines
    named = find_headings(apart, "Roster")
    found = (named, ()) if "Size" in named.known else bare_headings(apart)
    return (apart, found[0], left + found[1]) if found else (sheet, headings, ())


def _without_marks(sheet: RawSheet) -> RawSheet:
    """The sheet less the columns of the blank roster's live marks."""
    marks = {at for cells in sheet.rows.values() for at, cell in cells.items() if cell.value in MARKS}
    if not marks:
        return sheet
    left = ((row, {at: cell for at, cell in cells.items() if at not in marks}) for row, cells in sheet.rows.items())
    return replace(sheet, rows={row: cells for row, cells in left if cells})


def _table(sheet: RawSheet, meaning: str, part: Stretch) -> Table:
    titles, matches = part.headings.titles, part.headings.matches
    sizes, wearers = part.headings.sizes, part.headings.wearers
    once = {at: match for at, match in matches.items() if not match.twice}
    used = dict.fromkeys([*titles, *(at for cells in part.rows.values() for at in cells)])
    return Table(
        meaning,
        sheet.name,
        part.headings.row,
        dict(sorted(titles.items())),
        {match.meaning: at for at, match in once.items()},
        {match.meaning: match.unit for match in once.values() if match.unit},
        _extra(
            titles, sorted(at for at in used if not any(at in known for known in (once, sizes, wearers))), sheet.lie
        ),
        part.rows,
        sizes,
        wearers,
        lie=sheet.lie,
        groups=part.groups,
    )


def _extra(titles: Mapping[int, str], unknown: list[int], lie: Lie) -> dict[int, str]:
    """A name of its own for each column that is kept aside."""
    names: dict[int, str] = {}
    for at in unknown:
        name, column = titles.get(at, ""), lie.column(at)
        names[at] = column if not name else f"{name} {column.split()[-1]}" if name in names.values() else name
    return names


def _headings(table: Table) -> list[Heading]:
    """What became of each heading."""
    if table.meaning in READ_BACK:
        return []
    meaning = {at: heading for heading, at in table.columns.items()}
    meaning |= {at: f"how many in size {size}" for at, size in table.sizes.items()}
    meaning |= {at: f"Size ({whose})" for at, whose in table.wearers.items()}
    return [
        Heading(table.sheet, table.where(at, table.heading_row).cell, text, meaning.get(at, ""))
        for at, text in table.titles.items()
    ]


def _oddities(table: Table) -> list[Problem]:
    """The columns not understood, and those read already."""
    if table.meaning in READ_BACK:
        return []
    others = {at: text for at, text in table.titles.items() if at not in table.sizes and at not in table.wearers}
    matches = understand(others, table.meaning)
    row = table.heading_row if table.titles else min(table.rows, default=1)
    return [
        problem("heading-twice" if at in matches else "heading-unknown", table.where(at, row), heading)
        for at, heading in table.extra.items()
    ]


def _too_long(table: Table) -> list[Problem]:
    """The cells with more text than a spreadsheet's cell can hold, as one of a .csv may have."""
    return [
        problem("cell-too-long", table.where(at, row), f"{cell.value[:20]}…", count=f"{len(cell.value):,}")
        for row, cells in table.rows.items()
        for at, cell in cells.items()
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
