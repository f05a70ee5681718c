"""Layers of one drawing: all but the lowest are laid on the lowest, edge to edge, not measured from the garment."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import replace

from xlbatch.job.job import Job
from xlbatch.placement.group import groups
from xlbatch.placement.place import Place, Register


def level(place: Place) -> tuple[int, bool]:
    """Its layer, and within that whether it lies over a border piece's level."""
    return place.decal.spec.layer, not place.decal.border


def registered(job: Job, places: Iterable[Place]) -> tuple[Place, ...]:
    """The places, those of higher layers measured from the lowest of their drawing, as it is pressed first."""
    places = tuple(places)
    by_garment: dict[int, list[Place]] = defaultdict(list)
    for place in places:
        by_garment[place.garment.no].append(place)
    registers: dict[str, Register] = {}
    for of_one in by_garment.values():
        of_decal = {place.decal.id: place for place in of_one}
        for side in {place.side: None for place in of_one}:
            for group in groups(place.decal for place in of_one if place.side == side):
                drawing = [of_decal[decal.id] for decal in group.decals]
                lowest = min(drawing, key=lambda it: (level(it), -job.film_of[it.decal.film.casefold()].temperature))
                registers |= {it.decal.id: _register(it, lowest) for it in drawing if it is not lowest}
    return tuple(replace(place, register=registers.get(place.decal.id)) for place in places)


def _register(place: Place, lowest: Place) -> Register:
    extent, base = place.extent, lowest.extent
    return Register(lowest.decal.id, round(base.top - extent.top, 3) + 0.0, round(extent.left - base.left, 3) + 0.0)


def drawings(places: Iterable[Place]) -> tuple[tuple[tuple[Place, ...], ...], ...]:
    """The drawings of several layers, the lowest first: by their sizes and how their layers lie (to a mm), all that are
    alike together."""
    of_lowest: dict[str, list[Place]] = defaultdict(list)
    by_id = {}
    for place in places:
        by_id[place.decal.id] = place
        if place.register:
            of_lowest[place.register.on].append(place)
    alike: dict[object, list[tuple[Place, ...]]] = defaultdict(list)
    for lowest, layers in of_lowest.items():
        drawing = (by_id[lowest], *sorted(layers, key=level))
        alike[tuple(map(_lies, drawing))].append(drawing)
    return tuple(tuple(them) for them in alike.values())


def _lies(place: Place) -> object:
    """A layer's name, size and place on the lowest (mm)."""
    off = place.register[1:] if place.register else ()
    return place.decal.piece, *(round(mm) for mm in (place.decal.width, place.decal.height, *off))
