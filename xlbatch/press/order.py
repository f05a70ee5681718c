"""Places and batches → press steps in order.

Within a garment layers go in order, then the hottest film first, so that no later press is hotter than an
earlier film bears; across a batch's garments the plate is set as seldom as that allows, and rather up than
down, since a plate cools slowly (common practice, no source).
"""

from collections import defaultdict
from dataclasses import dataclass, replace

from xlbatch.film.layout import Batch
from xlbatch.placement.group import groups
from xlbatch.placement.place import Place
from xlbatch.press.step import PressPlan, Step
from xlbatch.problems import Problem, problem
from xlbatch.roster.job import Film, Job, Press
from xlbatch.trade.tables import work_time
from xlbatch.units import printed_text


@dataclass(frozen=True)
class Closing:
    """One garment's decals of one film that one closing of the plate presses."""

    film: Film
    tack: bool
    places: tuple[Place, ...]


def press_order(job: Job, batches: tuple[Batch, ...], places: tuple[Place, ...]) -> PressPlan:
    """All steps, batch by batch, numbered from 1."""
    films = {film.name.casefold(): film for film in reversed(job.films)}
    of_garment: dict[int, list[Place]] = defaultdict(list)
    for place in places:
        of_garment[place.garment.no].append(place)
    steps: list[Step] = []
    plate: float | None = None
    changes = 0
    tried: set[tuple[str, str]] = set()
    for batch in batches:
        queues = [_closings(tuple(of_garment[no]), films, job.presses[0]) for no in batch.garments]
        for closing in _merged(queues, plate):
            changes += plate is not None and closing.film.temperature != plate
            plate = closing.film.temperature
            steps += _steps(job, batch, closing, len(steps) + 1, tried)
    return PressPlan(tuple(steps), changes)


def order_problems(pressing: PressPlan) -> tuple[Problem, ...]:
    """A check for each pair of films where layers force a hotter press over a film that is pressed cooler."""
    earlier: dict[int, list[Step]] = defaultdict(list)
    found: dict[tuple[str, str], Problem] = {}
    for step in pressing.steps:
        garment = step.place.garment
        for before in earlier[garment.no]:
            if step.temperature > before.temperature:
                found.setdefault(
                    (before.film.name, step.film.name),
                    problem(
                        "heat-order",
                        step.place.decal.spec.source.at("Layer"),
                        step.place.decal.spec.layer,
                        rows=(garment.row.source.row,),
                        later=step.film.name,
                        earlier=before.film.name,
                    ),
                )
        earlier[garment.no].append(step)
    return tuple(found.values())


def _closings(places: tuple[Place, ...], films: dict[str, Film], press: Press) -> list[Closing]:
    """One garment's closings of the plate, in the order they must come."""
    ordered = sorted(places, key=lambda each: (_level(each), -films[each.decal.film.casefold()].temperature))
    found: list[Closing] = []
    for place in ordered:
        film, tack = films[place.decal.film.casefold()], _is_covered(place, places)
        last = found[-1] if found else None
        if last and (last.film, last.tack) == (film, tack) and _one_closing((*last.places, place), press):
            found[-1] = replace(last, places=(*last.places, place))
        else:
            found.append(Closing(film, tack, (place,)))
    return found


def _is_covered(place: Place, places: tuple[Place, ...]) -> bool:
    """Whether a higher layer of the same drawing goes over this one."""
    return any(_level(other) > _level(place) and len(groups((place.decal, other.decal))) == 1 for other in places)


def _level(place: Place) -> tuple[int, bool]:
    """Its layer, and within that whether it lies over a border piece's level."""
    return place.decal.spec.layer, not place.decal.border


def _one_closing(places: tuple[Place, ...], press: Press) -> bool:
    """Whether one closing of the plate covers all of these: same side, one layer, together within the plate."""
    first = places[0]
    if any((p.side, _level(p)) != (first.side, _level(first)) for p in places):
        return False
    across = [p.from_center + sign * p.decal.width / 2 for p in places for sign in (-1, 1)]
    down = [edge for p in places for edge in _edges(p)]
    width, height = max(across) - min(across), max(down) - min(down)
    return (width <= press.width and height <= press.depth) or (width <= press.depth and height <= press.width)


def _edges(place: Place) -> tuple[float, float]:
    start = place.below_collar if place.below_collar is not None else place.above_opening or 0.0
    return start, start + place.decal.height


def _merged(queues: list[list[Closing]], plate: float | None) -> list[Closing]:
    """The batch's closings in one order: stay at the plate's heat, else go to the next higher, else to the hottest."""
    waiting = [list(queue) for queue in queues]
    merged: list[Closing] = []
    while any(waiting):
        heads = [(queue[0].film.temperature, at) for at, queue in enumerate(waiting) if queue]
        higher = [head for head in heads if plate is None or head[0] >= plate]
        plate, at = min(higher) if higher else max(heads, key=lambda head: (head[0], -head[1]))
        merged.append(waiting[at].pop(0))
    return merged


def _steps(job: Job, batch: Batch, closing: Closing, first: int, tried: set[tuple[str, str]]) -> list[Step]:
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
            with_step=first if at else None,
            how=_how(job, closing, place, trial and at == 0, first if at else None),
        )
        for at, place in enumerate(closing.places)
    ]


def _how(job: Job, closing: Closing, place: Place, trial: bool, with_step: int | None) -> str:
    overlap = printed_text(job.presses[0].overlap, job.settings.length_unit)
    said = (
        (trial, "trial: scrap first, then this one"),
        (with_step is not None, f"with step {with_step}"),
        (closing.tack, "tack only; full time with the top layer"),
        (place.presses > 1, f"{place.presses} sections, overlap {overlap}"),
    )
    return "; ".join(words for applies, words in said if applies)
