"""Strips of many decals are laid freely too, those of few in the order in which decals drop alone."""

import random

import pytest

from tests.film.conftest import Shop
from xlbatch.film.box import Bed, box_of
from xlbatch.film.free import pack_each
from xlbatch.film.pack_sets import pack_sets
from xlbatch.film.strips import lay_strips

BED = Bed(296_001, 1_000_000, 6_000, turn=True)


@pytest.mark.parametrize(("count", "free"), [(14, False), (15, True)])
def test_fifteen_decals_are_laid_freely_where_that_is_shorter(count: int, free: bool) -> None:
    dice, shop = random.Random(1), Shop()
    shop.decals([(dice.randint(20, 130), dice.randint(15, 90)) for _ in range(count)])
    boxes = [[box_of(decal, BED.gap) for decal in shop.made]]
    (dropped,), (laid,) = pack_sets(boxes, BED, 20), pack_each(boxes, BED, 16)
    assert laid.length < dropped.length
    (strip,) = lay_strips([(4, shop.made)], BED, 20)
    assert (strip.batch, strip.length) == (4, ((laid if free else dropped).length - 6_000) / 1000)
