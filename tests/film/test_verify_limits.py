"""Every measure the judge of layouts holds: a thousandth of a millimeter is rounding, a hundredth is a fault."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from tests.film.conftest import Shop, film
from xlbatch.film.layout import Batch, Layout, Lying, Run, Strip
from xlbatch.film.verify import faults
from xlbatch.job.job import Roll, Settings

FILM = film(rolls=(Roll(100, None), Roll(914.4, None)))


def shop_of(*counts: int) -> tuple[Shop, Layout]:
    """One run of strips for so many garments each, every garment with a square of 90; two and two lie side by side, a
    gap of 6 between all."""
    shop = Shop(films=(FILM,))
    strips: list[Strip] = []
    batches: list[Batch] = []
    start = 25.0
    for no, count in enumerate(counts, 1):
        first = len(shop.garments)
        for _ in range(count):
            shop.decals([(90.0, 90.0)])
        own = shop.made[first:]
        lying = tuple(Lying(one, 96.0 * (at % 2), start + 96.0 * (at // 2), 0) for at, one in enumerate(own))
        strips.append(Strip(no, start, 96.0 * -(-count // 2) - 6, lying))
        batches.append(Batch(no, tuple(range(first + 1, first + count + 1))))
        start += strips[-1].length + 6
    run = Run(1, FILM, start - 6 + 25, tuple(strips), True, "roll")
    return shop, Layout(tuple(batches), (run,), ())


Change = Callable[[Run, Settings, float], tuple[Run, Settings]]


def strip(run: Run, at: int, **changes: object) -> Run:
    strips = list(run.strips)
    strips[at] = replace(strips[at], **changes)  # type: ignore[arg-type]
    return replace(run, strips=tuple(strips))


def moved(run: Run, at: int, across: float = 0.0, along: float = 0.0) -> Run:
    """A strip's decals moved."""
    own = run.strips[at].lying
    lying = tuple(replace(it, across=it.across + across, along=it.along + along) for it in own)
    return strip(run, at, lying=lying)


# by how much each measure is missed
MEASURES: dict[str, Change] = {
    "longer than the longest cut": lambda run, job, by: (run, replace(job, longest_cut=run.length - by)),
    "longer than any roll": lambda run, job, by: (
        replace(run, film=replace(FILM, rolls=(Roll(100, None), Roll(run.length - by, None)))), job
    ),
    "lacks an end margin": lambda run, job, by: (replace(run, length=run.length - by), job),
    "run 1 lacks an end margin": lambda run, job, by: (strip(run, 0, start=25 - by), job),
    "no straight cut separates strips 1 and 2": lambda run, job, by: (
        strip(run, 0, length=run.strips[0].length + by), job
    ),
    "lies outside the usable width": lambda run, job, by: (moved(run, 0, across=-by), job),
    "D002 lies outside the usable width": lambda run, job, by: (
        replace(run, film=replace(FILM, usable_width=186 - by)), job
    ),
    "outside its strip": lambda run, job, by: (moved(run, 1, along=-by), job),
    "D003 lies outside its strip": lambda run, job, by: (moved(run, 0, along=by), job),
    "D001 and D002 are too close": lambda run, job, by: (run, replace(job, gap=6 + by)),
    "D001 and D003 are too close": lambda run, job, by: (run, replace(job, gap=6 + by)),
    "strip 1 of run 1 is not handy": lambda run, job, by: (run, replace(job, handy_strip=186 - by)),
    "strip 2 of run 1 is longer than the longest": lambda run, job, by: (run, replace(job, longest_strip=90 - by)),
}  # fmt: skip


@pytest.mark.parametrize("fault", MEASURES)
def test_a_hundredth_is_a_fault_a_thousandth_is_none(fault: str) -> None:
    shop, layout = shop_of(4, 2)
    assert faults(layout, shop.made, shop.settings) == ()
    for by, wrong in ((0.001, False), (0.01, True), (3.0, True)):
        run, job = MEASURES[fault](layout.runs[0], shop.settings, by)
        found = faults(replace(layout, runs=(run,)), shop.made, job)
        assert any(fault in each for each in found) == wrong, (by, found)


def test_three_may_share_a_strip_that_is_not_handy_and_one_may_be_longer_than_the_longest() -> None:
    shop, layout = shop_of(3, 1)
    handy = replace(shop.settings, handy_strip=80)
    assert faults(layout, shop.made, handy) == ()
    short = replace(shop.settings, longest_strip=80)
    assert [fault[:7] for fault in faults(layout, shop.made, short)] == ["strip 1"]


def test_eight_may_share_a_strip_and_where_their_number_is_fixed_it_need_not_be_handy() -> None:
    shop, layout = shop_of(8)
    assert faults(layout, shop.made, replace(shop.settings, handy_strip=400)) == ()
    four = replace(shop.settings, shirts_per_strip=4, handy_strip=100)
    assert faults(layout, shop.made, four) == ("batch 1 has 8 garments",)
    assert faults(layout, shop.made, replace(four, shirts_per_strip=8)) == ()
    shop, layout = shop_of(9)
    assert faults(layout, shop.made, replace(shop.settings, handy_strip=600)) == ("batch 1 has 9 garments",)


def test_decals_farther_along_than_the_gap_may_lie_over_one_another() -> None:
    """The first of three is still beside the third, though the second, much shorter, has ended before it."""
    shop = Shop(films=(FILM,))
    shop.decals([(90, 200), (90, 20), (90, 90)])
    long, short, last = shop.made

    def found(across: float, along: float) -> tuple[str, ...]:
        lying = (Lying(long, 0, 25, 0), Lying(short, 96, 25, 0), Lying(last, across, along, 0))
        run = Run(1, FILM, 275, (Strip(1, 25, 225, lying),), True, "roll")
        return faults(Layout((Batch(1, (1,)),), (run,), ()), shop.made, shop.settings)

    assert found(96, 51) == ()
    assert found(95, 51) == ("D001 and D003 are too close",)
    assert found(96, 50) == ("D002 and D003 are too close",)
    assert found(192, 25) == ()
