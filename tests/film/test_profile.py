"""The ways round in which a decal may lie."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from xlbatch.art.decal import Decal
from xlbatch.film.box import Bed, um
from xlbatch.film.profile import profiles
from xlbatch.plan import Plan


@pytest.fixture
def decal(plan_of: Callable[..., Plan]) -> Decal:
    return plan_of([["Who", "Size"], ["Ana", "M"]]).decals[0]


@pytest.mark.parametrize(
    ("outlined", "may_turn", "turns"),
    [(True, True, (0, 90, 180, 270)), (False, True, (0, 90)), (True, False, (0,)), (False, False, (0,))],
)
def test_half_turns_are_for_outlines_alone(
    decal: Decal, outlined: bool, may_turn: bool, turns: tuple[int, ...]
) -> None:
    bed = Bed(um(1000.0), um(1000.0), um(2.0), may_turn)
    ways = profiles(decal if outlined else replace(decal, outline=None), bed, mirrored=False)
    assert tuple(way.turned for way in ways) == turns


def test_what_is_too_wide_one_way_lies_the_other(decal: Decal) -> None:
    assert decal.width > decal.height
    narrow = Bed(um(decal.width - 1), um(1000.0), um(2.0), True)
    assert {way.turned for way in profiles(decal, narrow, mirrored=False)} == {90, 270}
