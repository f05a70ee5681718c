"""Closings of the plate: what is pressed at once on one garment."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from xlbatch.job.job import Film, Press
from xlbatch.placement.pieces import one_drawing
from xlbatch.placement.place import Place, around
from xlbatch.placement.register import level


@dataclass(frozen=True)
class Closing:
    """One garment's decals of one film that one closing of the plate presses."""

    film: Film
    tack: bool  # a lower layer whose upper one follows at the same heat: pressed in full with that
    places: tuple[Place, ...]
    cover: tuple[str, ...] = ()  # decals already pressed in full on this side: never pressed again uncovered

    @property
    def heat(self) -> float:
        return self.film.temperature


def closings(places: Sequence[Place], films: Mapping[str, Film], press: Press) -> list[Closing]:
    """One garment's closings of the plate, in the order they must come.

    Checked before: no later layer is hotter. So hottest first keeps the layers in order, and at one heat each side is
    finished before the garment is turned over."""
    sides = list(dict.fromkeys(place.side for place in places))
    ordered = sorted(
        places, key=lambda it: (-films[it.decal.film.casefold()].temperature, sides.index(it.side), level(it))
    )
    closed: list[Closing] = []
    for place in ordered:
        film, tack = films[place.decal.film.casefold()], _is_tacked(place, places, films)
        last = closed[-1] if closed else None
        if last and (last.film, last.tack) == (film, tack) and _one_closing((*last.places, place), press):
            closed[-1] = replace(last, places=(*last.places, place))
        else:
            pressed = (it for done in closed if not done.tack for it in done.places if it.side == place.side)
            closed.append(Closing(film, tack, (place,), tuple(it.decal.id for it in pressed)))
    return closed


def _is_tacked(place: Place, places: Sequence[Place], films: Mapping[str, Film]) -> bool:
    """Whether a higher layer of its drawing goes over it at the same heat: else the garment is stacked in between."""
    heat = films[place.decal.film.casefold()].temperature
    return any(
        level(other) > level(place)
        and films[other.decal.film.casefold()].temperature == heat
        and one_drawing(place, other)
        for other in places
    )


def _one_closing(places: Sequence[Place], press: Press) -> bool:
    """Whether one closing of the plate covers all of these: same side, one layer, together within the plate."""
    first = places[0]
    if any((it.side, level(it)) != (first.side, level(first)) for it in places):
        return False
    box = around(places)
    width, height = box.right - box.left, box.top - box.bottom
    return (width <= press.width and height <= press.depth) or (width <= press.depth and height <= press.width)
