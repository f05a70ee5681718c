"""Pieces of one drawing have their places in the box around all where some were joined."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from xlbatch.placement.pieces import _one_whole
from xlbatch.placement.place import Place
from xlbatch.plan import Plan


@pytest.fixture
def place(plan_of: Callable[..., Plan]) -> Place:
    return plan_of([["Who", "Size"], ["Ana", "M"]]).places[0]


def test_pieces_of_which_none_is_joined_stay_as_they_are(place: Place) -> None:
    both = [place, replace(place, from_center=50.0)]
    assert _one_whole(both) is both


def test_a_lone_piece_stays_as_it_is(place: Place) -> None:
    joined = replace(place, decal=replace(place.decal, parts=(place.decal, place.decal)))
    assert _one_whole([joined]) == [joined]


def test_joined_ones_have_the_box_around_all(place: Place) -> None:
    joined = replace(place, decal=replace(place.decal, parts=(place.decal, place.decal)))
    other = replace(place, from_center=place.from_center + 50.0)
    for piece in _one_whole([joined, other]):
        assert piece.decal.whole == pytest.approx((place.decal.width + 50.0, place.decal.height), abs=0.002)
