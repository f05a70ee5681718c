"""One sheet being written, from the top down: title lines, tables, pictures, and how it prints."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from io import BytesIO
from types import MappingProxyType
from typing import NamedTuple

import pandas as pd
from xlsxwriter import Workbook
from xlsxwriter.format import Format
from xlsxwriter.utility import xl_range_abs, xl_rowcol_to_cell
from xlsxwriter.worksheet import CellNumberTuple, Worksheet

from xlbatch.how_far import alive
from xlbatch.paper.cell import Formula, Link, Value, printable, put
from xlbatch.paper.measure import LINE, text_height
from xlbatch.paper.paging import Paper, rows_that_begin_pages
from xlbatch.paper.picture import Picture
from xlbatch.paper.style import BODY, SMALL, Formats
from xlbatch.paper.widths import PAD, filled, least_width, own_width

CUSHION = 2.75  # points above and below


@dataclass(frozen=True)
class Column:
    """A column of a table: heading, width in inches, the looks of its cells. `outside`: right of the printed area;
    `whole`: as wide as its longest text, so that none is wrapped."""

    heading: str
    width: float
    looks: tuple[str, ...] = ("text",)
    outside: bool = False
    whole: bool = False


def tabled(columns: Sequence[Column], rows: Iterable[Sequence[Value]]) -> pd.DataFrame:
    """Rows as a table with these columns' headings."""
    return pd.DataFrame(list(rows), columns=[column.heading for column in columns], dtype=object)


def _plain(value: Value) -> Value:
    return value.text if isinstance(value, Link) else value


class _Cell(NamedTuple):
    """How a cell looks; the room in it and its letters' size, in points; whether its row grows with its text."""

    looks: tuple[str, ...]
    format: Format
    room: float
    size: float
    bold: bool
    measured: bool


class Page:
    """A sheet written row by row. Rows and columns count from 0, heights are in points."""

    def __init__(self, workbook: Workbook, sheet: Worksheet, formats: Formats, paper: Paper) -> None:
        self.workbook, self.sheet, self.formats, self.paper = workbook, sheet, formats, paper
        self.row = 0
        self.heights: list[float] = []
        self.columns: Sequence[Column] = ()
        self.widths: list[float] = []
        self.head = self.end = 0  # the heading row and the last row of the table
        self.starts: tuple[int, ...] = ()  # the rows that begin a further page
        self.records: list[Sequence[Value]] = []  # the rows of the table, as they were written
        self.placed: dict[tuple[int, int], Value] = {}  # what is in no row of the table, by row and column from 1
        self.base = "cell"
        self._looks: dict[tuple[tuple[str, ...], tuple[tuple[str, str], ...]], Sequence[_Cell]] = {}

    # columns

    def lay_columns(
        self, columns: Sequence[Column], frame: pd.DataFrame | None = None, *, fill: bool = True, base: str = "cell"
    ) -> None:
        """Sets the columns' widths: with `fill` the printed ones share the paper's width, else each is as wide as its
        cells need, up to its own width. `base` is the look every record starts from."""
        self.columns, self.base = columns, base
        self._looks.clear()
        texts = [
            [] if frame is None else self._shown(frame.iloc[:, no], column.looks) for no, column in enumerate(columns)
        ]
        fonts = [(self.formats.size(*c.looks), bool({"strong", "money"} & {*c.looks})) for c in columns]
        least = [
            least_width(c.heading, text, *font, whole=c.whole)
            for c, text, font in zip(columns, texts, fonts, strict=True)
        ]
        most = [column.width * 72 for column in columns]
        self.widths = [own_width(a, b, text, *font) for a, b, text, font in zip(least, most, texts, fonts, strict=True)]
        if fill:
            printed = [place for place, column in enumerate(columns) if not column.outside]
            shared = filled([most[place] for place in printed], [least[place] for place in printed], self.paper.width)
            self.widths[: len(printed)] = shared
        for number, width in enumerate(self.widths):
            self.sheet.set_column_pixels(number, number, int(width * 96 / 72))

    def _shown(self, values: Iterable[Value], looks: tuple[str, ...]) -> list[str]:
        """What is shown of some cells, each text once."""
        return list(dict.fromkeys(self.formats.shown(value, *looks) for value in values))

    def add_column(self, column: Column) -> None:
        """One more column at the right, of its own width."""
        self.columns = (*self.columns, column)
        self.widths.append(column.width * 72)
        self.sheet.set_column_pixels(len(self.columns) - 1, len(self.columns) - 1, int(column.width * 96))
        self._looks.clear()

    @property
    def last(self) -> int:
        """The last printed column."""
        return max(number for number, column in enumerate(self.columns) if not column.outside)

    @property
    def printed(self) -> int:
        """How many pages it prints on."""
        return 1 + len(self.starts)

    @property
    def room(self) -> float:
        """The width in points of the printed columns."""
        return sum(self.widths[: self.last + 1])

    # lines

    def line(self, text: Value, *looks: str, least: float = 0.0) -> int:
        """One text across the page, in one wide cell. Returns its row."""
        size, bold = self.formats.size(*looks), "title" in looks or "strong" in looks
        height = text_height(self.formats.shown(text), self.room - PAD, size, bold)
        row = self._next(max(height + 2, least))
        self.write(row, 0, text, *looks, across=self.last + 1)
        return row

    def title(self, text: str, *leads: str) -> None:
        """The sheet's title and the lines that say what to do with it."""
        self.line(text, "title", least=26)
        for lead in leads:
            self.line(lead, "lead")

    def gap(self, height: float = 8.0) -> int:
        """An empty row. Returns it."""
        return self._next(height)

    def cells(self, values: Iterable[Value], *looks: str, least: float = 0.0) -> int:
        """One row of cells from the first column on, all with the same looks. Returns its row."""
        row = self._next(least or self.formats.size(*looks) * 1.5)
        for column, value in enumerate(values):
            self.write(row, column, value, *looks)
        return row

    def write(self, row: int, column: int, value: Value, *looks: str, across: int = 1) -> None:
        """Writes, or writes anew, one cell; one as wide as `across` columns."""
        if across > 1:
            self.sheet.merge_range(row, column, row, column + across - 1, "", self.formats.get(*looks))
        self._place(row, column, value)
        put(self.sheet, row, column, value, self.formats.get(*looks))

    def _place(self, row: int, column: int, value: Value) -> None:
        if self.base == "form" or row <= self.head or not self.head or row > self.end > 0:
            self.placed[row + 1, column + 1] = _plain(value)

    def name_cell(self, name: str, row: int, column: int) -> None:
        """Gives a cell a name that formulas on any sheet may use."""
        cell = xl_rowcol_to_cell(row, column, row_abs=True, col_abs=True)
        self.workbook.define_name(name.replace(" ", "_"), f"='{self.sheet.get_name()}'!{cell}")

    def name_table(self, name: str) -> None:
        """Gives the table, headings included, a name that formulas may use."""
        cells = xl_range_abs(self.head, 0, max(self.end, self.head + 1), len(self.columns) - 1)
        self.workbook.define_name(name.replace(" ", "_"), f"='{self.sheet.get_name()}'!{cells}")

    # tables

    def heading(self) -> None:
        """The heading row of a table of this page's columns."""
        names = [column.heading for column in self.columns]
        heights = (text_height(name, width - PAD, SMALL, True) for name, width in zip(names, self.widths, strict=True))
        self.head = self.row
        self.cells(names, "heading", least=max(heights) + CUSHION)

    def record(
        self, values: Sequence[Value], *looks: str, least: float = 0.0, also: Mapping[str, str] = MappingProxyType({})
    ) -> int:
        """One row of the table, as high as its longest text needs. Returns its row.

        `looks` are further looks of all its cells, `also` a further look of the cell under a heading."""
        self.records.append([_plain(value) for value in values])
        cells = self._cells(looks, tuple(also.items()))
        heights = [
            text_height(self.formats.shown(value, *cell.looks), cell.room, cell.size, cell.bold)
            for value, cell in zip(values, cells, strict=True)
            if cell.measured and isinstance(value, (str, Formula, Link))
        ]
        row = self._next(max(max(heights, default=BODY * LINE) + CUSHION, least))
        for column, (value, cell) in enumerate(zip(values, cells, strict=True)):
            self._place(row, column, value)
            put(self.sheet, row, column, self._placed(value, row) if isinstance(value, Formula) else value, cell.format)
        return row

    def _cells(self, looks: tuple[str, ...], also: tuple[tuple[str, str], ...]) -> Sequence[_Cell]:
        """The cells of a record, so far as all such records' are alike."""
        if (looks, also) not in self._looks:
            more = dict(also)
            cells = []
            for column, width in zip(self.columns, self.widths, strict=True):
                own = (self.base, *column.looks, *looks, *filter(None, [more.get(column.heading)]))
                room, size = width - PAD - self.formats.indent(*own), self.formats.size(*own)
                cells.append(_Cell(own, self.formats.get(*own), room, size, "strong" in own, "box" not in own))
            self._looks[looks, also] = cells
        return self._looks[looks, also]

    def banner(self, strong: str, text: str, look: str) -> int:
        """A row of the table that holds one text running across it, its start in bold."""
        row, looks = self._next(self.formats.size(look) * LINE), self.formats.get(look, *["strong"] * bool(strong))
        self.placed[row + 1, 1] = strong + text
        for column in range(self.last + 1):
            put(self.sheet, row, column, None if column else strong or text, looks)
        if strong and text:
            parts = (self.formats.get(look, "strong"), strong, self.formats.get(look), printable(text))
            self.sheet.write_rich_string(row, 0, *parts, self.formats.get(look))
        return row

    def table(self, frame: pd.DataFrame, *, least: float = 0.0, line_above: int = 0) -> None:
        """A whole table under its heading row; the frame's columns are the headings. A heavy line stands above the
        record of that number, where it is not 0."""
        self.heading()
        for row_no, values in enumerate(frame.itertuples(index=False, name=None)):
            self.record(values, *["line above"] * (0 < row_no == line_above), least=least)
        self.end_table()

    def end_table(self, blocks: Sequence[int] = ()) -> None:
        """Makes the rows since the heading a table: filters, headings on every page and always in view. Pages break
        between its rows, or between `blocks`, given by their first rows."""
        self.end = self.row - 1
        self.sheet.autofilter(self.head, 0, self.end, len(self.columns) - 1)
        self.sheet.repeat_rows(self.head)
        self.sheet.freeze_panes(self.head + 1, 0)
        self.sheet.print_area(0, 0, self.end, self.last)
        self.break_pages(blocks or range(self.head + 1, self.row), repeated=self.heights[self.head])

    def links(self, heading: str, targets: Iterable[Link | None]) -> None:
        """Makes the table's cells under a heading, row by row, lead to `targets`; they keep what they hold."""
        column = self.at(heading)
        look = self.formats.get(self.base, *self.columns[column].looks, "link")
        for row, target in enumerate(targets, self.head + 1):
            if target is None:
                continue
            held = self.sheet.table[row][column]
            self.sheet.write_url(row, column, target.target, look, target.text)
            if isinstance(held, CellNumberTuple):
                self.sheet.write_number(row, column, held.number, look)

    def below(self, heading: str) -> str:
        """The range of this table's cells under a heading, for a formula ($F$5:$F$16)."""
        column = self.at(heading)
        return str(xl_range_abs(self.head + 1, column, max(self.end, self.head + 1), column))

    def at(self, heading: str) -> int:
        """The place of a heading's column."""
        return next(number for number, column in enumerate(self.columns) if column.heading == heading)

    # pages and pictures

    def break_pages(self, starts: Sequence[int], *, repeated: float = 0.0) -> None:
        """Breaks pages so that no block is split that fits on one; `starts` are the blocks' first rows, `repeated`
        the headings' height. Where a sheet is wider than the paper, it is printed smaller and more fits on a page."""
        room = self.paper.height * max(1.0, self.room / self.paper.width)
        self.starts = rows_that_begin_pages(self.heights, starts, room, repeated)
        self.sheet.set_h_pagebreaks(list(self.starts))

    def picture(
        self, row: int, column: int, picture: Picture, *, left: float = 3.0, top: float = 3.0, exact: bool = False
    ) -> None:
        """A picture at a cell, `left` and `top` points from its corner; `exact`: it keeps its size whatever they do."""
        options = {
            "image_data": BytesIO(picture.png),
            "x_scale": picture.scale,
            "y_scale": picture.scale,
            "x_offset": left * 96 / 72,
            "y_offset": top * 96 / 72,
            "object_position": 3 if exact else 1,
            "description": picture.says,
        }
        self.sheet.insert_image(row, column, "picture.png", options)

    def _placed(self, formula: Formula, row: int) -> Formula:
        """The formula with this row's cells in place of the headings."""
        places = {column.heading: xl_rowcol_to_cell(row, place) for place, column in enumerate(self.columns)}
        return Formula(formula.text.format_map(places), formula.value)

    def _next(self, height: float) -> int:
        alive()
        height = min(round(height * 4) / 4, 400.0)
        self.sheet.set_row(self.row, height)
        self.heights.append(height)
        self.row += 1
        return self.row - 1
