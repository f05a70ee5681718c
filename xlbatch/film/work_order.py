"""Numbers batches in the order of work, and orders runs and their strips by them.

Batch 1 lies in the first run of every film, so that it can be cut, weeded and pressed through before the rest is cut;
then come the batches of the same run, like shirts next to one another, then those of the next run.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from xlbatch.art.decal import Decal
from xlbatch.check.garment import Garment
from xlbatch.film.layout import Batch, Run, Strip
from xlbatch.film.run_of_strips import run_of
from xlbatch.job.job import Job, Settings

CLASSES = ("adult", "ladies", "youth", "toddler", "infant")


def likeness(job: Job, garments: Iterable[Garment], decals: Iterable[Decal]) -> Mapping[int, int]:
    """Each garment's place, by its number, in an order that has like shirts next to one another: the same heats, then
    the same measures (class, neckline, garment), then near sizes, then as on the roster."""
    heat = {film.name: film.temperature for film in job.films}
    heats: dict[int, set[float]] = {}
    for decal in decals:
        heats.setdefault(decal.garment_no, set()).add(heat[decal.film])

    def alike(garment: Garment) -> tuple[object, ...]:
        blank = garment.blank
        hot = sorted(heats.get(garment.no, ()), reverse=True)
        return hot, CLASSES.index(blank.for_), blank.neckline, blank.garment, blank.chest

    return {garment.no: place for place, garment in enumerate(sorted(garments, key=alike))}


def in_work_order(
    batches: Sequence[Batch], runs: Sequence[Run], places: Mapping[int, int], settings: Settings
) -> tuple[tuple[Batch, ...], tuple[Run, ...]]:
    """The batches in the order of work, and each film's runs in that order; both numbered from 1."""
    films: dict[str, list[Run]] = {}
    for run in runs:
        films.setdefault(run.film.name, []).append(run)
    place = {batch.no: min(places[no] for no in batch.garments) for batch in batches}
    number = {old: new for new, old in enumerate(_order(list(films.values()), place), 1)}
    ordered = [
        _ordered(run, number, settings)
        for of_film in films.values()
        for run in sorted(of_film, key=lambda run_: min(number[strip.batch] for strip in run_.strips))
    ]
    renamed = sorted((replace(batch, no=number[batch.no]) for batch in batches), key=lambda batch: batch.no)
    return tuple(renamed), tuple(replace(run, no=no) for no, run in enumerate(ordered, 1))


def _order(films: Sequence[Sequence[Run]], place: Mapping[int, int]) -> Sequence[int]:
    """The batches in the order of work: first one that has all films or most of them, then by runs of the film that has
    most of them."""
    held = [[sorted((strip.batch for strip in run.strips), key=place.__getitem__) for run in runs] for runs in films]
    held.sort(key=lambda runs: -len(runs))
    order: dict[int, None] = {}
    first = min(place, key=lambda batch: (-sum(batch in run for runs in held for run in runs), place[batch]), default=0)
    for runs in held:
        for run in sorted(runs, key=lambda run: (first not in run, place[run[0]])):
            order.update(dict.fromkeys(run))
    return sorted(order, key=lambda batch: batch != first)


def _ordered(run: Run, number: Mapping[int, int], settings: Settings) -> Run:
    """The run with its strips numbered anew and in that order."""
    strips = sorted((replace(_lifted(strip), batch=number[strip.batch]) for strip in run.strips), key=lambda s: s.batch)
    return replace(run_of(run.film, strips, settings, run.no), cut_from=run.cut_from)


def _lifted(strip: Strip) -> Strip:
    """The strip by itself, out of its run."""
    lying = tuple(replace(decal, along=round(decal.along - strip.start, 3)) for decal in strip.lying)
    return replace(strip, start=0.0, lying=lying)
