"""Strips sized to the hand: more shirts share one where it stays handy."""

from collections.abc import Callable

import pytest

from tests.benchmarks.names_benchmark import GOALS, ratio
from xlbatch.film.batch_costs import TOO_LONG, BatchCosts, FilmBoxes, Larger
from xlbatch.film.box import Bed
from xlbatch.film.enlarge import _some, enlarged
from xlbatch.plan import Plan

NAMES = [[f"Person {chr(65 + at)}{chr(97 + at)}", "M"] for at in range(16)]


def test_a_dozen_names_alone_take_little_film() -> None:
    assert ratio(12) <= GOALS[12]


@pytest.mark.parametrize(("typed", "most"), [("by itself", 8), (2, 2), (5, 5)])
def test_how_many_shirts_share_a_strip(plan_of: Callable[..., Plan], typed: object, most: int) -> None:
    plan = plan_of([["Who", "Size"], *NAMES], Job=[["Setting", "Value"], ["Shirts per strip", typed]])
    counts = [len(batch.garments) for batch in plan.layout.batches]
    assert max(counts) <= most
    if typed == "by itself":
        assert max(counts) > 3
        for run in plan.layout.runs:
            assert all(strip.length <= 304.8 + 0.01 for strip in run.strips)


def test_large_designs_keep_to_three_shirts_a_strip(plan_of: Callable[..., Plan]) -> None:
    box = [
        ["Design", "Decal", "What", "Film", "Position", "Width", "Height", "Scale with size"],
        ["Name", "Box", "artwork", "Black smooth", "full front", "10 in", "7 in", "no"],
    ]
    plan = plan_of([["Who", "Size"], *NAMES], Designs=box)
    assert max(len(batch.garments) for batch in plan.layout.batches) <= 3


def test_a_larger_batch_than_is_handy_costs_too_much() -> None:
    bed = Bed(290_000, 600_000, 6_000, True)
    film = FilmBoxes(bed, tuple(((280_000, 60_000),) for _ in range(6)))
    costs = BatchCosts([film], Larger(8, 300_000), 3)
    four, six = costs.of([(0, 1, 2, 3), (0, 1, 2, 3, 4, 5)], 12).tolist()
    assert four < TOO_LONG <= six


def test_one_shirt_longer_than_the_longest_strip_gets_a_strip_of_its_own(plan_of: Callable[..., Plan]) -> None:
    boxes = [
        ["Design", "Decal", "What", "Film", "Position", "Width", "Height", "Scale with size"],
        ["Name", "Front", "artwork", "Black smooth", "full front", "11 in", "13 in", "no"],
        ["Name", "Back", "artwork", "Black smooth", "full back", "11 in", "13 in", "no"],
    ]
    plan = plan_of([["Who", "Size"], ["Ana", "3XL"], ["Ivo", "2XL"]], Designs=boxes)
    assert [garment.who for garment in plan.garments] == ["Ana", "Ivo"]
    assert [(p.code, p.level) for p in plan.problems if p.level == "check"] == [
        ("decal-longer-than-strip", "check")
    ] * 2
    assert sorted(batch.garments for batch in plan.layout.batches) == [(1,), (2,)]


def test_batches_that_cannot_be_better_stay_as_they_are() -> None:
    """Of shirts all alike, two by two, none costs less a shirt than the others."""
    film = FilmBoxes(Bed(290_000, 600_000, 6_000, True), (((140_000, 60_000),),) * 6)
    batches = [(0, 1), (2, 3), (4, 5)]
    assert enlarged(BatchCosts([film], Larger(2, 300_000), 2, [0] * 6), batches, 2, 1) == batches


def test_few_garments_are_taken_apart_at_a_time() -> None:
    """All batches there can be of 12 garments are priced in a moment, those of 17 not."""
    eight, five, four = tuple(range(8)), tuple(range(8, 13)), tuple(range(13, 17))
    assert _some([eight, five, four]) == [eight, four]
