"""What could not be read stays in the plan as it was typed, and goes on holding its row back."""

from collections.abc import Callable
from datetime import datetime
from pathlib import Path

from openpyxl import load_workbook

from tests.workbooks import heading_at
from xlbatch.roster.read import Reading, read
from xlbatch.run import Options, make_plan, run
from xlbatch.sheets.plan import Plan

HEAD = ["Who", "Size", "How many", "Paid", "Status", "Number"]
ROWS = [
    ["Ana", "M", "a few", None, None, None],
    ["Ivo", "L", 0, None, None, None],
    ["Mei", "S", None, "some", None, None],
    ["Tùng", "XL", None, None, "finished", None],
    ["Zoë", "mediun", None, None, None, None],
    ["#REF!", "M", None, None, None, None],
    ["Noor", "M", None, None, None, None],
]


def stops(path: Path) -> tuple[list[str], list[str]]:
    reading = read(path)
    assert isinstance(reading, Reading)
    plan = make_plan(reading, 0, lambda _: None, datetime(2026, 5, 4))
    codes = [found.code for found in plan.problems if found.level == "stop"]
    return sorted(codes), [garment.who for garment in plan.garments]


def test_a_row_held_back_is_held_back_again_by_the_untouched_plan(
    tmp_path: Path, reading_of: Callable[..., Reading]
) -> None:
    reading_of([HEAD, *ROWS])
    first = stops(tmp_path / "roster.xlsx")
    assert first[1] == ["Noor"]
    outcome = run(tmp_path / "roster.xlsx", Options(effort=0), lambda _: None, datetime(2026, 5, 4))
    assert outcome.written is not None
    assert stops(outcome.written) == first
    sheet = load_workbook(outcome.written)["Roster"]
    top, column = heading_at(sheet, "How many")
    assert [sheet.cell(top + at, column).value for at in (1, 2, 3)] == ["a few", "0", 1]


def test_what_was_paid_for_a_row_is_shared_out_among_its_garments(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of([HEAD, ["Ana", "M", 3, 50, None, None], ["Ivo", "L", 2, "yes", None, None]])
    assert [str(row.paid) for row in plan.job.roster] == ["16.67", "16.67", "16.66", "yes", "yes"]
