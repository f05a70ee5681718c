"""What was ordered is on the way, what came is on hand, what was used is gone; each mark counts once."""

from dataclasses import replace
from pathlib import Path

import pytest

from tests.plan_book import PlanBook, codes, drop, written
from tests.workbooks import write_workbook
from xlbatch.kept.memory import KeptGarment, KeptOrder, Memory, Stage
from xlbatch.kept.recall import _supplies
from xlbatch.kept.states import Standing
from xlbatch.roster.read import blank_job

DESIGNS = [
    ["Design", "Decal", "What", "Film", "Position", "Height"],
    ["Name", "Front", "print name", "Black smooth", "full front", "1 in"],
]
FILM = [["Film", "Rolls sold"], ["Black smooth", "5 yd = 20.00"]]
PEOPLE = [["Who", "Size"], ["Ana", "M"], ["Ivo", "M"], ["Mei", "S"]]


@pytest.fixture
def first(tmp_path: Path) -> PlanBook:
    sheets = {"Roster": PEOPLE, "Designs": DESIGNS, "Film": FILM}
    return written(drop(write_workbook(tmp_path / "roster.xlsx", sheets)))


def stock(book: PlanBook, kind: str, size: str | None = None) -> list[tuple[int, int, int]]:
    """Needed, on hand and on the way."""
    rows = (row for _, row in book.rows("Shopping list", "Item") if row["Kind"] == kind and row["Size"] == size)
    return [(row["Needed"], row["On hand"], row["On the way"]) for row in rows]


def test_what_is_ordered_is_on_the_way_until_it_comes(first: PlanBook) -> None:
    first.mark("Shopping list", "Ordered", "yes", lambda row: row["Kind"] in ("blank", "film"))
    second = written(first.drop())
    assert stock(second, "blank", "M") == [(2, 0, 2)]
    assert stock(second, "film") == [(1, 0, 1)]
    assert {row["Ordered"] for _, row in second.rows("Shopping list", "Item") if row["Kind"]} == {"☐"}
    second.mark("Shopping list", "Arrived", 1, lambda row: row["Size"] == "M")
    second.mark("Shopping list", "Arrived", "yes", lambda row: row["Kind"] == "film")
    third = written(second.drop())
    assert stock(third, "blank", "M") == [(2, 1, 1)]
    assert stock(third, "film") == []
    assert [row["On hand"] for _, row in third.rows("Film", "Kind")] == ["12 in x 5 yd"]
    assert stock(written(drop(third.path)), "blank", "M") == [(2, 1, 1)]


def test_film_that_is_cut_is_gone_and_is_back_where_the_mark_is_taken_back(first: PlanBook) -> None:
    first.mark("Shopping list", "Arrived", "yes", lambda row: row["Kind"] == "film")
    first.cut()
    second = written(first.drop())
    left = next(row["On hand"] for _, row in second.rows("Film", "Kind"))
    assert left.startswith("12 in x 17")
    second.cut(None)
    third = written(second.drop())
    assert next(row["On hand"] for _, row in third.rows("Film", "Kind")) == "12 in x 5 yd"


def test_film_measured_is_as_of_now(first: PlanBook) -> None:
    first.mark("Shopping list", "Arrived", "yes", lambda row: row["Kind"] == "film")
    first.mark("Film", "On hand", "12 in x 2 yd", lambda row: row["Kind"] == "smooth")
    first.cut()
    second = written(first.drop())
    assert next(row["On hand"] for _, row in second.rows("Film", "Kind")) == "12 in x 2 yd"
    assert next(row["On hand"] for _, row in written(drop(second.path)).rows("Film", "Kind")) == "12 in x 2 yd"


def test_film_cut_that_never_came_is_asked_about(first: PlanBook) -> None:
    first.cut()
    assert "film-came-unmarked" in codes(first.drop())


def test_a_blank_counts_as_the_one_that_was_pressed_not_as_the_roster_says_now(first: PlanBook) -> None:
    first.mark("Shopping list", "Arrived", "yes", lambda row: row["Kind"] == "blank")
    first.cut()
    first.result("ok", lambda row: row["Garment no."] == 1)
    first.edit(1, "Size", "XL")
    second = written(first.drop())
    on_hand = {row["Size"]: row["On hand"] for _, row in second.rows("Garments", "Neckline") if row["On hand"]}
    assert on_hand == {"S": "white = 1", "M": "white = 1"}


def test_blanks_used_before_they_are_marked_as_arrived_are_not_counted_as_there_later(first: PlanBook) -> None:
    first.cut()
    first.result("ok", lambda row: row["Garment no."] == 1)
    outcome = first.drop()
    assert "arrived-unmarked" in codes(outcome)
    second = written(outcome)
    second.mark("Shopping list", "Arrived", 2, lambda row: row["Size"] == "M")
    assert stock(written(second.drop()), "blank", "M") == [(1, 1, 0)]


def test_a_note_of_a_line_stays(first: PlanBook) -> None:
    first.mark("Shopping list", "Note", "lot 4711", lambda row: row["Size"] == "S")
    second = written(first.drop())
    notes = [row["Note"] for _, row in second.rows("Shopping list", "Item") if row["Note"]]
    assert notes == ["lot 4711"]


def test_a_number_below_zero_takes_back_what_was_marked(first: PlanBook) -> None:
    first.mark("Shopping list", "Arrived", "yes", lambda row: row["Kind"] in ("blank", "film"))
    second = written(first.drop())
    second.mark("Shopping list", "Arrived", -1, lambda row: row["Size"] == "M")
    assert stock(written(second.drop()), "blank", "M") == [(2, 1, 1)]


@pytest.mark.parametrize(("status", "needed"), [("redo film", 1), ("redo garment", 2)])
def test_film_made_anew_takes_no_other_blank(first: PlanBook, status: str, needed: int) -> None:
    """Of two blanks that came one was in use, and still is or is spoiled; the other is there."""
    first.mark("Shopping list", "Arrived", "yes", lambda row: row["Kind"] == "blank")
    first.cut()
    first.result("ok", lambda row: row["Garment no."] == 1)
    second = written(first.drop())
    second.edit(1, "Status", status)
    assert stock(written(second.drop()), "blank", "M") == [(needed, 1, 0)]


@pytest.mark.parametrize(
    ("before", "now", "cards"),
    [("", "", 5), ("", "begun", 5), ("", "done", 4), ("begun", "done", 4), ("done", "done", 5), ("done", "begun", 6)],
)
def test_a_garment_done_takes_its_card_along_once(before: Stage, now: Stage, cards: int) -> None:
    """Of 5 cards for garments that are there; sheets for the press stay, and nothing is there less than 0 times."""
    there = {"Bag and wash card": 5, "Cover sheet for the press": 2}
    garments = [KeptGarment(no, "Tee", "M", "white", before) for no in (1, 2)]
    garments[1] = replace(garments[1], stage="done")
    memory = Memory(
        garments=tuple(garments),
        orders=tuple(KeptOrder("supply", item, "", "", "", 0, count, 0, "") for item, count in there.items()),
    )
    after = {garment.no: garment for garment in (replace(garments[0], stage=now), garments[1])}
    stood = Standing(blank_job(Path("camp.xlsx")), (), after, {}, ())
    assert list(_supplies(memory, stood).values()) == [cards, 2]
    none = replace(memory, orders=tuple(replace(order, on_hand=0) for order in memory.orders))
    assert list(_supplies(none, stood).values()) == [max(0, cards - 5), 0]
