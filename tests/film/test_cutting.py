"""The cutting order: forward along the film in bounded windows, inside before outside, with little travel."""

import math
from dataclasses import replace
from itertools import pairwise
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from xlbatch.film.cutting import WINDOW, cutting
from xlbatch.film.run_of_strips import room_for_test_cut
from xlbatch.film.unfit import unfit

SIZES = st.lists(st.tuples(st.integers(20, 280), st.integers(20, 280)), min_size=1, max_size=3)


def test_holes_are_cut_before_what_they_are_in(shop: Any) -> None:
    shop.decals([(40, 60)], outlined=True)  # an L, drawn before the hole in its foot
    (run,) = shop.lay().runs
    (piece,) = cutting(run).pieces
    assert [at for verb, at in piece.segments if verb == "M"] == [(25, 5), (0, 0)]


def test_the_nearest_decal_is_next(shop: Any) -> None:
    for _ in range(2):
        shop.decals([(60, 60), (60, 60), (60, 60)], outlined=True)
    (run,) = shop.lay().runs  # all within one window
    order = [piece.lying for piece in cutting(run).pieces]
    first = min(run.lying, key=lambda each: (each.along, each.across))
    assert order[0] == first
    steps = [math.dist((a.across, a.along), (b.across, b.along)) for a, b in pairwise(order)]
    assert max(steps) < 150  # no farther than to a neighbor, or across the corner to the next row


@settings(max_examples=20, deadline=None)
@given(st.lists(SIZES, min_size=1, max_size=8))
def test_every_decal_is_cut_once_and_the_film_is_never_drawn_back_more_than_a_window(new_shop: Any, sizes: Any) -> None:
    shop = new_shop()
    for each in sizes:
        shop.decals(each, outlined=True)
    for run in shop.lay().runs:
        cut = cutting(run)
        assert sorted(piece.lying.decal.id for piece in cut.pieces) == sorted(each.decal.id for each in run.lying)
        reached = 0.0
        for piece in cut.pieces:
            assert piece.lying.along > reached - WINDOW
            reached = max(reached, piece.lying.along)


def test_cut_length_and_travel_add_up(shop: Any) -> None:
    shop.decals([(40, 60)], outlined=True)  # each outline of the test film says it is 1 mm long
    (run,) = shop.lay().runs
    cut = cutting(run)
    assert cut.length == 1.0
    # from the left of the leading end to the hole, then to the outline: their starts on the page
    hole, outer = cut.pieces[0].begins
    assert cut.travel == round(math.dist((0, run.length), hole) + math.dist(hole, outer), 3)


def test_a_test_cut_is_made_where_the_job_asks_for_it(shop: Any) -> None:
    shop.settings = replace(shop.settings, test_cut=True)
    shop.decals([(40, 60)], outlined=True)
    (run,) = shop.lay().runs
    assert (run.test_cut, run.test_along) == (10, 7.5)  # in a margin of 25
    assert cutting(run).length == 41


def test_the_same_run_is_cut_the_same_way(shop: Any) -> None:
    shop.decals([(100, 60), (90, 60)], outlined=True)
    (run,) = shop.lay().runs
    assert cutting(run) == cutting(run)


def test_the_test_cut_keeps_the_gap_and_its_margin(shop: Any) -> None:
    for margin, gap in ((16, 6), (12, 10), (25, 4), (6, 6)):
        shop.settings = replace(shop.settings, test_cut=True, end_margin=margin, gap=gap)
        shop.made.clear()
        shop.garments.clear()
        shop.decals([(100, 50)])
        (run,) = shop.lay().runs
        assert run.test_cut <= 10
        if run.test_cut:
            assert run.test_along >= 0
            assert run.strips[0].start - run.test_along - run.test_cut >= gap - 0.001


def test_a_test_cut_without_room_is_told_with_the_margin_that_has_room(shop: Any) -> None:
    shop.settings = replace(shop.settings, test_cut=True, end_margin=6, gap=6)
    shop.decals([(100, 50)])
    job = shop.job
    (found,) = unfit(job, (), ())
    assert found.code == "test-cut-no-room"
    assert "3/8 in" in found.todo  # 3 mm and the gap of 6
    enough = replace(job, settings=replace(shop.settings, end_margin=room_for_test_cut(shop.settings)))
    assert unfit(enough, (), ()) == ()
