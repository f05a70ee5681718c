"""Turns raw sheets into the input tables found on them: which sheet is which, and what its columns mean."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import islice

from openpyxl.utils import get_column_letter

from xlbatch.problems import Problem, Where, problem
from xlbatch.roster.cells import shown_value
from xlbatch.roster.headings import Match, plain, understand
from xlbatch.roster.job import Heading
from xlbatch.roster.raw import Raw, RawSheet
from xlbatch.trade.columns import columns

INPUT = ("Roster", "Job", "Designs", "Garments", "Film", "Press", "Press log")
RETURNED = (
    "Job sheet", "Problems", "Proof", "Shopping list", "Film requirement", "Roll layout", "Cut list", "Placement",
    "Placement pictures", "Time plan", "Money", "Bag tags", "Runs", "Decals", "Start here",
)  # fmt: skip
IGNORED = frozenset(name.casefold() for name in RETURNED)  # the plan's own sheets, made anew each time
MARKS = frozenset([plain("Row complete?")])  # headings of the blank roster's live marks: nobody typed these
_LOOKED_AT = 30  # filled rows among which the heading row is looked for


@dataclass(frozen=True)
class Table:
    """An input sheet: its columns by meaning and by number, their units, and its filled rows."""

    meaning: str
    sheet: str
    heading_row: int
    titles: Mapping[int, str]
    columns: Mapping[str, int]
    units: Mapping[str, str]
    extra: Mapping[int, str]  # columns not understood: their headings
    rows: Mapping[int, Mapping[int, Raw]]

    def where(self, column: int, row: int) -> Where:
        """A cell of the sheet."""
        return Where(self.sheet, f"{get_column_letter(column)}{row}")


@dataclass(frozen=True)
class Tables:
    """The input tables of a workbook by meaning, what became of each heading, and what was odd."""

    by_meaning: Mapping[str, Table]
    headings: tuple[Heading, ...]
    problems: tuple[Problem, ...]


def find_tables(sheets: Iterable[RawSheet]) -> Tables:
    """The input tables: sheets by their names, then by their headings; a lone unnamed table is the roster."""
    filled = [sheet for sheet in sheets if sheet.rows and sheet.name.strip().casefold() not in IGNORED]
    found: dict[str, Table] = {}
    odd: list[Problem] = []
    for sheet, meaning in _meanings(filled).items():
        table = _table(filled[sheet], meaning) if meaning and meaning not in found else None
        if table is None:
            odd.append(_not_read(filled[sheet].name, found.get(meaning)))
        else:
            found[meaning] = table
            odd += _oddities(table, filled[sheet])
    headings = tuple(heading for table in found.values() for heading in _headings(table))
    return Tables(found, headings, tuple(odd))


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
        row, matches = _heading_row(sheet, meaning)
        known = {match.meaning for match in matches.values()}
        if row and len(known) > 1 and all(c.heading in known for c in columns(meaning) if c.needed):
            scores[meaning] = len(known)
    return max(scores, key=lambda meaning: scores[meaning], default="")


def _heading_row(sheet: RawSheet, meaning: str) -> tuple[int, dict[int, Match]]:
    """The first of the rows with the most headings of the input sheet; row 0 where there is none."""
    best: tuple[int, dict[int, Match]] = (0, {})
    for row, cells in islice(sheet.rows.items(), _LOOKED_AT):
        matches = understand(_texts(cells), meaning)
        if len({match.meaning for match in matches.values()}) > len({match.meaning for match in best[1].values()}):
            best = row, matches
    return best


def _texts(cells: Mapping[int, Raw]) -> dict[int, str]:
    return {at: shown_value(cell) for at, cell in cells.items() if not cell.fault}


def _table(sheet: RawSheet, meaning: str) -> Table | None:
    row, matches = _heading_row(sheet, meaning)
    if not row:
        return None
    titles = _texts(sheet.rows[row])
    marks = {at for at, title in titles.items() if meaning == "Roster" and plain(title) in MARKS}
    titles = {at: title for at, title in titles.items() if at not in marks}
    below = {no: cells for no, cells in sheet.rows.items() if no > row and not _repeats(cells, titles)}
    rows = {no: kept for no, cells in below.items() if (kept := {at: cells[at] for at in cells if at not in marks})}
    once = {at: match for at, match in matches.items() if not match.twice}
    used = dict.fromkeys([*titles, *(at for cells in rows.values() for at in cells)])
    return Table(
        meaning,
        sheet.name,
        row,
        dict(sorted(titles.items())),
        {match.meaning: at for at, match in once.items()},
        {match.meaning: match.unit for match in once.values() if match.unit},
        _extra(titles, sorted(at for at in used if at not in once)),
        rows,
    )


def _extra(titles: Mapping[int, str], unknown: list[int]) -> dict[int, str]:
    """A name of its own for each column that is kept aside."""
    names: dict[int, str] = {}
    for at in unknown:
        name = titles.get(at, "")
        names[at] = f"{name or 'Column'} {get_column_letter(at)}" if not name or name in names.values() else name
    return names


def _repeats(cells: Mapping[int, Raw], titles: Mapping[int, str]) -> bool:
    """Whether a row is the heading row over again, as on the top of each page."""
    return len(cells) > 1 and all(plain(shown_value(cell)) == plain(titles.get(at, "")) for at, cell in cells.items())


def _headings(table: Table) -> list[Heading]:
    """What became of each heading. The press log has many columns of which two or three are read back."""
    if table.meaning == "Press log":
        return []
    meaning = {at: heading for heading, at in table.columns.items()}
    return [
        Heading(table.sheet, table.where(at, table.heading_row).cell, text, meaning.get(at, ""))
        for at, text in table.titles.items()
    ]


def _oddities(table: Table, sheet: RawSheet) -> list[Problem]:
    if table.meaning == "Press log":
        return []
    odd = []
    matches = understand(table.titles, table.meaning)
    for at, heading in table.extra.items():
        code = "heading-twice" if at in matches else "heading-unknown"
        odd.append(problem(code, table.where(at, table.heading_row), heading))
    hidden = sum(row in sheet.hidden for row in table.rows)
    if hidden:
        odd.append(problem("sheet-hidden-rows", Where(table.sheet), hidden, count=hidden))
    return odd


def _not_read(name: str, first: Table | None) -> Problem:
    if first:
        return problem("sheet-second", Where(name), name, meaning=first.meaning, first=first.sheet)
    return problem("sheet-unknown", Where(name), name)
