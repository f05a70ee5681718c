"""An input table as it was found on a sheet, and the tables of a whole workbook."""

import re
from collections.abc import Container, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property

from xlbatch.files.raw import AS_ROWS, Orientation, Raw, RawSheet
from xlbatch.job.job import Class
from xlbatch.job.source import MOST_SHEET_ROWS, Heading
from xlbatch.problems import Problem, Where, problem
from xlbatch.tables.cells import shown_value
from xlbatch.tables.contents import yes_or_no
from xlbatch.tables.list_parts import ListPart
from xlbatch.tables.sizes import wearer
from xlbatch.trade.answer_words import OF_ANY_SHIRT, garment_in
from xlbatch.trade.columns import columns
from xlbatch.trade.contrast import shade

# a plan's own sheets of which a few columns are read
_YEARS = ("age", "ages", "years", "años", "anos", "ans", "jahre", "anni", "jaar", "lat", "let", "yaş")
_TITLE_ABOVE = 2  # rows from a title to the headings: one blank between
READ_BACK = ("Problems", "Proof", "Cut list", "Press log", "Shopping list", "Money")
ANSWERS = (
    "Wanted",
    "Not wanted",
    "Name wanted",
    "Number wanted",
    "Cut",
    "Particle",
)  # roles whose cells go under the Roster's own headings
ROLES = {  # what is said of the columns that are none of the Roster's own
    "Counter": "a counter, not used",
    "Someone else": "someone else's name, not used",
    "Orderer": "who ordered, not used",
    "Aside": "not about the garment, not used",
    "Other text": "a further text, not used",
    "Sleeve text": "a text for a sleeve, not used",
    "Print color": "the color of what is printed, not used",
    "Wanted": "whether one is wanted (no: Status cancelled)",
    "Not wanted": "whether none is wanted (yes: Status cancelled)",
    "Name wanted": "whether a name is printed (no: Print name no name)",
    "Number wanted": "whether a number is printed (no: no number)",
    "Cut": "whom the size is for",
    "Particle": "a part of the last name",
    "Message": "the message",
}


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
    counts: Mapping[int, tuple[str, str]] = field(default_factory=dict)  # columns that count what they are called
    group: str = ""  # whose rows these are, where the list does not say but its sheet's name does
    place: int = 0  # 1 for the second table of a list, and so on
    orientation: Orientation = AS_ROWS
    groups: Mapping[int, str] = field(default_factory=dict)  # whose each row is, by the rows among them that say so
    roles: Mapping[int, str] = field(default_factory=dict)  # columns that say more than the sheet's own: Wanted, Cut
    unused: Mapping[int, str] = field(default_factory=dict)  # columns of consequence left unused: what they look like
    twice: Mapping[int, str] = field(default_factory=dict)  # columns whose heading another has won, and what it says
    guessed: tuple[int, ...] = ()  # columns read by what stands in them
    above: Mapping[int, str] = field(default_factory=dict)  # the lines of one cell above the headings
    garment: str = ""  # which garment the sizes are of, where their heading says so
    left_out: Mapping[int, str] = field(default_factory=dict)  # rows that look as if not wanted, and why
    notes: Mapping[tuple[int, int], str] = field(default_factory=dict)  # on cells, by row and column

    @cached_property
    def blanks_mean(self) -> Mapping[str, str]:
        """What a blank means in the columns that say who wants one, and who wants a name: nothing clear beside a yes;
        no for a name where others are ticked and none says no."""
        answers: dict[str, set[str]] = {"Wanted": set(), "Name wanted": set()}
        for column, role in self.roles.items():
            if role in answers:
                typed = (cells[column] for cells in self.rows.values() if column in cells)
                answers[role] |= {yes_or_no(shown_value(cell)) for cell in typed}
        meant = {role: "" for role, given in answers.items() if "wanted" in given}
        return meant | {role: "no" for role in meant if role == "Name wanted" and answers[role] == {"wanted"}}

    @cached_property
    def kept_aside(self) -> Mapping[int, str]:
        """The columns that are kept but not used, nor judged to be of consequence: their headings."""
        used = {column for column, role in self.roles.items() if role in (*ANSWERS, "Message")} | {
            *self.unused,
            *self.twice,
        }
        return (
            {}
            if self.meaning in READ_BACK
            else {column: name for column, name in self.extra.items() if column not in used}
        )

    @cached_property
    def is_of_children(self) -> bool:
        """Whether the headings over names or sizes speak of children or of years."""
        titles = (self.titles.get(self.columns.get(heading, 0), "") for heading in ("Who", "First name", "Size"))
        words = re.findall(r"[^\W\d_]+", " ".join(titles).casefold())
        return any(word in _YEARS or wearer(word) == "youth" for word in words)

    @cached_property
    def title(self) -> str:
        """The line right above the headings, or one row higher; or ""."""
        row = max((row for row in self.above if row < self.heading_row), default=0)
        return self.above[row] if row and self.heading_row - row <= _TITLE_ABOVE else ""

    @cached_property
    def garment_said(self) -> tuple[str, str]:
        """The garment that the heading of the sizes, the line above or the sheet's name speaks of, and that text; none
        for a word said of any shirt, or where a column says which garment."""
        over_sizes = self.titles.get(self.columns.get("Size", 0), "")
        texts = () if self._garment_told or self.garment else (over_sizes, self.title, self.sheet)
        garments = ((garment, text) for text in texts if (garment := garment_in(text)) not in ("", *OF_ANY_SHIRT))
        return next(garments, ("", ""))

    @cached_property
    def _garment_told(self) -> bool:
        counted = any(heading == "Garment" for heading, _ in self.counts.values())
        return counted or "Garment" in self.columns or self.meaning != "Roster"

    def ordered_under(self, title: str) -> Mapping[str, str]:
        """The garment of the rows under a title, maybe with its color: `HOODIES (charcoal)`."""
        garment = "" if self._garment_told else garment_in(title)
        colors = [word for word in re.findall(r"[^\W\d_]+", title) if garment and shade(word) is not None]
        told = {"Garment": garment, "Color": "" if "Color" in self.columns else " ".join(colors)}
        return {heading: text for heading, text in told.items() if text}

    def where(self, column: int, row: int) -> Where:
        """A cell of the sheet."""
        return Where(self.sheet, self.orientation.cell(column, row))

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
    watched: Mapping[str, RawSheet] = field(default_factory=dict)  # a plan's own sheets, by what they are

    @property
    def list_(self) -> tuple[Table, ...]:
        """All tables of the list of people."""
        first = self.by_meaning.get("Roster")
        return (first, *self.further) if first else ()


def made_table(sheet: RawSheet, meaning: str, part: ListPart) -> Table:
    """The table of a part of a sheet."""
    titles, matches = part.headings.titles, part.headings.matches
    special = part.headings.special
    own = {column.heading for column in columns(meaning)}
    once = {column: match for column, match in matches.items() if not match.twice and match.meaning in own}
    over = [(row, cells) for row, cells in sheet.rows.items() if row <= part.headings.row - part.headings.rows]
    used = dict.fromkeys([*titles, *(column for cells in part.rows.values() for column in cells)])
    return Table(
        meaning,
        sheet.name,
        part.headings.row,
        dict(sorted(titles.items())),
        {match.meaning: column for column, match in once.items()},
        {match.meaning: match.unit for match in once.values() if match.unit},
        _extra(
            titles,
            sorted(column for column in used if column not in once and column not in special),
            sheet.orientation,
        ),
        part.rows,
        part.headings.sizes,
        part.headings.wearers,
        part.headings.counts,
        orientation=sheet.orientation,
        groups=part.groups,
        roles={
            column: match.meaning for column, match in matches.items() if not match.twice and match.meaning not in own
        },
        unused=part.headings.unused,
        twice={column: match.meaning for column, match in matches.items() if match.twice},
        guessed=part.headings.guessed,
        above={row: shown_value(*lone.values()) for row, cells in over if len(lone := _over(cells, titles)) == 1},
        garment=part.headings.garment,
        left_out=part.left_out,
        notes={} if sheet.orientation != AS_ROWS else sheet.notes,
    )


def _over(cells: Mapping[int, Raw], titles: Mapping[int, str]) -> Mapping[int, Raw]:
    """The one cell of a row above a table, or of several those over its own columns."""
    columns = range(min(titles, default=0), max(titles, default=0) + 1)
    return cells if len(cells) == 1 else {column: cell for column, cell in cells.items() if column in columns}


def _extra(titles: Mapping[int, str], unknown: list[int], orientation: Orientation) -> dict[int, str]:
    """A name of its own for each column that is kept aside."""
    names: dict[int, str] = {}
    for place in unknown:
        name, column = titles.get(place, ""), orientation.column(place)
        names[place] = column if not name else f"{name} {column.split()[-1]}" if name in names.values() else name
    return names


def kept_columns(tables: Iterable[Table], asked: Container[str] = ()) -> list[Problem]:
    """One note for all the columns of a sheet's tables that are kept but not used, less those `asked` about."""
    left = [(table, column, name) for table in tables for column, name in table.kept_aside.items() if name not in asked]
    if not left:
        return []
    table, first, _ = left[0]
    where = table.where(first, table.heading_row if table.titles else min(table.rows, default=1))
    return [problem("heading-unknown", where, ", ".join(dict.fromkeys(name for _, _, name in left)))]


def with_rows(question: Problem, tables: Iterable[Table]) -> Problem:
    """A question about a column, with the rows that another answer would change."""
    of_sheet = [table for table in tables if table.sheet == question.where.sheet]
    if question.code == "heading-twice":
        rows = (
            row for table in of_sheet for column in table.twice for row in _differing(table, column, question.where)
        )
    elif question.code == "heading-by-content":
        rows = (row for table in of_sheet for row in _by_guess(table))
    else:
        return question
    return replace(question, rows=tuple(dict.fromkeys(rows)))


def _differing(table: Table, column: int, where: Where) -> Iterator[int]:
    """The rows where a column holds something else than the one its heading's meaning was read from."""
    won = table.columns.get(table.twice[column], 0)
    for row, cells in table.rows.items() if table.where(column, table.heading_row) == where else ():
        if column in cells and (won not in cells or shown_value(cells[column]) != shown_value(cells[won])):
            yield table.counted_on(row)


def _by_guess(table: Table) -> Iterator[int]:
    """The rows that a column read by what stands in it says more of than name or size."""
    sure = {table.columns.get(heading, 0) for heading in ("Who", "First name", "Last name", "Size", "Group")}
    for row, cells in table.rows.items():
        if any(column in cells for column in table.guessed if column not in sure):
            yield table.counted_on(row)


def heading_records(table: Table) -> list[Heading]:
    """What became of each heading."""
    if table.meaning in READ_BACK:
        return []
    meaning = {column: heading for heading, column in table.columns.items()}
    meaning |= {column: f"how many in size {size}" for column, size in table.sizes.items()}
    meaning |= {column: f"how many of {text}" for column, (_, text) in table.counts.items()}
    meaning |= {column: f"Size ({wearer})" for column, wearer in table.wearers.items()}
    meaning |= {column: ROLES[role] for column, role in table.roles.items()}
    return [
        Heading(table.sheet, table.where(column, table.heading_row).cell, text, meaning.get(column, ""))
        for column, text in table.titles.items()
    ]
