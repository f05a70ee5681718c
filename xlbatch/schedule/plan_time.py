"""Runs, batches and press steps → a time plan: cut everything, then weed everything, then press everything."""

import heapq
from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import NamedTuple

from xlbatch.art.decal import Decal
from xlbatch.film.layout import Layout, Run
from xlbatch.job.job import Job
from xlbatch.job.work_time import WorkTimes
from xlbatch.press.step import PressPlan, PressStep
from xlbatch.schedule.at_press import at_press
from xlbatch.schedule.clock import Clock, clock_of
from xlbatch.schedule.hours import Parts, Stage, TimedWork, TimePlan
from xlbatch.units import temperature_text


class Task(NamedTuple):
    """Work for one person; `lane`: whose it is (None: who is free first takes it)."""

    label: str
    batch: int | None
    parts: Parts
    lane: int | None = None

    @property
    def seconds(self) -> float:
        return sum(self.parts.values())


def plan_time(job: Job, layout: Layout, pressing: PressPlan) -> TimePlan:
    """When each run is cut and each batch weeded and pressed. A stage starts when the one before is finished."""
    settings = job.settings
    stages: tuple[tuple[Stage, int, list[Task]], ...] = (
        ("cut", settings.people_cutting, list(_cutting(layout, job.work_times))),
        ("weed", settings.people_weeding, list(_weeding(layout, job.work_times))),
        ("press", settings.people_pressing, list(_pressing(job, pressing))),
    )
    clock = clock_of(job)
    work: list[TimedWork] = []
    now = 0.0
    for stage, people, tasks in stages:
        work += (_work(clock, stage, people, turn) for turn in _turns(tasks, people, now))
        now = max([now, *(turn.finishes for turn in work)])
    seconds = {stage: round(sum(task.seconds for task in tasks), 3) for stage, _, tasks in stages}
    return TimePlan(tuple(work), seconds, round(clock.breaks(now), 3))


def _cutting(layout: Layout, times: WorkTimes) -> Iterator[Task]:
    film = ""
    for run in layout.runs:
        change = {"change to another film": times.of("cut", "change to another film")} if film else {}
        yield Task(f"Run {run.no}", None, {**(change if run.film.name != film else {}), **cutting_parts(run, times)})
        film = run.film.name


def cutting_parts(run: Run, times: WorkTimes) -> Parts:
    """Time for a run (s): loading, a test cut, then along the outlines, and a little for each contour."""
    outlines = [_outline(lying.decal) for lying in run.lying]
    return {
        "load the film": times.of("cut", "load the film"),
        "test cut and weed it": times.of("cut", "test cut and weed it"),
        "along the outline": sum(length for length, _ in outlines) / times.of("cut", "along the outline"),
        "each contour": times.of("cut", "each contour") * sum(contours for _, contours in outlines),
    }


def weeding_parts(decals: Iterable[Decal], strips: int, times: WorkTimes) -> Parts:
    """Time to part strips and weed their decals (s)."""
    contours = [_outline(decal)[1] for decal in decals]
    return {
        "part a strip": strips * times.of("weed", "part a strip"),
        "each decal": len(contours) * times.of("weed", "each decal"),
        "each contour": sum(contours) * times.of("weed", "each contour"),
    }


def _outline(decal: Decal) -> tuple[float, int]:
    """Length to cut (mm) and contours; of a decal known only by its size, its box."""
    if decal.outline is None:
        return 2 * (decal.width + decal.height), 1
    return decal.outline.cut_length, decal.outline.contours


def _weeding(layout: Layout, times: WorkTimes) -> Iterator[Task]:
    decals: dict[int, list[Decal]] = defaultdict(list)
    strips: dict[int, int] = defaultdict(int)
    for run in layout.runs:
        for strip in run.strips:
            decals[strip.batch] += (lying.decal for lying in strip.lying)
            strips[strip.batch] += 1
    for batch in layout.batches:
        yield Task(f"Batch {batch.no}", batch.no, weeding_parts(decals[batch.no], strips[batch.no], times))


def _pressing(job: Job, pressing: PressPlan) -> Iterator[Task]:
    lanes: dict[int, list[PressStep]] = defaultdict(list)
    for step in pressing.steps:
        lanes[step.lane].append(step)
    for lane, steps in lanes.items():
        for block, acts in at_press(steps, job.work_times):
            parts: dict[str, float] = defaultdict(float)
            for act in acts:
                parts[act.work] += act.ends - act.begins
            heat = temperature_text(block[0].temperature, job.settings.temperature_unit)
            yield Task(f"Batch {block[0].batch} at {heat}", block[0].batch, dict(parts), lane)


@dataclass(frozen=True)
class _Turn:
    """A task, who does it, and when it begins (s of work)."""

    task: Task
    person: int
    begins: float


def _turns(tasks: Iterable[Task], people: int, now: float) -> Iterator[_Turn]:
    """In order, each taken by whoever is free first, or by whose it is."""
    free = [(now, person) for person in range(1, people + 1)]
    lanes = {person: now for _, person in free}
    for task in tasks:
        if task.lane is None:
            begins, person = heapq.heappop(free)
            heapq.heappush(free, (begins + task.seconds, person))
        else:
            begins, person = lanes[task.lane], task.lane
            lanes[person] = begins + task.seconds
        yield _Turn(task, person, begins)


def _work(clock: Clock, stage: Stage, people: int, turn: _Turn) -> TimedWork:
    task, finishes = turn.task, turn.begins + turn.task.seconds
    day, starts = clock.moment(turn.begins, opens=True)
    ends_day, ends = clock.moment(finishes, opens=False)
    return TimedWork(
        stage=stage,
        label=task.label,
        batch=task.batch,
        seconds=round(task.seconds, 3),
        parts={name: round(seconds, 3) for name, seconds in task.parts.items()},
        people=people,
        person=turn.person,
        begins=round(turn.begins, 3),
        finishes=round(finishes, 3),
        day=day,
        starts=starts,
        ends_day=ends_day,
        ends=ends,
    )
