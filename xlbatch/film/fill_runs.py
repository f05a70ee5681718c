"""Fills strips into runs, each cut in one go: best fit, the longest strip first."""

from collections.abc import Sequence
from dataclasses import replace

from xlbatch.film.box import ROUNDING, longest_run, um
from xlbatch.film.layout import Run, Strip
from xlbatch.job.job import Film, Settings

TEST_CUT = 10.0  # mm, the side of the square, no more than half the margin (common practice, no source)


def fill_runs(film: Film, strips: Sequence[Strip], settings: Settings, first_no: int) -> tuple[Run, ...]:
    """The runs of one film, numbered from `first_no`, ordered by their first batch as their strips are by batch."""
    gap = um(settings.gap)
    room = um(longest_run(film, settings)) - 2 * um(settings.end_margin) + gap + ROUNDING
    bins: list[list[Strip]] = []
    free: list[int] = []
    for strip in sorted(strips, key=lambda strip: (-strip.length, strip.batch)):
        needed = um(strip.length) + gap
        fits = [at for at in range(len(bins)) if free[at] >= needed]
        if not fits:
            bins.append([])
            free.append(room)
        at = min(fits, key=lambda at: (free[at], at)) if fits else len(bins) - 1
        bins[at].append(strip)
        free[at] -= needed
    bins = sorted((sorted(one, key=_batch) for one in bins), key=lambda one: one[0].batch)
    return tuple(_run(film, one, settings, first_no + at) for at, one in enumerate(bins))


def _batch(strip: Strip) -> int:
    return strip.batch


def _run(film: Film, strips: Sequence[Strip], settings: Settings, no: int) -> Run:
    """The strips one after another, a gap between them and a margin at both ends."""
    start = settings.end_margin
    placed: list[Strip] = []
    for strip in strips:
        lying = tuple(replace(each, along=round(start + each.along, 3)) for each in strip.lying)
        placed.append(replace(strip, start=round(start, 3), lying=lying))
        start += strip.length + settings.gap
    length = round(start - settings.gap + settings.end_margin, 3)
    test_cut = min(TEST_CUT, settings.end_margin / 2) if settings.test_cut else 0.0
    return Run(no, film, length, tuple(placed), settings.mirror, "roll", settings.cut_file_kind, test_cut)
