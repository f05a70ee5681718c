"""How wide columns are: the arithmetic stands beside each check, in points."""

import pytest

from xlbatch.paper.measure import text_width
from xlbatch.paper.paging import page_starts
from xlbatch.paper.widths import PAD, filled, own_width


def test_a_column_is_as_wide_as_its_longest_line_within_limits() -> None:
    wide = text_width("Quillfeather", 10, False) + PAD + 1
    assert own_width(10, 500, ["Bo", "Ana\nQuillfeather"], 10, bold=False) == pytest.approx(wide)
    assert own_width(200, 500, ["Bo"], 10, bold=False) == 200
    assert own_width(10, 20, ["Quillfeather"], 10, bold=False) == 20
    assert own_width(1, 500, [], 10, bold=False) == PAD + 1


def test_columns_fill_the_room_by_their_shares_and_none_is_below_its_least() -> None:
    assert filled([1, 3], [0, 0], 100) == [25, 75]
    assert filled([1, 3], [40, 0], 100) == [40, 60]
    assert filled([1, 1, 2], [50, 0, 0], 110) == [50, 20, 40]
    assert filled([1, 1], [80, 70], 100) == [80, 70]  # too small a room
    assert filled([1, 1], [30, 70], 100) == [30, 70]


def test_a_block_goes_on_the_next_page_where_it_does_not_fit() -> None:
    assert page_starts([40, 40, 40], 100, 100) == (2,)
    assert page_starts([40, 60, 1], 100, 100) == (2,)
    assert page_starts([40, 61, 39, 1], 100, 100) == (1, 3)
    assert page_starts([40, 40], 30, 100) == (0,)  # the first page has less room
    assert page_starts([130, 60, 20], 30, 100) == (1,)  # higher than a page: it fills both
