"""The judge of layouts, itself judged: it accepts a good layout and names every kind of planted fault."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from xlbatch.film.layout import Batch, Layout, Run
from xlbatch.film.verify import faults
from xlbatch.job.job import Film, Roll
from xlbatch.job.source import Source

FILM = Film(
    Source("Film"), "Black smooth", "smooth", "black", 305, 290, (), (), 165, 5, 30, 15, "warm", "medium", False, 1
)


@pytest.fixture
def good(shop: Any) -> Any:
    """One run of two strips, three and one garments, two decals each."""
    for at in range(4):
        shop.decals([(150, 100), (60 + at, 40)])
    return shop


def with_run(layout: Layout, change: Callable[[Run], Run]) -> Layout:
    return replace(layout, runs=(change(layout.runs[0]), *layout.runs[1:]))


def move(run: Run, strip: int, at: int, **changes: Any) -> Run:
    """One decal laid otherwise; -1 is the last."""
    strips = list(run.strips)
    lying = list(strips[strip].lying)
    lying[at] = replace(lying[at], **changes)
    strips[strip] = replace(strips[strip], lying=tuple(lying))
    return replace(run, strips=tuple(strips))


def onto_another(run: Run) -> Run:
    """Only the very last decal lies on the one before it."""
    last, before = run.strips[-1].lying[-1], run.strips[-1].lying[-2]
    assert run.lying[-1] == last
    return move(run, -1, -1, across=before.across + before.width - 1, along=before.along)


def closer_strips(run: Run) -> Run:
    """The second strip begins where the first ends."""
    first, second = run.strips
    by = second.start - first.start - first.length
    lying = tuple(replace(each, along=each.along - by) for each in second.lying)
    return replace(run, strips=(first, replace(second, start=second.start - by, lying=lying)))


PLANTED: dict[str, Callable[[Run], Run]] = {
    "too close": onto_another,
    "no straight cut": closer_strips,
    "outside the usable width": lambda run: move(run, 0, 0, across=-1.0),
    "D001 lies outside the usable width": lambda run: move(run, 0, 0, across=290.01 - run.strips[0].lying[0].width),
    "outside its strip": lambda run: move(run, 0, 0, along=run.strips[1].start),
    "lies on 0 runs": lambda run: replace(
        run, strips=(replace(run.strips[0], lying=run.strips[0].lying[1:]), run.strips[1])
    ),
    "lies on 2 runs": lambda run: replace(
        run, strips=(replace(run.strips[0], lying=run.strips[0].lying * 2), run.strips[1])
    ),
    "lacks an end margin": lambda run: replace(run, length=run.length - 1),
    "longer than the longest cut": lambda run: replace(run, length=1801),
    "longer than the longest strip": lambda run: replace(run, strips=(replace(run.strips[0], length=1701),)),
    "longer than any roll": lambda run: replace(run, film=replace(FILM, rolls=(Roll(run.length - 1, None),))),
    "lies on Red smooth": lambda run: replace(run, film=replace(FILM, name="Red smooth")),
    "must not be turned": lambda run: move(replace(run, film=replace(FILM, one_direction=True)), 0, 0, turned=180),
    "not its batch's": lambda run: replace(run, strips=(replace(run.strips[0], batch=2), run.strips[1])),
    "2 strips": lambda run: replace(run, strips=(run.strips[0], replace(run.strips[1], batch=1))),
    "nothing in it": lambda run: replace(run, strips=(*run.strips, replace(run.strips[0], batch=3, lying=()))),
    "runs are not numbered": lambda run: replace(run, no=2),
    "is not mirrored": lambda run: replace(run, mirrored=False),
    "was changed": lambda run: move(run, 0, 0, decal=replace(run.strips[0].lying[0].decal, width=149)),
    "is not asked for": lambda run: move(run, 0, 0, decal=replace(run.strips[0].lying[0].decal, id="D999")),
}


def test_a_good_layout_has_no_fault(good: Any) -> None:
    assert faults(good.lay(), good.made, good.settings) == ()


@pytest.mark.parametrize("fault", PLANTED)
def test_a_planted_fault_is_named(good: Any, fault: str) -> None:
    found = faults(with_run(good.lay(), PLANTED[fault]), good.made, good.settings)
    assert any(fault in each for each in found), found


def test_a_decal_on_two_runs_is_named(good: Any) -> None:
    layout = good.lay()
    twice = replace(layout, runs=(*layout.runs, replace(layout.runs[0], no=2)))
    assert any("lies on 2 runs" in each for each in faults(twice, good.made, good.settings))


def test_a_garment_in_no_batch_or_a_batch_too_large_is_named(good: Any) -> None:
    layout = good.lay()
    first, second = layout.batches
    lost = replace(layout, batches=(replace(first, garments=first.garments[1:]), second))
    assert any("in 0 batches" in each for each in faults(lost, good.made, good.settings))
    one = replace(layout, batches=(replace(first, garments=(1, 2, 3, 4)),))
    three = replace(good.settings, shirts_per_strip=3)
    assert any("has 4 garments" in each for each in faults(one, good.made, three))


@pytest.fixture
def pair(new_shop: Any) -> Any:
    """One strip with two decals side by side, 90 wide, and the gap of 6 mm."""
    shop = new_shop()
    shop.decals([(90, 50), (90, 50)])
    return shop


def test_a_gap_of_less_than_the_settings_is_named_although_nothing_overlaps(pair: Any) -> None:
    layout = pair.lay()
    left, right = sorted(layout.runs[0].lying, key=lambda each: each.across)
    assert (left.along, right.across - left.across - left.width) == (right.along, pair.settings.gap)
    at = layout.runs[0].lying.index(left)
    nearer = with_run(layout, lambda run: move(run, 0, at, across=left.across + 0.01))
    assert any("are too close" in each for each in faults(nearer, pair.made, pair.settings))


def test_a_gap_along_the_run_is_judged_like_one_across(good: Any) -> None:
    layout = good.lay()
    upper = max(layout.runs[0].strips[0].lying, key=lambda each: each.along)
    at = layout.runs[0].strips[0].lying.index(upper)
    lower = with_run(layout, lambda run: move(run, 0, at, along=upper.along - 0.01))
    assert any("are too close" in each for each in faults(lower, good.made, good.settings))


def test_where_nothing_may_be_turned_a_quarter_turn_is_named(good: Any) -> None:
    layout = good.lay()
    turned = with_run(layout, lambda run: move(run, 0, 0, turned=90))
    settings = replace(good.settings, turn=False)
    assert any("must not be turned" in each for each in faults(turned, good.made, settings))


def test_a_run_mirrored_although_the_job_asks_for_none_is_named(good: Any) -> None:
    found = faults(good.lay(), good.made, replace(good.settings, mirror=False))
    assert any("is mirrored" in each for each in found)


def test_strips_numbered_otherwise_in_a_second_film_are_named(new_shop: Any) -> None:
    """The strips of batches 1 and 2 change their numbers in one film alone: whoever weeds by number mixes up shirts."""
    shop = new_shop(films=(FILM, replace(FILM, name="Red smooth", color="red")))
    for no in range(1, 6):
        shop.decals([(250, 100)])
        shop.more(no, [(250, 100)], on="Red smooth")
    layout = shop.lay()
    assert faults(layout, shop.made, shop.settings) == ()
    last = layout.runs[-1]
    swapped = {1: 2, 2: 1}
    strips = tuple(replace(each, batch=swapped.get(each.batch, each.batch)) for each in last.strips)
    assert {each.batch for each in strips} >= {1, 2}
    other = replace(layout, runs=(*layout.runs[:-1], replace(last, strips=strips)))
    assert any("not its batch's" in each for each in faults(other, shop.made, shop.settings))


def test_batches_not_numbered_in_order_are_named(good: Any) -> None:
    layout = good.lay()
    other = replace(layout, batches=(replace(layout.batches[0], no=2), replace(layout.batches[1], no=1)))
    assert any("batches are not numbered" in each for each in faults(other, good.made, good.settings))


def test_a_run_with_no_strip_is_named(good: Any) -> None:
    layout = good.lay()
    empty = replace(layout, runs=(*layout.runs, replace(layout.runs[0], no=2, strips=())))
    assert any("nothing in it, or none" in each for each in faults(empty, good.made, good.settings))


def test_a_decal_before_its_strip_begins_is_named(good: Any) -> None:
    layout = good.lay()
    first = min(layout.runs[0].strips[0].lying, key=lambda each: each.along)
    at = layout.runs[0].strips[0].lying.index(first)
    early = with_run(layout, lambda run: move(run, 0, at, along=first.along - 1))
    assert any("outside its strip" in each for each in faults(early, good.made, good.settings))


def test_a_strip_that_begins_in_the_leading_margin_is_named(good: Any) -> None:
    def earlier(run: Run) -> Run:
        first = run.strips[0]
        return replace(run, strips=(replace(first, start=first.start - 1, length=first.length + 1), *run.strips[1:]))

    found = faults(with_run(good.lay(), earlier), good.made, good.settings)
    assert any("lacks an end margin" in each for each in found)


def test_a_batch_of_nobody_and_a_garment_in_two_batches_are_named(good: Any) -> None:
    layout = good.lay()
    nobody = replace(layout, batches=(*layout.batches, Batch(3, ())))
    assert any("batch 3 has 0 garments" in each for each in faults(nobody, good.made, good.settings))
    twice = replace(layout, batches=(*layout.batches, Batch(3, (1,))))
    assert any("garment 1 is in 2 batches" in each for each in faults(twice, good.made, good.settings))
