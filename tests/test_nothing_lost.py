"""What could not be read stays in the plan as it was typed, and goes on holding its row back."""

from collections.abc import Callable
from datetime import datetime
from pathlib import Path

from openpyxl import load_workbook
from openpyxl.worksheet.worksheet import Worksheet

from tests.workbooks import heading_at
from xlbatch.plan import Plan
from xlbatch.roster.read import Reading, read
from xlbatch.run import Options, make_plan, run

HEAD = ["Who", "Size", "How many", "Paid", "Status", "Number"]
ROWS = [
    ["Ana", "M", "a few", None, None, None],
    ["Ivo", "L", 0.5, None, None, None],
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
    assert first[1] == ["Mei", "Noor"]  # what Mei paid is asked and holds nothing back
    outcome = run(tmp_path / "roster.xlsx", Options(effort=0), lambda _: None, datetime(2026, 5, 4))
    assert outcome.written is not None
    assert stops(outcome.written) == first
    sheet = load_workbook(outcome.written)["Roster"]
    top, column = heading_at(sheet, "How many")
    assert [sheet.cell(top + at, column).value for at in (1, 2, 3)] == ["a few", "0.5", 1]


def test_what_was_paid_for_a_row_is_shared_out_among_its_garments(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of([HEAD, ["Ana", "M", 3, 50, None, None], ["Ivo", "L", 2, "yes", None, None]])
    assert [str(row.paid) for row in plan.job.roster] == ["16.67", "16.67", "16.66", "yes", "yes"]


def test_a_row_of_another_sheet_that_cannot_be_used_comes_back_as_it_was_typed(
    tmp_path: Path, reading_of: Callable[..., Reading]
) -> None:
    """In its place, each bare length with the unit of its heading, beside columns that mean nothing here."""
    reading_of(
        [["Who", "Size", "Design"], ["Ana", "M", "Crest"], ["Ivo", "M", "Name"]],
        Designs=[
            ["Design", "Decal", "What", "Film", "Width (cm)", "Height (cm)", "Drawn by"],
            ["Crest", "Badge", "artwrk", "Black smooth", 12, 8, "Mei"],
            ["Name", "Name", "print name", "Black smooth", None, 3, "Kai"],
        ],
        Garments=[["Garment", "Size", "Chest width", "Price"], ["Crew-neck tee", "M", "wide", 4.2]],
        Film=[["Film", "Color", "Press time", "Shelf"], ["Black smooth", "black", "a while", "B2"]],
        Press=[["Press", "Plate width"], ["Old one", "some"], ["New one", "15 in"]],
    )
    outcome = run(tmp_path / "roster.xlsx", Options(effort=0), lambda _: None, datetime(2026, 5, 4))
    assert outcome.written is not None
    first, again = (stops(path) for path in (tmp_path / "roster.xlsx", outcome.written))
    assert first == again
    book = load_workbook(outcome.written)
    assert first_row(book["Designs"]) == {
        "Design": "Crest", "Decal": "Badge", "What": "artwrk", "Film": "Black smooth", "Width (in)": "12 cm",
        "Height (in)": "8 cm", "Drawn by": "Mei",
    }  # fmt: skip
    assert {"Press": "Old one", "Plate width (in)": "some"}.items() <= first_row(book["Press"]).items()
    assert {"Press time (s)": "a while", "Shelf": "B2"}.items() <= first_row(book["Film"]).items()
    garments = book["Garments"]
    assert "wide" in [cell.value for row in garments.iter_rows() for cell in row]


def first_row(sheet: Worksheet) -> dict[object, object]:
    """The filled cells of the first row under the headings."""
    head, row = list(sheet.iter_rows(values_only=True))[2:4]
    return {title: value for title, value in zip(head, row, strict=True) if value is not None}
