"""The order of the plate's heats: set as seldom, and cooled as little, as the garments allow.

Each garment of a batch has a queue of heats that must come in that order. The plate's whole way through the job is
the cheapest there is: heating and cooling cost their time (trade/work_times.csv), and cooling costs more.
"""

from collections.abc import Sequence
from functools import lru_cache

from xlbatch.trade.tables import work_time

Queue = tuple[float, ...]  # one garment's heats (°C), in the order they must come
Way = tuple[float, tuple[float, ...]]  # seconds of waiting, and the heats the plate is set to


def waiting(plate: float | None, heat: float) -> float:
    """Seconds until the plate is at `heat` (°C); none for the first heat of the job."""
    if plate is None:
        return 0.0
    work = "heat the plate by a degree" if heat > plate else "let the plate cool by a degree"
    return abs(heat - plate) * work_time("press", work)


def plate_heats(batches: Sequence[Sequence[Queue]]) -> tuple[tuple[float, ...], ...]:
    """For each batch the heats the plate is newly set to, in order: the least waiting over the whole job.

    Exact: a garment that can be pressed at the plate's heat is pressed at once, which never costs more, since waiting
    keeps the triangle inequality; over the heats to set next, and the heat a batch ends with, all ways are compared."""
    best: dict[float | None, tuple[float, tuple[tuple[float, ...], ...]]] = {None: (0.0, ())}
    for queues in batches:
        ends: dict[float | None, tuple[float, tuple[tuple[float, ...], ...]]] = {}
        for plate, (seconds, before) in best.items():
            for end, (more, heats) in _ways(tuple(sorted(set(queues))), plate):
                way = (round(seconds + more, 6), (*before, heats))
                ends[end] = min(ends.get(end, way), way)
        best = ends
    return min(best.values())[1]


@lru_cache(maxsize=65536)
def _ways(queues: tuple[Queue, ...], plate: float | None) -> tuple[tuple[float | None, Way], ...]:
    """The cheapest way to press these queues for each heat it may end with."""
    left = _left(queues, plate)
    if not left:
        return ((plate, (0.0, ())),)
    best: dict[float | None, Way] = {}
    for heat in sorted({queue[0] for queue in left}):
        for end, (seconds, heats) in _ways(left, heat):
            way = (round(seconds + waiting(plate, heat), 6), (heat, *heats))
            best[end] = min(best.get(end, way), way)
    return tuple(best.items())


def _left(queues: tuple[Queue, ...], plate: float | None) -> tuple[Queue, ...]:
    """What is left of the queues once all that the plate's heat can press is pressed; like queues are one."""
    return tuple(sorted({rest for queue in queues if (rest := _after(queue, plate))}))


def _after(queue: Queue, plate: float | None) -> Queue:
    pressed = next((at for at, heat in enumerate(queue) if heat != plate), len(queue))
    return queue[pressed:]
