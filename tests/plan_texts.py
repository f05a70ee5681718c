"""Small jobs whose plans are kept as text, cell by cell, in tests/as_written/: whatever changes in a returned sheet is
seen as a line. To look at a change and keep it: python -m tests.plan_texts, then git diff.

Left out: what a run differs by (its time), the rows of trade tables that no one typed, the hidden memory, and what a
picture shows.
"""

import html
import re
import tempfile
import zipfile
from collections.abc import Iterator, Mapping
from datetime import date, datetime, time
from pathlib import Path

from openpyxl.utils import get_column_letter
from python_calamine import CalamineWorkbook

from tests.workbooks import Rows, write_workbook
from xlbatch.pages.write_pages import write_pages
from xlbatch.plan import Plan
from xlbatch.roster.read import Reading, read
from xlbatch.run import make_plan
from xlbatch.sheets.write import write_plan

FOLDER = Path(__file__).parent / "as_written"
NOW = datetime(2026, 5, 4, 9, 30)
LEFT_OUT = ("Garments", "Film", "Positions", "Work times", "Fonts to choose from", "Kept by the program")
Sheets = Mapping[str, Rows]

JOBS: Mapping[str, Sheets] = {
    # a plate too small for the numbers, films of three heats, borders, a sleeve, a V, money by own cost, two presses
    "relay": {
        "Roster": (
            ("Who", "Group", "Garment", "Size", "Color", "Design", "Print name", "Number", "Paid"),
            ("Ana Quill", "Alder", "Crew-neck tee", "M", "navy", "Team", "QUILL", "07", 10),
            ("Bo Rusk", "Alder", "V-neck tee", "L", "navy", "Team", "RUSK", "11", None),
            ("Cy Tarn", "Birch", "Crew-neck tee", "Youth M", "red", "Team", "TARN", "7", "yes"),
            ("Di Vole", "Birch", "Crew-neck tee", "2XL", "red", "Coach", None, None, 40),
            ("Ed Wick", "Birch", "Crew-neck tee", "Huge", "red", "Coach", None, None, None),
        ),
        "Designs": (
            ("Design", "Decal", "What", "Text", "Film", "Layer", "Position", "Height", "Widest", "Outline film",
             "Outline width"),
            ("Team", "Back name", "print name", None, "White smooth", 1, "back name", "2 in", "11 in"),
            ("Team", "Back number", "number", None, "Gold glitter", 1, "back number", "8 in", "11 in", "Black smooth",
             "1/8 in"),
            ("Coach", "Chest", "text", "COACH", "White stretch", 1, "left chest", "1 in", "3 in"),
            ("Coach", "Sleeve", "text", "RELAY", "White smooth", 1, "left sleeve", "1 in", "3 in"),
        ),
        "Garments": (
            ("Garment", "Size", "Price", "On hand"),
            ("Crew-neck tee", "M", "1 = 4.20; 12 = 3.60", "navy = 1"), ("Crew-neck tee", "2XL", 5.15, None),
            ("Crew-neck tee", "Youth M", 3.85, None), ("V-neck tee", "L", 4.75, None),
        ),
        "Film": (
            ("Film", "Rolls sold", "On hand"), ("White smooth", "1 yd = 6.25; 5 yd = 24.00", "12 in x 20 in"),
            ("Gold glitter", "1 yd = 9.50", None), ("Black smooth", "1 yd = 6.25", None),
            ("White stretch", "1 yd = 8.00", None),
        ),
        "Press": (("Press", "Kind", "Plate width", "Plate depth", "Hottest", "Cover", "Overlap"),
                  ("Small plate", "hand-held plate", "9 in", "9 in", "390 °F", "cover sheet", "1 in")),
        "Job": (
            ("Setting", "Value"), ("Job name", "Relay night"), ("Price by", "own cost"), ("Labor per hour", 18),
            ("Margin or fixed price", "12.5 %"), ("Supplies per garment", 0.45), ("Price rounding", 0.25),
            ("People pressing", 2), ("Start", "9:15"), ("Needed by", "May 23, 2026"), ("Work days", "every day"),
            ("Spoiled film per 100", 0), ("Spoiled blanks per 100", 0),
        ),
    },
    # names alone with a line above them, by iron, in cm and °C on A4, one price for all, one paid too much
    "picnic": {
        "Roster": (
            ("Who", "Group", "Size", "Paid"), ("Mira Lund", "Lund", "M", 20), ("Odd Lund", "Lund", "2T", None),
            ("Pia Moe", "Moe", "Ladies L", 15), ("Rolf Moe", "Moe", "XL", "yes"),
        ),
        "Press": (("Press", "Kind", "Plate width", "Plate depth", "Hottest", "Cover", "Overlap"),
                  ("Iron", "iron", "20 cm", "11 cm", "200 °C", "cover sheet always", "2 cm")),
        "Job": (
            ("Setting", "Value"), ("Job name", "Picnic"), ("Shared line", "PICNIC"), ("Print", "first name"),
            ("Length unit", "cm"), ("Temperature unit", "°C"), ("Paper", "A4"), ("Currency", "kr"),
            ("Margin or fixed price", "15.00"), ("Test cut", "yes"), ("Mirror the cut files", "no"),
        ),
    },
}  # fmt: skip


def plan(sheets: Sheets, folder: Path) -> Plan:
    """A job's plan. Raises AssertionError where it cannot be read."""
    reading = read(write_workbook(folder / "list.xlsx", sheets))
    assert isinstance(reading, Reading)
    return make_plan(reading, 0, lambda _stage: None, NOW)


def texts(name: str, folder: Path) -> Mapping[str, str]:
    """What stands in a job's plan and in its pages to print, by the name of the file that keeps it: a sheet after the
    other, a line a row."""
    planned = plan(JOBS[name], folder)
    workbook, pages = folder / "list - plan.xlsx", folder / "list - to print.xlsx"
    write_plan(workbook, planned)
    write_pages(pages, planned, workbook.name)
    return {
        f"{name} plan.txt": "\n".join(_sheets(workbook, " | ")) + "\n",
        f"{name} to print.txt": "\n".join(_sheets(pages, "")) + "\n",
    }


def _sheets(path: Path, blank: str) -> Iterator[str]:
    """The sheets of a workbook; where `blank` is "", cells without anything are left out: pages have sixty a row."""
    book = CalamineWorkbook.from_path(path)
    with zipfile.ZipFile(path) as parts:
        for at, name in enumerate(book.sheet_names, 1):
            if name in LEFT_OUT:
                continue
            notes = _notes(parts.read(f"xl/worksheets/sheet{at}.xml").decode())
            yield f"\n== {name}"
            for down, row in enumerate(book.get_sheet_by_name(name).to_python(skip_empty_area=False), 1):
                refs = (f"{get_column_letter(across)}{down}" for across in range(1, len(row) + 1))
                cells = [_cell(value) + notes.get(ref, "") for value, ref in zip(row, refs, strict=True)]
                if any(cells):
                    yield " | ".join(cell for cell in cells if cell or blank).rstrip(" |")


def _notes(sheet: str) -> dict[str, str]:
    """What a cell holds beside its value: where its link leads, its formula. The writer's own XML, cell by cell."""
    notes = {
        ref: f" -> {html.unescape(to)}" for ref, to in re.findall(r'<hyperlink ref="(\w+)" location="([^"]*)"', sheet)
    }
    for ref, formula in re.findall(r'<c r="(\w+)"[^>]*><f>(.*?)</f>', sheet):
        notes[ref] = f"{notes.get(ref, '')}  [={html.unescape(formula)}]"
    return notes


def _cell(value: object) -> str:
    """A value, shortened to what a person could read."""
    if isinstance(value, datetime | date | time):
        return value.isoformat()
    if isinstance(value, float):
        return f"{value:.7g}"
    return str(value).replace("\n", " / ")


if __name__ == "__main__":
    for name in JOBS:
        with tempfile.TemporaryDirectory() as folder:
            for file, text in texts(name, Path(folder)).items():
                (FOLDER / file).write_text(text, encoding="utf-8")
