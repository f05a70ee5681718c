"""Pieces joined on one carrier: where their outlines lie together, and when they meet."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from xlbatch.art.decal import Decal
from xlbatch.art.joined import _outline, _overlap
from xlbatch.plan import Plan


@pytest.fixture
def decal(plan_of: Callable[..., Plan]) -> Decal:
    return plan_of([["Who", "Size"], ["Ana", "M"]]).decals[0]


@pytest.mark.parametrize("offset", [(300.0, 0.0), (0.0, 200.0), (300.0, 40.0), (20.0, 150.0)])
def test_the_outline_of_both_is_as_wide_and_high_as_they_reach(decal: Decal, offset: tuple[float, float]) -> None:
    first, second = replace(decal, offset=(0.0, 0.0)), replace(decal, offset=offset)
    both = _outline((first, second))
    assert both.width == pytest.approx(offset[0] + decal.width, abs=0.002)
    assert both.height == pytest.approx(offset[1] + decal.height, abs=0.002)
    assert decal.outline is not None
    assert both.area == pytest.approx(2 * decal.outline.area, rel=1e-4)


@pytest.mark.parametrize(
    ("place", "meet"),
    [((9.0, 0.0), True), ((11.0, 0.0), False), ((0.0, 4.0), True), ((0.0, 6.0), False), ((-9.0, -4.0), True),
     ((-11.0, 0.0), False), ((0.0, -6.0), False), ((9.0, 6.0), False)],
)  # fmt: skip
def test_boxes_of_10_by_5_meet_where_they_share_ground(decal: Decal, place: tuple[float, float], meet: bool) -> None:
    box = replace(decal, offset=(0.0, 0.0), width=10.0, height=5.0)
    assert _overlap(box, replace(box, offset=place)) is meet
