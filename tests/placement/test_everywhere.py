"""Every garment, size and position: inside its clearances or a problem, and no decal on another; shapely judges."""

import random
from collections.abc import Callable
from dataclasses import replace
from itertools import combinations

from shapely import box
from shapely.geometry import Polygon

from xlbatch.art.decal import Decal
from xlbatch.check.garment import Garment
from xlbatch.job.job import DecalSpec, Job
from xlbatch.job.position import SLEEVES
from xlbatch.placement.place import Place
from xlbatch.placement.put import place
from xlbatch.roster.read import Reading

NEAR = 0.02  # mm


def garments_of(job: Job, draw: random.Random) -> list[tuple[Garment, tuple[Decal, ...]]]:
    """Each blank with each position, and two more positions at random, with decals of random sizes."""
    found: list[tuple[Garment, tuple[Decal, ...]]] = []
    row = job.roster[0]
    for blank in job.blanks:
        for first in job.position_names:
            wanted = (first, *draw.sample(job.position_names, 2))
            specs = tuple(replace(job.designs[0], decal=f"Piece {at}", position=it) for at, it in enumerate(wanted))
            garment = Garment(replace(row, no=len(found) + 1), blank, "white", "Ana", specs, specs, needs_blank=True)
            found.append((garment, tuple(decal_of(garment, spec, draw) for spec in specs)))
    return found


def decal_of(garment: Garment, spec: DecalSpec, draw: random.Random) -> Decal:
    width, height = draw.uniform(20, 330), draw.uniform(20, 300)
    return Decal(spec.decal, garment.no, spec, "", "Black smooth", "", width, height, None)


def outline(place: Place) -> Polygon:
    """The decal's box: across from the center line, up from the hem or the sleeve's opening."""
    low = place.above_opening if place.side in SLEEVES else place.clear_hem
    assert low is not None
    half = place.decal.width / 2
    return box(place.from_center - half, low, place.from_center + half, low + place.decal.height)


def free_of(place: Place, job: Job) -> Polygon:
    """Where a decal may lie on that side of that garment."""
    blank = place.garment.blank
    if place.side in SLEEVES:
        assert blank.sleeve_opening is not None
        assert blank.sleeve_length is not None
        half = blank.sleeve_opening / 2 - job.settings.clear_of_sleeve_edge
        return box(-half, 0, half, blank.sleeve_length - job.settings.clear_of_sleeve_edge)
    half = blank.chest / 2 - job.settings.clear_of_side
    return box(-half, job.settings.clear_of_hem, half, blank.length)


def test_every_decal_is_inside_its_garment_and_on_no_other(reading_of: Callable[..., Reading]) -> None:
    job = reading_of([["Who", "Size"], ["Ana", "M"]]).job
    placed = 0
    for garment, decals in garments_of(job, random.Random(5)):
        places, problems = place(job, (garment,), decals)
        assert bool(places) != bool(problems)
        placed += len(places)
        for each in places:
            assert free_of(each, job).buffer(NEAR).contains(outline(each)), each
        for one, other in combinations(places, 2):
            if one.side == other.side:
                assert outline(one).intersection(outline(other)).area < 1, (one, other)
    assert placed > 500
