"""Finds the row, or two rows, of headings on a sheet, and what they mean."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from itertools import islice

from xlbatch.files.raw import Raw, RawSheet
from xlbatch.job.job import Class
from xlbatch.tables.cells import shown_value
from xlbatch.tables.headings import Match, names_columns, plain, understand
from xlbatch.tables.numbered_columns import people_of_a_row
from xlbatch.tables.size_columns import holds_counts, size_columns, sizes_by_wearer

NAMES = frozenset(("Who", "First name", "Last name", "Print name"))
_LOOKED_AT = 30  # filled rows among which the heading row is looked for
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
    people: tuple["Headings", ...] = ()  # where a row is for several: those of each, with the columns they share
    rows: int = 1  # 2 where the row above belongs to them, 0 where there is no row of headings

    @property
    def known(self) -> frozenset[str]:
        """The columns found, by their own headings; a row of sizes answers for Size."""
        sized = {"Size"} if self.sizes or self.wearers else set()
        return frozenset(match.meaning for match in self.matches.values()) | sized

    def within(self, columns: frozenset[int]) -> "Headings":
        """The headings of some of the columns, as if they stood alone."""
        titles = {at: text for at, text in self.titles.items() if at in columns}
        sizes = {at: size for at, size in self.sizes.items() if at in columns}
        wearers = {at: whose for at, whose in self.wearers.items() if at in columns}
        alone = {at: text for at, text in titles.items() if at not in sizes and at not in wearers}
        return Headings(self.row, titles, understand(alone, "Roster"), sizes, wearers)


NONE = Headings(0, {})


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
        if meaning == "Roster" and "Size" in here.known and names_columns(here.titles, meaning):
            return here
    return best


def _better(best: Headings, other: Headings) -> Headings:
    return other if len(other.known) > len(best.known) else best


def _with_next(row: int, upper: Mapping[int, str], below: Cells, meaning: str, body: list[Cells]) -> Headings:
    """A row read together with the one below it, where that is plainly one of headings too."""
    lower = _texts(below)
    titles = _joined(upper, lower, meaning) if lower else {}
    both, alone = (read_headings(row + 1, each, meaning, body) for each in (titles, lower))
    fuller = len(both.known) > len(alone.known) and (both.sizes or names_columns(lower, meaning))
    return replace(both, rows=2) if fuller else NONE


def read_headings(row: int, titles: Mapping[int, str], meaning: str, body: list[Cells]) -> Headings:
    """What a row of titles means; a row of sizes is one only where counts stand below it."""
    if meaning == "Roster" and (people := _people(row, titles)):
        return replace(people[0], titles=titles, people=people)
    sizes = size_columns(titles) if meaning == "Roster" else {}
    if sizes and not holds_counts((cells for cells in body if not _is(cells, titles)), sizes):
        sizes = {}
    wearers = sizes_by_wearer(titles) if meaning == "Roster" and not sizes else {}
    others = {at: text for at, text in titles.items() if at not in sizes and at not in wearers}
    return Headings(row, titles, understand(others, meaning), sizes, wearers)


def _people(row: int, titles: Mapping[int, str]) -> tuple[Headings, ...]:
    """The headings of each person of a row that is for several, if each has a name and a size."""
    numbered = people_of_a_row(titles)
    shared = {at: text for at, text in titles.items() if not any(at in own for own in numbered)}
    people = tuple(read_headings(row, {**shared, **own}, "Roster", []) for own in numbered)
    return people if all("Size" in each.known and NAMES & each.known for each in people) else ()


def _is(cells: Cells, titles: Mapping[int, str]) -> bool:
    return any(at in titles and shown_value(cell) in titles[at] for at, cell in cells.items() if cell.value)


def _texts(cells: Cells) -> dict[int, str]:
    return {at: shown_value(cell) for at, cell in cells.items() if not cell.fault}


def _joined(upper: Mapping[int, str], lower: Mapping[int, str], meaning: str) -> dict[int, str]:
    """Two rows of headings as one: an upper heading goes for all columns up to the next (`Adult` over S, M, L)."""
    joined, over = {}, ""
    for at in range(min({**upper, **lower}), max({**upper, **lower}) + 1):
        over = upper.get(at, over)
        below = lower.get(at, "")
        if not below:
            text = upper.get(at, "")
        elif plain(below) == plain(over) or not over or understand({at: below}, meaning):
            text = below
        else:
            text = f"{over} {below}"
        if text:
            joined[at] = text
    return joined


def repeats(cells: Cells, headings: Headings) -> bool:
    """Whether a row is the heading row over again, as on the top of each page."""
    return len(cells) > 1 and all(
        plain(shown_value(cell)) == plain(headings.titles.get(at, "")) for at, cell in cells.items()
    )


def begins_another(row: int, cells: Cells, body: list[Cells]) -> Headings | None:
    """The headings of a further list below the first, where a row is plainly that."""
    texts = _texts(cells)
    if not names_columns(texts, "Roster"):
        return None
    headings = read_headings(row, texts, "Roster", body)
    return headings if "Size" in headings.known and len(headings.known) > 1 else None
