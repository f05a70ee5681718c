"""What might save film is told only where it was tried and does."""

from dataclasses import replace
from typing import Any

import pytest

from xlbatch.film.layout import Lever
from xlbatch.film.levers import best_lever
from xlbatch.job.job import Settings


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


def tried(shop: Any, **changes: Any) -> list[tuple[str, float | None]]:
    """What is tried in turn: the setting that is changed, and its value."""
    settings = replace(shop.settings, **changes)
    seen: list[Settings] = []

    def length(changed: Settings) -> float:
        seen.append(changed)
        return 0

    best_lever(settings, 0, length)
    names = ("shirts_per_strip", "handy_strip", "longest_strip")
    return [(name, getattr(it, name)) for it in seen for name in names if getattr(it, name) != getattr(settings, name)]


def test_strips_half_as_long_again_are_tried_where_a_cut_holds_them(shop: Any) -> None:
    """A cut of 1800 holds strips of 1750 between its margins."""
    by_itself = {"shirts_per_strip": None, "handy_strip": 300}
    assert tried(shop, **by_itself, longest_strip=400) == [("handy_strip", 400), ("longest_strip", 600)]
    assert tried(shop, **by_itself, longest_strip=1700) == [("handy_strip", 450), ("longest_strip", 1750)]
    assert tried(shop, **by_itself, longest_strip=1750) == [("handy_strip", 450)]
    fixed = tried(shop, shirts_per_strip=3, longest_strip=1750)
    assert fixed == [("shirts_per_strip", None), ("shirts_per_strip", 6)]


@pytest.mark.parametrize(("saves", "told"), [(25.3, None), (25.4, 25.4), (25.4128, 25.413)])
def test_an_inch_is_worth_telling_and_less_is_not(shop: Any, saves: float, told: float | None) -> None:
    lever = best_lever(replace(shop.settings, shirts_per_strip=3), 0, lambda _: -saves)
    assert (lever and lever.saves) == told
