"""The order of the plate's heats: the least waiting that the garments' own orders allow.

Each garment has a queue of heats that must come in that order. Two ways through a job are compared: each heat for all
batches before the next, or each batch to its end. Heating and cooling cost their time (the sheet Work times).
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache
from itertools import pairwise, product
from math import prod
from typing import NamedTuple

Queue = tuple[float, ...]  # one garment's heats (°C), in the order they must come
Way = tuple[float, tuple[float, ...]]  # seconds of waiting, and the heats the plate is newly set to
Kind = tuple[Queue, ...]  # the different queues of a batch: batches of one kind go the same ways

MOST_HEATS = 8  # of a job, up to which every order of the heats is compared
MOST_STATES = 20_000  # of the search over the batches' order, up to which it is exact


class Plate(NamedTuple):
    """How long a plate takes to heat up and to cool down, in s a °C."""

    up: float
    down: float

    def waiting(self, now: float | None, heat: float) -> float:
        """Seconds until the plate is at `heat` (°C); none for the first heat of the job."""
        if now is None:
            return 0.0
        return abs(heat - now) * (self.up if heat > now else self.down)


class Visit(NamedTuple):
    """A batch pressed at a heat, all that its garments' orders allow."""

    batch: int  # its place in the batches given
    heat: float


class HeatOrder(NamedTuple):
    """A way through a job."""

    waiting: float  # s
    visits: tuple[Visit, ...]
    least: float  # s: proven; equal to `waiting` where every order was compared


def heat_by_heat(plate: Plate, batches: Sequence[Sequence[Queue]]) -> HeatOrder:
    """Each heat for all batches before the next, with the least waiting there is over all orders of (batch, heat).

    Exact up to MOST_HEATS heats: whatever can be pressed at the plate's heat is pressed at once, which never costs
    more, since waiting keeps the triangle inequality; so all batches are one, and over the heats to set next all ways
    are compared. With more heats: from the hottest down, and the least is what the garment that cools most waits."""
    queues = tuple(sorted({queue for batch in batches for queue in batch if queue}))
    heats = sorted({heat for queue in queues for heat in queue}, reverse=True)
    if len(heats) <= MOST_HEATS:
        seconds, way = min(way for _, way in _ways(plate, queues, None))
        least = seconds
    else:
        seconds, way = _falling(plate, queues)
        least = max((_along(plate, queue) for queue in queues), default=0.0)
    return HeatOrder(seconds, tuple(_visited(batches, way)), least)


def _falling(plate: Plate, queues: Iterable[Queue]) -> Way:
    """From the hottest down, as often as the queues need."""
    left, way = tuple(queues), []
    while left:
        way.append(max(queue[0] for queue in left))
        left = _left(left, way[-1])
    return _along(plate, way), tuple(way)


def _along(plate: Plate, heats: Sequence[float]) -> float:
    return round(sum(plate.waiting(*pair) for pair in pairwise(heats)), 6)


def _visited(batches: Sequence[Sequence[Queue]], heats: Iterable[float]) -> Iterable[Visit]:
    """The batches that have something to press at each heat."""
    left = [tuple(filter(None, batch)) for batch in batches]
    for heat in heats:
        for batch_no, queues in enumerate(left):
            if any(queue[0] == heat for queue in queues):
                yield Visit(batch_no, heat)
                left[batch_no] = _left(queues, heat)


def batch_by_batch(plate: Plate, batches: Sequence[Sequence[Queue]]) -> HeatOrder:
    """Each batch to its end before the next, in the order of least waiting, from the lowest heat up.

    Exact while the kinds of batches, by what they need, and how many there are of each leave at most MOST_STATES
    states; else the batch that can be begun soonest is next, and the least is that of heat by heat."""
    of_kind: dict[Kind, list[int]] = defaultdict(list)
    for batch_no, batch in enumerate(batches):
        if kind := tuple(sorted(set(filter(None, batch)))):
            of_kind[kind].append(batch_no)
    heats = len({heat for kind in of_kind for queue in kind for heat in queue})
    if prod(len(them) + 1 for them in of_kind.values()) * heats <= MOST_STATES:
        seconds, steps = _exact(plate, of_kind)
        least = seconds
    else:
        seconds, steps = _soonest(plate, of_kind)
        least = heat_by_heat(plate, batches).least
    waiting_batches = {kind: iter(them) for kind, them in of_kind.items()}
    visits = tuple(
        Visit(waiting, heat) for kind, way in steps for waiting in (next(waiting_batches[kind]),) for heat in way
    )
    return HeatOrder(seconds, visits, least)


Step = tuple[Kind, tuple[float, ...]]  # a kind of batch, and the heats it is pressed at


def _through(plate: Plate, kind: Kind, now: float | None) -> Iterable[tuple[float, float, tuple[float, ...]]]:
    """The cheapest ways through a batch: seconds, the heat it ends with, the heats it is pressed at."""
    begun = (now,) if now is not None and any(queue[0] == now for queue in kind) else ()
    for _, (seconds, heats) in _ways(plate, kind, now):
        pressed = (*begun, *heats)
        yield seconds, pressed[-1], pressed


def _exact(plate: Plate, of_kind: Mapping[Kind, Sequence[int]]) -> tuple[float, Sequence[Step]]:
    """By how many of each kind are left and the plate's heat: the least there is to wait (dynamic programming)."""
    kinds = list(of_kind)
    heats = sorted({heat for kind in kinds for queue in kind for heat in queue})
    counts = tuple(len(of_kind[kind]) for kind in kinds)
    none = (0,) * len(kinds)
    best: dict[tuple[tuple[int, ...], float | None], tuple[float, float, int, tuple[float, ...]]] = {}
    for left in product(*(range(count + 1) for count in counts)):
        for now in (*heats, None) if left == counts else heats:
            if left == none:
                best[left, now] = (0.0, 0.0, 0, ())
                continue
            best[left, now] = min(
                (round(seconds + best[_less(left, next_kind), end][0], 6), pressed[0], next_kind, pressed)
                for next_kind, kind in enumerate(kinds)
                if left[next_kind]
                for seconds, end, pressed in _through(plate, kind, now)
            )
    steps: list[Step] = []
    left, now = counts, None
    while left != none:
        _, _, kind_no, pressed = best[left, now]
        steps.append((kinds[kind_no], pressed))
        left, now = _less(left, kind_no), pressed[-1]
    return best[counts, None][0], steps


def _less(counts: tuple[int, ...], kind_no: int) -> tuple[int, ...]:
    return (*counts[:kind_no], counts[kind_no] - 1, *counts[kind_no + 1 :])


def _soonest(plate: Plate, of_kind: Mapping[Kind, Sequence[int]]) -> tuple[float, Sequence[Step]]:
    """The batch next that waits least; the lowest heat first where several do."""
    left = {kind: len(them) for kind, them in of_kind.items()}
    now: float | None = None
    waited, steps = 0.0, []
    while left:
        seconds, _, kind, pressed = min(
            (seconds, pressed[0], kind, pressed) for kind in left for seconds, _, pressed in _through(plate, kind, now)
        )
        steps.append((kind, pressed))
        waited, now = waited + seconds, pressed[-1]
        left[kind] -= 1
        left = {queue_kind: count for queue_kind, count in left.items() if count}
    return round(waited, 6), steps


@lru_cache(maxsize=65536)
def _ways(plate: Plate, queues: tuple[Queue, ...], now: float | None) -> tuple[tuple[float | None, Way], ...]:
    """The cheapest way to press these queues for each heat it may end with."""
    left = _left(queues, now)
    if not left:
        return ((now, (0.0, ())),)
    best: dict[float | None, Way] = {}
    for heat in sorted({queue[0] for queue in left}):
        for end, (seconds, heats) in _ways(plate, left, heat):
            way = (round(seconds + plate.waiting(now, heat), 6), (heat, *heats))
            best[end] = min(best.get(end, way), way)
    return tuple(best.items())


def _left(queues: tuple[Queue, ...], now: float | None) -> tuple[Queue, ...]:
    """What is left of the queues once all that the plate's heat can press is pressed; like queues are one."""
    return tuple(sorted({rest for queue in queues if (rest := _after(queue, now))}))


def _after(queue: Queue, now: float | None) -> Queue:
    pressed = next((place for place, heat in enumerate(queue) if heat != now), len(queue))
    return queue[pressed:]
