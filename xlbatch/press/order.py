"""Places and batches → press steps in order.

Within a garment layers go in order and the hottest film first, so that no later press is hotter than an earlier
film bears; across a batch's garments the plate is set as seldom as that allows, and rather up than
down, since a plate cools slowly (common practice, no source).
"""

from collections import defaultdict, deque
from collections.abc import Iterator
from dataclasses import dataclass, replace

from xlbatch.film.layout import Batch
from xlbatch.job.job import Film, Job, Press
from xlbatch.placement.group import groups
from xlbatch.placement.place import Place, around
from xlbatch.placement.register import level
from xlbatch.press.heats import plate_heats, waiting
from xlbatch.press.step import PressPlan, Step
from xlbatch.trade.tables import work_time
from xlbatch.units import printed_text


@dataclass(frozen=True)
class Closing:
    """One garment's decals of one film that one closing of the plate presses."""

    film: Film
    tack: bool
    places: tuple[Place, ...]
    cover: tuple[str, ...] = ()  # decals already pressed in full on this side: never pressed again uncovered


def press_order(job: Job, batches: tuple[Batch, ...], places: tuple[Place, ...]) -> PressPlan:
    """All steps, batch by batch, numbered from 1."""
    films = {film.name.casefold(): film for film in reversed(job.films)}
    of_garment: dict[int, list[Place]] = defaultdict(list)
    for place in places:
        of_garment[place.garment.no].append(place)
    queues = [[_closings(of_garment[no], films, job.presses[0]) for no in batch.garments] for batch in batches]
    heats = plate_heats([[tuple(c.film.temperature for c in queue) for queue in batch] for batch in queues])
    steps: list[Step] = []
    plate: float | None = None
    tried: set[tuple[str, str]] = set()
    for batch, batch_queues, batch_heats in zip(batches, queues, heats, strict=True):
        for closing in _merged(batch_queues, (plate, *batch_heats)):
            steps += _steps(job, batch, closing, len(steps) + 1, tried, waiting(plate, closing.film.temperature))
            plate = closing.film.temperature
    return PressPlan(tuple(steps))


def _closings(places: list[Place], films: dict[str, Film], press: Press) -> list[Closing]:
    """One garment's closings of the plate, in the order they must come.

    Checked before: no later layer is hotter. So hottest first keeps the layers in order, and at one heat each side is
    finished before the garment is turned over."""
    sides = list(dict.fromkeys(place.side for place in places))
    ordered = sorted(
        places, key=lambda it: (-films[it.decal.film.casefold()].temperature, sides.index(it.side), level(it))
    )
    found: list[Closing] = []
    for place in ordered:
        film, tack = films[place.decal.film.casefold()], _is_covered(place, places)
        last = found[-1] if found else None
        if last and (last.film, last.tack) == (film, tack) and _one_closing((*last.places, place), press):
            found[-1] = replace(last, places=(*last.places, place))
        else:
            pressed = (it for done in found if not done.tack for it in done.places if it.side == place.side)
            found.append(Closing(film, tack, (place,), tuple(it.decal.id for it in pressed)))
    return found


def _is_covered(place: Place, places: list[Place]) -> bool:
    """Whether a higher layer of the same drawing goes over this one."""
    return any(level(other) > level(place) and len(groups((place.decal, other.decal))) == 1 for other in places)


def _one_closing(places: tuple[Place, ...], press: Press) -> bool:
    """Whether one closing of the plate covers all of these: same side, one layer, together within the plate."""
    first = places[0]
    if any((p.side, level(p)) != (first.side, level(first)) for p in places):
        return False
    box = around(places)
    width, height = box.right - box.left, box.top - box.bottom
    return (width <= press.width and height <= press.depth) or (width <= press.depth and height <= press.width)


def _merged(queues: list[list[Closing]], heats: tuple[float | None, ...]) -> Iterator[Closing]:
    """The batch's closings as the plate goes through its heats: at each, all that can be pressed, by garment."""
    waiting_lines = [deque(queue) for queue in queues]
    for heat in heats:
        for line in waiting_lines:
            while line and line[0].film.temperature == heat:
                yield line.popleft()


def _steps(
    job: Job, batch: Batch, closing: Closing, first: int, tried: set[tuple[str, str]], wait: float
) -> list[Step]:
    film, press = closing.film, job.presses[0]
    fabric = closing.places[0].garment.blank.fabric
    trial = (film.name, fabric) not in tried
    tried.add((film.name, fabric))
    return [
        Step(
            no=first + at,
            batch=batch.no,
            place=place,
            film=film,
            press=press,
            temperature=film.temperature,
            warm_up=film.warm_up,
            front=work_time("press", "tack a lower layer") if closing.tack else film.press,
            back=0.0 if closing.tack else film.back,
            tack=closing.tack,
            trial=trial and at == 0,
            wait=0.0 if at else wait,
            with_step=first if at else None,
            how=_how(job, closing, place, trial and at == 0, first if at else None),
        )
        for at, place in enumerate(closing.places)
    ]


def _how(job: Job, closing: Closing, place: Place, trial: bool, with_step: int | None) -> str:
    said = (
        "trial" if trial else "",
        f"with step {with_step}" if with_step else "",
        f"cover {', '.join(closing.cover)}" if closing.cover and not with_step else "",
        f"tack {work_time('press', 'tack a lower layer'):g} s" if closing.tack else "",
        _grid(place, job) if place.presses > 1 else "",
    )
    return "; ".join(filter(None, said))


def _grid(place: Place, job: Job) -> str:
    """The sections in words: `2 sections, left to right, overlap 1 in`."""
    across = len({section.right for section in place.sections})
    down = len({section.up for section in place.sections})
    ways = ", ".join(way for way, count in (("left to right", across), ("top to bottom", down)) if count > 1)
    overlap = printed_text(job.presses[0].overlap, job.settings.length_unit)
    return f"{place.presses} sections, {ways}, overlap {overlap}"
