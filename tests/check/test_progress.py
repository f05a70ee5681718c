"""What happened at the press decides what is still to do."""

from collections.abc import Callable
from datetime import datetime
from pathlib import Path

import pytest
from openpyxl import load_workbook

from tests.workbooks import heading_at
from xlbatch.plan import Plan
from xlbatch.roster.read import Reading, read
from xlbatch.run import Options, make_plan, run

HEAD = ["Who", "Size", "Status"]
DESIGNS = [
    ["Design", "Decal", "What", "Film", "Position", "Height"],
    ["Name", "Front", "print name", "Black smooth", "full front", "1 in"],
    ["Name", "Back", "print name", "Black smooth", "back name", "1 in"],
]


def replanned(path: Path) -> Plan:
    reading = read(path)
    assert isinstance(reading, Reading)
    return make_plan(reading, 0, lambda _: None, datetime(2026, 5, 4))


@pytest.fixture
def logged(tmp_path: Path, reading_of: Callable[..., Reading]) -> Callable[[dict[tuple[int, str], str]], Path]:
    """A plan workbook for Ana, Ivo and Mei with results written into its press log."""

    def make(results: dict[tuple[int, str], str]) -> Path:
        reading_of([HEAD, ["Ana", "M"], ["Ivo", "L"], ["Mei", "S"]], Designs=DESIGNS)
        outcome = run(tmp_path / "roster.xlsx", Options(effort=0), lambda _: None, datetime(2026, 5, 4))
        assert outcome.written is not None
        book = load_workbook(outcome.written)
        log = book["Press log"]
        top, number = heading_at(log, "Garment no.")
        piece, result = heading_at(log, "Piece")[1], heading_at(log, "Result")[1]
        for row in range(top + 1, log.max_row + 1):
            key = (log.cell(row, number).value, log.cell(row, piece).value)
            if key in results:
                log.cell(row, result).value = results[key]
        book.save(outcome.written)
        return outcome.written

    return make


def test_done_and_cancelled_rows_are_not_planned(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of([HEAD, ["Ana", "M", "done"], ["Ivo", "L", "Cancelled"], ["Mei", "S"]])
    assert [garment.who for garment in plan.garments] == ["Mei"]
    assert [row.no for row in plan.job.roster] == [1, 2, 3]


def test_redo_film_keeps_the_blank(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of([HEAD, ["Ana", "M", "redo film"], ["Ivo", "L", "redo garment"]])
    assert [garment.needs_blank for garment in plan.garments] == [False, True]
    assert [line.size for line in plan.shopping if line.kind == "blank"] == ["L"]


def test_a_garment_whose_steps_are_all_ok_is_done(logged: Callable[..., Path]) -> None:
    plan = replanned(logged({(1, "Front"): "ok", (1, "Back"): "ok"}))
    assert [row.status for row in plan.job.roster] == ["done", "", ""]
    assert [garment.no for garment in plan.garments] == [2, 3]


def test_only_the_spoiled_piece_is_cut_again(logged: Callable[..., Path]) -> None:
    plan = replanned(logged({(2, "Front"): "ok", (2, "Back"): "redo film"}))
    again = next(garment for garment in plan.garments if garment.no == 2)
    assert [spec.decal for spec in again.to_do] == ["Back"]
    assert not again.needs_blank


def test_a_spoiled_garment_starts_over(logged: Callable[..., Path]) -> None:
    plan = replanned(logged({(3, "Front"): "ok", (3, "Back"): "redo garment"}))
    again = next(garment for garment in plan.garments if garment.no == 3)
    assert [spec.decal for spec in again.to_do] == ["Front", "Back"]
    assert again.needs_blank


def test_what_is_done_stays_done_in_the_plan_after_the_next(tmp_path: Path, logged: Callable[..., Path]) -> None:
    first = logged({(1, "Front"): "ok", (1, "Back"): "ok", (2, "Front"): "ok"})
    outcome = run(first, Options(effort=0), lambda _: None, datetime(2026, 5, 5))
    assert outcome.written == tmp_path / "roster - plan 2.xlsx"
    plan = replanned(outcome.written)
    assert [garment.no for garment in plan.garments] == [2, 3]
    assert [spec.decal for spec in plan.garments[0].to_do] == ["Back"]


def test_a_status_set_by_hand_wins_over_the_log(logged: Callable[..., Path]) -> None:
    path = logged({(1, "Front"): "ok", (1, "Back"): "ok"})
    book = load_workbook(path)
    roster = book["Roster"]
    top, status = heading_at(roster, "Status")
    roster.cell(top + 1, status).value = "redo film"
    book.save(path)
    plan = replanned(path)
    assert [garment.no for garment in plan.garments] == [1, 2, 3]
    assert not plan.garments[0].needs_blank


ON_ONE_SIDE = [
    DESIGNS[0],
    ["Name", "Line", "text", "Black smooth", "full front", "2 in"],
    ["Name", "Name", "print name", "Black smooth", "full front", "2 in"],
]


@pytest.fixture
def joined(tmp_path: Path, reading_of: Callable[..., Reading]) -> Callable[[str], Path]:
    """A plan whose one garment's two parts are one piece, with a result written beside it."""

    def make(result: str) -> Path:
        designs = [[*row, text] for row, text in zip(ON_ONE_SIDE, ("Text", "Ana Novak", None), strict=True)]
        reading_of([HEAD, ["Ana Novak", "M"], ["Ivo Lund-Moe", "M"]], Designs=designs)
        outcome = run(tmp_path / "roster.xlsx", Options(effort=0), lambda _: None, datetime(2026, 5, 4))
        assert outcome.written is not None
        book = load_workbook(outcome.written)
        log = book["Press log"]
        (top, piece), column = heading_at(log, "Piece"), heading_at(log, "Result")[1]
        row = next(row for row in range(top + 1, log.max_row) if log.cell(row, piece).value)
        assert log.cell(row, piece).value == "Line + Name"
        log.cell(row, column).value = result
        book.save(outcome.written)
        return outcome.written

    return make


def test_a_joined_piece_s_result_is_its_parts(joined: Callable[[str], Path]) -> None:
    plan = replanned(joined("ok"))
    assert [garment.who for garment in plan.garments] == ["Ivo Lund-Moe"]
    assert len(plan.decals) == 1


def test_a_spoiled_part_spoils_the_piece(joined: Callable[[str], Path]) -> None:
    plan = replanned(joined("redo film"))
    assert [decal.piece for decal in plan.decals] == ["Line + Name"] * 2
    assert not plan.garments[0].needs_blank


def test_a_plan_with_results_made_before_pieces_were_joined_stays_so(joined: Callable[[str], Path]) -> None:
    path = joined("redo film")
    book = load_workbook(path)
    job = book["Job"]
    row = next(row for row in range(1, job.max_row + 1) if job.cell(row, 1).value == "Join pieces")
    job.cell(row, 1).value = job.cell(row, 2).value = None
    del book["Kept by the program"]  # there was no memory then
    book.save(path)
    plan = replanned(path)
    assert not plan.job.settings.join
    assert [decal.piece for decal in plan.decals] == ["Line", "Name"] * 2
