"""The order of blocks (batch and heat): the least waiting there is, brute force as the judge."""

import random
from collections.abc import Sequence
from functools import cache
from itertools import pairwise, product

import pytest

from xlbatch.press.heats import MOST_HEATS, HeatOrder, Plate, Queue, batch_by_batch, heat_by_heat

HEATS = (129.444444, 148.888889, 160.0, 165.555556)  # 265, 300, 320, 330 °F
PLATE = Plate(2.0, 20.0)  # s a °C: common practice, no source
Job = list[list[Queue]]  # the garments' heats, batch by batch


def falling(draw: random.Random, heats: Sequence[float], most: int) -> Queue:
    """A garment's heats: the hottest film first."""
    return tuple(sorted(draw.sample(heats, draw.randint(1, most)), reverse=True))


def small_jobs(count: int) -> list[Job]:
    draw = random.Random(11)
    return [
        [[falling(draw, HEATS, 3) for _ in range(draw.randint(1, 3))] for _ in range(draw.randint(1, 3))]
        for _ in range(count)
    ]


def walked(order: HeatOrder, batches: Job) -> float:
    """Seconds of waiting along an order, every garment pressed out in its own order."""
    left = [list(batch) for batch in batches]
    seconds, now = 0.0, None
    for at, heat in order.visits:
        seconds += PLATE.waiting(now, heat)
        now = heat
        while any(queue and queue[0] == heat for queue in left[at]):
            left[at] = [queue[1:] if queue and queue[0] == heat else queue for queue in left[at]]
    assert not any(queue for batch in left for queue in batch)
    return seconds


def least_of_blocks(batches: Job) -> float:
    """The least waiting over every order of the blocks that keeps each garment's own order."""
    blocks = sorted({(at, heat) for at, batch in enumerate(batches) for queue in batch for heat in queue})
    before = {
        (at, heat): {(at, hotter) for queue in batches[at] if heat in queue for hotter in queue[: queue.index(heat)]}
        for at, heat in blocks
    }

    @cache
    def rest(done: frozenset[tuple[int, float]], now: float | None) -> float:
        open_ = [block for block in blocks if block not in done and before[block] <= done]
        return min((PLATE.waiting(now, heat) + rest(done | {(at, heat)}, heat) for at, heat in open_), default=0.0)

    return rest(frozenset(), None)


def least_of_batches(batches: Job) -> float:
    """The least waiting over every order of the batches and of the closings within each."""

    @cache
    def rest(to_do: frozenset[int], left: tuple[Queue, ...], now: float | None) -> float:
        if not any(left):
            return min((rest(to_do - {at}, tuple(batches[at]), now) for at in to_do), default=0.0)
        return min(
            PLATE.waiting(now, queue[0]) + rest(to_do, (*left[:at], queue[1:], *left[at + 1 :]), queue[0])
            for at, queue in enumerate(left)
            if queue
        )

    return rest(frozenset(range(len(batches))), (), None)


def test_heat_by_heat_waits_least_of_all_orders_of_blocks() -> None:
    for batches in small_jobs(300):
        order = heat_by_heat(PLATE, batches)
        assert walked(order, batches) == pytest.approx(order.waiting, abs=1e-4)
        assert order.waiting == pytest.approx(least_of_blocks(batches), abs=1e-4), batches
        assert order.least == order.waiting


def test_batch_by_batch_waits_least_of_all_orders_of_batches() -> None:
    for batches in small_jobs(300):
        order = batch_by_batch(PLATE, batches)
        assert walked(order, batches) == pytest.approx(order.waiting, abs=1e-4)
        assert order.waiting == pytest.approx(least_of_batches(batches), abs=1e-4), batches
        turns = [visit.batch for visit in order.visits]
        assert sorted(set(turns)) == sorted(dict.fromkeys(turns)) == list(range(len(batches)))
        assert sum(a != b for a, b in pairwise(turns)) == len(batches) - 1


def test_jobs_of_some_size_wait_no_more_than_the_proven_least() -> None:
    """30 jobs of 20 to 80 garments with two and three heats."""
    draw = random.Random(7)
    for at in range(30):
        heats = draw.sample(HEATS, 2 + at % 2)
        garments = [falling(draw, heats, len(heats)) for _ in range(draw.randint(20, 80))]
        batches = [garments[first : first + 3] for first in range(0, len(garments), 3)]
        order = heat_by_heat(PLATE, batches)
        assert walked(order, batches) == pytest.approx(order.waiting, abs=1e-3)
        assert order.waiting <= 1.05 * order.least + 1e-6
        assert order.waiting <= batch_by_batch(PLATE, batches).waiting + 1e-6


def test_many_heats_are_pressed_from_the_hottest_down_and_the_bound_is_true() -> None:
    heats = [120.0 + 5 * at for at in range(MOST_HEATS + 2)]
    draw = random.Random(3)
    batches = [[falling(draw, heats, 4) for _ in range(3)] for _ in range(12)]
    order = heat_by_heat(PLATE, batches)
    assert walked(order, batches) == pytest.approx(order.waiting, abs=1e-3)
    assert 0 < order.least <= order.waiting


def test_where_no_garment_has_two_heats_the_plate_only_heats_up() -> None:
    batches = [[(HEATS[3],)], [(HEATS[0],)], [(HEATS[2],)]]
    for order in (heat_by_heat(PLATE, batches), batch_by_batch(PLATE, batches)):
        assert [visit.heat for visit in order.visits] == [HEATS[0], HEATS[2], HEATS[3]]
        assert order.waiting == pytest.approx(2 * (HEATS[3] - HEATS[0]))


def test_very_many_batches_of_many_kinds_are_ordered_too() -> None:
    """Beyond what is compared: still every garment, and the bound is that of heat by heat."""
    draw = random.Random(5)
    batches = [[falling(draw, HEATS, 3) for _ in range(3)] for _ in range(60)]
    order = batch_by_batch(PLATE, batches)
    assert walked(order, batches) == pytest.approx(order.waiting, abs=1e-3)
    assert order.least <= order.waiting


@pytest.mark.parametrize(("one", "other"), list(product(HEATS, HEATS)))
def test_cooling_costs_more_than_heating(one: float, other: float) -> None:
    """Common practice, no source."""
    if one < other:
        assert PLATE.waiting(one, other) < PLATE.waiting(other, one)
    assert PLATE.waiting(None, one) == PLATE.waiting(one, one) == 0
