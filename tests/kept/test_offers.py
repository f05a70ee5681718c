"""A decal that lies cut and fits its garment no more is offered to another, and an ok hands it over."""

from pathlib import Path

import pytest

from tests.plan_book import PlanBook, decals, drop_for_workbook, written
from tests.workbooks import write_workbook

DESIGNS = [
    ["Design", "Decal", "What", "Film", "Position", "Height", "Scale with size"],
    ["Name", "Number", "number", "Black smooth", "full front", "3 in", "no"],
]
PEOPLE = [["Who", "Size", "Number"], ["Ana", "M", "12"], ["Ivo", "L", "31"], ["Mei", "S", "45"]]


@pytest.fixture
def offered(tmp_path: Path) -> PlanBook:
    """The 12 lies cut for Ana, who takes 77 now; Kai, who came late, wants the 12."""
    first = written(drop_for_workbook(write_workbook(tmp_path / "roster.xlsx", {"Roster": PEOPLE, "Designs": DESIGNS})))
    first.cut()
    first.edit(1, "Number", "77")
    first.join(Who="Kai", Size="XL", Number="12")
    first.book.save(first.path)
    return written(drop_for_workbook(first.path))


def answered(book: PlanBook, word: str) -> PlanBook:
    book.mark("Problems", "Answer", word, lambda row: row["Code"] == "cut-not-needed")
    book.book.save(book.path)
    return written(drop_for_workbook(book.path))


def test_the_offer_names_who_could_use_it(offered: PlanBook) -> None:
    rows = [row for _, row in offered.rows("Problems", "Code") if row["Code"] == "cut-not-needed"]
    assert [(row["Found"], row["Suggestion"]) for row in rows] == [("D001", "D001 for no. 4, Number")]
    assert decals(offered, "to cut") == {"D004", "D005"}


def test_an_ok_hands_it_over_and_nothing_is_cut_for_that_piece(offered: PlanBook) -> None:
    later = answered(offered, "ok")
    assert decals(later, "to cut") == {"D004"}  # the 77
    assert {(row["Garment no."], row["Decal"]) for _, row in later.steps()} == {
        (1, "D004"), (2, "D002"), (3, "D003"), (4, "D001"),
    }  # fmt: skip
    newest = later.changes()[0]
    assert (newest["Whose"], newest["Before"], newest["Now"]) == ("D001", "No. 1, Number", "No. 4, Number")
    assert later.asked("cut-not-needed") == set()


def test_a_no_leaves_it_and_is_not_asked_again(offered: PlanBook) -> None:
    later = answered(offered, "no")
    assert later.asked("cut-not-needed") == set()
    assert decals(later, "not needed") == {"D001"}
    assert decals(later, "to cut") == {"D004", "D005"}


def test_what_fits_no_one_now_stands_on_the_cut_list_with_its_strip(offered: PlanBook) -> None:
    (strip,) = offered.strips(ready=True)
    assert (strip["For batch"], strip["Decals"]) == ("1; not needed: D001", "D001, D002, D003")
