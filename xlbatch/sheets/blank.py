"""The blank roster workbook: where to start, and a roster to fill in."""

from collections.abc import Sequence
from dataclasses import replace

from xlsxwriter.utility import xl_range_abs, xl_rowcol_to_cell

from xlbatch.job.job import Job
from xlbatch.paper.cell import Formula, Link, Value
from xlbatch.paper.page import Column, Page
from xlbatch.pictures.steps_picture import HEIGHT, steps_picture
from xlbatch.roster.people import EXAMPLE_ROW
from xlbatch.sheets import inputs
from xlbatch.sheets.roster import ROSTER
from xlbatch.trade import columns as trade

ROWS = 110  # rows drawn, the example among them
COMPLETE = "Row complete?"
_GIVEN_LATER = ("Garment no.", "First name", "Last name", "Done so far")  # columns a new list does not need
_WIDTHS = {
    "Who": 1.9,
    "Group": 1.5,
    "Garment": 1.3,
    "Size": 1.45,
    "Color": 0.8,
    "Design": 0.8,
    "Number": 0.7,
    "Note": 1.6,
}
COUNTED = 1_000  # rows the title counts

KEEP_HEADING = {
    "validate": "custom",
    "value": "=FALSE",
    "error_title": "Keep this heading",
    "error_message": "The program finds the column by its heading. Type into the rows below it.",
}

STEPS = (
    (Link("1  Roster", "Roster"), "Write one row for each garment, the first over the example row. Only Size must "
     "be filled in; Who is what gets printed, unless Print name says otherwise. Group keeps a household together."),
    (Link("2  Job", "Job"), "Change what differs, or leave it: names, dates and prices on Job; what is printed and "
     "where on Designs; your garments, films and press on the sheets named so. Save this workbook."),
    ("3  Drop", "Drop the saved workbook on the program. Your file is never changed."),
    ("4  Plan", "Open the plan that now lies beside it. Its first sheet says what was understood, what to do next and "
     "which few sheets to print."),
    ("5  Press", "Buy, cut, weed, press, hand out. Write what happened into the plan's Press log and drop the plan "
     "itself: the next plan covers only what is still to do."),
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
    ("Carrier sheet", "the clear sheet the film comes on; it holds a decal's pieces together until it is peeled off"),
    ("Peel", "to lift the carrier sheet off after pressing: hot, warm or cold, as the film's maker says"),
    ("Cover sheet", "a heat-proof sheet laid between the plate and a decal"),
    ("Trial", "the first step of a film on a fabric: pressed on a scrap first"),
    ("Spare", "bought or cut beyond what is needed, for what goes wrong"),
    ("Held back", "not planned until a problem in the list is put right"),
)
HINTS = {
    "Who": "Printed as typed, unless Print name says otherwise.",
    "Group": "Household, team or class: its garments are packed together.",
    "Garment": "Left empty: the usual garment; see the sheet Job.",
    "Size": "Needed. The list has the sizes of this row's garment.",
    "Color": "Left empty: the usual color; see the sheet Job.",
    "Design": "Left empty: the usual design; see the sheet Job.",
    "Print name": "Only where it is not the name under Who.",
    "Number": "As it is printed: 07 stays 07.",
    "How many": "Garments all alike. Left empty: 1.",
    "Note": "For you; not printed.",
    "Paid": "An amount, or yes.",
    "Confirmed": "yes, when they have said that name and size are right.",
    "Status": "Empty while it is still to be made.",
}
_COLUMNS = (Column("", 1.0, ("text", "strong", "top")), Column("", 6.5, ("text", "top")))


def blank_columns(_job: Job) -> tuple[trade.InputColumn, ...]:
    """The columns of a new list."""
    return tuple(column for column in trade.columns("Roster") if column.heading not in _GIVEN_LATER)


BLANK_ROSTER = replace(
    ROSTER,
    advice="One row a garment. Only Size must be filled in; every other empty cell gets what the sheet Job says. "
    "Paste, sort and add columns as you like.",
    columns=blank_columns,
    hints=HINTS,
    widths=_WIDTHS,
)


def write_start(page: Page) -> None:
    """The five steps with a picture, and the words used."""
    page.lay_columns(_COLUMNS, base="form")
    page.title("Start here", "From a list of people to personalized garments, in five steps.")
    row = page.gap(HEIGHT + 6)
    page.picture(row, 0, steps_picture(page.room - 6))
    for number, step in STEPS:
        row = page.record((number, step), "body large", least=36)
        if isinstance(number, Link):
            page.write(row, 0, number, "form", "body large", "strong", "top", "link")
    page.gap()
    page.cells(["The words used", None], "section", least=24)
    for word, meaning in WORDS:
        page.record((word, meaning), least=16)
    page.sheet.print_area(0, 0, page.row - 1, page.last)


def write_roster(page: Page, job: Job) -> None:
    """An example row and empty rows to fill in, with drop-downs, hints and live marks. Headings refuse other texts.

    The sheet is not locked: what is pasted into a locked one can't be edited afterwards, and no column added."""
    inputs.write(BLANK_ROSTER, page, job, ())
    columns = blank_columns(job)
    page.add_column(Column(COMPLETE, 1.2))
    page.write(page.head, len(columns), COMPLETE, "heading")
    size = [column.heading for column in columns].index("Size")
    for row in range(page.head + 1, page.head + 1 + ROWS):
        example = row == page.head + 1
        values = [EXAMPLE_ROW.get(column.heading) if example else None for column in columns]
        page.record([*values, _complete(row, size, len(columns), example)], least=16)
        page.sheet.set_row(row, None)  # as high as what is typed into it needs
    _count(page, columns)
    for place, column in enumerate(columns):
        page.sheet.write_comment(page.head, place, f"For example: {column.example}", {"author": "", "y_scale": 0.5})
    page.end_table()
    page.sheet.data_validation(page.head, 0, page.head, len(columns), KEEP_HEADING)


def _complete(row: int, size: int, columns: int, example: bool) -> Value:
    """Whether a row that holds anything has its size."""
    cells = f"{xl_rowcol_to_cell(row, 0)}:{xl_rowcol_to_cell(row, columns - 1)}"
    given = xl_rowcol_to_cell(row, size)
    sample = f'COUNTIF({cells},"{EXAMPLE_ROW["Note"]}")'
    left = f'IF(COUNTIF({cells},"{EXAMPLE_ROW["Who"]}"),"example","clear the Note")'
    says = f'IF(COUNTA({cells})=0,"",IF({sample},{left},IF({given}="","Size is missing","complete")))'
    return Formula(says, "example" if example else "")


def _count(page: Page, columns: Sequence[trade.InputColumn]) -> None:
    """The live count, in the title; rows put in or pasted later count too."""
    headings = [column.heading for column in columns]
    cells = {
        name: xl_range_abs(page.head + 1, headings.index(name), page.head + COUNTED, headings.index(name))
        for name in ("Who", "Size", "Note")
    }
    sample = f'COUNTIFS({cells["Who"]},"{EXAMPLE_ROW["Who"]}",{cells["Note"]},"{EXAMPLE_ROW["Note"]}")'
    missing = f'SUMPRODUCT(({cells["Who"]}<>"")*({cells["Size"]}=""))'
    says = f'"Roster: "&COUNTA({cells["Size"]})-{sample}&" with a size, "&{missing}&" without"'
    page.write(0, 0, Formula(says, "Roster: 0 with a size, 0 without"), "title")
