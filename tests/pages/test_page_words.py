"""What pages say where a job is out of the ordinary: days that have passed, short strips, garments of several kinds."""

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest
from openpyxl import load_workbook

from tests.pages.cells import texts_of
from xlbatch.pages.order_of_the_day import PASSED
from xlbatch.pages.write_pages import write_pages
from xlbatch.plan import Plan

JOB = [["Setting", "Value"], ["Needed by", "2026-06-20"]]


def told(plan: Plan, folder: Path, sheet: str) -> list[str]:
    write_pages(folder / "pages.xlsx", plan, "plan.xlsx")
    return [text.replace("\u00a0", " ") for text in texts_of(folder / "pages.xlsx", sheet)]


def test_days_that_have_passed_say_so(plan_of: Callable[..., Plan], tmp_path: Path) -> None:
    plan = plan_of([["Who", "Size"], ["Ana", "M"]], Job=JOB)
    order, press = plan.dates.order_by, plan.dates.press_by
    assert order
    assert press
    at_order = plan.run_at.replace(year=order.year, month=order.month, day=order.day)
    late = replace(plan, run_at=at_order + timedelta(days=1))
    day = told(late, tmp_path, "Order of the day")
    assert PASSED in day
    assert any(text.startswith("Order by: passed!") for text in day)
    assert any(text.startswith("Press by\n") for text in day)
    sheet = load_workbook(tmp_path / "pages.xlsx")["Order of the day"]
    (passed,) = (cell for row in sheet.iter_rows() for cell in row if str(cell.value).replace("\u00a0", " ") == PASSED)
    assert passed.font.b  # so that nobody overlooks it
    early = replace(plan, run_at=late.run_at - timedelta(days=30))
    assert not [text for text in told(early, tmp_path, "Order of the day") if "passed" in text]


def test_strips_weeded_together_are_told_once(plan_of: Callable[..., Plan], tmp_path: Path) -> None:
    """Short names, a shirt a strip, so that each is too short to hold alone."""
    designs = [["Design", "Decal", "What", "Position", "Height"], ["Name", "Name", "print name", "full front", "2 in"]]
    job = [["Setting", "Value"], ["Shirts per strip", 1]]
    people = [["Who", "Size"], *([name, "M"] for name in ("Ana", "Bo", "Kai", "Mei"))]
    pages = told(plan_of(people, Designs=designs, Job=job), tmp_path, "Cut and weed")
    short = [text for text in pages if "Too short to hold alone" in text]
    assert [text.count("Too short") for text in short] == [1]
    assert "strips 1 + 2, 3 + 4" in short[0]


@pytest.mark.parametrize(("sizes", "titles"), [(("S", "M", "L"), 2), (("M",), 0)])
def test_garments_of_many_sizes_stand_under_their_name_and_color(
    plan_of: Callable[..., Plan], tmp_path: Path, sizes: tuple[str, ...], titles: int
) -> None:
    """With one line a garment a title would say no more than the line."""
    people = [["Who", "Garment", "Size", "Color"]]
    people += [[f"{color} {size}", "Crew-neck tee", size, color] for color in ("navy", "gray") for size in sizes]
    bought = told(plan_of(people), tmp_path, "Buy and check in")
    assert sum(text.startswith("Garments: Crew-neck tee, ") for text in bought) == titles
    assert ("Garments" in bought) == (titles == 0)


def test_short_words_of_the_cards_are_explained(plan_of: Callable[..., Plan], tmp_path: Path) -> None:
    cards = told(plan_of([["Who", "Size"], ["Ana", "M"]]), tmp_path, "Press cards")
    assert [text for text in cards if text.startswith("Trial: press a scrap")]
    assert not [text for text in cards if "tack:" in text]
