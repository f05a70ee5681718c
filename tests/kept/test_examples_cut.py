"""The example workbooks, cut and half pressed: only a late joiner and what went wrong are cut after that."""

import shutil
from pathlib import Path

import pytest

from tests.plan_book import PlanBook, Row, codes, decals, drop_for_workbook, steps, written
from xlbatch.run import Outcome

EXAMPLES = Path(__file__).parents[2] / "example_workbooks"
COPIED = ("Size", "Color", "Design", "Number", "Garment", "Group")  # of the first on the list, for the late joiner


def to_buy(book: PlanBook) -> list[Row]:
    lines = (row for _, row in book.rows("Shopping list", "Item") if row["Kind"] in ("blank", "film", "supply"))
    return [row for row in lines if row["Needed"] + row["Spares"] > row["On hand"] + row["On the way"]]


@pytest.mark.parametrize("name", ["cove weekend.xlsx", "lantern walk.xlsx", "relay squad.xlsx"])
def test_of_a_job_all_cut_only_what_is_new_is_cut(tmp_path: Path, name: str) -> None:
    for file in (EXAMPLES / name, *EXAMPLES.glob("*.svg")):
        shutil.copy(file, tmp_path)
    first = written(drop_for_workbook(tmp_path / name))
    everything = steps(first)
    batches = [rows for _, rows in first.batches()]
    first_garment = [row for row in batches[0] if row["Garment no."] == batches[0][0]["Garment no."]]
    half = batches[: len(batches) // 2] or [first_garment]
    pressed = {row["Decal"] for rows in half for row in rows}
    assert 0 < len(pressed) < len(everything)
    first.cut()
    first.result("ok", lambda row: row["Decal"] in pressed)
    first.mark("Shopping list", "Arrived", "yes", lambda row: row["Kind"] in ("blank", "film", "supply"))
    second = written(_dropped(first))
    assert decals(second, "to cut") == set()
    assert not to_buy(second)
    assert not [row for _, row in second.rows("Film requirement", "Film") if row["Film"]]
    assert steps(second) == [step for step in everything if step[1] not in pressed]

    known = {str(row["Decal"]): (row["Garment no."], row["Piece"]) for _, row in second.rows("Decals", "Decal")}
    wrong = str(steps(second)[0][1])
    second.cut(wrong, "Spoiled", lambda row: wrong in row["Decals"].split(", "))
    roster = [row for _, row in second.rows("Roster", "Who") if row["Garment no."]]
    second.join(Who="Quinn", **{heading: roster[0][heading] for heading in COPIED if roster[0].get(heading)})
    outcome = _dropped(second)
    third = written(outcome)
    assert outcome.held == 0, codes(outcome)
    late = {row["Garment no."] for _, row in third.rows("Roster", "Who") if row["Who"] == "Quinn"}
    new = {row["Decal"]: row for _, row in third.rows("Decals", "Decal") if row["Now"] == "to cut"}
    assert not new.keys() & known.keys()
    again = [(row["Garment no."], row["Piece"]) for row in new.values() if row["Garment no."] not in late]
    assert again == [known[wrong]]
    assert {row["Garment no."] for row in new.values()} - {known[wrong][0]} == late


def _dropped(book: PlanBook) -> Outcome:
    book.book.save(book.path)
    return drop_for_workbook(book.path)
