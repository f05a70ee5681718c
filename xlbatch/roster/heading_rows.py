"""Finds the row, or two rows, of headings on a sheet, and what they mean."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from itertools import islice, pairwise

from xlbatch.roster.cells import shown_value
from xlbatch.roster.headings import Match, names_columns, plain, understand
from xlbatch.roster.raw import Raw, RawSheet
from xlbatch.roster.size_columns import holds_counts, size_columns

_LOOKED_AT = 30  # filled rows among which the heading row is looked for
_BODY_LOOKED_AT = 50  # filled rows below it that tell a row of sizes from other headings

Cells = Mapping[int, Raw]


@dataclass(frozen=True)
class Headings:
    """Headings found: their last row, the text and the meaning of each column, and the size each counts."""

    row: int
    titles: Mapping[int, str]
    matches: Mapping[int, Match] = field(default_factory=dict)
    sizes: Mapping[int, str] = field(default_factory=dict)

    @property
    def known(self) -> frozenset[str]:
        """The columns found, by their own headings; a row of sizes answers for Size."""
        return frozenset(match.meaning for match in self.matches.values()) | ({"Size"} if self.sizes else set())

    def within(self, columns: frozenset[int]) -> "Headings":
        """The headings of some of the columns, as if they stood alone."""
        titles = {at: text for at, text in self.titles.items() if at in columns}
        sizes = {at: size for at, size in self.sizes.items() if at in columns}
        alone = {at: text for at, text in titles.items() if at not in sizes}
        return Headings(self.row, titles, understand(alone, "Roster"), sizes)


NONE = Headings(0, {})


def find_headings(sheet: RawSheet, meaning: str) -> Headings:
    """The first of the rows, or pairs of rows, with the most headings of the input sheet; NONE where there is none."""
    best = NONE
    looked_at = list(islice(sheet.rows, _LOOKED_AT))
    body = list(islice(sheet.rows.values(), _LOOKED_AT + _BODY_LOOKED_AT))
    for row in looked_at:
        best = _better(best, read_headings(row, _texts(sheet.rows[row]), meaning, body))
    for upper, lower in pairwise(looked_at):
        if lower == upper + 1 and names_columns(_texts(sheet.rows[lower]), meaning):
            titles = _joined(_texts(sheet.rows[upper]), _texts(sheet.rows[lower]), meaning)
            best = _better(best, read_headings(lower, titles, meaning, body))
    return best


def _better(best: Headings, other: Headings) -> Headings:
    return other if len(other.known) > len(best.known) else best


def read_headings(row: int, titles: Mapping[int, str], meaning: str, body: list[Cells]) -> Headings:
    """What a row of titles means; a row of sizes is one only where counts stand below it."""
    sizes = size_columns(titles) if meaning == "Roster" else {}
    if sizes and not holds_counts((cells for cells in body if not _is(cells, titles)), sizes):
        sizes = {}
    others = {at: text for at, text in titles.items() if at not in sizes}
    return Headings(row, titles, understand(others, meaning), sizes)


def _is(cells: Cells, titles: Mapping[int, str]) -> bool:
    return any(at in titles and shown_value(cell) in titles[at] for at, cell in cells.items() if cell.value)


def _texts(cells: Cells) -> dict[int, str]:
    return {at: shown_value(cell) for at, cell in cells.items() if not cell.fault}


def _joined(upper: Mapping[int, str], lower: Mapping[int, str], meaning: str) -> dict[int, str]:
    """Two rows of headings as one: an upper heading goes for all columns up to the next (`Adult` over S, M, L)."""
    joined, over = {}, ""
    for at in range(min(*upper, *lower), max(*upper, *lower) + 1):
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
