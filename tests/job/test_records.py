"""The records of a job: where a position goes, what stands before an amount, what is wanted of a drawing's part."""

from dataclasses import replace
from pathlib import Path

import pytest

from xlbatch.job.costs import sign_of
from xlbatch.job.job import RosterRow
from xlbatch.job.part_line import PartLine
from xlbatch.job.position import Position
from xlbatch.job.source import Source
from xlbatch.roster.read import blank_job

ROW = RosterRow(Source("Roster", 2), 1, "Ana", "", "", "L", "", "", "", "", "", None, "", ())
NUMBER = Position(Source("Positions"), "Back number", "adult", "any", "back", "", 100, 0, ("back name", "top line"), 20)
PART = PartLine(Source("Drawing parts"), "crest.svg", "3")


@pytest.mark.parametrize(
    ("there", "below"),
    [
        (["top line", "back name"], "back name"),  # the first of those it goes below
        (["top line", "left chest"], "top line"),
        (["left chest", "back number"], "back number"),  # below none: it is the top one itself
        ([], "back number"),
    ],
)
def test_a_position_goes_below_the_first_that_is_there(there: list[str], below: str) -> None:
    assert NUMBER.top_of(there) == below


def test_a_position_is_looked_up_for_the_neckline_and_else_for_any() -> None:
    hooded = replace(NUMBER, neckline="hood", distance=150)
    job = replace(blank_job(Path("list.xlsx")), positions=(NUMBER, hooded, replace(NUMBER, distance=999)))
    assert job.position("BACK number", "adult", "hood") == hooded
    assert job.position("back number", "adult", "crew") == NUMBER  # of two rows alike the first counts
    assert job.position("back number", "youth", "crew") is None
    assert job.position("front number", "adult", "crew") is None
    assert job.position_names == ("Back number",)


def test_a_size_is_told_as_an_adults_where_that_was_said() -> None:
    sizes = [ROW, replace(ROW, adult_said=True), replace(ROW, adult_said=True, size="")]
    assert [row.size_said for row in sizes] == ["L", "Adult L", ""]
    assert not ROW.confirmed


@pytest.mark.parametrize(
    ("currency", "sign"), [("$", "$"), ("kr", "kr "), ("CHF", "CHF "), ("Fr.", "Fr."), ('"€"', "€"), ("$U", "$U ")]
)
def test_letters_stand_apart_from_the_amount(currency: str, sign: str) -> None:
    assert sign_of(currency) == sign


@pytest.mark.parametrize(
    ("changes", "typed"),
    [
        ({}, False),
        ({"color": "#ff0000", "text": "CAMP", "width": 30.0}, False),  # only what the drawing has
        ({"replace_by": "{Group}"}, True),
        ({"font": "Anton"}, True),
        ({"join": "2"}, True),
        ({"film": "Gold smooth"}, True),
        ({"fit": "box"}, True),
    ],
)
def test_what_a_person_wants_of_a_part_is_told_from_what_it_is(changes: dict[str, object], typed: bool) -> None:
    assert replace(PART, **changes).typed is typed  # type: ignore[arg-type]
    assert PART.use
