"""What is cut is not cut again, what is pressed is done, and numbers stay."""

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from openpyxl import load_workbook

from tests.plan_book import PlanBook, codes, decals, drop, steps, written
from tests.workbooks import Rows, write_workbook
from xlbatch.run import Outcome

DESIGNS = [
    ["Design", "Decal", "What", "Film", "Position", "Height"],
    ["Name", "Front", "print name", "Black smooth", "full front", "1 in"],
    ["Name", "Back", "print name", "Red smooth", "back name", "1 in"],
]
JOB: Rows = [["Setting", "Value"], ["Shirts per strip", 3]]
PEOPLE = [["Who", "Size"], ["Ana", "M"], ["Ivo", "L"], ["Mei", "S"], ["Noor", "M"], ["Zoë", "XL"]]


@pytest.fixture
def first(tmp_path: Path) -> PlanBook:
    """The plan of five people with two decals each, in batches of three."""
    return written(drop(write_workbook(tmp_path / "roster.xlsx", {"Roster": PEOPLE, "Designs": DESIGNS, "Job": JOB})))


def runs(outcome: Outcome) -> list[str]:
    assert outcome.cut_files is not None
    return sorted(path.name[:2] for path in outcome.cut_files.iterdir() if path.name.endswith("mirrored.svg"))


def to_buy(book: PlanBook) -> list[str]:
    return [row["Item"] for _, row in book.rows("Shopping list", "Item") if row["Kind"] == "film"]


def test_what_is_cut_is_neither_laid_nor_bought_again(first: PlanBook) -> None:
    before = steps(first)
    first.cut()
    assert first.result("ok", lambda row: row["Garment no."] in (1, 2, 3)) == 6
    outcome = first.drop()
    second = written(outcome)
    assert runs(outcome) == to_buy(second) == []
    assert steps(second) == [step for step in before if step[0] in (4, 5)]
    assert decals(second, "to cut") == set()
    assert len(decals(second, "pressed")) == 6


def test_a_late_joiner_and_a_spoiled_decal_are_all_that_is_cut(first: PlanBook) -> None:
    first.cut()
    first.cut("D003", "Spoiled", lambda row: "D003" in row["Decals"])
    first.join(Who="Kai", Size="M")
    second = written(first.drop())
    new = [row for _, row in second.rows("Decals", "Decal") if row["Now"] == "to cut"]
    assert [(row["Decal"], row["Garment no."], row["Piece"]) for row in new] == [
        ("D011", 2, "Front"), ("D012", 6, "Front"), ("D013", 6, "Back"),
    ]  # fmt: skip
    assert decals(second, "spoiled") == {"D003"}
    assert min(row["Run"] for row in new) == 3  # after the two runs of the first plan
    assert all(row["Strip"] > 2 for row in new)


def test_a_garment_stays_in_its_batch_while_a_decal_of_it_is_cut(first: PlanBook) -> None:
    batch = {no: name for no, _, name in steps(first)}
    first.cut()
    first.cut("D003", "Spoiled", lambda row: "D003" in row["Decals"])
    second = written(first.drop())
    assert {no: name for no, _, name in steps(second)} == batch


@pytest.mark.parametrize("mark", ["yes", "x", "✓", "12 May 2026"])
def test_weeded_and_dates_and_ticks_are_marks(first: PlanBook, mark: str) -> None:
    first.cut(mark, "Weeded")
    outcome = first.drop()
    unread = codes(outcome).count("mark-unclear")
    assert unread or decals(written(outcome), "weeded") == {f"D{no:03d}" for no in range(1, 11)}
    assert not unread


def test_a_cleared_cut_is_to_cut_again_under_its_number(first: PlanBook) -> None:
    first.cut()
    second = written(first.drop())
    assert second.cut(None, where=lambda row: row["Film"] == "Red smooth") == 2
    third = written(second.drop())
    assert decals(third, "to cut") == {"D002", "D004", "D006", "D008", "D010"}
    assert decals(third, "cut") == {"D001", "D003", "D005", "D007", "D009"}


def test_while_nothing_is_marked_runs_and_strips_start_anew_and_decals_keep_their_numbers(first: PlanBook) -> None:
    first.join(Who="Kai", Size="M")
    outcome = first.drop()
    second = written(outcome)
    assert runs(outcome) == ["01", "02"]
    rows = [row for _, row in second.rows("Decals", "Decal")]
    assert [row["Garment no."] for row in rows] == [1, 1, 2, 2, 3, 3, 4, 4, 5, 5, 6, 6]
    assert {row["Strip"] for row in rows} == {1, 2}


def test_redo_garment_spoils_what_is_on_it_and_no_more(first: PlanBook) -> None:
    first.cut()
    first.result("redo garment", lambda row: row["Decal"] == "D003")
    second = written(first.drop())
    assert decals(second, "spoiled") == {"D003"}
    assert decals(second, "to cut") == {"D011"}
    assert {step[1] for step in steps(second) if step[0] == 2} == {"D004", "D011"}


def test_done_cleared_on_the_roster_was_not_done(first: PlanBook) -> None:
    first.cut()
    first.result("ok", lambda row: row["Garment no."] == 1)
    second = written(first.drop())
    second.edit(1, "Status", None)
    third = written(second.drop())
    assert {step[1] for step in steps(third) if step[0] == 1} == {"D001", "D002"}
    assert decals(third, "to cut") == set()


def test_an_untouched_plan_gives_the_same_sheets(first: PlanBook) -> None:
    first.cut(where=lambda row: row["Film"] == "Red smooth")
    first.result("ok", lambda row: row["Decal"] == "D002")
    second = first.drop()
    third = drop(written(second).path)
    assert second.written is not None
    assert third.written is not None
    before, after = (load_workbook(path, data_only=True) for path in (second.written, third.written))
    for sheet in before:
        if sheet.title not in ("Job sheet", "Problems"):
            assert list(sheet.values) == list(after[sheet.title].values), sheet.title


@pytest.mark.parametrize("name", ["lantern walk", "pottery class", "relay squad"])
def test_a_plan_made_before_there_was_a_memory_drops_as_it_did(tmp_path: Path, name: str) -> None:
    old = Path(__file__).parents[1] / "data" / "first_edition" / f"{name} - plan.xlsx"
    for drawing in (Path(__file__).parents[2] / "example_workbooks").glob("*.svg"):
        shutil.copy(drawing, tmp_path)
    plan = PlanBook(Path(shutil.copy(old, tmp_path)))
    everyone = len({no for no, _, _ in steps(plan)})
    assert plan.result("ok", lambda row: row["Garment no."] == 1)
    outcome = plan.drop()
    assert outcome.code == 0
    again: Callable[[], set[int]] = lambda: {no for no, _, _ in steps(written(outcome))}  # noqa: E731
    assert again() == set(range(2, everyone + 1))


def test_numbers_go_on_after_those_of_a_plan_made_before_there_was_a_memory(tmp_path: Path) -> None:
    old = Path(__file__).parents[1] / "data" / "first_edition" / "relay squad - plan.xlsx"
    for drawing in (Path(__file__).parents[2] / "example_workbooks").glob("*.svg"):
        shutil.copy(drawing, tmp_path)
    plan = PlanBook(Path(shutil.copy(old, tmp_path)))
    before = {str(row["Decal"]) for _, row in plan.rows("Press log", "Step") if row["Decal"]}
    runs_before = {row["Run"] for row in plan.strips(ready=False)}
    plan.cut()
    plan.result("ok", lambda row: row["Garment no."] == 1)
    outcome = plan.drop()
    assert "cut-not-known" in codes(outcome)
    later = written(outcome)
    assert not before & decals(later, "to cut")
    assert not runs_before & {row["Run"] for row in later.strips(ready=False)}
