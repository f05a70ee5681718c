"""The sheet writer, giving signs of life while it puts a workbook together, which takes seconds where there are many
rows: so the bar moves on, and the person can stop it. What it does most, it does in few steps."""

from functools import cache
from io import BytesIO
from typing import Any

from xlsxwriter import Workbook
from xlsxwriter.format import Format
from xlsxwriter.utility import xl_col_to_name
from xlsxwriter.worksheet import CellBlankTuple, CellNumberTuple, CellRichStringTuple, CellStringTuple, Worksheet

from xlbatch.how_far import alive

_PLAIN = (CellBlankTuple, CellNumberTuple, CellStringTuple, CellRichStringTuple)
_letters = cache(xl_col_to_name)
OFTEN = 50  # rows, between two signs of life


class LivingSheet(Worksheet):  # type: ignore[misc]  # carries no types
    """A sheet. Its cells are always named by numbers, so nothing has to look for an A1."""

    def __init__(self) -> None:
        super().__init__()
        self._blank = cache(CellBlankTuple)  # one for all blank cells of a look

    write_string, write_number = Worksheet._write_string, Worksheet._write_number

    def write_blank(self, row: int, column: int, _: None, look: Format) -> None:
        """A cell of which only the look is seen."""
        self._check_dimensions(row, column)
        self.table[row][column] = self._blank(look)

    def _write_rows(self) -> None:
        """The elements of all rows, each of which is given free once it is written; without the spans of their
        columns, which nothing needs (18.3.1.73)."""
        for place, row in enumerate(sorted({*self.table, *self.row_info, *self.comments})):
            if not place % OFTEN:
                alive()
            cells, properties = self.table.pop(row, None), self.row_info.get(row)
            if cells:
                self._write_row(row, None, properties)
                for column, cell in sorted(cells.items()):
                    self._write_cell(row, column, cell)
                self._xml_end_tag("row")
            elif row in self.row_info or row in self.comments:
                self._write_empty_row(row, None, properties)

    def _write_cell(self, row: int, col: int, cell: Any) -> None:
        """The element of one cell (ECMA-376, 18.3.1.4); without a look, or neither text nor number: as ever."""
        kind = type(cell)
        if not cell.format or kind not in _PLAIN:
            super()._write_cell(row, col, cell)
            return
        begin = f'<c r="{_letters(col)}{row + 1}" s="{cell.format._get_xf_index()}"'
        if kind is CellBlankTuple:
            self.fh.write(f"{begin}/>")
        elif kind is CellNumberTuple:
            self.fh.write(f"{begin}><v>{cell.number:.16G}</v></c>")
        else:  # by its place among the workbook's texts
            self.fh.write(f'{begin} t="s"><v>{cell.string}</v></c>')

    def join(self, row: int, column: int, last_row: int, last_column: int, look: Format, *, framed: bool) -> None:
        """Makes cells that no other range holds one blank cell; all of them have its look where it is `framed`, since
        each draws its own part of an edge."""
        self._check_dimensions(last_row, last_column)
        self.merge.append([row, column, last_row, last_column])
        blank = self._blank(look)
        for across in range(row, (last_row if framed else row) + 1):
            cells = self.table[across]
            for place in range(column, (last_column if framed else column) + 1):
                cells[place] = blank


class LivingWorkbook(Workbook):  # type: ignore[misc]
    """A workbook."""

    def __init__(self, file: BytesIO, options: dict[str, object]) -> None:
        super().__init__(file, options)
        self.worksheet_class = LivingSheet


class LivingBytes(BytesIO):
    """The file in memory. It stays open: after a failure the writer's unfinished archive is still ended in it."""

    def write(self, data: bytes) -> int:  # type: ignore[override]
        """Writes; not on where the person has stopped it."""
        alive()
        return super().write(data)

    def close(self) -> None:
        """Does nothing; the memory is given back with the object."""
