"""Paper, widths and colors: what makes a sheet readable in print."""

from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from xlbatch.paper.measure import line_count, text_width
from xlbatch.paper.page import Column, tabled
from xlbatch.paper.paging import page_starts, paper
from xlbatch.paper.style import CHANGE, CHECK, HEAD, INK, NOTE, QUIET, STOP
from xlbatch.paper.widths import filled
from xlbatch.paper.workbook import Book
from xlbatch.plan import Plan

SIZES = st.lists(st.floats(5, 120), min_size=1, max_size=20)
check = settings(max_examples=100)


@pytest.mark.parametrize(
    ("text", "thousandths"),
    # Adobe's Helvetica metrics (Core 14 AFM), which Arial and Arimo share
    [("A", 667), ("a", 556), (" ", 278), ("0", 556), ("W", 944), ("il", 222 + 222), ("Weed", 944 + 556 * 3)],
)
def test_text_is_measured_in_arial(text: str, thousandths: int) -> None:
    assert text_width(text, 1000) == pytest.approx(thousandths, abs=1.5)


def test_an_indent_leaves_less_room_for_a_text(tmp_path: Path, plan: Plan) -> None:
    text, column = "n" * 24, Column("", 9.0, whole=True)
    with Book(tmp_path / "book.xlsx", plan.job) as book:
        page = book.page("Page")
        page.lay_columns([column], tabled([column], [[text]]), fill=False, base="form")
        page.record([text])
        page.record([text], "caption")
    assert page.heights[1] > page.heights[0]


@pytest.mark.parametrize(
    ("text", "lines"),
    [("", 1), ("one", 1), ("one two", 1), ("one two three", 2), ("one\ntwo", 2), ("n" * 40, 5)],
)
def test_lines(text: str, lines: int) -> None:
    assert line_count(text, room=50, size=10) == lines


@pytest.mark.parametrize(
    ("blocks", "starts"),
    [
        ([40, 40], ()),  # both fit on the first page (80 high)
        ([40, 41], (1,)),
        ([40, 41, 59], (1,)),  # later pages are 100 high
        ([40, 41, 60], (1, 2)),
        ([300, 10], ()),  # higher than a page: runs on, 20 on the last
        ([300, 90], (1,)),
        ([30, 300], (1,)),  # a block that must be split at least begins a page
        ([90, 10], (0,)),  # too high for what the title leaves, but not for a page
        ([], ()),
    ],
)
def test_page_starts(blocks: list[float], starts: tuple[int, ...]) -> None:
    assert page_starts(blocks, first=80, rest=100) == starts


@check
@given(st.lists(st.floats(1, 100), min_size=1, max_size=40))
def test_no_block_that_fits_on_a_page_is_split(blocks: list[float]) -> None:
    starts = (0, *page_starts(blocks, first=100, rest=100), len(blocks))
    for start, end in pairwise(starts):
        assert sum(blocks[start:end]) <= 100 + 1e-6


@check
@given(SIZES, st.data())
def test_columns_fill_the_paper_and_keep_their_least(shares: list[float], data: st.DataObject) -> None:
    least = data.draw(st.lists(st.floats(1, 30), min_size=len(shares), max_size=len(shares)))
    widths = filled(shares, least, 700)
    assert all(width >= low - 1e-9 for width, low in zip(widths, least, strict=True))
    assert sum(widths) == pytest.approx(max(700, sum(least)))


@pytest.mark.parametrize(("name", "inches"), [("Letter", 8.5), ("A4", 8.27)])
def test_the_printed_width_is_less_than_the_paper(name: str, inches: float) -> None:
    assert 0.85 < paper(name, landscape=False).width / 72 / inches < 1


@pytest.mark.parametrize("ground", ["#ffffff", HEAD, CHANGE, STOP, CHECK, NOTE])
@pytest.mark.parametrize("ink", [INK, QUIET])
def test_contrast(ink: str, ground: str) -> None:
    """WCAG 2.1, success criterion 1.4.3: at least 4.5 to 1."""
    light, dark = sorted((luminance(ink), luminance(ground)), reverse=True)
    assert (light + 0.05) / (dark + 0.05) >= 4.5


def luminance(color: str) -> float:
    """Relative luminance as WCAG 2.1 defines it."""
    channels = [int(color[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.03928 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]
