"""The input sheets, written back with every default filled in, so that they can be changed and dropped again."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import chain
from types import MappingProxyType
from typing import Any, Protocol

import pandas as pd

from xlbatch.job.job import Job, Settings
from xlbatch.job.source import Source, Unread
from xlbatch.paper.cell import Value, put, unbroken
from xlbatch.paper.page import Column, Page
from xlbatch.problems import Problem, Where
from xlbatch.sheets import input_cells
from xlbatch.trade import columns as trade

FIRST = 3  # the first row (from 0) of an input sheet's table: title, one line of advice, headings
SPARE_ROWS = 200  # rows below the table that offer the same choices
EXTRA = "extra"  # the kind of a column of the list's own, kept as it is
_WIDTHS = {
    EXTRA: 1.8,
    "text": 1.8,
    "size": 0.75,
    "list": 4.0,
    "prices": 1.2,
    "stock": 1.1,
    "rolls": 2.4,
    "features": 2.6,
    "pieces": 1.6,
}
_CHOSEN = ("text", "choice", "yes/no", "dots")  # kinds whose choices are words, not limits
LIST_LIMIT = 255  # characters of a drop-down's names or formula


class Read(Protocol):
    """A record that knows where it was read."""

    @property
    def source(self) -> Source: ...


@dataclass(frozen=True)
class Input:
    """One input sheet: its records, and which field of a record stands under which heading."""

    name: str
    advice: str
    records: Callable[[Job], tuple[Read, ...]]
    fields: Mapping[str, str]
    choices: Callable[[Job, Sequence[str]], Mapping[str, Iterable[str] | str]] = lambda _job, _headings: {}
    columns: Callable[[Job], tuple[trade.InputColumn, ...]] | None = None
    same: Mapping[str, Value] = field(default_factory=dict)  # what stands in every row under a heading
    hints: Mapping[str, str] = field(default_factory=dict)  # shown when a cell under the heading is chosen
    widths: Mapping[str, float] = field(default_factory=dict)  # inches, where not those of the column's kind
    not_used: Callable[[Job, Any], bool] = lambda _job, _record: False  # records that stand below a line

    def headings(self, job: Job) -> tuple[trade.InputColumn, ...]:
        """The sheet's columns, in order: its own, and those of the input that were not understood."""
        own = self.columns(job) if self.columns else trade.columns(self.name)
        extra = dict.fromkeys(name for row in self.rows(job) for name in row.source.extra)
        return (*own, *(trade.InputColumn(self.name, name, EXTRA, (), False, "", ()) for name in extra))

    def rows(self, job: Job) -> tuple[Read, ...]:
        """The records, and where they stood among them the rows that could not be used."""
        rows = list(self.records(job))
        for row in job.unread.get(self.name, ()):
            places = (place for place, earlier in enumerate(rows) if earlier.source.row > row.source.row)
            rows.insert(next(places, len(rows)), row)
        return tuple(rows)


Spots = Mapping[Where, tuple[tuple[int, int], ...]]  # a cell of the input: row and column from 0 in the returned sheet


def table(sheet: Input, job: Job) -> pd.DataFrame:
    """The sheet as a table."""
    columns = sheet.headings(job)
    rows = [[_value(sheet, column, record, job.settings) for column in columns] for record in sheet.rows(job)]
    headings = [input_cells.heading(column, job.settings) for column in columns]
    return pd.DataFrame(rows, columns=headings, dtype=object)


def spots(sheet: Input, job: Job) -> Spots:
    """Where each cell of the input that a record was read from stands on the returned sheet."""
    cells: dict[Where, tuple[tuple[int, int], ...]] = {}
    places = {column.heading: place for place, column in reversed(list(enumerate(sheet.headings(job))))}
    for row, record in enumerate(sheet.rows(job), FIRST):
        source = record.source
        first = {"": f"A{source.sheet_row}"} if source.row else {}
        for name, cell in chain(source.cells.items(), first.items()):
            where = Where(source.sheet, cell)
            if (not name and where not in cells) or name in places:
                cells[where] = (*cells.get(where, ()), (row, places.get(name, 0)))
    return cells


def write(sheet: Input, page: Page, job: Job, problems: Iterable[Problem]) -> None:
    """Writes the sheet, its doubtful cells colored and annotated."""
    frame = table(sheet, job)
    page.lay_columns(
        [_column(column, job.settings, sheet.widths) for column in sheet.headings(job)], frame, fill=frame.empty
    )
    page.title(sheet.name, sheet.advice)
    page.table(frame, line_above=_first_not_used(sheet, job))
    page.name_table(f"{sheet.name}_table".replace(" ", "_"))
    _offer_choices(sheet, page, job, len(frame))
    mark(page, frame, spots(sheet, job), problems, _noted(sheet, job))


def _noted(sheet: Input, job: Job) -> Mapping[tuple[int, int], str]:
    """People's notes on cells, by row and column of the sheet."""
    columns = {column.heading: place for place, column in enumerate(sheet.headings(job))}
    return {
        (row, columns[heading]): text
        for row, record in enumerate(sheet.rows(job), FIRST)
        for heading, text in record.source.notes.items()
        if heading in columns
    }


def _first_not_used(sheet: Input, job: Job) -> int:
    """The place of the first record that the job does not use; 0 where it uses all."""
    rows = enumerate(sheet.rows(job))
    return next((row_no for row_no, row in rows if not isinstance(row, Unread) and sheet.not_used(job, row)), 0)


def mark(
    page: Page,
    frame: pd.DataFrame,
    where: Spots,
    problems: Iterable[Problem],
    noted: Mapping[tuple[int, int], str] = MappingProxyType({}),
) -> None:
    """Colors the cells problems are about, and says in a note what is wrong with each, below people's own notes."""
    problems_of: dict[tuple[int, int], list[Problem]] = {}
    for problem in problems:
        for spot in where.get(problem.where, ()):
            problems_of.setdefault(spot, []).append(problem)
    for (row, column), them in problems_of.items():
        level = min((problem_.level for problem_ in them), key=("stop", "check", "note").index)
        look = page.formats.get("cell", *page.columns[column].looks, level)
        value: Any = frame.iat[row - FIRST, column]
        put(page.sheet, row, column, value, look)
        own = [noted[row, column]] if (row, column) in noted else []
        says = "\n".join([*own, *(f"{problem_.level}: {advice(problem_)}" for problem_ in them)])
        page.sheet.write_comment(row, column, says, {"x_scale": 2, "y_scale": 1.2, "author": ""})
    for row, column in noted.keys() - problems_of.keys():
        page.sheet.write_comment(row, column, noted[row, column], {"author": ""})


def advice(problem: Problem) -> str:
    """What is wrong and what to do, without the place."""
    hint = f" Did you mean {problem.suggestion}?" if problem.suggestion else ""
    return unbroken(f"{problem.wrong} {problem.todo}{hint}")


def offer(
    page: Page,
    row: int,
    column: int,
    rows: int,
    source: Iterable[str] | str,
    *,
    strict: bool = False,
    hint: str = "",
) -> None:
    """A drop-down on `rows` cells: names, or a formula for the range that holds them. Not `strict`: others too.
    `hint` is shown when a cell is chosen; where there is nothing to offer, it stands alone."""
    names = source if isinstance(source, str) else list(dict.fromkeys(source))
    length = len(names if isinstance(names, str) else ",".join(names))
    told: dict[str, Any] = {"input_message": hint} if hint else {}
    if 0 < length <= LIST_LIMIT and (isinstance(names, str) or not any("," in name for name in names)):
        told |= {"validate": "list", "source": names, "show_error": strict}
    elif hint:
        told["validate"] = "any"
    if told:
        page.sheet.data_validation(row, column, row + rows - 1, column, told)


def below(sheet: str, column: str = "A") -> str:
    """A formula for the filled cells of an input sheet's column, those added later among them."""
    cells = f"{sheet}!${column}${FIRST + 1}"
    return f"=OFFSET({cells},0,0,MAX(1,COUNTA({cells}:${column}${FIRST + SPARE_ROWS})),1)"


def _offer_choices(sheet: Input, page: Page, job: Job, rows: int) -> None:
    columns = sheet.headings(job)
    own = sheet.choices(job, [column.heading for column in columns])
    for place, column in enumerate(columns):
        source = own.get(column.heading) or (column.choices if column.kind in _CHOSEN else ())
        strict, hint = column.kind in ("choice", "yes/no"), sheet.hints.get(column.heading, "")
        offer(page, FIRST, place, rows + SPARE_ROWS, source, strict=strict, hint=hint)


def _column(column: trade.InputColumn, settings: Settings, widths: Mapping[str, float]) -> Column:
    worded = column.kind in _WIDTHS or column.kind in ("choice", "yes/no", "paid")
    look = "text" if worded else "count" if column.kind == "temperature" else "number"  # whole degrees are shown
    width = widths.get(column.heading, _WIDTHS.get(column.kind, 1.0))
    return Column(input_cells.heading(column, settings), width, (look,))


def _value(sheet: Input, column: trade.InputColumn, record: Any, settings: Settings) -> Value:
    unclear: Mapping[str, str] = getattr(record, "unclear", {})
    if column.kind == EXTRA:
        extra: Mapping[str, str] = record.source.extra
        return extra.get(column.heading)
    if column.heading in unclear or isinstance(record, Unread):
        return unclear.get(column.heading)
    if column.heading in sheet.same:
        return sheet.same[column.heading]
    return input_cells.value(column.kind, getattr(record, sheet.fields[column.heading]), settings)
