"""The table between a plan and a sheet: what a sheet shows, before it is looks and widths."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from operator import itemgetter

from xlbatch.paper.cell import Value


@dataclass(frozen=True)
class SheetTable:
    """Rows under headings, which are those of the sheet. Raises ValueError where a row has more cells or fewer."""

    headings: Sequence[str]
    rows: Sequence[Sequence[Value]]

    def __post_init__(self) -> None:
        if any(len(row) != len(self.headings) for row in self.rows):
            raise ValueError("a row has more cells than there are headings, or fewer")

    def __getitem__(self, heading: str) -> list[Value]:
        """The cells under a heading."""
        return self.column(self.headings.index(heading))

    def __len__(self) -> int:
        return len(self.rows)

    def column(self, number: int) -> list[Value]:
        """The cells of the column of this number, from 0."""
        return list(map(itemgetter(number), self.rows))

    def of(self, headings: Iterable[str]) -> Iterable[tuple[Value, ...]]:
        """The cells under these headings, row by row."""
        return zip(*(self[heading] for heading in headings), strict=True)
