"""Joins the answers of filled sign-up workbooks to a list: as rows of its Roster, or as a Roster of their own."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from typing import NamedTuple

from xlsxwriter.utility import xl_col_to_name

from xlbatch.files.raw import Raw, RawSheet
from xlbatch.problems import Problem, Where, problem
from xlbatch.sign_up.answers import CAME_IN, Answers, Row
from xlbatch.sign_up.asked import CHILDREN
from xlbatch.tables.cells import shown_value
from xlbatch.tables.sizes import read_size, size_class

ROSTER = "Roster"
Person = tuple[str, str]  # name and household, in lower case


class Joined(NamedTuple):
    """The sheets of the whole job, and what was odd about the answers."""

    sheets: tuple[RawSheet, ...]
    problems: tuple[Problem, ...]


def joined(base: Sequence[RawSheet], forms: Sequence[Answers]) -> Joined:
    """The base's sheets (none where there is only the sign-up) with every form's rows on the Roster.

    A person already there is not entered again: a row without a size takes the answer, another keeps what it has, and
    a different answer is told."""
    sheets = list(base) or [_own_job(forms[0].event)]
    place = next(
        (sheet_no for sheet_no, sheet in enumerate(sheets) if sheet.name.strip().casefold() == ROSTER.casefold()), None
    )
    roster = _Roster(sheets[place] if place is not None else RawSheet(ROSTER, {}))
    for form in forms:
        for row in form.rows:
            roster.take(row)
    if place is None:
        sheets.insert(0, roster.sheet())
    else:
        sheets[place] = roster.sheet()
    return Joined(tuple(sheets), (*roster.problems, *roster.unanswered(), *_without_consent(forms)))


def _own_job(event: str) -> RawSheet:
    text = {1: ("Setting", "Value"), 2: ("Job name", event)}
    return RawSheet("Job", {row: dict(enumerate(map(Raw, cells), 1)) for row, cells in text.items()})


class _Roster:
    """A Roster that takes answers, row by row."""

    def __init__(self, sheet: RawSheet) -> None:
        self._sheet = sheet
        self._rows = {number: dict(cells) for number, cells in sheet.rows.items()}
        self._head = next((number for number, cells in self._rows.items() if _is_heading(cells)), 1)
        heads = self._rows.setdefault(self._head, {})
        self._columns = {shown_value(cell).strip(): column for column, cell in heads.items()}
        self._people = {self._person(cells): number for number, cells in self._listed() if self._person(cells)[0]}
        self._expected = {number for number, cells in self._listed() if not self._text(cells, "Size")}
        self.problems: list[Problem] = []

    def sheet(self) -> RawSheet:
        """The sheet as it stands now."""
        return replace(self._sheet, rows=dict(sorted(self._rows.items())))

    def take(self, row: Row) -> None:
        """Enters one answer, or tells why it was not entered."""
        person = (_key(row.get("Who")), _key(row.get("Group")))
        number = self._people.get(person) or self._people.get((person[0], ""))
        if number is None or not person[0]:
            self._enter(max(self._rows) + 1, row, person)
        elif number in self._expected and "Size" not in row:  # asked, and not answered yet
            return
        elif number in self._expected:
            self._expected.discard(number)
            self._enter(number, row, person)
        else:
            self._compare(number, row)

    def unanswered(self) -> Iterable[Problem]:
        """One problem that names the people who were listed without a size and sent no answer."""
        names = [self._text(self._rows[number], "Who") for number in sorted(self._expected)]
        if names:
            where = Where(ROSTER, self._cell("Who", min(self._expected)))
            yield problem("sign-up-open", where, ", ".join(names), count=len(names))

    def _enter(self, number: int, row: Row, person: Person) -> None:
        cells = self._rows.setdefault(number, {})
        for heading, cell in row.items():
            cells.setdefault(self._column(heading), cell)
        self._people[person] = number

    def _compare(self, number: int, row: Row) -> None:
        cells, came_in = self._rows[number], shown_value(row[CAME_IN])
        other = {
            heading: (self._text(cells, heading), shown_value(cell))
            for heading, cell in row.items()
            if heading != CAME_IN and _plain(heading, shown_value(cell)) != _plain(heading, self._text(cells, heading))
        }
        who = shown_value(row["Who"])
        if not other:
            self.problems.append(problem("sign-up-twice", Where(ROSTER, self._cell("Who", number)), who, file=came_in))
        for heading, (kept, answer) in other.items():
            where = Where(ROSTER, self._cell(heading, number))
            facts = {"who": who, "heading": heading, "kept": kept or "nothing", "file": came_in}
            self.problems.append(problem("sign-up-differs", where, answer, suggestion=answer, rows=(number,), **facts))

    def _listed(self) -> Iterable[tuple[int, Mapping[int, Raw]]]:
        return ((number, cells) for number, cells in self._rows.items() if number > self._head)

    def _person(self, cells: Mapping[int, Raw]) -> Person:
        return self._text(cells, "Who").casefold(), self._text(cells, "Group").casefold()

    def _text(self, cells: Mapping[int, Raw], heading: str) -> str:
        cell = cells.get(self._columns.get(heading, 0))
        return shown_value(cell) if cell else ""

    def _column(self, heading: str) -> int:
        if heading not in self._columns:
            self._columns[heading] = max(self._columns.values(), default=0) + 1
            self._rows[self._head][self._columns[heading]] = Raw(heading)
        return self._columns[heading]

    def _cell(self, heading: str, number: int) -> str:
        return f"{xl_col_to_name(self._column(heading) - 1)}{number}"


def _is_heading(cells: Mapping[int, Raw]) -> bool:
    return {"Who", "Size"} <= {shown_value(cell).strip() for cell in cells.values()}


def _plain(heading: str, text: str) -> str:
    """A cell as it is compared: a size in its one spelling."""
    return (read_size(text) or text) if heading == "Size" else text


def _key(cell: Raw | None) -> str:
    return shown_value(cell).casefold() if cell else ""


def _without_consent(forms: Iterable[Answers]) -> Iterable[Problem]:
    """A problem for each household with children's names that did not say they may be printed."""
    for form in forms:
        open_ = form.consent is not None and form.consent.casefold() not in ("yes", "y")
        if open_ and any(map(_childs_name, form.rows)):
            household = form.household or form.path.name
            yield problem("sign-up-consent", Where(ROSTER), form.consent or "nothing", household=household)


def _childs_name(row: Row) -> bool:
    """Whether a row is a child's whose name would be printed."""
    printed, size = (shown_value(row[heading]) if heading in row else "" for heading in ("Print name", "Size"))
    return printed.casefold() != "none" and size_class(size) in CHILDREN
