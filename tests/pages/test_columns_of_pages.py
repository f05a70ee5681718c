"""The grid of the pages: 60 columns of an eighth of an inch, and tables that fill it."""

from collections.abc import Callable, Sequence
from io import BytesIO

import pytest
from openpyxl import load_workbook

from xlbatch.pages import cut_and_weed, press_cards
from xlbatch.pages.leaf import Leaf
from xlbatch.pages.page_looks import Looks
from xlbatch.pages.work import look_up
from xlbatch.paper.living_workbook import LivingWorkbook
from xlbatch.plan import Plan

LONG = "Wilhelmina Gwendolyn Quillfeather-Oyelaran"


@pytest.mark.parametrize("names", [["Bo", "Cy"], ["Bo", LONG], [LONG, f"{LONG} the second"]])
@pytest.mark.parametrize("shared", [None, "LAKE CAMP"])
def test_tables_of_cards_and_strips_are_as_wide_as_the_page(
    names: Sequence[str], shared: str | None, plan_of: Callable[..., Plan]
) -> None:
    job = [["Setting", "Value"], ["Shared line", shared]]
    work = look_up(plan_of([["Who", "Size"], *([name, "M"] for name in names)], Job=job))
    strips = cut_and_weed.columns(work, ["1", "12a"])
    assert sum(strips) == 60
    assert strips.picture >= 10  # room for a drawing
    cards = press_cards.columns(work)
    assert 3 + cards.who + cards.drawing + cards.steps + cards.result + cards.note == 60
    assert cards.note >= 9


@pytest.mark.parametrize(("paper", "number"), [("Letter", 1), ("A4", 9)])  # ST_PaperSize of ECMA-376, from memory
def test_a_page_has_sixty_columns_of_an_eighth_of_an_inch(paper: str, number: int) -> None:
    content = BytesIO()
    workbook = LivingWorkbook(content, {})
    leaf = Leaf("Cards", job="Camp", paper=paper)
    leaf.title("Do this.", "Camp")
    leaf.write(workbook, Looks(workbook))
    workbook.close()
    sheet = load_workbook(content)["Cards"]
    (columns,) = sheet.column_dimensions.values()
    assert (columns.min, columns.max) == (1, 60)
    assert columns.width * 7 == pytest.approx(12, abs=0.1)  # dots of a screen, 96 an inch; a width counts digits of 7
    assert sheet.print_area == "'Cards'!$A$1:$BH$2"
    assert sheet.page_setup.paperSize == number
    assert sheet.page_setup.scale in (None, 100)  # nothing is fitted
