"""Places and batches → press steps in order.

Within a garment layers go in order and the hottest film first, so that no later press is hotter than an earlier
film bears. Over the job a block is a batch at a heat: the blocks follow one another with the least waiting for the
plate. Within a block the first layer goes on all its shirts, then the next, so that pieces cool meanwhile.
"""

from collections import defaultdict, deque
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import groupby

from xlbatch.check.progress import BLANK_IN_HAND
from xlbatch.film.layout import Batch
from xlbatch.job.job import Job
from xlbatch.placement.place import Place
from xlbatch.press.closing import Closing, closings
from xlbatch.press.heats import HeatOrder, Plate, Queue, batch_by_batch, heat_by_heat
from xlbatch.press.step import PressPlan, PressStep

Queues = list[list[Closing]]  # the closings of each garment of a batch


def press_order(job: Job, batches: tuple[Batch, ...], places: tuple[Place, ...]) -> PressPlan:
    """All steps, numbered from 1, press by press where people press at several."""
    of_garment: dict[int, list[Place]] = defaultdict(list)
    for place in places:
        of_garment[place.garment.no].append(place)
    queues = [[closings(of_garment[no], job.film_of, job.presses[0]) for no in batch.garments] for batch in batches]
    lanes = list(_lanes(queues, job.settings.people_pressing))
    plate = plate_of(job)
    heats = [[[_heats(queue) for queue in queues[batch_no]] for batch_no in lane] for lane in lanes]
    by_heat = [heat_by_heat(plate, lane) for lane in heats]
    by_batch = [batch_by_batch(plate, lane) for lane in heats]
    waits = [sum(order.waiting for order in orders) for orders in (by_heat, by_batch)]
    worth = job.settings.worth_changing_the_order
    changed = worth is not None and waits[1] - waits[0] > worth * 60
    steps: list[PressStep] = []
    tried: set[tuple[str, str]] = set()
    for number, (lane, order) in enumerate(zip(lanes, by_heat if changed else by_batch, strict=True), 1):
        now: float | None = None
        for batch, closing in _in_order(lane, order, queues):
            wait = plate.waiting(now, closing.heat)
            steps += _steps(job, batches[batch], closing, len(steps) + 1, tried, wait, number)
            now = closing.heat
    least = sum(order.least for order in by_heat)
    return PressPlan(tuple(_first_and_last(steps)), changed, round(waits[0], 3), round(waits[1], 3), round(least, 3))


def _heats(queue: Sequence[Closing]) -> Queue:
    """A garment's heats, each once."""
    return tuple(heat for heat, _ in groupby(closing.heat for closing in queue))


def plate_of(job: Job) -> Plate:
    """How quickly the plate heats and cools."""
    times = job.work_times
    return Plate(times.of("press", "heat the plate by a degree"), times.of("press", "let the plate cool by a degree"))


def _lanes(queues: Sequence[Queues], people: int) -> Iterator[Sequence[int]]:
    """The batches of each press, next to one another, with about as many closings each."""
    total = sum(len(queue) for batch in queues for queue in batch)
    before, lanes = 0, defaultdict(list)
    for batch_no, batch in enumerate(queues):
        lanes[min(before * people // max(total, 1), people - 1)].append(batch_no)
        before += sum(map(len, batch))
    yield from lanes.values()


def _in_order(lane: Sequence[int], order: HeatOrder, queues: Sequence[Queues]) -> Iterator[tuple[int, Closing]]:
    """The closings as the plate goes through its visits: one of each of a batch's garments, then the next of each."""
    lines = {batch_no: [deque(queue) for queue in queues[batch_no]] for batch_no in lane}
    for visit in order.visits:
        batch = lane[visit.batch]
        while any(line and line[0].heat == visit.heat for line in lines[batch]):
            for line in lines[batch]:
                if line and line[0].heat == visit.heat:
                    yield batch, line.popleft()


def _steps(
    job: Job, batch: Batch, closing: Closing, first: int, tried: set[tuple[str, str]], wait: float, lane: int
) -> list[PressStep]:
    film = closing.film
    fabric = closing.places[0].garment.blank.fabric
    trial = (film.name, fabric) not in tried
    tried.add((film.name, fabric))
    return [
        PressStep(
            no=first + place_no,
            batch=batch.no,
            lane=lane,
            place=place,
            film=film,
            press=job.presses[0],
            temperature=film.temperature,
            warm_up=film.warm_up,
            front=job.work_times.of("press", "tack a lower layer") if closing.tack else film.press,
            back=0.0 if closing.tack else film.back,
            tack=closing.tack,
            trial=trial and place_no == 0,
            wait=0.0 if place_no else wait,
            with_step=first if place_no else None,
            cover=() if place_no else closing.cover,
        )
        for place_no, place in enumerate(closing.places)
    ]


def _first_and_last(steps: Sequence[PressStep]) -> Iterator[PressStep]:
    """The steps, each garment's first and last marked; only a bare garment is warmed up."""
    last = {step.place.garment.no: step.no for step in steps}
    begun: dict[int, int] = {}
    for step in steps:
        garment = step.place.garment
        opening = begun.setdefault(garment.no, step.with_step or step.no)
        bare = (step.with_step or step.no) == opening and not set(garment.row.done_so_far) - {BLANK_IN_HAND}
        yield replace(
            step,
            warm_up=step.warm_up if bare else 0.0,
            first=step.no == opening,
            last=step.no == last[garment.no],
        )
