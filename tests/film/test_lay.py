"""From decals to batches, strips, runs: any job gives a layout that its judge accepts."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import combinations
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import xlbatch.film.batches
from xlbatch.film.verify import faults
from xlbatch.how_far import hear, listening
from xlbatch.job.job import Film
from xlbatch.job.source import Source

BLACK, GOLD = "Black smooth", "Gold metallic"
SIZES = st.lists(st.tuples(st.floats(10, 285), st.floats(10, 285)), max_size=3)
FILM = Film(Source("Film"), BLACK, "smooth", "black", 305, 290, (), (), 165, 5, 30, 15, "warm", "medium", False, 1)


@settings(max_examples=25, deadline=None)
@given(st.lists(st.tuples(SIZES, SIZES), min_size=1, max_size=8), st.booleans(), st.sampled_from((700, 1700)))
def test_any_job_is_laid_without_fault(new_shop: Any, garments: Any, one_way: bool, longest: float) -> None:
    shop = new_shop()
    shop.films = (FILM, replace(FILM, name=GOLD, one_direction=one_way))
    shop.settings = replace(shop.settings, longest_strip=longest)
    for no, (black, gold) in enumerate(garments, 1):
        shop.decals(black[:2], BLACK)
        shop.more(no, gold[:2], GOLD)
    layout = shop.lay()
    assert faults(layout, shop.made, shop.settings) == ()
    for need in layout.needs:
        runs = [run for run in layout.runs if run.film.name == need.film.name]
        in_strips = sum(run.length - 2 * shop.settings.end_margin for run in runs)
        assert 0 < need.least <= need.free + 0.001
        assert need.free <= in_strips + 0.001
        assert (need.runs, need.decals) == (len(runs), sum(len(run.lying) for run in runs))
        assert 0 < need.used <= 1


def test_a_batch_has_one_strip_of_the_same_number_in_every_film(shop: Any) -> None:
    shop.films = (FILM, replace(FILM, name=GOLD))
    for no in range(1, 8):
        shop.decals([(200, 150)], BLACK)
        shop.more(no, [(120 + 10 * no, 50)], GOLD)
    layout = shop.lay(1)
    for film in (BLACK, GOLD):
        strips = sorted(strip.batch for run in layout.runs if run.film.name == film for strip in run.strips)
        assert strips == [batch.no for batch in layout.batches]
    assert [run.no for run in layout.runs] == list(range(1, len(layout.runs) + 1))


def test_searching_for_better_batches_takes_no_more_film(shop: Any) -> None:
    for at in range(12):
        shop.decals([(200 + 7 * (at % 5), 160), (90 + 13 * at, 50)])
    none, one = (sum(run.length for run in shop.lay(effort).runs) for effort in (0, 1))
    assert one <= none


def test_the_same_job_gives_the_same_layout(shop: Any) -> None:
    for at in range(9):
        shop.decals([(200 + 7 * (at % 5), 160), (90 + 13 * at, 50)])
    assert shop.lay(1) == shop.lay(1)


def test_batches_follow_the_roster_where_film_does_not_tell_them_apart(shop: Any) -> None:
    for _ in range(7):
        shop.decals([(250, 50)])
    assert [batch.garments for batch in shop.lay(1).batches] == [(1, 2, 3, 4, 5), (6, 7)]


def test_a_strip_longer_than_allowed_makes_smaller_batches(shop: Any) -> None:
    shop.settings = replace(shop.settings, longest_strip=600)
    for _ in range(4):
        shop.decals([(280, 290)])  # two take 586 with the gap between them, three would take 882
    assert [batch.garments for batch in shop.lay(1).batches] == [(1, 2), (3, 4)]


def test_no_decals_need_no_film(shop: Any) -> None:
    layout = shop.lay()
    assert (layout.batches, layout.runs, layout.needs) == ((), (), ())


@pytest.mark.parametrize(
    ("name", "file"),
    [
        (BLACK, "01 Black smooth - already mirrored.svg"),
        ('Tom: "gold"/matt?', "01 Tom- -gold-matt- - already mirrored.svg"),
        ("Rot.", "01 Rot - already mirrored.svg"),
    ],
)
def test_a_cut_file_has_a_name_every_system_takes(shop: Any, name: str, file: str) -> None:
    shop.films = (replace(FILM, name=name),)
    shop.decals([(100, 100)], name, outlined=True)
    (run,) = shop.lay().runs
    assert run.cut_file == file
    assert run.guide_file == file.replace("already mirrored", "guide")


def test_decals_known_by_size_alone_have_no_file_to_cut(shop: Any) -> None:
    shop.decals([(100, 100)])
    (run,) = shop.lay().runs
    assert run.cut_file == ""
    assert run.ink_box is None


def test_large_batches_are_chosen_from_blocks_that_stay_small(shop: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    """Every group of a block's garments is priced: one garment more than the 13 asked for doubles the work."""
    sizes: list[int] = []

    def counted(members: Sequence[int], count: int) -> Iterator[tuple[int, ...]]:
        sizes.append(len(members))
        return combinations(members, count)

    monkeypatch.setattr(xlbatch.film.batches, "combinations", counted)
    shop.settings = replace(shop.settings, shirts_per_strip=12)
    for at in range(26):
        shop.decals([(280, 190 + at % 3), (120, 40)])
    shop.lay(1)
    assert max(sizes) <= 14


def test_how_far_it_is_goes_on_from_film_to_film_to_a_hundred(shop: Any) -> None:
    shop.films = (FILM, replace(FILM, name=GOLD))
    shop.decals([(200, 150)], BLACK)
    shop.more(1, [(120, 50)], GOLD)
    words: list[float] = []
    with listening():
        hear(lambda done, of: words.append(100 * done / of))
        shop.lay()
    assert {70, 85} <= set(words)
    assert max(words) <= 100
