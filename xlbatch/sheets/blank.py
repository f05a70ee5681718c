"""The blank roster workbook: where to start, and a roster to fill in."""

from dataclasses import replace

from xlsxwriter.utility import xl_range_abs, xl_rowcol_to_cell

from xlbatch.roster.job import Job
from xlbatch.roster.people import EXAMPLE_ROW
from xlbatch.sheets import inputs
from xlbatch.sheets.cell import Formula, Value
from xlbatch.sheets.page import Column, Page
from xlbatch.sheets.roster import ROSTER
from xlbatch.sheets.steps_picture import HEIGHT, steps_picture
from xlbatch.trade import columns as trade

ROWS = 110  # rows drawn, the example among them
COMPLETE = "Row complete?"
_GIVEN_LATER = ("Garment no.", "First name", "Last name", "Done so far")  # columns a new list does not need
_ALLOWED = ("format_cells", "format_columns", "format_rows", "insert_rows", "delete_rows", "sort", "autofilter")

STEPS = (
    ("1", "Open Roster and write one row for each garment, over the example row. Only Size must be filled in; Who "
     "is what gets printed, unless Print name says otherwise. Group keeps a household or team together."),
    ("2", "Change what differs, or leave it: names, dates and prices on Job; what is printed and where on Designs; "
     "your garments, films and press on the sheets named so. Save this workbook."),
    ("3", "Drop it on the program. Your file is never changed."),
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
    ("Tack", "to press a lower layer just long enough to hold"),
    ("Cap height", "the height of a capital letter"),
)
HINTS = {
    "Who": "Printed as typed, unless Print name says otherwise.",
    "Group": "Household, team or class: its garments are packed together.",
    "Garment": "Blank: the usual garment of the Job sheet.",
    "Size": "Needed. The list has the sizes of this row's garment.",
    "Color": "Blank: the usual color of the Job sheet.",
    "Design": "Blank: the usual design of the Job sheet.",
    "Print name": "Only where it is not the name under Who.",
    "Number": "As it is printed: 07 stays 07.",
    "How many": "Garments all alike. Blank: 1.",
    "Note": "For you; not printed.",
    "Paid": "An amount, or yes.",
    "Status": "Blank while it is still to be made.",
}
_COLUMNS = (Column("", 1.0, ("text", "strong", "top")), Column("", 6.5, ("text", "top")))


def blank_columns(_job: Job) -> tuple[trade.Column, ...]:
    """The columns of a new list."""
    return tuple(column for column in trade.columns("Roster") if column.heading not in _GIVEN_LATER)


BLANK_ROSTER = replace(
    ROSTER,
    advice="One row a garment. Only Size must be filled in; every other blank cell gets what the Job sheet says.",
    columns=blank_columns,
    hints=HINTS,
)


def write_start(page: Page) -> None:
    """The five steps with a picture, and the words used."""
    page.lay_columns(_COLUMNS, base="form")
    page.title("Start here", "From a list of people to personalized garments, in five steps.")
    row = page.gap(HEIGHT + 6)
    page.picture(row, 0, steps_picture(page.room - 6))
    for number, step in STEPS:
        page.record((number, step), "body large", least=36)
    page.gap()
    page.cells(["The words used", None], "section", least=24)
    for word, meaning in WORDS:
        page.record((word, meaning), least=16)
    page.sheet.print_area(0, 0, page.row - 1, page.last)


def write_roster(page: Page, job: Job) -> None:
    """An example row and empty rows to fill in, with drop-downs, hints and live marks; only headings are locked."""
    inputs.write(BLANK_ROSTER, page, job, ())
    columns = blank_columns(job)
    page.add_column(Column(COMPLETE, 1.0))
    page.write(page.head, len(columns), COMPLETE, "heading")
    size = [column.heading for column in columns].index("Size")
    for row in range(page.head + 1, page.head + 1 + ROWS):
        example = row == page.head + 1
        values = [EXAMPLE_ROW.get(column.heading) if example else None for column in columns]
        page.record([*values, _complete(row, size, len(columns), example)], "unlocked", least=16)
    _count(page, len(columns))
    for at, column in enumerate(columns):
        page.sheet.write_comment(page.head, at, f"For example: {column.example}", {"author": "", "y_scale": 0.5})
    page.end_table()
    _protect(page)


def _complete(row: int, size: int, columns: int, example: bool) -> Value:
    """Whether a row that holds anything has its size."""
    cells = f"{xl_rowcol_to_cell(row, 0)}:{xl_rowcol_to_cell(row, columns - 1)}"
    given = xl_rowcol_to_cell(row, size)
    sample = f'COUNTIF({cells},"{EXAMPLE_ROW["Note"]}")*COUNTIF({cells},"{EXAMPLE_ROW["Who"]}")'
    says = f'IF(COUNTA({cells})=0,"",IF({sample},"example",IF({given}="","Size is missing","complete")))'
    return Formula(says, "example" if example else "")


def _count(page: Page, columns: int) -> None:
    """The live count, in the title."""
    marks = xl_range_abs(page.head + 1, columns, page.row - 1, columns)
    says = f'"Roster: "&COUNTIF({marks},"complete")&" rows complete, "&COUNTIF({marks},"Size*")&" without a size"'
    page.write(0, 0, Formula(says, "Roster: 0 rows complete, 0 without a size"), "title")


def _protect(page: Page) -> None:
    """Locks title and headings, without a password; everything a person fills in stays open."""
    for at, width in enumerate(page.widths):
        page.sheet.set_column_pixels(at, at, int(width * 96 / 72), page.formats.get("unlocked"))
    page.sheet.protect("", dict.fromkeys(_ALLOWED, True))
