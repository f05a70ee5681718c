"""Batches are numbered as they are cut: the first can be pressed through before the rest is cut."""

import random
from dataclasses import replace
from typing import Any

from tests.film.conftest import film

BLACK, GOLD = "Black smooth", "Gold smooth"


def cut_in_small_runs(shop: Any) -> Any:
    """Two films, runs of about two strips, and garments of which some have no gold."""
    shop.settings = replace(shop.settings, longest_cut=600, longest_strip=500)
    shop.films = (film(BLACK), film(GOLD))
    draw = random.Random(4)
    for no in range(1, 25):
        shop.decals([(draw.randint(180, 280), draw.randint(60, 150))])
        if no % 4:
            shop.more(no, [(draw.randint(60, 280), 50)], GOLD)
    return shop.lay(1)


def test_batch_1_lies_in_the_first_run_of_every_film(shop: Any) -> None:
    layout = cut_in_small_runs(shop)
    for name in (BLACK, GOLD):
        runs = [run for run in layout.runs if run.film.name == name]
        assert len(runs) > 1
        assert runs[0].strips[0].batch == 1


def test_batches_are_numbered_in_cutting_order(shop: Any) -> None:
    layout = cut_in_small_runs(shop)
    cut = [strip.batch for run in layout.runs if run.film.name == BLACK for strip in run.strips]
    assert cut == list(range(1, len(layout.batches) + 1))  # every garment has black, which has the most runs
    for run in layout.runs:
        assert [strip.batch for strip in run.strips] == sorted(strip.batch for strip in run.strips)
    assert [run.no for run in layout.runs] == list(range(1, len(layout.runs) + 1))
    assert [batch.no for batch in layout.batches] == list(range(1, len(layout.batches) + 1))


def test_like_shirts_share_a_batch_where_that_costs_no_film(shop: Any) -> None:
    shop.settings = replace(shop.settings, shirts_per_strip=2)
    for chest in (500, 600, 500, 600):
        shop.decals([(250, 50)])
        garment = shop.garments[-1]
        shop.garments[-1] = replace(garment, blank=replace(garment.blank, chest=chest))
    assert [batch.garments for batch in shop.lay(1).batches] == [(1, 3), (2, 4)]


def test_shirts_that_share_no_film_share_no_batch(shop: Any) -> None:
    """A batch of both would be one batch less, but no strip less."""
    shop.settings = replace(shop.settings, longest_strip=500)
    shop.films = (film(BLACK), film(GOLD, temperature=150))
    for no in range(1, 13):
        shop.decals([(280, 200)], GOLD if no % 2 else BLACK)
    layout = shop.lay(1)
    films = {
        lying.decal.garment_no: run.film.name for run in layout.runs for strip in run.strips for lying in strip.lying
    }
    assert [len(batch.garments) for batch in layout.batches] == [2] * 6
    assert all(len({films[no] for no in batch.garments}) == 1 for batch in layout.batches)


def test_strips_too_short_to_hold_are_weeded_with_their_neighbors(shop: Any) -> None:
    shop.settings = replace(shop.settings, shirts_per_strip=1)
    for high in (60, 30, 150, 40, 40, 40, 50):  # 4 in are 101.6 mm, and the gap is 6
        shop.decals([(280, high)])
    (run,) = shop.lay().runs
    assert [run.weeded_with(strip) for strip in run.strips] == [
        *[(1, 2, 3)] * 3,  # 60 + 6 + 30 are less than 4 in
        *[(4, 5, 6, 7)] * 4,  # 3 × 40 + 2 × 6 are more, and what is left would be 50
    ]


def test_a_short_strip_alone_on_its_run_is_by_itself(shop: Any) -> None:
    shop.decals([(280, 50)])
    (run,) = shop.lay().runs
    assert run.weeded_with(run.strips[0]) == ()
