"""Where a record was read: its sheet, row and cells."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from xlbatch.problems import Where

MOST_SHEET_ROWS = 1_048_576  # ECMA-376: the rows of a sheet


@dataclass(frozen=True)
class Source:
    """Where a record was read: its sheet, its row (0: a built-in default), the cell of each heading, and what stood in
    the row's columns that were not understood, and in notes on its cells.

    Rows are counted on through the tables of a list that lie beside one another or on several sheets, as if each
    began where the longest sheet there can be ends; so a row number means one row of the list."""

    sheet: str
    row: int = 0
    cells: Mapping[str, str] = field(default_factory=dict)
    extra: Mapping[str, str] = field(default_factory=dict)
    notes: Mapping[str, str] = field(default_factory=dict)  # people's own notes on its cells, by heading

    def at(self, heading: str) -> Where:
        """The cell under `heading`, or the row's first cell where the sheet has no such column."""
        first = self.cells.get("") or ("" if self.built_in else f"A{self.sheet_row}")
        return Where(self.sheet, self.cells.get(heading) or first)

    @property
    def built_in(self) -> bool:
        """Whether it is one of the program's own, that no one typed."""
        return not self.row

    @property
    def sheet_row(self) -> int:
        """The row's number on its own sheet."""
        return 0 if self.built_in else (self.row - 1) % MOST_SHEET_ROWS + 1


@dataclass(frozen=True)
class Heading:
    """How one heading was understood (`meaning` "" where it was not)."""

    sheet: str
    cell: str
    found: str
    meaning: str


@dataclass(frozen=True)
class Unread:
    """A row of Designs, Garments, Film or Press that cannot be used as it is: its cells as they were typed."""

    source: Source
    unclear: Mapping[str, str]
