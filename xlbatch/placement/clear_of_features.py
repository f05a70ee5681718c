"""Moves decals below what hangs from a collar, and says where one still lies on something to keep clear."""

from dataclasses import replace

from xlbatch.job.job import Job
from xlbatch.placement.keep_clear import COLLAR, met, on_collar
from xlbatch.placement.place import Place
from xlbatch.problems import Problem, problem
from xlbatch.trade.tables import practice
from xlbatch.units import printed_text

NEAR = 0.01  # mm


def below_features(job: Job, stack: tuple[Place, ...]) -> tuple[tuple[Place, ...], tuple[Problem, ...]]:
    """One position's places, moved below a hood or a placket that they would lie on; and what was moved."""
    gap = practice("how far a decal stays from a feature it is moved below")
    on = [(place, met_feature) for place in stack for met_feature in met(place) if met_feature.can_move]
    if not on or any(place.below_collar is None for place in stack):
        return stack, ()
    down = max(place.extent.top for place in stack) - min(met_feature.box.bottom for _, met_feature in on) + gap
    moved = tuple(_down(place, down) for place in stack)
    place, feature = on[0]
    top = min(place_.below_collar or 0.0 for place_ in moved)
    told = problem(
        "position-moved",
        place.decal.spec.source.at("Position"),
        place.decal.spec.position,
        rows=(place.garment.row.source.row,),
        decal=place.decal.spec.decal,
        feature=feature.name,
        garment=place.garment.blank.garment,
        size=place.garment.blank.size,
        measure=printed_text(top, job.settings.length_unit),
        seam=place.measured_from,
    )
    return moved, (told,)


def _down(place: Place, mm: float) -> Place:
    return replace(
        place,
        below_collar=round((place.below_collar or 0.0) + mm, 3),
        clear_hem=None if place.clear_hem is None else round(place.clear_hem - mm, 3),
    )


def on_feature(job: Job, place: Place) -> Problem | None:
    """A problem where a decal lies on a feature of its garment, or on the collar."""
    unit, blank, decal = job.settings.length_unit, place.garment.blank, place.decal
    feature = next(iter(met(place)), None)
    if feature is None and not on_collar(place):
        return None
    return problem(
        "decal-on-feature",
        place.garment.row.source.at("Size") if decal.spec.source.built_in else decal.spec.source.at("Position"),
        decal.spec.position,
        rows=(place.garment.row.source.row,),
        decal=decal.spec.decal,
        width=printed_text(decal.width, unit),
        height=printed_text(decal.height, unit),
        garment=blank.garment,
        size=blank.size,
        feature=feature.name if feature else COLLAR,
        by=printed_text(max(feature.by, NEAR), unit, up=True) if feature else "its inner edge",
    )
