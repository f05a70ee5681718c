"""Which rows of a sheet begin a further page: headings stand on every page, and take room there."""

from collections.abc import Sequence

import pytest

from xlbatch.paper.paging import rows_that_begin_pages

# heights of rows, first rows of blocks, what headings take on further pages of 90 points -> the rows that begin one
PAGES: tuple[tuple[Sequence[float], Sequence[int], float, tuple[int, ...]], ...] = (
    ((), (), 0, ()),
    ((10, 20, 20, 20, 20), (1, 2, 3, 4), 10, ()),  # just full
    ((10, *[20] * 6), range(1, 7), 10, (4,)),  # three and three
    ((10, *[20] * 8), range(1, 9), 10, (5,)),  # four and four
    ((10, *[20] * 9), range(1, 10), 10, (4, 7)),  # four fit on every page: three, three and three
    ((10, *[20] * 9), range(1, 10), 0, (4, 7)),
    ((10, 45, 45), (1,), 10, (2,)),  # a block higher than a further page is broken within
    ((20, 40, 40), (1,), 10, (1,)),  # one that fits there goes there whole
    ((10, 40, 40), (1,), 0, ()),
)


@pytest.mark.parametrize(("heights", "starts", "repeated", "expected"), PAGES)
def test_blocks_stay_whole_and_headings_take_room(
    heights: Sequence[float], starts: Sequence[int], repeated: float, expected: tuple[int, ...]
) -> None:
    assert rows_that_begin_pages(heights, starts, 90.0, repeated) == expected
