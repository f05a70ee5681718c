"""What to ask about the columns of a list: those read by what stands in them, and those whose heading another has."""

from collections.abc import Iterator, Mapping

from xlbatch.files.raw import Orientation, Raw
from xlbatch.problems import Problem, Where, problem
from xlbatch.problems.phrases import phrase
from xlbatch.tables.cells import shown_value
from xlbatch.tables.heading_rows import Headings
from xlbatch.tables.heading_words import asks_capitals, last_name_first
from xlbatch.tables.roster_columns import example
from xlbatch.trade.answer_words import answer

_MOSTLY = 0.6  # of the rows
_MOST_SHOWN = 10  # texts of a column

Rows = Mapping[int, Mapping[int, Raw]]


def column_questions(headings: Headings, rows: Rows, sheet: str, orientation: Orientation) -> Iterator[Problem]:
    """One question for each cause, with what the first row says."""
    ask = _Questions(headings, rows, sheet, orientation)
    if headings.guessed:
        yield ask.guessed()
    who = ask.column_of.get("Who", 0)
    if last_name_first(headings.titles.get(who, "")) and ask.is_without_commas(who):
        yield ask.last_names_first(who)
    yield from (*ask.names_joined(), *ask.not_capitals())
    for column, match in headings.matches.items():
        if match.twice and column not in headings.unused:
            yield ask.twice(column, match.meaning)


def column_name(column: int, title: str, orientation: Orientation) -> str:
    """What a column is called in a sentence: column C (“Swap to”)."""
    name = orientation.column(column)
    return name[0].lower() + name[1:] + (f" (“{title}”)" if title else "")


class _Questions:
    """The questions of one table of a list."""

    def __init__(self, headings: Headings, rows: Rows, sheet: str, orientation: Orientation) -> None:
        self.headings, self.rows, self.sheet, self.orientation = headings, rows, sheet, orientation
        self.column_of = {match.meaning: column for column, match in headings.matches.items() if not match.twice}
        self.first = next(iter(rows), 0)

    def guessed(self) -> Problem:
        """Which columns were read by what stands in them."""
        titled = any(self.headings.titles.get(column) for column in self.headings.guessed)
        read = ", ".join(self._read_as(column) for column in self.headings.guessed)
        if not self.headings.titles:
            left = (
                phrase("column not used", column=self._name(unused), example=self._example(unused))
                for unused in self.headings.unused
            )
            read = ", ".join((read, *left))
        column = self.headings.guessed[0]
        title = self.headings.titles.get(column, "")
        shown = title or self._example(column)
        code = "heading-by-content" if titled else "headings-missing"
        return problem(code, self._where(column), shown, read=read)

    def is_without_commas(self, column: int) -> bool:
        """Whether no name has a comma, which would say where its last name ends."""
        return not any("," in shown_value(cells[column]) for cells in self.rows.values() if column in cells)

    def last_names_first(self, column: int) -> Problem:
        """Names whose heading says that they begin with the last name."""
        return problem(
            "list-names-turned", self._where(column), self.headings.titles[column], first=self._example(column)
        )

    def names_joined(self) -> Iterator[Problem]:
        """First names that are mostly of several words, as whole names are."""
        first, last = self.column_of.get("First name", 0), self.column_of.get("Last name", 0)
        both = [cells for cells in self.rows.values() if {first, last} <= cells.keys()]
        several = sum(" " in shown_value(cells[first]) for cells in both)
        if len(both) > 1 and several > _MOSTLY * len(both):
            name = " ".join(shown_value(both[0][column]) for column in (first, last))
            yield problem("list-names-joined", self._where(first), name)

    def not_capitals(self) -> Iterator[Problem]:
        """Texts to print in small letters too, under a heading that asks for capitals."""
        column = self.column_of.get("Print name", 0)
        title = self.headings.titles.get(column, "")
        if asks_capitals(title):
            texts = dict.fromkeys(shown_value(cells[column]) for cells in self.rows.values() if column in cells)
            small = [text for text in texts if text != text.upper() and not answer("Print name", text)]
            if small:
                yield problem("list-capitals", self._where(column), title, texts="; ".join(small[:_MOST_SHOWN]))

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

    def _name(self, column: int) -> str:
        return column_name(column, self.headings.titles.get(column, ""), self.orientation)

    def _where(self, column: int) -> Where:
        return Where(
            self.sheet, self.orientation.cell(column, self.headings.row if self.headings.titles else self.first)
        )
