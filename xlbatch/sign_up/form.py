"""The form of a sign-up workbook: one row a person, drop-downs, locked explanations; and the lists behind it."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from xlsxwriter.utility import xl_col_to_name, xl_rowcol_to_cell

from xlbatch.job.job import RosterRow
from xlbatch.paper.cell import Value
from xlbatch.paper.page import Column, Page
from xlbatch.sign_up.asked import CHILDREN, Asked
from xlbatch.tables.sizes import size_class

NAME, LISTS = "Sign up", "Choices"
ROWS = 18  # people in one file, on one page; a larger household saves a second copy
HOUSEHOLD = "Household or team"
CONSENT = "Print children's names?"
ANSWER = 2  # the column, counted from 0, of what is asked once above the table
MARK = "Sign-up sheet of"  # in the first cell of the hidden sheet of choices: how a filled form is known again
_FOR = "Shirt for"
PASSWORD_FREE: dict[str, Any] = {"format_columns": True, "format_rows": True}


def columns(asked: Asked) -> tuple[Column, ...]:
    """The columns of the form, in order; only what this job has a use for."""
    return tuple(column for column, wanted in _columns(asked) if wanted)


def _columns(asked: Asked) -> Iterator[tuple[Column, bool]]:
    yield Column("Who", 1.8), True
    yield Column("Garment", 1.3), len(asked.garments) > 1
    yield Column(_FOR, 0.9), True
    yield Column("Size", 1.1), True
    yield Column("Color", 0.9), len(asked.colors) > 1
    yield Column("Print name", 1.5), asked.prints_name
    yield Column("Number", 0.8), asked.prints_number
    yield Column("How many", 0.8, ("count",)), True
    yield Column("Contact", 1.6), True
    yield Column("Paid", 0.8), True
    yield Column("Note", 1.4), True


HINTS = {
    "Who": "First and last name, one person a row.",
    _FOR: "Choose this first: the sizes offered follow it.",
    "Size": "Lay a shirt that fits you on the table and measure it; the sheet Sizes says which size that is.",
    "Print name": "Exactly as it is to be printed, capitals and accents too. Write none for no name.",
    "Number": "As it is to be printed: 07 stays 07.",
    "How many": "Shirts all alike. Left empty: 1.",
    "Contact": "How to reach you if something is unclear.",
    "Paid": "An amount, or yes.",
}


def leads(asked: Asked, price: str, answer_by: str) -> Iterator[str]:
    """What the form says above its table."""
    told = (("Please answer by", answer_by), ("Handed out:", asked.needed_by), ("Price a shirt:", price))
    yield " ".join(f"{words} {value}." for words, value in told if value) or "Please answer soon."
    yield (
        "Fill in one row a person, save this file under your household's name and send it back. "
        "Choose Shirt for first, then the size: the sheet Sizes shows how to measure a shirt that fits."
    )


def write_form(
    page: Page, asked: Asked, price: str, answer_by: str, household: str = "", people: Sequence[RosterRow] = ()
) -> None:
    """The form itself, its explanations locked without a password; `people` known already stand in it."""
    shown = columns(asked)
    page.lay_columns(shown)
    page.title(f"{asked.event}: sign up")
    for lead in leads(asked, price, answer_by):
        page.line(lead, "body large", "wrapped")
    _asked_once(page, HOUSEHOLD, "", household)
    if asked.for_children:
        _asked_once(page, CONSENT, "yes or no. A child's name on the outside of a shirt can be read by strangers.")
    page.gap()
    page.heading()
    rows = max(ROWS, len(people) + 4)
    for number in range(rows):
        known = _known(people[number]) if number < len(people) else {}
        page.record([known.get(column.heading) for column in shown], "open", least=19)
    page.end_table()
    _choices(page, asked, [column.heading for column in shown], rows)
    page.sheet.protect("", PASSWORD_FREE)


def _asked_once(page: Page, label: str, hint: str, known: str = "") -> None:
    row = page.gap(20)
    page.write(row, 0, label, "text", "strong", "body large", across=ANSWER)
    page.write(row, ANSWER, known or None, "cell", "open", "change", across=2)
    page.write(row, ANSWER + 2, hint or None, "lead", across=page.last - ANSWER - 1)


def _known(row: RosterRow) -> Mapping[str, Value]:
    """What was on the list for a person. A child has grown: the size is asked anew."""
    for_ = size_class(row.size)
    grown = for_ in CHILDREN
    return {
        "Who": row.who,
        "Garment": row.garment,
        _FOR: for_,
        "Size": None if grown else row.size,
        "Color": row.color,
        "Print name": row.print_name,
        "Number": row.number,
        "Note": f"was {row.size}" if grown else None,
    }


def _choices(page: Page, asked: Asked, headings: list[str], rows: int) -> None:
    first, last = page.head + 1, page.head + rows
    lists = {"Garment": list(asked.garments), _FOR: list(asked.sizes()), "Color": list(asked.colors)}
    for column, heading in enumerate(headings):
        told: dict[str, Any] = {"input_message": HINTS[heading]} if heading in HINTS else {}
        if heading in lists:
            told |= {"validate": "list", "source": lists[heading]}
        elif heading == "Size":
            told |= {"validate": "list", "source": _sizes(xl_rowcol_to_cell(first, headings.index(_FOR), col_abs=True))}
        elif heading == "How many":
            told |= {"validate": "integer", "criteria": "between", "minimum": 1, "maximum": 99}
        elif told:
            told["validate"] = "any"
        if told:
            page.sheet.data_validation(first, column, last, column, told)


def _sizes(for_: str) -> str:
    """A formula for the sizes of the class chosen in the row, on the sheet of choices."""
    heads = f"{LISTS}!$A$2:${xl_col_to_name(4)}$2"
    column = f"MATCH({for_},{heads},0)-1"
    below = f"OFFSET({LISTS}!$A$3,0,{column},99,1)"
    return f"=OFFSET({LISTS}!$A$3,0,{column},COUNTA({below}),1)"


def write_choices(page: Page, asked: Asked) -> None:
    """The hidden sheet: the mark by which a filled form is known, and the sizes, a column a class."""
    page.lay_columns([Column(str(number), 1.2) for number in range(5)], base="form")
    page.cells([MARK, asked.event])
    sizes = asked.sizes()
    page.cells(list(sizes))
    for row in range(max(map(len, sizes.values()), default=0)):
        page.cells([blanks[row].size if row < len(blanks) else None for blanks in sizes.values()])
    page.sheet.hide()
