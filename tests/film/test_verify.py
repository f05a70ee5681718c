"""The judge of layouts, itself judged: it accepts a good layout and names every kind of planted fault."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from xlbatch.film.layout import Layout, Run
from xlbatch.film.verify import faults
from xlbatch.roster.job import Film, Roll, Source

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
    "not numbered": lambda run: replace(run, no=2),
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
    assert any("has 4 garments" in each for each in faults(one, good.made, good.settings))
