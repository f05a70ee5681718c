"""Marks taken back, and marks nobody touched: a decal stands in the next plan as in the one before."""

from pathlib import Path

import pytest

from tests.plan_book import PlanBook, codes, decals, drop, written
from tests.workbooks import Rows, write_workbook

DESIGNS = [
    ["Design", "Decal", "What", "Film", "Position", "Height"],
    ["Name", "Front", "print name", "Black smooth", "full front", "1 in"],
    ["Name", "Back", "print name", "Red smooth", "back name", "1 in"],
]
PEOPLE: Rows = [["Who", "Size"], ["Ana", "M"], ["Ivo", "L"], ["Mei", "S"]]


@pytest.fixture
def first(tmp_path: Path) -> PlanBook:
    """The plan of three people with two decals each."""
    return written(drop(write_workbook(tmp_path / "roster.xlsx", {"Roster": PEOPLE, "Designs": DESIGNS})))


def test_a_decal_that_was_not_pressed_after_all_stays_weeded_on_a_strip_that_is_not(first: PlanBook) -> None:
    first.cut()
    first.result("ok", lambda row: row["Decal"] == "D003")
    second = written(first.drop())
    second.edit(2, "Done so far", None)
    third = written(second.drop())
    assert decals(third, "weeded") == {"D003"}
    third.join(Who="Kai", Size="M")
    assert decals(written(third.drop()), "weeded") == {"D003"}


def test_film_at_the_table_is_good_where_only_the_blank_went_wrong(first: PlanBook) -> None:
    first.cut()
    first.result("redo film", lambda row: row["Decal"] == "D003")
    second = written(first.drop())
    assert decals(second, "spoiled") == {"D003"}
    second.edit(2, "Status", "redo garment")
    third = written(second.drop())
    assert (decals(third, "spoiled"), "D004" in decals(third, "cut")) == ({"D003"}, True)


def test_a_garment_that_was_changed_and_deleted_is_asked_about_once(first: PlanBook) -> None:
    first.result("ok", lambda row: row["Garment no."] == 2)
    second = written(first.drop())
    second.edit(2, "Size", "S")
    asked = second.drop()
    assert codes(asked).count("changed-after-pressing") == 1
    third = written(asked)
    third.sheet("Roster").delete_rows(third.row_of(2))
    now = codes(third.drop())
    assert (now.count("row-deleted"), now.count("changed-after-pressing")) == (1, 0)


def test_done_by_its_status_is_pressed_whatever_was_marked(first: PlanBook) -> None:
    """Taken back, its decals are at the table: they were cut, or it could not have been done."""
    first.edit(2, "Status", "done")
    second = written(first.drop())
    assert decals(second, "pressed") == {"D003", "D004"}
    second.edit(2, "Status", None)
    assert decals(written(second.drop()), "weeded") == {"D003", "D004"}
