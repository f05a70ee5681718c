"""Small jobs whose plans are kept as text, cell by cell, in tests/as_written/: whatever changes in a returned sheet is
seen as a line. To look at a change and keep it: python -m tests.plan_texts, then git diff.

Left out: what a run differs by (its time), the rows of trade tables that no one typed, and the hidden memory.
"""

import tempfile
from collections.abc import Iterator, Mapping
from datetime import datetime
from functools import cache
from io import BytesIO
from pathlib import Path

from PIL import Image

from tests.book_texts import darkness, sheets_text
from tests.parts.more_drawings import more_drawings
from tests.parts.word_drawings import drawings
from tests.plan_book import PlanBook
from tests.small_texts import SMALL
from tests.tracing.pictures import PLAIN, drawn, saved
from tests.workbooks import Rows, write_workbook
from xlbatch.cutfiles.run_svg import cut_files
from xlbatch.messages.group_messages import group_files
from xlbatch.pages.write_pages import write_pages
from xlbatch.plan import Plan
from xlbatch.roster.read import Reading, blank_job, read
from xlbatch.run import make_plan
from xlbatch.sheets.write import write_blank, write_plan
from xlbatch.sign_up.write_sign_up import write_sign_ups
from xlbatch.what_if.changes_to_try import changes

FOLDER = Path(__file__).parent / "as_written"
NOW = datetime(2026, 5, 4, 9, 30)
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
            ("Setting", "Value"), ("Job name", "Relay night"), ("Sizes", "few sizes"), ("Price by", "own cost"),
            ("Labor per hour", 18),
            ("Margin or fixed price", "12.5 %"), ("Supplies per garment", 0.45), ("Price rounding", 0.25),
            ("People pressing", 2), ("Start", "9:15"), ("Needed by", "May 23, 2026"), ("Work days", "every day"),
            ("Spoiled film per 100", 0), ("Spoiled blanks per 100", 0),
        ),
    },
    # a drawing of two colors with a text for each group, an arch, hoods and polos, a league's rule, breaks in prices,
    # spares, a run cut in two; then what was done is written into the plan, a child joins, and it is dropped
    "camp": {
        "Roster": (
            ("Who", "Group", "Garment", "Size", "Color", "Design", "Number", "How many", "Paid"),
            ("Ada Brook", "Otters", "Hooded sweatshirt", "M", "gray", "Camp", None, 2, None),
            ("Ben Cole", "Otters", "Polo", "L", "navy", "Staff", "4", None, 12.5),
            ("Cleo Dahl", "Herons", "Crew-neck tee", "4T", "yellow", "Camp", None, None, None),
            ("Dev Esk", "Herons", "Crew-neck tee", "Youth L", "white", "Camp", None, None, "yes"),
            ("Eve Frey", "Herons", "Crew-neck tee", "3XL", "white", "Staff", "40", None, None),
        ),
        "Designs": (
            ("Design", "Decal", "What", "Artwork", "Artwork color", "Text", "Film", "Position", "Width", "Height",
             "Widest", "Arch"),
            ("Camp", "Tent", "artwork", "tent.svg", "#204080", None, "Royal smooth", "full front", "9 in"),
            ("Camp", "Moon", "artwork", "tent.svg", "#f0c000", None, "Gold glitter", "full front", "9 in"),
            ("Camp", "Ring", "text", None, None, "{Shared line}", "White smooth", "upper back", None, "1.5 in", "9 in",
             70),
            ("Staff", "Staff", "text", None, None, "STAFF", "White smooth", "right chest", None, "1 in", "3 1/2 in"),
            ("Staff", "Number", "number", None, None, None, "White smooth", "back number", None, "6 in", "10 in"),
        ),
        "Garments": (
            ("Garment", "Size", "Price"), ("Hooded sweatshirt", "M", 14.5), ("Polo", "L", "1 = 9.80; 2 = 9.10"),
            ("Crew-neck tee", "4T", 2.95), ("Crew-neck tee", "Youth L", 3.5), ("Crew-neck tee", "3XL", 6.25),
        ),
        "Film": (
            ("Film", "Rolls sold", "On hand"), ("Royal smooth", "1 yd = 6.25; 5 yd = 24.00", "12 in x 14 in"),
            ("Gold glitter", "1 yd = 9.50", None), ("White smooth", "1 yd = 6.25; 5 yd = 24.00", "12 in x 9 ft"),
        ),
        "Job": (
            ("Setting", "Value"), ("Job name", "Camp"), ("Shared line", "LAKE CAMP"),
            ("Number rule", "NCAA basketball to 2022-23"), ("Margin or fixed price", "20 %"),
            ("Spoiled blanks per 100", 10), ("Spoiled film per 100", 5), ("Second order costs", 18),
            ("Longest cut", "22 in"), ("Shirts per strip", 2), ("Needed by", "June 12, 2026"), ("Hours a day", 1),
            ("Work days", "Monday to Friday"), ("Worth changing the order", 0), ("Labor per hour", 15),
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
            ("Save film by interlocking", "yes"),
        ),
    },
    # words drawn as shapes, round an arc, with a border, over a bar, replaced for each group; a part with a film of its
    # own, one left out; a picture that is traced; sizes that nobody gave
    "crest": {
        "Roster": (
            ("Who", "Group", "Garment", "Size", "Color", "Design"),
            ("Ana Quill", "Alder", "Crew-neck tee", "M", "white", "Badge"),
            ("Bo Rusk", "Birchwood", "Crew-neck tee", "Youth M", "white", "Badge"),
            ("Cy Tarn", "Alder", "Crew-neck tee", "L", "yellow", "Ring"),
            ("Di Vole", "Birchwood", "Crew-neck tee", "XL", "white", "Border"),
            ("Ed Wick", "Birchwood", "Crew-neck tee", "2XL", "white", "Star"),
        ),
        "Designs": (
            ("Design", "Decal", "What", "Artwork", "Film", "Position", "Width", "Height", "Scale with size",
             "Artwork color"),
            ("Badge", "Badge", "artwork", "badge.svg", "Forest smooth", "full front", None, None, None, "#1f4630"),
            ("Ring", "Ring", "artwork", "ring.svg", "Navy smooth", "full back", None, "7 in", None),
            ("Border", "Border", "artwork", "border.svg", None, "full front", "9 in", None, "no"),
            ("Star", "Star", "artwork", "star.png", "Red smooth", "left sleeve", None, "2 in", "no"),
        ),
        "Drawing parts": (
            ("Artwork", "Part", "Use", "Replace by", "Font", "Fit", "Join", "Film"),
            ("badge.svg", "1", None, "{Group}", None, None, None, None),
            ("badge.svg", "2", None, "{Who}", "Anton", "box", None, None),
            ("badge.svg", "4", None, None, None, None, None, "Gold smooth"),
            ("ring.svg", "1", None, "The {Group}s", None, None, None, None),
            ("ring.svg", "3", "no", None, None, None, None, None),
            ("border.svg", "1", None, "{Group}", None, None, None, None),
        ),
    },
}  # fmt: skip

TENT = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 120 80" width="120" height="80">'
    '<path fill="#204080" d="M10 70 L50 10 C70 30 75 50 90 70 Z M45 70 L50 40 L58 70 Z"/>'
    '<circle fill="#f0c000" cx="95" cy="20" r="14"/>'
    '<text x="20" y="79" font-family="Archivo Black" font-size="9" fill="#204080">{Group}</text></svg>'
)
AGAIN = ("camp",)  # dropped again with what was done
_WIDE = 160  # signs kept of a line of a cut file: where an outline begins
NAMES = (*JOBS, *SMALL)
ASKED = ("picnic",)  # its people are sent a form, and the next list is begun


def plan(workbook: Path) -> Plan:
    """A workbook's plan. Raises AssertionError where it cannot be read."""
    return make_plan(_reading(workbook), 0, lambda _stage: None, NOW)


def _reading(workbook: Path) -> Reading:
    reading = read(workbook)
    assert isinstance(reading, Reading)
    return reading


def texts(name: str, folder: Path) -> Iterator[tuple[str, str]]:
    """What stands in a job's plan, its pages to print and its messages, after the name of the file that keeps it: a
    sheet after the other, a line a row."""
    if name in SMALL:
        yield from SMALL[name](folder)
        return
    for drawing, svg in _drawings().items():
        (folder / drawing).write_text(svg, encoding="utf-8")
    saved(drawn(PLAIN, width=300), folder / "star.png")
    reading = _reading(write_workbook(folder / "list.xlsx", JOBS[name]))
    planned = make_plan(reading, 0, lambda _stage: None, NOW)
    workbook, pages = folder / "list - plan.xlsx", folder / "list - to print.xlsx"
    write_plan(workbook, planned)
    yield f"{name} plan.txt", _text(workbook)
    write_pages(pages, planned, workbook.name)
    messages = (f"== {file}\n{_message(content)}\n" for file, content in group_files(planned).items())
    yield f"{name} to print.txt", _text(pages, blank="") + "".join(messages)
    tried = (f"{change.name} | {change.how}\n" for change in changes(reading, planned))
    yield f"{name} what if.txt", "".join(tried)
    files = (f"\n== {file.name}\n{file.text}" for file in cut_files(planned.layout, planned.job.settings))
    yield f"{name} cut files.txt", "".join(f"{line[:_WIDE]}\n" for file in files for line in file.splitlines())
    if name in AGAIN:
        again, pages, planned = folder / "list - plan 2.xlsx", folder / "again.xlsx", plan(_done(workbook))
        write_plan(again, planned)
        yield f"{name} plan 2.txt", _text(again)
        write_pages(pages, planned, again.name)
        yield f"{name} to print 2.txt", _text(pages, blank="")
    if name in ASKED:
        fresh = folder / "new.xlsx"
        write_blank(fresh, blank_job(fresh, metric=True))
        yield f"{name} new list.txt", _text(fresh)
        forms = write_sign_ups(folder / "form.xlsx", folder / "list.xlsx")
        yield f"{name} forms.txt", "".join(map(_text, forms))


@cache
def _drawings() -> Mapping[str, str]:
    made = {drawing.name: drawing.svg for drawing in (*drawings()[:5], *more_drawings())}
    return {"tent.svg": TENT, "badge.svg": made["badge"], "ring.svg": made["ring 00"], "border.svg": made["border 04"]}


def _text(workbook: Path, blank: str = " | ") -> str:
    return "".join(f"{line}\n" for line in sheets_text(workbook, blank))


def _message(content: str | bytes) -> str:
    """A text, or how large a picture is and how dark."""
    if isinstance(content, str):
        return content
    with Image.open(BytesIO(content)) as picture:
        return f"{picture.width}x{picture.height} {darkness(content)}"


def _done(workbook: Path) -> Path:
    """The plan filled in: run 1 is cut, a decal of it spoiled; the blanks have come but for one; the first garment is
    pressed; one paid, one changed her size, one joins, one answers a question."""
    book = PlanBook(workbook)
    book.cut("x", where=lambda row: row["Run"] == 1)
    book.cut("D003", "Spoiled", where=lambda row: "D003" in str(row["Decals"]))
    book.mark("Shopping list", "Ordered", "yes", lambda row: row["Kind"] == "blank")
    book.mark("Shopping list", "Arrived", "yes", lambda row: row["Garment"] == "Crew-neck tee")
    book.result("ok", lambda row: row["Garment no."] == 1)
    book.mark("Press log", "Note", "edge lifted", lambda row: row["Garment no."] == 2)
    book.mark("Money", "Paid", 20, lambda row: row["Garment no."] == 4)
    book.edit(6, "Size", "2XL")
    book.join(Who="Fin Gray", Group="Otters", Garment="Crew-neck tee", Size="Youth M", Color="white", Design="Camp")
    book.mark("Problems", "Answer", "ok", lambda row: row["Code"] == "number-illegal")
    book.book.save(workbook)
    return workbook


if __name__ == "__main__":
    for name in NAMES:
        with tempfile.TemporaryDirectory() as folder:
            for file, text in texts(name, Path(folder)):
                (FOLDER / file).write_text(text, encoding="utf-8")
