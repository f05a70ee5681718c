"""What people wrote beside the rows of a plan's own sheets."""

from typing import Any

from xlbatch.files.raw import Raw
from xlbatch.job.source import Source
from xlbatch.roster.written_beside import read_beside
from xlbatch.tables.line import Line, Units


def line(sheet: str, cells: dict[str, object], **written: Any) -> Line:
    raw = {heading: Raw(value) for heading, value in cells.items()}
    return Line(sheet, Source(sheet, 2, **written), {}, raw, {}, Units())


def test_columns_of_ones_own_and_notes_are_read_with_what_their_row_is_called() -> None:
    seat, note = {"Seat": "4A"}, {"Cut": "left box"}
    lines = {
        "Money": [
            line("Money", {"Garment no.": 1}, extra=seat),
            line("Money", {"Garment no.": 2}),
            line("Money", {"Who": "Everyone"}, extra=seat),  # which row it is no one can tell
        ],
        "Cut list": [
            line("Cut list", {"Film": "Black smooth", "Strip": 3, "Run": 2}, extra=seat, notes=note),
            line("Cut list", {"Film": "Gold", "Strip": 1}, notes=note),
        ],
        "Roster": [line("Roster", {"Garment no.": 1}, extra=seat)],
    }
    told = [(it.sheet, it.key, it.heading, it.text, it.on_cell) for it in read_beside(lines)]
    assert told == [
        ("Cut list", "Black smooth · 2 · 3", "Seat", "4A", False),
        ("Cut list", "Black smooth · 2 · 3", "Cut", "left box", True),
        ("Cut list", "Gold · 1", "Cut", "left box", True),
        ("Money", "1", "Seat", "4A", False),
    ]
