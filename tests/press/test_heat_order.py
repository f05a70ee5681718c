"""10,000 random garments: no step hotter than the garment bears, none later hotter than an earlier film bears."""

import random
from collections.abc import Callable
from dataclasses import replace

from xlbatch.art.decal import Decal
from xlbatch.check.garment import Garment
from xlbatch.check.heat import heat_limit, heat_problems
from xlbatch.film.layout import Batch
from xlbatch.job.job import Job
from xlbatch.placement.place import Place
from xlbatch.placement.sections import Section
from xlbatch.press.order import press_order
from xlbatch.roster.read import Reading

GARMENTS = 10_000
FABRICS = ("cotton", "cotton/polyester", "polyester", "nylon", "")
NEAR = 0.001  # °C


def garment_of(job: Job, number: int, draw: random.Random) -> Garment:
    """A garment of random fabric and label with up to four decals in random films and layers."""
    row = replace(job.roster[0], no=number, source=replace(job.roster[0].source, row=number))
    blank = replace(job.blanks[0], fabric=draw.choice(FABRICS), dots=draw.choice((None, 1, 2, 3)))
    specs = tuple(
        replace(job.designs[0], decal=f"Piece {at}", film=draw.choice(job.films).name, layer=draw.choice((1, 1, 2, 3)))
        for at in range(draw.randint(1, 4))
    )
    return Garment(row, blank, "white", "Ana", specs, specs, needs_blank=True)


def places_of(garment: Garment) -> list[Place]:
    decals = [
        Decal(f"D{garment.no}-{at}", garment.no, spec, "", spec.film, "", 100, 50, None)
        for at, spec in enumerate(garment.to_do)
    ]
    return [
        Place(
            garment,
            decal,
            "front",
            "front collar seam",
            100.0 * at,
            None,
            None,
            0.0,
            100,
            600 - 100.0 * at,
            (Section(0, 0),),
        )
        for at, decal in enumerate(decals)
    ]


def test_no_step_is_too_hot_for_the_garment_or_for_what_is_on_it(reading_of: Callable[..., Reading]) -> None:
    job = reading_of([["Who", "Size"], ["Ana", "M"]]).job
    draw = random.Random(3)
    garments = [garment_of(job, number, draw) for number in range(1, GARMENTS + 1)]
    stopped = {row for found in heat_problems(job, tuple(garments)) if found.level == "stop" for row in found.rows}
    good = [garment for garment in garments if garment.row.source.row not in stopped]
    assert GARMENTS / 10 < len(good) < GARMENTS
    batches = tuple(
        Batch(at // 3 + 1, tuple(garment.no for garment in good[at : at + 3])) for at in range(0, len(good), 3)
    )
    places = tuple(place for garment in good for place in places_of(garment))
    steps = press_order(job, batches, places).steps
    assert len(steps) == len(places)
    coolest: dict[int, float] = {}
    for step in steps:
        garment = step.place.garment
        limit = heat_limit(garment.blank)
        assert limit is None or not limit.stops or step.temperature <= limit.celsius + NEAR
        assert step.temperature <= coolest.get(garment.no, 1000.0) + NEAR
        coolest[garment.no] = min(step.temperature, coolest.get(garment.no, 1000.0))
