"""What might save film is told only where it was tried and does."""

from dataclasses import replace
from typing import Any

from xlbatch.film.layout import Lever
from xlbatch.film.levers import best_lever


def names(shop: Any, count: int) -> None:
    for at in range(count):
        shop.decals([(150 + 37 * at % 110, 30)])


def test_more_shirts_a_strip_are_named_where_they_save_film(shop: Any) -> None:
    shop.settings = replace(shop.settings, shirts_per_strip=1)
    names(shop, 16)
    layout = shop.lay(1)
    lever = layout.lever
    assert lever is not None
    assert lever.setting == "Shirts per strip"
    now = sum(strip.length + 6 for run in layout.runs for strip in run.strips)
    shop.settings = replace(shop.settings, shirts_per_strip=None if lever.value == "by itself" else int(lever.value))
    then = sum(strip.length + 6 for run in shop.lay(1).runs for strip in run.strips)
    assert then <= now - lever.saves + 0.01


def test_nothing_is_named_where_the_strips_cost_nothing(shop: Any) -> None:
    for _ in range(6):
        shop.decals([(288, 100)])
    assert shop.lay(1).lever is None


def test_the_change_that_saves_most_is_taken(shop: Any) -> None:
    fixed = replace(shop.settings, shirts_per_strip=3, longest_strip=406.4)
    taken = best_lever(fixed, 1000, lambda changed: 1000 if changed.shirts_per_strip == 3 else 900)
    assert taken == Lever("Shirts per strip", "by itself", 100)
    assert best_lever(fixed, 1000, lambda _: 990) is None
    assert best_lever(fixed, 1000, lambda changed: 1403.2 - changed.longest_strip) == Lever(
        "Longest strip", "24 in", 206.4
    )
