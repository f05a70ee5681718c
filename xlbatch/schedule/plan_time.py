"""Runs, batches and press steps → a time plan: cut everything, then weed everything, then press everything."""

import heapq
from collections import defaultdict
from collections.abc import Iterable
from itertools import pairwise

from xlbatch.art.decal import Decal
from xlbatch.film.layout import Layout, Run
from xlbatch.job.job import Settings
from xlbatch.press.step import PressPlan, Step
from xlbatch.schedule.hours import Stage, TimePlan, Work
from xlbatch.trade.tables import work_time

Task = tuple[str, int | None, float]  # label, batch, seconds


def plan_time(settings: Settings, layout: Layout, pressing: PressPlan) -> TimePlan:
    """When each run is cut and each batch weeded and pressed. A stage starts when the one before is finished."""
    stages: tuple[tuple[Stage, int, list[Task]], ...] = (
        ("cut", settings.people_cutting, [(f"Run {run.no}", None, cutting_seconds(run)) for run in layout.runs]),
        ("weed", settings.people_weeding, _weeding(layout)),
        ("press", settings.people_pressing, _pressing(pressing)),
    )
    work: list[Work] = []
    seconds: dict[Stage, float] = {}
    now = 0.0
    for stage, people, tasks in stages:
        seconds[stage] = round(sum(task[2] for task in tasks), 3)
        for (label, batch, takes), start in zip(tasks, _starts(tasks, people, now), strict=True):
            work.append(_work(settings, stage, label, batch, takes, people, start))
        now = max([now, *(start + task[2] for task, start in zip(tasks, _starts(tasks, people, now), strict=True))])
    return TimePlan(tuple(work), seconds)


def cutting_seconds(run: Run) -> float:
    """Time at the cutter (s): along the outlines, and a little for each contour."""
    outlines = [_outline(lying.decal) for lying in run.lying]
    along = sum(length for length, _ in outlines) / work_time("cut", "along the outline")
    return along + work_time("cut", "each contour") * sum(contours for _, contours in outlines)


def weeding_seconds(decals: Iterable[Decal]) -> float:
    """Time to weed decals (s)."""
    contours = [_outline(decal)[1] for decal in decals]
    return len(contours) * work_time("weed", "each decal") + sum(contours) * work_time("weed", "each contour")


def pressing_seconds(steps: Iterable[Step]) -> float:
    """Time to press a batch (s), with the waits for the plate's heat.

    Garments cool while the next is pressed, so only the last one is waited for."""
    steps = tuple(steps)
    closings = [step for step in steps if step.with_step is None]
    garments = {step.place.garment.no for step in steps}
    loads = 1 + sum(a.place.garment.no != b.place.garment.no for a, b in pairwise(closings))
    plate = sum(step.wait + (step.warm_up + step.front + step.back) * step.place.presses for step in closings)
    hand = (
        loads * work_time("press", "load the garment")
        + len(steps) * (work_time("press", "place the decal") + work_time("press", "peel"))
        + len(garments) * work_time("press", "fold")
    )
    return plate + hand + work_time("press", "cool")


def _outline(decal: Decal) -> tuple[float, int]:
    """Length to cut (mm) and contours; of a decal known only by its size, its box."""
    if decal.outline is None:
        return 2 * (decal.width + decal.height), 1
    return decal.outline.cut_length, decal.outline.contours


def _weeding(layout: Layout) -> list[Task]:
    decals: dict[int, list[Decal]] = defaultdict(list)
    for run in layout.runs:
        for strip in run.strips:
            decals[strip.batch] += (lying.decal for lying in strip.lying)
    return [(f"Batch {batch.no}", batch.no, weeding_seconds(decals[batch.no])) for batch in layout.batches]


def _pressing(pressing: PressPlan) -> list[Task]:
    steps: dict[int, list[Step]] = defaultdict(list)
    for step in pressing.steps:
        steps[step.batch].append(step)
    return [(f"Batch {no}", no, pressing_seconds(them)) for no, them in steps.items()]


def _starts(tasks: list[Task], people: int, now: float) -> list[float]:
    """When each task starts (s): in order, each taken by whoever is free first."""
    free = [now] * people
    starts = []
    for task in tasks:
        start = heapq.heappop(free)
        starts.append(start)
        heapq.heappush(free, start + task[2])
    return starts


def _work(
    settings: Settings, stage: Stage, label: str, batch: int | None, seconds: float, people: int, start: float
) -> Work:
    day, starts = _clock(settings, start, opens=True)
    ends_day, ends = _clock(settings, start + seconds, opens=False)
    return Work(stage, label, batch, round(seconds, 3), people, day, starts, ends_day, ends)


def _clock(settings: Settings, at: float, *, opens: bool) -> tuple[int, int]:
    """Day and minute of the day of a moment of work time (s). Work that ends with the day ends on that day."""
    whole_day = settings.hours_a_day * 60
    minutes = round(at / 60, 6)
    days = int(minutes // whole_day)
    rest = minutes - days * whole_day
    if not opens and days and rest == 0:
        days, rest = days - 1, whole_day
    return days + 1, settings.start + round(rest)
