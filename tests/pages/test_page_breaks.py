"""Where pages break, on rows of round heights."""

from typing import NamedTuple

import pytest

from xlbatch.pages.page_breaks import breaks
from xlbatch.pages.press_cards import _range


class Line(NamedTuple):
    height: float = 10
    joined: bool = False
    starts_page: bool = False
    begins: bool = False
    head: float = 0


PLAIN, BEGINS, WITHIN = Line(), Line(begins=True), Line(head=5)
JOINED, NEW = Line(joined=True), Line(starts_page=True)


@pytest.mark.parametrize(
    ("rows", "first", "rest", "starts"),
    [
        ([PLAIN] * 10, 100, 100, ()),
        ([PLAIN] * 11, 100, 100, (5,)),  # as even as can be
        ([PLAIN] * 11, 100, 50, (8,)),  # of what each page has room for
        ([PLAIN] * 11, 60, 100, (3,)),
        ([PLAIN] * 11, 99, 19, (9, 10)),
        ([NEW, PLAIN, PLAIN], 100, 100, ()),  # the first row begins no further page
        ([PLAIN, NEW, PLAIN], 100, 100, (1,)),
        ([PLAIN, NEW, *[PLAIN] * 10], 100, 100, (1, 6)),
        ([PLAIN, NEW, *[PLAIN] * 10], 10, 110, (1,)),  # a further page has its own height
        ([*[PLAIN] * 5, JOINED, JOINED, *[PLAIN] * 4], 100, 100, (5,)),
        ([*[JOINED] * 10, PLAIN], 100, 100, (5,)),  # together higher than a page: row by row
        ([*[JOINED] * 9, PLAIN, PLAIN], 100, 100, (10,)),
        ([*[PLAIN] * 5, JOINED, NEW, PLAIN], 100, 100, (6,)),  # a break that was asked for parts them
    ],
)
def test_pages_break_evenly_and_part_nothing_joined(
    rows: list[Line], first: float, rest: float, starts: tuple[int, ...]
) -> None:
    assert breaks(rows, first, rest) == starts


@pytest.mark.parametrize(
    ("numbers", "told"),
    [
        ((1,), "1"),
        ((1, 2), "1, 2"),
        ((1, 2, 3), "1–3"),
        ((2, 3, 4, 5, 1, 12, 13), "2–5, 1, 12, 13"),
        ((3, 2, 1), "3, 2, 1"),
        ((1, 3, 5), "1, 3, 5"),
    ],
)
def test_three_batches_that_follow_one_another_are_a_range(numbers: tuple[int, ...], told: str) -> None:
    assert _range(numbers) == told
