"""What to ask about the columns of a list: those read by what stands in them, and those of consequence left unused."""

from collections.abc import Iterator, Mapping

from xlbatch.files.raw import Lie, Raw
from xlbatch.problems import Problem, Where, problem
from xlbatch.problems.phrases import phrase
from xlbatch.tables.cells import shown_value
from xlbatch.tables.heading_rows import Headings
from xlbatch.tables.roster_columns import NAMES, example

Rows = Mapping[int, Mapping[int, Raw]]


def column_questions(headings: Headings, rows: Rows, sheet: str, lie: Lie) -> Iterator[Problem]:
    """One question for each cause, with what the first row says."""
    ask = _Questions(headings, rows, sheet, lie)
    if headings.guessed:
        yield ask.guessed()
    for column, look in headings.unused.items() if headings.titles else ():
        yield ask.unused(column, look)
    for column, match in headings.matches.items():
        if match.twice and column not in headings.unused:
            yield ask.twice(column, match.meaning)


class _Questions:
    """The questions of one table of a list."""

    def __init__(self, headings: Headings, rows: Rows, sheet: str, lie: Lie) -> None:
        self.headings, self.rows, self.sheet, self.lie = headings, rows, sheet, lie
        self.column_of = {match.meaning: at for at, match in headings.matches.items() if not match.twice}
        self.first = next(iter(rows), 0)

    def guessed(self) -> Problem:
        """Which columns were read by what stands in them."""
        titled = any(self.headings.titles.get(column) for column in self.headings.guessed)
        read = ", ".join(self._read_as(column) for column in self.headings.guessed)
        if not self.headings.titles:
            left = (
                phrase("column not used", column=self._name(at), example=self._example(at))
                for at in self.headings.unused
            )
            read = ", ".join((read, *left))
        column = self.headings.guessed[0]
        title = self.headings.titles.get(column, "")
        found = title or self._example(column)
        code = "heading-by-content" if titled else "headings-missing"
        return problem(code, self._where(column), found, read=read)

    def unused(self, column: int, look: str) -> Problem:
        """A column that looks as if it said what is printed, a size, a number, or who gets one."""
        name, held, where = self._name(column), self._example(column), self._where(column)
        if look != "text":
            return problem(f"column-{look}-unused", where, name, column=name, example=held)
        row = next((row for row, cells in self.rows.items() if column in cells), self.first)
        return problem("print-unused", where, name, column=name, example=held, printed=self._name_in(row))

    def twice(self, column: int, meaning: str) -> Problem:
        """A column whose heading another column's won over: which, and what this one holds."""
        won, held = self._name(self.column_of[meaning]), self._example(column) or "nothing"
        return problem("heading-twice", self._where(column), self._name(column), meaning=meaning, won=won, holds=held)

    def _read_as(self, column: int) -> str:
        held = self._example(column)
        return phrase(
            "column read as", column=self._name(column), meaning=self.headings.matches[column].meaning, example=held
        )

    def _example(self, column: int) -> str:
        return example(column, list(self.rows.values()))

    def _name_in(self, row: int) -> str:
        given = (self.rows[row].get(self.column_of.get(meaning, 0)) for meaning in ("Print name", *NAMES))
        return next((shown_value(cell) for cell in given if cell), "nothing") if row in self.rows else "nothing"

    def _name(self, column: int) -> str:
        title = self.headings.titles.get(column, "")
        return f"{self.lie.column(column)[0].lower()}{self.lie.column(column)[1:]}" + (f" (“{title}”)" if title else "")

    def _where(self, column: int) -> Where:
        return Where(self.sheet, self.lie.cell(column, self.headings.row if self.headings.titles else self.first))
