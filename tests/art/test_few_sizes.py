"""Fewer sizes with the least change: against trying all ways, and on garments."""

import itertools
import math
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from xlbatch.art.draw import draw
from xlbatch.art.few_sizes import AskedSize, few_sizes

ASKED = st.lists(
    st.tuples(st.integers(1, 30), st.integers(1, 9)), min_size=1, max_size=6, unique_by=lambda each: each[0]
)


def error(asked: list[tuple[int, int]], sizes: tuple[float, ...]) -> float:
    return sum(count * min(abs(size - made) for made in sizes) for size, count in asked)


@settings(max_examples=100)
@given(ASKED, st.integers(1, 4))
def test_no_other_choice_of_sizes_changes_less(asked: list[tuple[int, int]], most: int) -> None:
    made = few_sizes([AskedSize(*each) for each in asked], most)
    assert len(set(made.values())) <= most
    ways = itertools.combinations([float(size) for size, _ in asked], min(most, len(asked)))
    least = min(error(asked, way) for way in ways)
    assert sum(count * abs(size - made[size]) for size, count in asked) == pytest.approx(least)


LIMITED = st.lists(
    st.tuples(st.integers(1, 30), st.integers(1, 9), st.integers(0, 8)),
    min_size=1, max_size=5, unique_by=lambda each: each[0],
)  # fmt: skip


@settings(max_examples=100, deadline=None)
@given(LIMITED, st.integers(1, 3))
def test_nor_where_garments_limit_the_size(drawn: list[tuple[int, int, int]], most: int) -> None:
    """What fits grows with the garment, as chests do: all choices among sizes asked for and limits are tried."""
    limits = itertools.accumulate((each[2] for each in sorted(drawn)), initial=4)
    asked = [AskedSize(size, count, limit) for (size, count, _), limit in zip(sorted(drawn), limits, strict=False)]
    made = few_sizes(asked, most)
    assert all(made[each.size] <= each.most for each in asked)

    def changed(each: AskedSize, way: tuple[float, ...]) -> float:
        return each.garments * min((abs(each.size - made) for made in way if made <= each.most), default=math.inf)

    choices = sorted({each.size for each in asked} | {each.most for each in asked})
    ways = (way for count in range(1, most + 1) for way in itertools.combinations(choices, count))
    least = min(sum(changed(each, way) for each in asked) for way in ways)
    assert sum(each.garments * abs(each.size - made[each.size]) for each in asked) == pytest.approx(least)


def test_a_size_made_fits_each_garment_it_is_for() -> None:
    made = few_sizes([AskedSize(1.0, 1, most=1.1), AskedSize(1.2, 50)], 1)
    assert made == {1.0: 1.1, 1.2: 1.1}


def widths(make: Any, sizes: str, most: int = 3) -> list[float]:
    """Of a drawing 10 in wide on M, on garments S (18 in), M (20), L (22), 5XL (32) and 2T (12)."""
    square = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><rect width="9" height="9"/></svg>'
    spec = make.artwork(square, width=254.0)
    job = make.job()
    job = replace(job, settings=replace(job.settings, sizes=sizes, most_sizes=most))
    garments = tuple(make.garment(spec, no=no, size=size) for no, size in enumerate(("S", "M", "L", "5XL", "2T"), 1))
    return [decal.width / 25.4 for decal in draw(job, garments)[0]]


def test_sizes_of_a_design_are_merged_as_the_job_says(make: Any) -> None:
    each = widths(make, "by garment size")
    assert len(set(each)) == 5
    assert len(set(widths(make, "few sizes", 2)[:4])) == 2  # of the adult tees
    assert widths(make, "few sizes", 9) == each
    (one,) = set(widths(make, "one size for all"))
    assert one == pytest.approx(9)  # the toddler tee's 12 in less 1 1/2 in each side, and nearest to the others


def test_one_size_a_class_is_the_same_with_a_toddler_on_the_list_and_without(make: Any) -> None:
    *adults, toddler = widths(make, "few sizes", 1)
    assert set(adults) == {10.0}  # S 9 1/2, M 10, L 10 3/4, 5XL 11 1/2: in the middle
    assert toddler == 5


def widths_of(make: Any, garments: Any, cut_before: Any = None, **settings: Any) -> dict[int, float]:
    """By garment number."""
    job = make.job()
    job = replace(job, settings=replace(job.settings, **{"sizes": "few sizes", "most_sizes": 1} | settings))
    decals, _ = draw(job, tuple(garments), cut_before or {})
    return {decal.garment_no: round(decal.width / 25.4, 3) for decal in decals}


SQUARE = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><rect width="9" height="9"/></svg>'


def test_only_pieces_still_to_make_have_a_say_in_their_size(make: Any) -> None:
    """S would be 9 1/2 in, M 10, L 10 3/4: S and M alone are as near to one as to the other, the smaller is taken."""
    spec = make.artwork(SQUARE, width=254.0)
    garments = [make.garment(spec, no=no, size=size) for no, size in enumerate("SMLLL", 1)]
    assert set(widths_of(make, garments).values()) == {10.75}
    done = [replace(garment, to_do=()) if garment.blank.size == "L" else garment for garment in garments]
    assert widths_of(make, done) == {1: 9.5, 2: 9.5}
    fixed = [make.garment(replace(spec, scale=False), no=no, size=size) for no, size in enumerate("SL", 1)]
    assert widths_of(make, fixed) == {1: 10, 2: 10}


def test_a_size_that_lies_cut_is_kept_by_the_others(make: Any) -> None:
    """The S that would be 9 1/2 in lies cut 1.05 times as large: 9.975 in, in quarters 10."""
    spec = make.artwork(SQUARE, width=254.0)
    garments = [make.garment(spec, no=no, size=size) for no, size in enumerate("SM", 1)]
    assert widths_of(make, garments, {(1, "Logo"): 1.0}) == {1: 9.5, 2: 9.5}
    assert widths_of(make, garments, {(1, "Logo"): 1.05}) == {1: 10, 2: 10}
    for nothing in ((1, "Other"), (3, "Logo")):
        assert widths_of(make, garments, {nothing: 1.05}) == {1: 9.5, 2: 9.5}
    assert widths_of(make, garments, {(1, "Logo"): 1.05}, most_sizes=2) == {1: 10, 2: 10}
    assert widths_of(make, garments, {(1, "Logo"): 1.05}, sizes="by garment size") == {1: 9.5, 2: 10}


def test_letters_are_one_height_for_all_only_where_the_job_says_so(make: Any) -> None:
    spec = make.spec(what="number", height=50.8)
    garments = [make.garment(spec, no=no, size=size, number="7") for no, size in enumerate(("M", "2T"), 1)]
    for sizes, high in (("one size for all", [2, 2]), ("few sizes", [2, 1.25]), ("by garment size", [2, 1.25])):
        job = make.job()
        decals, _ = draw(replace(job, settings=replace(job.settings, sizes=sizes)), tuple(garments))
        assert [decal.cap_height and decal.cap_height / 25.4 for decal in decals] == pytest.approx(high)
