"""Finds the row, or two rows, of headings on a sheet, and what they mean."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache
from itertools import islice

from xlbatch.files.raw import Raw, RawSheet
from xlbatch.job.job import Class
from xlbatch.tables.cells import shown_value
from xlbatch.tables.heading_words import names_columns
from xlbatch.tables.headings import Match, plain, understand
from xlbatch.tables.numbered_columns import NumberedPart, over_sizes, parts_of_a_row
from xlbatch.tables.roster_columns import FOR_MANY, Decision, decide
from xlbatch.tables.size_columns import counted_columns, holds_counts, is_tick, size_columns, sizes_by_wearer

NAMES = frozenset(("Who", "First name", "Last name", "Print name"))
_LOOKED_AT = 30  # filled rows among which the heading row is looked for
_LONGEST_OVER = 100  # characters: a longer text above headings is a sentence about the sheet
_BODY_LOOKED_AT = 50  # filled rows below it that tell a row of sizes from other headings

Cells = Mapping[int, Raw]


@dataclass(frozen=True)
class Headings:
    """Headings found: their last row, the text and the meaning of each column, and the size each counts."""

    row: int  # 0 where the list has none
    titles: Mapping[int, str]
    matches: Mapping[int, Match] = field(default_factory=dict)
    sizes: Mapping[int, str] = field(default_factory=dict)
    wearers: Mapping[int, Class] = field(default_factory=dict)  # size columns for some people only: Youth size
    counts: Mapping[int, tuple[str, str]] = field(default_factory=dict)  # columns that count a garment each: Hoodie
    people: tuple["Headings", ...] = ()  # where a row is for several: those of each, with the columns they share
    rows: int = 1  # 2 where the row above belongs to them, 0 where there is no row of headings
    garment: str = ""  # the garment all these sizes are of: Hoodie size
    fixed: bool = False  # columns that were made, not found
    guessed: tuple[int, ...] = ()  # columns read by what stands in them
    unused: Mapping[int, str] = field(default_factory=dict)  # columns of consequence that mean nothing: what they hold

    @property
    def known(self) -> frozenset[str]:
        """The columns found, by their own headings; a row of sizes answers for Size."""
        sized = {"Size"} if self.sizes or self.wearers else set()
        return frozenset(match.meaning for match in self.matches.values()) | sized

    @property
    def special(self) -> frozenset[int]:
        """The columns that are a size's, a garment's or some people's alone."""
        return frozenset((*self.sizes, *self.wearers, *self.counts))

    @property
    def used(self) -> frozenset[int]:
        """The columns that say something of the garments."""
        return frozenset(column for column, match in self.matches.items() if match.meaning not in FOR_MANY)

    def within(self, columns: frozenset[int]) -> "Headings":
        """The headings of some of the columns, as if they stood alone."""
        titles = {column: text for column, text in self.titles.items() if column in columns}
        sizes = {column: size for column, size in self.sizes.items() if column in columns}
        wearers = {column: wearer for column, wearer in self.wearers.items() if column in columns}
        counts = {column: counted for column, counted in self.counts.items() if column in columns}
        return _decided(replace(self, titles=titles, sizes=sizes, wearers=wearers, counts=counts, people=()), ())

    def judged(self, rows: Sequence[Cells]) -> "Headings":
        """The same, each column judged by what stands in it too, less the legend below the list."""
        if self.fixed:
            return self
        end = max((row_no for row_no, cells in enumerate(rows, 1) if len(cells) > 1), default=len(rows))
        rows = rows[:end]
        if self.people:
            people = tuple(_decided(part, _cells_of(part, rows)) for part in self.people)
            return replace(self, people=people, matches=self.matches if NAMES & self.known else people[0].matches)
        return _decided(self, rows)


NONE = Headings(0, {})


def _decided(headings: Headings, rows: Sequence[Cells]) -> Headings:
    titles = {column: text for column, text in headings.titles.items() if column not in headings.special}
    decision = decide(titles, rows, headings.special) if rows else _by_words(tuple(titles.items()))
    return replace(headings, matches=decision.matches, guessed=decision.guessed, unused=decision.unused)


@lru_cache(maxsize=5000)
def _by_words(titles: tuple[tuple[int, str], ...]) -> Decision:
    return decide(dict(titles), ())


def _cells_of(part: Headings, rows: Sequence[Cells]) -> list[Cells]:
    """The cells of one part's own columns."""
    return [{column: cell for column, cell in cells.items() if column in part.titles} for cells in rows]


def find_headings(sheet: RawSheet, meaning: str) -> Headings:
    """The row, or pair of rows, with the most headings of the input sheet; NONE where there is none.

    A list's first headings beyond doubt win over fuller ones further down, which may be those of a second list."""
    best = NONE
    body = list(islice(sheet.rows.values(), _LOOKED_AT + _BODY_LOOKED_AT))
    for row, cells in islice(sheet.rows.items(), _LOOKED_AT):
        texts = _texts(cells)
        here = read_headings(row, texts, meaning, body)
        here = _better(here, _with_next(row, texts, sheet.rows.get(row + 1, {}), meaning, body))
        best = _better(best, here)
        if meaning == "Roster" and "Size" in here.known and names_columns(here.titles):
            return here
    return best


def _better(best: Headings, other: Headings) -> Headings:
    """The one with more columns known; of two with as many the first, but for a lone title."""
    return max(best, other, key=lambda of: (len(of.known), bool(of.known) and len(of.titles) > 1))


def _with_next(row: int, upper: Mapping[int, str], below: Cells, meaning: str, body: list[Cells]) -> Headings:
    """A row read together with the one below it, where that is plainly one of headings too."""
    lower = _texts(below)
    titles = _joined(upper, lower, meaning) if lower else {}
    both, alone = (read_headings(row + 1, text, meaning, body) for text in (titles, lower))
    is_title = len(upper) == 1 and lower and min(upper) <= min(lower)
    named = meaning == "Roster" and names_columns(lower) and not is_title
    fuller = len(both.known) > len(alone.known) and (both.sizes or named)
    return replace(both, rows=2) if fuller else NONE


def read_headings(row: int, titles: Mapping[int, str], meaning: str, body: list[Cells]) -> Headings:
    """What a row of titles means; a row of sizes is one only where counts stand below it."""
    if meaning != "Roster":
        return Headings(row, titles, understand(titles, meaning))
    sized = over_sizes(titles, body)
    read = _of_titles(tuple(titles.items()), sized, counted=True)
    counted = {*read.sizes, *read.counts}
    below = [cells for cells in body if not _is(cells, titles)]
    if counted and (not holds_counts(below, counted) or _counts_people(read, below)):
        read = _of_titles(tuple(titles.items()), sized, counted=False)
    return replace(read, row=row, people=tuple(replace(part, row=row) for part in read.people))


def _counts_people(read: Headings, below: Sequence[Cells]) -> bool:
    """Whether columns such as `Adults` and `Kids` beside someone's name say how many come, as more than one does."""
    of_people = any(heading == "Cut" for heading, _ in read.counts.values()) and bool(NAMES & read.known)
    cells = (row[column] for row in below for column in read.counts if column in row)
    return of_people and not all(map(is_tick, cells))


@lru_cache(maxsize=5000)
def _of_titles(titles: tuple[tuple[int, str], ...], sized: frozenset[int], *, counted: bool) -> Headings:
    """What a row of titles means, its sizes as columns of counts where `counted`; `sized` are columns of sizes."""
    by_column = dict(titles)
    if parts := _parts(0, by_column, sized):
        return replace(parts[0], titles=by_column, people=parts)
    sizes = size_columns(by_column) if counted else {}
    wearers = {} if sizes else sizes_by_wearer(by_column)
    counts = counted_columns(by_column) if counted and not sizes else {}
    return _decided(Headings(0, by_column, sizes=sizes, wearers=wearers, counts=counts), ())


def _parts(row: int, titles: Mapping[int, str], sized: frozenset[int]) -> tuple[Headings, ...]:
    """The headings of each person, or each garment, of a row that is for several, if each has a size and a name, or
    beside several garments a column that may hold the names."""

    def read(part: NumberedPart) -> Headings:
        return replace(read_headings(row, part.titles, "Roster", []), garment=part.garment)

    parts = tuple(map(read, parts_of_a_row(titles, sized)))
    named = all(NAMES & part.known or (part.garment and len(part.titles) > 1) for part in parts)
    return parts if named and all("Size" in part.known for part in parts) else ()


def _is(cells: Cells, titles: Mapping[int, str]) -> bool:
    return any(column in titles and shown_value(cell) in titles[column] for column, cell in cells.items() if cell.value)


def _texts(cells: Cells) -> dict[int, str]:
    return {column: shown_value(cell) for column, cell in cells.items() if not cell.fault}


def _joined(upper: Mapping[int, str], lower: Mapping[int, str], meaning: str) -> dict[int, str]:
    """Two rows of headings as one: an upper heading goes for all columns up to the next (`Adult` over S, M, L)."""
    joined, over = {}, ""
    for column in range(min({**upper, **lower}), max({**upper, **lower}) + 1):
        over = upper.get(column, over)
        over = over if len(over) <= _LONGEST_OVER else ""
        below = lower.get(column, "")
        if not below:
            text = upper.get(column, "")
        elif plain(below) == plain(over) or not over or _is_heading(below, meaning):
            text = below
        else:
            text = f"{over} {below}"
        if text:
            joined[column] = text
    return joined


def _is_heading(text: str, meaning: str) -> bool:
    return bool(_by_words(((1, text),)).matches if meaning == "Roster" else understand({1: text}, meaning))


def repeats(cells: Cells, headings: Headings) -> bool:
    """Whether a row is the heading row over again, as on the top of each page."""
    return len(cells) > 1 and all(
        plain(shown_value(cell)) == plain(headings.titles.get(column, "")) for column, cell in cells.items()
    )


def begins_another(row: int, cells: Cells, body: list[Cells]) -> Headings | None:
    """The headings of a further list below the first, where a row is plainly that."""
    texts = _texts(cells)
    if not names_columns(texts):
        return None
    headings = read_headings(row, texts, "Roster", body)
    return headings if "Size" in headings.known and len(headings.known) > 1 else None
