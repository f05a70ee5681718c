"""Few sizes: pieces that lie cut keep their size when someone joins late, unless another size was asked for."""

from pathlib import Path

import pytest

from tests.plan_book import PlanBook, decals, drop, written
from tests.workbooks import Rows, write_workbook

TENT = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 80"><path fill="#204080" d="M0 80 50 0 100 80Z"/></svg>'
)
DESIGNS: Rows = [
    ["Design", "Decal", "What", "Artwork", "Film", "Position", "Width"],
    ["Camp", "Tent", "artwork", "tent.svg", "Royal smooth", "full front", "8 in"],
]
JOB: Rows = [["Setting", "Value"], ["Sizes", "few sizes"]]
PEOPLE: Rows = [["Who", "Size"], ["Ana", "Youth XL"], ["Ivo", "Youth XL"], ["Mei", "Youth L"]]


@pytest.fixture
def cut(tmp_path: Path) -> PlanBook:
    """The plan of three young people, all cut, with five smaller ones joining late."""
    (tmp_path / "tent.svg").write_text(TENT)
    sheets = {"Roster": PEOPLE, "Designs": DESIGNS, "Job": JOB}
    book = written(drop(write_workbook(tmp_path / "camp.xlsx", sheets)))
    book.cut()
    for who in ("Noor", "Zoe", "Kai", "Lea", "Tom"):
        book.join(Who=who, Size="Youth S")
    return book


def widths(book: PlanBook) -> set[float]:
    return {row["Width (in)"] for _, row in book.rows("Decals", "Decal")}


def test_late_joiners_do_not_have_cut_pieces_cut_again(cut: PlanBook) -> None:
    before = widths(cut)
    after = written(cut.drop())
    assert decals(after, "cut") == {"D001", "D002", "D003"}
    assert len(decals(after, "to cut")) == 5
    assert widths(after) == before


def test_another_width_asked_for_is_made(cut: PlanBook) -> None:
    cut.mark("Designs", "Width (in)", 6, lambda row: row["Decal"] == "Tent")
    after = written(cut.drop())
    assert decals(after, "not needed") == {"D001", "D002", "D003"}
