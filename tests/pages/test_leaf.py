"""Pages broken by hand: within their height, evenly, and nothing parted that belongs together."""

from io import BytesIO
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from openpyxl import load_workbook

from xlbatch.pages.leaf import ACROSS, Leaf, Shown, Span
from xlbatch.pages.page_looks import Looks, Text
from xlbatch.paper.living_workbook import LivingWorkbook
from xlbatch.paper.picture import drawn


def leaf(heights: list[int], joined: set[int] = frozenset()) -> Leaf:  # type: ignore[assignment]
    made = Leaf("Page", job="Job", paper="Letter")
    for at, height in enumerate(heights):
        made.row(height, joined=at in joined)
    return made


@given(st.lists(st.integers(10, 200), min_size=1, max_size=60))
def test_no_page_is_higher_than_its_paper(heights: list[int]) -> None:
    made = leaf(heights)
    cuts = [0, *made.starts, len(heights)]
    assert all(sum(heights[a:b]) <= made.budget for a, b in pairwise(cuts))


@given(st.lists(st.integers(10, 60), min_size=1, max_size=60), st.sets(st.integers(0, 59)))
def test_rows_that_belong_together_stand_on_one_page(heights: list[int], joined: set[int]) -> None:
    for start in leaf(heights, joined).starts:
        chain = start
        while chain and chain - 1 in joined:
            chain -= 1
        end = start
        while end in joined and end + 1 < len(heights):
            end += 1
        assert chain == start or sum(heights[chain : end + 1]) > leaf([]).budget


def test_a_lone_last_row_never_begins_a_page() -> None:
    assert leaf([20] * 36).starts == (18,)  # 716 points hold 35: the pages are as even as two allow


def test_heading_rows_count_on_every_page() -> None:
    made = Leaf("Page", job="Job", paper="Letter")
    made.row(300)
    made.repeat()
    for _ in range(4):
        made.row(200)
    assert made.starts == (3,)


def test_a_row_is_as_high_as_its_text_needs() -> None:
    made = Leaf("Page", job="Job", paper="Letter")
    made.line("one line")
    made.row(0, Span(ACROSS // 4, "a text that takes more than a single line in a quarter of the page"))
    made.row(0, Span(ACROSS, (Text("large\n", 28), Text("small"))))
    one, more, rich = (row.height for row in made.rows)
    assert one == 16 < more
    assert rich >= 28 * 1.22 + 11 * 1.22


def test_a_batch_stays_on_one_page_where_that_costs_none() -> None:
    page = Leaf("Cards", job="", paper="Letter")
    for row_no in range(12):
        page.row(page.budget / 8, begins=row_no in (0, 5, 9))
    assert page.starts == (5,)
    assert page.parts_whole
    page.row(page.budget / 8)
    page.row(page.budget / 8)
    page.row(page.budget / 8)
    assert page.printed == 2  # a page more would be needed to keep each whole
    assert not page.parts_whole


def test_a_batch_that_goes_on_is_named_again() -> None:
    page = Leaf("Cards", job="", paper="Letter")
    for row_no in range(8):
        heading = Span(ACROSS, "BATCH 1") if row_no == 0 else Span(ACROSS)
        page.row(page.budget / 6, heading, begins=row_no == 0)
    page.end_part()
    page.row(page.budget / 6)
    rows, starts = page.laid()
    assert [row_no for row_no, row in enumerate(rows) if row.spans == (Span(ACROSS, "BATCH 1, continued"),)] == starts
    assert all(sum(row.height for row in rows[a:b]) <= page.budget for a, b in pairwise([0, *starts, len(rows)]))
    assert not page.parts_whole


@pytest.mark.parametrize(("left", "column", "within"), [(0.0, 0, 0.0), (8.0, 0, 8.0), (9.0, 1, 0.0), (300.5, 33, 3.5)])
def test_a_picture_lies_where_it_is_put_and_as_large_as_drawn(left: float, column: int, within: float) -> None:
    """An inch is 72 points and 914,400 of the file's units; a column is 9 points wide."""
    svg = '<svg xmlns="http://www.w3.org/2000/svg" width="100" height="40"><path d="M0 0H100V40z"/></svg>'
    page, file = Leaf("Page", job="Job", paper="Letter"), BytesIO()
    page.row(30, Span(ACROSS, "above"))
    page.row(60, pictures=[Shown(lambda: drawn(svg, "a wedge"), left, 10.5)])
    with LivingWorkbook(file, {}) as workbook:
        page.write(workbook, Looks(workbook))
    sheet: Any = load_workbook(file)["Page"]
    (picture,) = sheet._images
    start = picture.anchor._from
    assert (start.row, start.col) == (1, column)
    assert (start.rowOff, start.colOff) == pytest.approx((10.5 * 12700, within * 12700), abs=1)
    assert picture.anchor.editAs == "absolute"  # wider columns do not stretch it
