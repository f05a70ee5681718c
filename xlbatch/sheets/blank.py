"""The blank roster workbook: where to start, and a roster to fill in."""

from dataclasses import replace

from xlbatch.roster.job import Job
from xlbatch.sheets import inputs
from xlbatch.sheets.page import Column, Page
from xlbatch.sheets.roster import ROSTER
from xlbatch.trade import columns as trade

ROWS = 55  # empty rows drawn
_GIVEN_LATER = ("Garment no.", "First name", "Last name", "Done so far")  # columns a new list does not need

STEPS = (
    ("1", "Open Roster and write one row for each garment. Only Size must be filled in. Who is what gets printed, "
     "unless Print name says otherwise; Group keeps a household, team or class together."),
    ("2", "Leave the other sheets as they are, or change what differs: names, dates and prices on Job, what is printed "
     "and where on Designs, your garments, films and press on the sheets named so."),
    ("3", "Save this workbook and drop it on the program. Your file is never changed."),
    ("4", "Open the plan that now lies beside it. Its first sheet says what was understood, what to do next and which "
     "few sheets to print."),
    ("5", "Buy, cut, weed, press, hand out. Write what happened into the plan's Press log and drop the plan itself: "
     "the next plan covers only what is still to do."),
)  # fmt: skip
WORDS = (
    ("Blank", "a garment as it is bought, with nothing on it"),
    ("Film", "the colored material that is cut and pressed on; it comes on a clear carrier sheet"),
    ("Decal", "one piece of film for one garment: a drawing, a name, a number"),
    ("Design", "the decals that go together on a garment"),
    ("Run", "what is cut in one go, from one length of film"),
    ("Strip", "part of a run: the decals of a few garments, cut off straight"),
    ("Batch", "those few garments, weeded and pressed together"),
    ("Weed", "to pick away the film that does not belong to a decal"),
    ("Cap height", "the height of a capital letter"),
)
_COLUMNS = (Column("", 1.0, ("text", "strong", "top")), Column("", 6.5, ("text", "top")))


def blank_columns(_job: Job) -> tuple[trade.Column, ...]:
    """The columns of a new list."""
    return tuple(column for column in trade.columns("Roster") if column.heading not in _GIVEN_LATER)


BLANK_ROSTER = replace(
    ROSTER,
    advice="One row a garment. Only Size must be filled in; every other blank cell gets what the Job sheet says.",
    columns=blank_columns,
)


def write_start(page: Page) -> None:
    """The five steps, and the words used."""
    page.lay_columns(_COLUMNS, base="form")
    page.title("Start here", "From a list of people to personalized garments, in five steps.")
    page.gap()
    for number, step in STEPS:
        page.record((number, step), "body large", least=36)
    page.gap()
    page.cells(["The words used", None], "section", least=24)
    for word, meaning in WORDS:
        page.record((word, meaning), least=16)
    page.sheet.print_area(0, 0, page.row - 1, page.last)


def write_roster(page: Page, job: Job) -> None:
    """Empty rows to fill in, with drop-downs; each heading's note gives an example."""
    inputs.write(BLANK_ROSTER, page, job, ())
    for _ in range(ROWS):
        page.record([None] * len(page.columns), least=16)
    for at, column in enumerate(blank_columns(job)):
        page.sheet.write_comment(page.head, at, f"For example: {column.example}", {"author": "", "y_scale": 0.5})
    page.end_table()
