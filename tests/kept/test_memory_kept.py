"""The memory on its sheet: packed, as the program before kept it, and damaged."""

import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from tests.kept.history import through_office
from tests.plan_book import PlanBook, codes, decals, drop_for_workbook, steps, written
from tests.workbooks import write_workbook
from xlbatch.files.raw import Raw, RawSheet
from xlbatch.kept.memory import (
    KeptAnswer,
    KeptDecal,
    KeptFilm,
    KeptRow,
    Memory,
)
from xlbatch.kept.written import Damaged, from_sheet, to_rows
from xlbatch.roster.read import Reading, read

MEMORY = Memory(
    plan=3,
    last_decal=7,
    decals=(KeptDecal("D007", 2, "Front", "Zoë [“7”]", "Gold", 10.5, 20, 90.125, 1, 2, 2, "weeded"),),
    films=(KeptFilm("Gold", ("304.8 x 4572", "100 x 90")), KeptFilm("Red", ())),
    answers=(KeptAnswer("number-twice", "2", "7", "ok"),),
    rows=(KeptRow("Roster", "2", ("Zoë", "", "M")),),
)


def sheet(rows: list[tuple[str, ...]]) -> RawSheet:
    cells = (dict(enumerate(map(Raw, row), 1)) for row in rows)
    return RawSheet("Kept", dict(enumerate(cells, 1)))


def test_what_is_remembered_comes_back_as_it_was() -> None:
    assert from_sheet(sheet(list(to_rows(MEMORY)))) == MEMORY


@pytest.mark.parametrize(
    ("kind", "text"),
    [("decals", "[[1,2]]"), ("decals", "[["), ("films", '[["Gold"]]'), ("last_decal", "many"), ("edition", "9")],
)
def test_a_memory_that_no_plan_wrote_is_damaged(kind: str, text: str) -> None:
    rows = [(kind, text) if row[0] == kind else row for row in to_rows(MEMORY)]
    with pytest.raises(Damaged):
        from_sheet(sheet(rows))


def test_a_decal_stands_where_decals_stand() -> None:
    rows = to_rows(replace(MEMORY, decals=(replace(MEMORY.decals[0], state="lost"),)))  # type: ignore[arg-type]
    with pytest.raises(Damaged):
        from_sheet(sheet(list(rows)))


def test_a_plan_with_a_record_a_row_drops_as_it_did(tmp_path: Path) -> None:
    """Kept by the program before records were packed, with marks set and a cell typed over: what became of it then."""
    old = Path(__file__).parents[1] / "data" / "second_edition" / "night walk - plan 2.xlsx"
    outcome = drop_for_workbook(Path(shutil.copy(old, tmp_path)))
    assert codes(outcome) == ["typed-over", "typed-over"]
    later = written(outcome)
    assert decals(later, "to cut") == {"D009"}
    assert (decals(later, "cut"), decals(later, "weeded")) == ({"D007"}, {"D004", "D008"})
    assert decals(later, "pressed") == {"D001", "D002", "D005", "D006"}
    assert decals(later, "not needed") == {"D003"}
    assert [(no, decal) for no, decal, _ in steps(later)] == [(2, "D004"), (2, "D009"), (4, "D007"), (4, "D008")]
    assert [(row["Plan"], row["What"], row["Now"]) for row in later.changes()] == [
        (3, "Size", "XL"), (3, "Size", "XL"), (2, "Print name", "IVAN"),
    ]  # fmt: skip


@pytest.mark.parametrize("kind", ["xlsx", "ods"])
def test_a_long_memory_comes_through_another_spreadsheet_program(tmp_path: Path, kind: str) -> None:
    people = [["Who", "Size", "Note"], ["Ana", "M", "é  ü " * 8000], ["Ivo", "L", "‘x’"]]
    plan: PlanBook = written(drop_for_workbook(write_workbook(tmp_path / "roster.xlsx", {"Roster": people})))
    before, after = _memory(plan.path), _memory(through_office(plan.path, kind))
    assert before == after
    assert any(len(value) > 20_000 for row in before.rows for value in row.values)


def _memory(path: Path) -> Memory:
    reading = read(path)
    assert isinstance(reading, Reading)
    assert reading.kept
    return from_sheet(reading.kept)


@pytest.mark.parametrize("edition", ["3"])
def test_plans_of_this_edition_are_read_by_later_ones(edition: str) -> None:
    """Editions are numbers in people's files: once given, they stay."""
    rows = [(row[0], edition) if row[0] == "edition" else row for row in to_rows(MEMORY)]
    assert from_sheet(sheet(rows)) == MEMORY
