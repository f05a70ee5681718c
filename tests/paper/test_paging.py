"""Pages broken evenly: as few as one after the other filled would be, and the best way of all there are."""

from itertools import combinations, pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from xlbatch.paper.paging import even_page_starts, page_starts

REST = 100.0
BLOCKS = st.lists(st.floats(1, 90), min_size=1, max_size=9)


def unevenness(
    blocks: list[float], first: float, starts: tuple[int, ...], heads: list[float], dear: list[float]
) -> float:
    """The sum of costs and of squared parts left empty; infinite where a page is too high."""
    total = 0.0
    for page_no, (start, end) in enumerate(pairwise((0, *starts, len(blocks)))):
        spare = (REST - heads[start] if page_no else first) - sum(blocks[start:end])
        if spare < -1e-9:
            return float("inf")
        total += (spare / REST) ** 2 + (dear[start] if page_no else 0.0)
    return total


@given(BLOCKS, st.floats(90, 130), st.data())
def test_no_other_way_is_better(blocks: list[float], first: float, data: st.DataObject) -> None:
    """Against every way to break so few blocks."""
    heads = data.draw(st.lists(st.sampled_from([0.0, 10.0]), min_size=len(blocks), max_size=len(blocks)))
    dear = [2.0 if head else 0.0 for head in heads]
    starts = even_page_starts(blocks, first, REST, heads=heads, dear=dear)
    cost = unevenness(blocks, first, starts, heads, dear)
    for count in range(len(starts) + 1):
        ways = combinations(range(1, len(blocks)), count)
        best = min((unevenness(blocks, first, way, heads, dear) for way in ways), default=float("inf"))
        assert best == (float("inf") if count < len(starts) else pytest.approx(cost))


@given(st.lists(st.floats(1, 250), max_size=30), st.floats(0, 130))
def test_it_takes_no_more_pages_than_filling_one_after_the_other(blocks: list[float], first: float) -> None:
    """Blocks higher than a page among them."""
    low = [height for height in blocks if height <= REST]
    assert len(even_page_starts(low, first, REST)) == len(page_starts(low, first, REST))
    assert len(even_page_starts(blocks, first, REST)) <= len(blocks)


def test_a_lone_last_row_takes_others_along() -> None:
    assert page_starts([10] * 11, REST, REST) == (10,)
    assert even_page_starts([10] * 11, REST, REST) in ((5,), (6,))
