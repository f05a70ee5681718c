"""What a decal says: the name as asked for, and texts whose braces are filled in from a garment's row and the job."""

from collections.abc import Callable
from dataclasses import replace
from typing import Literal

import pytest

from xlbatch.check.text import braces_problems, decal_text, filled, has_braces, of_settings, print_name
from xlbatch.job.job import NO_NAME, Job, What
from xlbatch.problems import Where
from xlbatch.roster.read import Reading

HEAD = ["Who", "Group", "Size", "Number", "Locker", "Seat"]


@pytest.fixture
def job(reading_of: Callable[..., Reading]) -> Job:
    rows = [HEAD, ["Dr. Ana van Dijk", "Novak", "M", "7", "a 1b", "-"]]
    return reading_of(rows, Job=[["Setting", "Value"], ["Shared line", "Lantern Walk"], ["Hours a day", 6]]).job


@pytest.mark.parametrize(
    ("text", "says", "unknown", "blank"),
    [
        ("  Go team ", "Go team", (), ()),
        ("{Who} of {Group}", "Dr. Ana van Dijk of Novak", (), ()),
        ("{ first   name } {LAST NAME}", "Ana VAN DIJK", (), ()),
        ("{first name} {last name}", "Ana van Dijk", (), ()),
        ("{Print name}, {Size}", "Dr. Ana van Dijk, M", (), ()),
        ("{LOCKER} {locker}", "A 1B a 1b", (), ()),  # a column of one's own
        ("{Shared line} {Print}", "Lantern Walk whole name", (), ()),
        ("{family} {FAMILY}", "Novak NOVAK", (), ()),  # another word for Group
        ("{Familly} {Group}", "{Familly} Novak", ("Familly",), ()),
        ("{Hours a day}", "{Hours a day}", ("Hours a day",), ()),  # a setting that reads otherwise in print
        ("{Color}{Note} and {Group}", "and Novak", (), ("Color", "Note")),
        ("{Seat} {Group} {Familly}", "", ("Familly",), ()),  # - leaves the whole room empty
    ],
)
def test_braces_are_filled_in(job: Job, text: str, says: str, unknown: tuple[str, ...], blank: tuple[str, ...]) -> None:
    assert filled(text, job.roster[0], job.settings) == (says, unknown, blank)
    assert has_braces(text) == ("{" in text)


def test_one_letter_in_braces_asks_for_no_capitals(reading_of: Callable[..., Reading]) -> None:
    job = reading_of([["Who", "Size", "X", "XY"], ["Ana", "M", "annie", "boo"]]).job
    row = replace(job.roster[0], source=replace(job.roster[0].source, extra={"X": "annie", "XY": "boo"}))
    assert filled("{X} {XY}", row, job.settings).text == "annie BOO"


@pytest.mark.parametrize(("asked", "first", "last"), [("Ana", "Ana", "van Dijk"), ("given", "Bo", "Berg")])
def test_names_in_two_columns_are_taken_as_they_stand(job: Job, asked: str, first: str, last: str) -> None:
    row = job.roster[0] if asked == "Ana" else replace(job.roster[0], first_name="Bo", last_name="Berg")
    assert filled("{First name}/{Last name}", row, job.settings).text == f"{first}/{last}"
    names: dict[Literal["first name", "last name", "whole name"], str] = {"first name": first, "last name": last}
    for which, name in (names | {"whole name": "Dr. Ana van Dijk"}).items():
        settings = replace(job.settings, print_=which)
        assert print_name(row, settings) == name
        assert print_name(replace(row, print_name="VD"), settings) == "VD"
        assert print_name(replace(row, print_name=NO_NAME), settings) == ""


@pytest.mark.parametrize(
    ("what", "says"), [("artwork", ""), ("print name", "Dr. Ana van Dijk"), ("number", "7"), ("text", "Novak 7")]
)
def test_what_a_decal_says(job: Job, what: What, says: str) -> None:
    spec = replace(job.designs[0], what=what, text="{Group} {Number}")
    assert decal_text(spec, job.roster[0], job.settings) == says


@pytest.mark.parametrize(
    ("text", "found", "suggestion", "cell"),
    [
        ("{Famly}", "{Famly}", "{Group}", "Designs D2"),
        ("{Grooup}", "{Grooup}", "{Group}", "Designs D2"),
        ("{Lockr}", "{Lockr}", "{Locker}", "Designs D2"),
        ("{Shared lin}", "{Shared lin}", "{Shared line}", "Designs D2"),
        ("{Print nam}", "{Print nam}", "{Print name}", "Designs D2"),
        ("{Qqqq}", "{Qqqq}", "", "Designs D2"),
        ("{group}", "", "", "Roster B2"),
        ("{Shared line}", "", "", "Job"),
    ],
)
def test_braces_that_can_not_be_filled_in_are_asked_about(
    job: Job, text: str, found: str, suggestion: str, cell: str
) -> None:
    row = replace(job.roster[0], group="")
    settings = replace(job.settings, shared_line="")
    (asked,) = braces_problems(text, row, settings, Where("Designs", "D2"))
    assert (asked.found, asked.suggestion) == (found, suggestion)
    assert f"{asked.where.sheet} {asked.where.cell}".strip() == cell
    assert asked.rows == (2,)
    assert "for Dr. Ana van Dijk" in asked.wrong or found
    (nameless,) = braces_problems(text, replace(row, who=""), settings, Where("Designs", "D2"))
    assert "for row 2" in nameless.wrong or found
    assert of_settings(text.strip("{}")) == (cell == "Job")
