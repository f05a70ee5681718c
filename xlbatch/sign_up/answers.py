"""The answers of filled sign-up workbooks: which files are some, of which event, and their rows as rows of a list."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from xlbatch.files.raw import Raw, RawSheet
from xlbatch.sign_up.form import ANSWER, CONSENT, HOUSEHOLD, LISTS, MARK
from xlbatch.tables.cells import shown_value

Row = Mapping[str, Raw]  # by the heading of its column
CAME_IN = "Signed up in"  # a column of the list: the file, and its row there
GROWN = "adult"
_LEFT_OUT = ("Shirt for",)  # it only led to the size, which says it too


@dataclass(frozen=True)
class Answers:
    """The filled form of one household or team."""

    path: Path
    event: str
    household: str
    consent: str | None  # as it was written; None where the form does not ask
    rows: tuple[Row, ...]


def answers(path: Path, sheets: Sequence[RawSheet]) -> Answers | None:
    """The answers in a file, or None where it is no sign-up workbook of this program."""
    event = next(filter(None, map(_event, sheets)), "")
    form = next((sheet for sheet in sheets if _heading_row(sheet)), None)
    if not event or form is None:
        return None
    head = _heading_row(form)
    headings = {column: shown_value(cell).strip() for column, cell in form.rows[head].items()}
    household = _beside(form, HOUSEHOLD, head) or ""
    rows = tuple(_row(path, household, headings, number, cells) for number, cells in form.rows.items() if number > head)
    return Answers(path, event, household, _beside(form, CONSENT, head), tuple(row for row in rows if len(row) > 1))


def _event(sheet: RawSheet) -> str:
    first = sheet.rows.get(1, {})
    marked = sheet.name.casefold() == LISTS.casefold() and 1 in first and shown_value(first[1]) == MARK
    return shown_value(first[2]) if marked and 2 in first else ""


def _heading_row(sheet: RawSheet) -> int:
    """The row of the form's headings, 0 where the sheet has none."""
    for number, cells in sheet.rows.items():
        if {"Who", "Size"} <= {shown_value(cell) for cell in cells.values()}:
            return number
    return 0


def _beside(form: RawSheet, label: str, head: int) -> str | None:
    """What was written to the right of a label above the table; None where there is no such label."""
    for number, cells in form.rows.items():
        if number < head and 1 in cells and shown_value(cells[1]) == label:
            return shown_value(cells[ANSWER + 1]).strip() if ANSWER + 1 in cells else ""
    return None


def _row(path: Path, household: str, headings: Mapping[int, str], number: int, cells: Mapping[int, Raw]) -> Row:
    given = {
        headings[column]: cell for column, cell in cells.items() if headings.get(column) and cell.value is not None
    }
    kept = {heading: cell for heading, cell in given.items() if heading not in _LEFT_OUT}
    if not kept:
        return {}
    group = {"Group": Raw(household)} if household else {}
    if "Size" in kept and "Shirt for" in given and shown_value(given["Shirt for"]) == GROWN:
        kept["Size"] = Raw(f"{GROWN.capitalize()} {shown_value(kept['Size'])}")  # chosen for a grown-up, so no doubt
    return group | kept | {CAME_IN: Raw(f"{path.name}, row {number}")}


def by_event(forms: Sequence[Answers]) -> Iterator[tuple[str, tuple[Answers, ...]]]:
    """The forms of each event together, in the order they were given."""
    for event in dict.fromkeys(form.event for form in forms):
        yield event, tuple(form for form in forms if form.event == event)
