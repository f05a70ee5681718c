"""Reads what people wrote beside the rows of a plan's own sheets: in columns of theirs, and in notes on cells."""

from collections.abc import Iterable, Iterator, Mapping

from xlbatch.job.marks import Beside, row_key
from xlbatch.tables.cells import shown_value
from xlbatch.tables.line import Line

KEYS: Mapping[str, tuple[str, ...]] = {  # what tells the rows of a sheet apart
    "Problems": ("Code", "Garment no.", "Found"),
    "Proof": ("Garment no.",),
    "Shopping list": ("Kind", "Item", "Garment", "Size", "Color"),
    "Cut list": ("Film", "Run", "Strip"),
    "Press log": ("Decal",),
    "Money": ("Garment no.",),
    "Job": ("Setting",),
}


def read_beside(of_sheets: Mapping[str, Iterable[Line]]) -> Iterator[Beside]:
    """All cells under headings that are not read, and all notes, of rows that can be told apart."""
    for sheet, headings in KEYS.items():
        for line in of_sheets.get(sheet, ()):
            if not (line.source.extra or line.source.notes):
                continue
            cells = (line.cells.get(heading) for heading in headings)
            if key := row_key(shown_value(cell) if cell else "" for cell in cells):
                for heading, text in line.source.extra.items():
                    yield Beside(line.source, sheet, key, heading, text)
                for heading, text in line.source.notes.items():
                    yield Beside(line.source, sheet, key, heading, text, on_cell=True)
