"""Answers that join a Roster: in whose row, in which columns, and what is told of them."""

from collections.abc import Sequence
from pathlib import Path

import pytest

from xlbatch.files.raw import Raw, RawSheet
from xlbatch.sign_up.answers import CAME_IN, Answers, Row
from xlbatch.sign_up.joined_list import Joined, joined

HEADS = ["Who", "Group", "Size"]


def sheet(name: str, *rows: Sequence[str | None]) -> RawSheet:
    return RawSheet(
        name,
        {
            number: {column: Raw(text) for column, text in enumerate(row, 1) if text}
            for number, row in enumerate(rows, 1)
        },
    )


def answer(**cells: str) -> Row:
    texts = {heading.replace("_", " "): text for heading, text in cells.items()}
    return {heading: Raw(text) for heading, text in texts.items()} | {CAME_IN: Raw("hale.xlsx, row 8")}


def form(*rows: Row, consent: str | None = "yes", household: str = "Hale") -> Answers:
    return Answers(Path("hale.xlsx"), "Harbor picnic", household, consent, rows)


def texts(whole: Joined, sheet_no: int = 0) -> list[list[object]]:
    return [[cells[column].value for column in sorted(cells)] for cells in whole.sheets[sheet_no].rows.values()]


def told(whole: Joined) -> list[tuple[str, str, str]]:
    return [(problem.code, problem.where.cell, problem.found) for problem in whole.problems]


def test_without_a_list_the_answers_make_one_named_after_the_event() -> None:
    whole = joined((), [form(answer(Who="Ida", Size="M"))])
    assert [part.name for part in whole.sheets] == ["Roster", "Job"]
    assert texts(whole) == [["Who", "Size", CAME_IN], ["Ida", "M", "hale.xlsx, row 8"]]
    assert texts(whole, 1) == [["Setting", "Value"], ["Job name", "Harbor picnic"]]


def test_a_roster_stays_where_it_is_and_a_workbook_without_one_gets_it_first() -> None:
    garments = sheet("Garments", ["Garment", "Size"])
    whole = joined([garments, sheet(" roster ", HEADS)], [form(answer(Who="Ida", Size="M"))])
    assert [part.name for part in whole.sheets] == ["Garments", " roster "]
    whole = joined([garments], [form(answer(Who="Ida", Size="M"))])
    assert [part.name for part in whole.sheets] == ["Roster", "Garments"]


def test_a_new_heading_gets_the_column_after_the_last() -> None:
    listed = sheet("Roster", ["Autumn walk"], [], HEADS, ["Bo", "Ode", "S"])
    whole = joined([listed], [form(answer(Who="Ida", Size="M", Print_name="IDA"))])
    rows = whole.sheets[0].rows
    assert {column: cell.value for column, cell in rows[3].items()} == {
        1: "Who", 2: "Group", 3: "Size", 4: "Print name", 5: CAME_IN,
    }  # fmt: skip
    assert rows[5][4].value == "IDA"
    assert 2 not in rows[5]


@pytest.mark.parametrize(
    ("who", "group", "row"),
    [
        ("Ida Hale", "Hale", 2),
        ("ida HALE", "hale", 2),
        ("Tom Hale", "Hale", 3),  # listed without a group: the name is enough
        ("Ida Hale", "Ode", 5),  # another household's
        ("Ida Hale", "", 5),
        ("", "Hale", 5),  # a shirt of nobody is no one else's
    ],
)
def test_an_answer_stands_in_the_row_of_its_person(who: str, group: str, row: int) -> None:
    listed = sheet("Roster", HEADS, ["Ida Hale", "Hale"], ["Tom Hale"], [None, "Hale"])
    cells = {heading: text for heading, text in (("Who", who), ("Group", group)) if text}
    whole = joined([listed], [form(answer(Size="L", **cells))])
    (entered,) = [number for number, kept in whole.sheets[0].rows.items() if 3 in kept and number > 1]
    assert entered == row


def test_who_sent_no_size_is_still_open() -> None:
    listed = sheet("Roster", HEADS, ["Ida Hale", "Hale"], ["Tom Hale", "Hale"], ["Bo", "Ode", "S"])
    assert told(joined([listed], [form(answer(Who="Ida Hale", Group="Hale", Number="7"))])) == [
        ("sign-up-open", "A2", "Ida Hale, Tom Hale")
    ]
    whole = joined([listed], [form(answer(Who="Ida Hale", Group="Hale", Size="L"))])
    assert told(whole) == [("sign-up-open", "A3", "Tom Hale")]


def test_the_same_answer_again_is_twice_and_another_differs() -> None:
    listed = sheet("Roster", HEADS, ["Ida Hale", "Hale", "large"])
    same = answer(Who="Ida Hale", Group="Hale", Size="L")  # large and L are one size
    assert told(joined([listed], [form(same)])) == [("sign-up-twice", "A2", "Ida Hale")]
    whole = joined([listed], [form(answer(Who="Ida Hale", Group="Hale", Size="XL", Number="7"))])
    assert told(whole) == [("sign-up-differs", "C2", "XL"), ("sign-up-differs", "D2", "7")]
    assert whole.sheets[0].rows[2][3].value == "large"
    assert whole.problems[1].wrong.count("nothing") == 1


@pytest.mark.parametrize(
    ("consent", "cells", "asked"),
    [
        ("no", {"Size": "Youth M"}, True),
        ("", {"Size": "2T"}, True),
        ("YES", {"Size": "Youth M"}, False),
        ("y", {"Size": "Youth M"}, False),
        (None, {"Size": "Youth M"}, False),  # the form does not ask: no name is printed
        ("no", {"Size": "M"}, False),
        ("no", {"Size": "Youth M", "Print_name": "None"}, False),
    ],
)
def test_consent_is_asked_of_a_household_that_gave_none(
    consent: str | None, cells: dict[str, str], asked: bool
) -> None:
    row = answer(Who="Ida", **cells)
    codes = [code for code, _, _ in told(joined((), [form(row, consent=consent)]))]
    assert codes == ["sign-up-consent"] * asked
