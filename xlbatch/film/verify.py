"""Judges a layout. It shares no code with what laid it out, only the records; shapes are shapely's (shape.py)."""

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import pairwise

from xlbatch.art.decal import Decal
from xlbatch.film.layout import Layout, Lying, Run, Strip
from xlbatch.job.job import Settings
from xlbatch.trade.tables import practice

SLACK = 0.002  # mm: lengths are written to 0.001
USUAL = round(practice("shirts that share a strip, where their number is not fixed"))
MOST = round(practice("most shirts that share a strip while it stays handy"))
STRAY = 0.01  # mm: how far the distance of two shapes may be off


def faults(layout: Layout, decals: Sequence[Decal], settings: Settings) -> tuple[str, ...]:
    """Everything wrong with a layout of these decals, in words; nothing where it can be cut as it is."""
    return (
        *_decals_wrong(layout, decals),
        *_batches_wrong(layout, decals, settings),
        *(fault for run in layout.runs for rule in RULES for fault in rule(run, settings)),
    )


def _decals_wrong(layout: Layout, decals: Sequence[Decal]) -> Iterator[str]:
    """Each decal lies on exactly one run, of its own film, unchanged."""
    wanted = {decal.id: decal for decal in decals}
    times = Counter(lying.decal.id for run in layout.runs for lying in run.lying)
    yield from (f"{id_} lies on {times[id_]} runs" for id_ in wanted if times[id_] != 1)
    yield from (f"{id_} is not asked for" for id_ in times if id_ not in wanted)
    for run in layout.runs:
        for lying in run.lying:
            if lying.decal.film != run.film.name:
                yield f"{lying.decal.id} lies on {run.film.name}"
            if wanted.get(lying.decal.id, lying.decal) != lying.decal:
                yield f"{lying.decal.id} was changed"
    if [run.no for run in layout.runs] != list(range(1, len(layout.runs) + 1)):
        yield "the runs are not numbered 1, 2, 3 …"


def _batches_wrong(layout: Layout, decals: Sequence[Decal], settings: Settings) -> Iterator[str]:
    """Each garment is in one batch, no batch is too large, and a batch's decals of a film lie in one strip."""
    if [batch.no for batch in layout.batches] != list(range(1, len(layout.batches) + 1)):
        yield "the batches are not numbered 1, 2, 3 …"
    of_garment = {no: batch.no for batch in layout.batches for no in batch.garments}
    times = Counter(no for batch in layout.batches for no in batch.garments)
    for no in dict.fromkeys(decal.garment_no for decal in decals):
        if times[no] != 1:
            yield f"garment {no} is in {times[no]} batches"
    for batch in layout.batches:
        if not 1 <= len(batch.garments) <= (settings.shirts_per_strip or MOST):
            yield f"batch {batch.no} has {len(batch.garments)} garments"
    yield from _not_handy(layout, settings)
    strips = Counter((run.film.name, strip.batch) for run in layout.runs for strip in run.strips)
    yield from (f"batch {no} has {count} strips of {film}" for (film, no), count in strips.items() if count != 1)
    for run in layout.runs:
        for strip in run.strips:
            for lying in strip.lying:
                if of_garment.get(lying.decal.garment_no) != strip.batch:
                    yield f"{lying.decal.id} lies in strip {strip.batch}, which is not its batch's"


def _not_handy(layout: Layout, settings: Settings) -> Iterator[str]:
    """Where the number of shirts is not fixed, more than three share only handy strips; one alone may be longer than
    the longest strip."""
    shirts = {batch.no: len(batch.garments) for batch in layout.batches}
    for run in layout.runs:
        for strip in run.strips:
            several = shirts.get(strip.batch, 1)
            if not settings.shirts_per_strip and several > USUAL and strip.length > settings.handy_strip + SLACK:
                yield f"strip {strip.batch} of run {run.no} is not handy"
            if several > 1 and strip.length > settings.longest_strip + SLACK:
                yield f"strip {strip.batch} of run {run.no} is longer than the longest strip"


def _mirrored_wrong(run: Run, settings: Settings) -> Iterator[str]:
    """A run is mirrored once where the job asks for it, and else never."""
    if run.mirrored != settings.mirror:
        yield f"run {run.no} is {'' if run.mirrored else 'not '}mirrored"


def _run_too_long(run: Run, settings: Settings) -> Iterator[str]:
    if run.length > settings.longest_cut + SLACK:
        yield f"run {run.no} is longer than the longest cut"
    if run.film.rolls and run.length > max(roll.length for roll in run.film.rolls) + SLACK:
        yield f"run {run.no} is longer than any roll"


def _strips_wrong(run: Run, settings: Settings) -> Iterator[str]:
    """Strips keep the margins, and a gap between them for a straight cut."""
    if not run.strips or not all(strip.lying for strip in run.strips):
        yield f"run {run.no} has a strip with nothing in it, or none"
        return
    strips = sorted(run.strips, key=lambda strip: strip.start)
    if strips[0].start < settings.end_margin - SLACK or _end(strips[-1]) > run.length - settings.end_margin + SLACK:
        yield f"run {run.no} lacks an end margin"
    for strip, after in pairwise(strips):
        if after.start - _end(strip) < settings.gap - SLACK:
            yield f"no straight cut separates strips {strip.batch} and {after.batch} of run {run.no}"


def _end(strip: Strip) -> float:
    return strip.start + strip.length


def _decals_outside(run: Run, settings: Settings) -> Iterator[str]:
    """Every decal lies in its strip and in the usable width, turned only where that is allowed."""
    for strip in run.strips:
        for lying in strip.lying:
            if lying.across < -SLACK or lying.across + lying.width > run.film.usable_width + SLACK:
                yield f"{lying.decal.id} lies outside the usable width"
            if lying.along < strip.start - SLACK or lying.along + lying.length > _end(strip) + SLACK:
                yield f"{lying.decal.id} lies outside its strip"
            if lying.turned and (run.film.one_direction or not settings.turn):
                yield f"{lying.decal.id} must not be turned"


def _decals_too_close(run: Run, settings: Settings) -> Iterator[str]:
    """No two decals of a run overlap or come nearer than the gap, their boxes or, interlocked, their shapes."""
    open_: list[Lying] = []
    for lying in sorted(run.lying, key=lambda lying: lying.along):
        open_ = [
            still_open
            for still_open in open_
            if still_open.along + still_open.length > lying.along - settings.gap + SLACK
        ]
        for earlier in open_:
            beside = max(earlier.across - lying.across - lying.width, lying.across - earlier.across - earlier.width)
            if beside < settings.gap - SLACK and not (
                settings.interlock and _interlocked(run, earlier, lying, settings)
            ):
                yield f"{earlier.decal.id} and {lying.decal.id} are too close"
        open_.append(lying)


def _interlocked(run: Run, lying: Lying, other: Lying, settings: Settings) -> bool:
    """Whether two decals keep the gap by their shapes."""
    from xlbatch.film.shape import distance

    return distance(lying, other, mirrored=run.mirrored) >= settings.gap - SLACK - STRAY


RULES = (_mirrored_wrong, _run_too_long, _strips_wrong, _decals_outside, _decals_too_close)
