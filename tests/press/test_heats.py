"""The plate's heats: the least waiting there is, brute force as the judge."""

import random
from functools import cache

from xlbatch.press.heats import Queue, plate_heats, waiting

HEATS = (129.444444, 148.888889, 160.0, 165.555556)  # 265, 300, 320, 330 °F


def cost(batches: list[list[Queue]]) -> float:
    """Seconds of waiting along the heats that plate_heats gives, every queue pressed out in order."""
    seconds, plate = 0.0, None
    for queues, heats in zip(batches, plate_heats(batches), strict=True):
        left = list(queues)
        for heat in (plate, *heats):
            seconds += 0.0 if heat == plate or heat is None else waiting(plate, heat)
            plate = heat
            while any(queue and queue[0] == plate for queue in left):
                left = [queue[1:] if queue and queue[0] == plate else queue for queue in left]
        assert not any(left)
    return seconds


def least(batches: list[list[Queue]]) -> float:
    """The least waiting over every interleaving of every batch, one closing at a time."""

    @cache
    def rest(batch: int, left: tuple[Queue, ...], plate: float | None) -> float:
        if not any(left):
            return 0.0 if batch + 1 == len(batches) else rest(batch + 1, tuple(batches[batch + 1]), plate)
        return min(
            waiting(plate, queue[0]) + rest(batch, (*left[:at], queue[1:], *left[at + 1 :]), queue[0])
            for at, queue in enumerate(left)
            if queue
        )

    return rest(0, tuple(batches[0]), None)


def test_the_waiting_is_the_exact_minimum() -> None:
    draw = random.Random(11)
    for _ in range(200):
        batches = [
            [tuple(draw.choice(HEATS) for _ in range(draw.randint(1, 3))) for _ in range(draw.randint(1, 3))]
            for _ in range(draw.randint(1, 3))
        ]
        assert abs(cost(batches) - least(batches)) < 1e-4, batches


def test_cooling_costs_more_than_heating() -> None:
    """Common practice, no source."""
    assert waiting(150, 160) < waiting(160, 150)
    assert waiting(None, 160) == waiting(160, 160) == 0


def test_a_batch_starts_at_the_heat_the_one_before_ended_with() -> None:
    low, high = HEATS[1], HEATS[3]
    assert plate_heats([[(low,), (high,)], [(low,), (high,)]]) in (
        ((low, high), (low,)),
        ((high, low), (high,)),
    )
