"""The pages of a later plan: only what is left to do, what was cut before, and what changed."""

from pathlib import Path

import pytest
from openpyxl import load_workbook

from tests.pages.cells import texts_of
from tests.plan_book import PlanBook, drop, written
from tests.workbooks import write_workbook
from xlbatch.run import Outcome

DESIGNS = [
    ["Design", "Decal", "What", "Film", "Position", "Height"],
    ["Name", "Front", "print name", "Black smooth", "full front", "1 in"],
    ["Name", "Back", "print name", "Red smooth", "back name", "1 in"],
]
PEOPLE = [["Who", "Size"], ["Ana", "M"], ["Ivo", "L"], ["Mei", "S"], ["Kai", "XL"]]


@pytest.fixture
def first(tmp_path: Path) -> PlanBook:
    return written(drop(write_workbook(tmp_path / "roster.xlsx", {"Roster": PEOPLE, "Designs": DESIGNS})))


def pages(outcome: Outcome) -> Path:
    assert outcome.to_print is not None
    return outcome.to_print


def test_changes_stand_on_the_order_of_the_day_by_whose_they_are(first: PlanBook) -> None:
    assert "Changed since the plan before" not in texts_of(pages(drop(first.path)), "Order of the day")
    first.edit(2, "Size", "XL")
    first.mark("Job", "Value", "1/2 in", lambda row: row["Setting"] == "Gap between decals")
    first.join(Who="Tam", Size="S")
    day = texts_of(pages(first.drop()), "Order of the day")
    told = day[day.index("Changed since the plan before") + 1 :][:3]
    assert told[0].startswith("No. 2 Ivo: Size L, now XL")
    assert told[1].startswith("No. 5 Tam: added → ")
    assert told[2] == "Gap between decals: 1/4 in, now 1/2 in"


def test_what_was_cut_before_is_to_weed_and_to_lay_ready(first: PlanBook) -> None:
    assert first.cut(where=lambda row: row["Film"] == "Black smooth")
    first.join(Who="Tam", Size="S")
    printed = pages(first.drop())
    cutting = " ".join(texts_of(printed, "Cut and weed"))
    assert cutting.count("CUT BEFORE   Black smooth") == 1
    assert "☐ weeded" in cutting
    cards = texts_of(printed, "Press cards")
    assert any(text.startswith("strips Black smooth 1, Red smooth 2") for text in cards), cards


def test_what_to_print_names_the_proof_where_there_is_one(first: PlanBook) -> None:
    assert "the proof first" in drop(first.path).in_short[2]
    first.cut()
    assert first.drop().in_short[2].endswith(" - to print 3.xlsx.")


def test_a_strip_that_is_weeded_is_only_laid_ready(first: PlanBook) -> None:
    first.cut()
    first.cut(heading="Weeded")
    printed = pages(first.drop())
    assert not {"Cut and weed", "Proof"} & {*load_workbook(printed).sheetnames}
    assert any("strip 1 of each film" in text for text in texts_of(printed, "Press cards"))


def test_who_is_done_is_on_no_page(first: PlanBook) -> None:
    first.cut()
    first.result("ok", lambda row: row["Garment no."] == 1)
    printed = pages(first.drop())
    for sheet in load_workbook(printed).sheetnames:
        assert not any("Ana" in text for text in texts_of(printed, sheet)), sheet
