"""A run by hand: a margin, strips with a gap between them, a margin; lengths in mm."""

from dataclasses import replace

import pytest

from tests.film.conftest import Shop, film
from xlbatch.film.layout import Lying, Strip
from xlbatch.film.run_of_strips import room_for_test_cut, run_of
from xlbatch.film.run_of_strips import test_square as square


def test_strips_and_decals_lie_one_after_another() -> None:
    shop = Shop()  # a gap of 6 and margins of 25
    shop.decals([(40, 60), (40, 60)])
    first, second = shop.made
    strips = (
        Strip(1, 0, 70, (Lying(first, 0, 0, 0), Lying(second, 50, 10, 0))),
        Strip(2, 0, 60, (Lying(first, 5, 0, 90),)),
    )
    run = run_of(film(), strips, shop.settings, 4)
    assert [strip.start for strip in run.strips] == [25, 25 + 70 + 6]
    assert [(lying.across, lying.along) for lying in run.lying] == [(0, 25), (50, 35), (5, 101)]
    assert (run.no, run.length, run.test_cut) == (4, 25 + 70 + 6 + 60 + 25, 0)


@pytest.mark.parametrize(("margin", "gap", "side"), [(25, 6, 10), (14, 6, 7), (14, 9, 5), (6, 6, 0)])
def test_a_test_square_is_half_the_margin_and_keeps_the_gap(margin: float, gap: float, side: float) -> None:
    settings = replace(Shop().settings, end_margin=margin, gap=gap)
    assert square(settings) == side
    least = room_for_test_cut(settings)
    assert square(replace(settings, end_margin=least)) > square(replace(settings, end_margin=least - 0.5))
