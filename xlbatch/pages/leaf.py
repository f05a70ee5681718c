"""One sheet of pages that print at their true size: rows on a grid of eighths of an inch, each with its height set.

Nothing is fitted to the paper: spreadsheet programs drop the breaks of pages that are, and scale every one in its own
way. Pages are broken by hand within a budget of height, evenly, so that no page has a lone last row.
"""

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from io import BytesIO
from typing import NamedTuple

from xlsxwriter import Workbook

from xlbatch.how_far import alive
from xlbatch.pages.page_breaks import breaks
from xlbatch.pages.page_looks import (
    ACCENT,
    FINE,
    HEAVY,
    KEY,
    PLAIN,
    STRONG,
    THIN,
    TITLE,
    Look,
    Looks,
    Text,
    rich_height,
)
from xlbatch.paper.cell import printable
from xlbatch.paper.living_workbook import LivingSheet
from xlbatch.paper.measure import LINE, line_count, text_width
from xlbatch.paper.picture import Picture
from xlbatch.paper.style import FONT
from xlbatch.paper.widths import PAD

COLUMN = 9.0  # points: 12 dots of a screen, whole dots also where it shows letters enlarged by quarters
ACROSS = 60  # columns: 7 1/2 in
SIDE, TOP, BOTTOM, FOOTER = 0.35, 0.4, 0.5, 0.25  # margins in inches
SLACK = 0.985  # viewers draw rows up to 1 % higher than asked
HEIGHTS = {"Letter": (1, 11.0), "A4": (9, 11.69)}  # the workbook's own number for the paper; inches
CUSHION = 2.5  # points above and below text
INDENT = 10.0  # points that a cell's indent takes at most, in any program
WHERE_RESULTS_GO = "Results are typed in the plan"

Value = str | int | float | Decimal | tuple[Text, ...] | None


class Span(NamedTuple):
    """A cell `columns` wide and `down` rows high."""

    columns: int
    value: Value = None
    look: Look = PLAIN
    down: int = 1


class Under(NamedTuple):
    """Columns that a cell of a row above reaches down to."""

    columns: int


class Shown(NamedTuple):
    """A picture in a row, `left` and `top` points from the row's corner; drawn when the sheet is written."""

    draw: Callable[[], Picture]
    left: float
    top: float = 1.5


@dataclass(frozen=True)
class Row:
    """`joined`: on one page with the row after it; `begins` what stays on one page where that costs none: a batch;
    `part`: the row that began what it belongs to, said again on a page that begins with it."""

    height: float
    spans: Sequence[Span | Under]
    pictures: Sequence[Shown] = ()
    joined: bool = False
    starts_page: bool = False
    begins: bool = False
    part: "Row | None" = None

    @property
    def head(self) -> float:
        """Points of the row said again where a page begins with it."""
        return self.part.height if self.part else 0.0

    @property
    def again(self) -> "Row":
        """The row said again on a further page."""
        first, *others = self.spans
        if isinstance(first, Span) and isinstance(first.value, str):
            first = first._replace(value=f"{first.value}, continued")
        return Row(self.height, (first, *others))


class Leaf:
    """A sheet being filled from the top down, then written. `budget` is the height in points of what fits on a page."""

    def __init__(self, name: str, *, job: str, paper: str) -> None:
        self.name, self.job, self.paper = name, job, paper
        self.cushion = CUSHION
        self.number, height = HEIGHTS[paper]
        self.budget = (height - TOP - BOTTOM) * 72 * SLACK
        self.rows: list[Row] = []
        self.repeated = range(0)  # the rows that stand on every page
        self._new_page = False
        self._part: Row | None = None

    def title(self, tells: str, aside: str) -> None:
        """The sheet's title, with the job `aside`, and what whoever holds the page does."""
        rule = Look(TITLE, bold=True, bottom=HEAVY)
        self.row(26, Span(32, self.name, rule), Span(28, aside, rule.but(size=FINE, bold=False, align="right")))
        self.line(tells, STRONG.but(color=ACCENT))

    # rows

    def row(
        self,
        least: float,
        *spans: Span | Under,
        pictures: Sequence[Shown] = (),
        joined: bool = False,
        begins: bool = False,
    ) -> None:
        """One row, as high as its texts need and at least `least` points."""
        alive()
        height = max([least, *(self.needed(span) for span in spans if isinstance(span, Span) and span.down == 1)])
        part = None if begins else self._part
        self.rows.append(Row(round(height * 4) / 4, spans, pictures, joined, self._new_page, begins, part))
        self._new_page = False
        if begins:
            self._part = self.rows[-1]

    def needed(self, span: Span) -> float:
        """The height in points that a cell's text needs."""
        return _height(span, self.cushion)

    def line(self, text: Value, look: Look = PLAIN, least: float = 16, *, joined: bool = False) -> None:
        """One text across the page."""
        self.row(least, Span(ACROSS, text, look), joined=joined)

    def head(self, text: str, gap: float = 6.0) -> None:
        """The heading of a section, on one page with what follows."""
        self.row(gap, joined=True)
        self.line(text, Look(KEY, bold=True, color=ACCENT, bottom=THIN), 19, joined=True)

    def repeat(self, last: int = 1) -> None:
        """The last rows so far stand on every page; those before them on the first."""
        self.repeated = range(len(self.rows) - last, len(self.rows))

    def new_page(self) -> None:
        """The next row begins a page."""
        self._new_page = True

    def end_part(self) -> None:
        """The next row belongs to nothing begun before."""
        self._part = None

    # pages

    @property
    def starts(self) -> tuple[int, ...]:
        """The rows that begin a further page."""
        repeated = sum(self.rows[row_no].height for row_no in self.repeated)
        return breaks(self.rows, self.budget, self.budget - repeated)

    @property
    def printed(self) -> int:
        """How many pages it prints on."""
        return 1 + len(self.starts)

    @property
    def parts_whole(self) -> bool:
        """Whether no page begins within what a row begins, where there is such: a batch."""
        return all(self.rows[row_no].part is None for row_no in self.starts)

    def with_after(self, other: "Leaf") -> "Leaf":
        """This sheet with the rows of another below its own, as one sheet."""
        both = Leaf(self.name, job=self.job, paper=self.paper)
        both.rows, both.repeated = list(self.rows), self.repeated
        both.head(other.name)
        both.rows += other.rows[1:]
        return both

    # writing

    def write(self, workbook: Workbook, looks: Looks) -> None:
        """Adds the sheet to a workbook; locked, without a password."""
        sheet = workbook.add_worksheet(self.name)
        sheet.set_paper(self.number)
        sheet.set_portrait()
        sheet.set_margins(left=SIDE, right=SIDE, top=TOP, bottom=BOTTOM)
        sheet.center_horizontally()
        sheet.set_print_scale(100)
        sheet.hide_gridlines(2)
        sheet.protect()
        sheet.set_footer(_footer(self.job), {"margin": FOOTER})
        sheet.set_column_pixels(0, ACROSS - 1, round(COLUMN * 96 / 72))
        rows, starts = self.laid()
        for row_no, row in enumerate(rows):
            sheet.set_row(row_no, row.height)
            _write_row(sheet, looks, row_no, row)
        if self.repeated:
            sheet.repeat_rows(self.repeated.start, self.repeated.stop - 1)
        sheet.set_h_pagebreaks(starts)
        sheet.print_area(0, 0, len(rows) - 1, ACROSS - 1)

    def laid(self) -> tuple[list[Row], list[int]]:
        """The rows with those said again at the head of a page, and the rows that begin a further page."""
        rows, starts = list(self.rows), []
        for row_no in self.starts:
            starts.append(row_no + len(rows) - len(self.rows))
            if part := self.rows[row_no].part:
                rows.insert(starts[-1], part.again)
        return rows, starts


def _write_row(sheet: LivingSheet, looks: Looks, row_no: int, row: Row) -> None:
    alive()
    column = 0
    for span in row.spans:
        if isinstance(span, Span):
            _write_cell(sheet, looks, row_no, column, span)
        column += span.columns
    for shown in row.pictures:
        picture = shown.draw()
        at_column, left = divmod(shown.left, COLUMN)
        options = {
            "image_data": BytesIO(picture.png),
            "x_scale": picture.scale,
            "y_scale": picture.scale,
            "x_offset": left * 96 / 72,
            "y_offset": shown.top * 96 / 72,
            "object_position": 3,
            "description": picture.says,
        }
        sheet.insert_image(row_no, int(at_column), "picture.png", options)


def _write_cell(sheet: LivingSheet, looks: Looks, row: int, column: int, span: Span) -> None:
    look, value = looks.cell(span.look), span.value
    if span.columns > 1 or span.down > 1:
        framed = span.look.framed
        sheet.join(row, column, row + span.down - 1, column + span.columns - 1, look, framed=framed)
    parts = [part for part in value if part.text] if isinstance(value, tuple) else []
    if len(parts) == 1:
        part = parts[0]
        sheet.write_string(row, column, printable(part.text), looks.cell(span.look.but(size=part.size, bold=part.bold)))
    elif parts:
        fragments = [fragment for part in parts for fragment in (looks.part(part), printable(part.text))]
        sheet.write_rich_string(row, column, *fragments, look)
    elif isinstance(value, str):
        sheet.write_string(row, column, printable(value), look)
    elif isinstance(value, int | float | Decimal):
        sheet.write_number(row, column, float(value), look)
    elif span.look != PLAIN:
        sheet.write_blank(row, column, None, look)


def columns_for(texts: Iterable[str], size: float, *, bold: bool = False, least: int = 3, most: int = ACROSS) -> int:
    """The columns that the longest of some texts takes."""
    widest = max((text_width(text, size, bold) for text in texts), default=0.0)
    return max(least, min(most, columns_of(widest)))


def columns_of(width: float) -> int:
    """The columns that a text of this many points takes in one line."""
    return math.ceil((width + PAD + 1) / COLUMN)


def parts_width(parts: Iterable[Text]) -> float:
    """The width in points of a line of several sizes."""
    return sum(text_width(part.text, part.size, part.bold) for part in parts)


def _height(span: Span, cushion: float) -> float:
    """The height in points that a cell's text needs."""
    room = span.columns * COLUMN - PAD - span.look.indent * INDENT
    if isinstance(span.value, tuple):
        return rich_height(span.value, room) + cushion
    if isinstance(span.value, str) and span.value:
        lines = line_count(span.value, room, span.look.size, span.look.bold)
        return lines * span.look.size * LINE + cushion
    return 0.0


def _footer(job: str) -> str:
    """Job, sheet, where results go, page; the job's name short enough for a footer's 255 characters."""
    small = f'&"{FONT},Regular"&9 '
    bold = f'&"{FONT},Bold"&9 '
    return f"&L{small}{job[:60].replace('&', '&&')}&C{small}&A. {WHERE_RESULTS_GO}.&R{bold}Page &P of &N"
