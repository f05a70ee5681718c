"""Drawing parts: one row a part of each drawing, and beside them the drawing with its parts numbered."""

from collections.abc import Iterable, Mapping, Sequence

from xlbatch.files.beside import beside, folder_of
from xlbatch.job.job import Job
from xlbatch.paper.page import Page
from xlbatch.parts.looked import Looked, look_at
from xlbatch.pictures.parts_picture import SIDE, parts_picture
from xlbatch.problems import Problem
from xlbatch.sheets import inputs
from xlbatch.sheets.inputs import FIRST, Input, below
from xlbatch.trade.tables import table

_APART = 14.0  # points between two pictures
_ROW = 16.0  # points: a row is at least so high


def choices(_job: Job, _headings: Sequence[str]) -> Mapping[str, Iterable[str] | str]:
    """Drop-downs: the films of this workbook, the fonts known, and what a part is mostly replaced by."""
    return {
        "Film": below("Film"),
        "Font": [line["Font"] for line in table("fonts")],
        "Replace by": ["{Group}", "The {Group}s", "{Who}", "{First name}", "{Last name}", "{Print name}", "{Number}"],
    }


DRAWING_PARTS = Input(
    name="Drawing parts",
    advice="What each drawing is made of; its numbers are in the picture at the right. Replace by: the words that take "
    "the part's place, such as {Group}; Use no: it is left out. Then drop this workbook again.",
    records=lambda job: job.drawing_parts,
    fields={
        "Artwork": "artwork",
        "Part": "part",
        "Color": "color",
        "Text": "text",
        "Width": "width",
        "Height": "height",
        "Place": "place",
        "Use": "use",
        "Replace by": "replace_by",
        "Font": "font",
        "Fit": "fit",
        "Join": "join",
        "Film": "film",
    },
    choices=choices,
    widths={"Part": 0.5, "Color": 0.8, "Text": 1.2, "Place": 1.2, "Join": 0.5, "Artwork": 1.4},
)


def write_drawing_parts(page: Page, job: Job, problems: Iterable[Problem]) -> None:
    """The lines, and to their right a picture of each drawing."""
    inputs.write(DRAWING_PARTS, page, job, problems)
    column, row = len(DRAWING_PARTS.headings(job)) + 1, FIRST - 1
    for name in dict.fromkeys(line.artwork for line in job.drawing_parts):
        file = beside(folder_of(job.path), name)
        looked = look_at(file) if file else None
        if isinstance(looked, Looked):
            first = next(number for number, line in enumerate(job.drawing_parts, FIRST) if line.artwork == name)
            row = max(row, first - 1)
            page.picture(row, column, parts_picture(name, looked), exact=True)
            row += int((SIDE + _APART) / _ROW) + 1
