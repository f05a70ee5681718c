"""Judges a time plan by itself: no one in two places, nothing before what it needs, nothing left out."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from itertools import groupby, pairwise

from xlbatch.film.layout import Layout
from xlbatch.job.work_time import WorkTimes
from xlbatch.press.step import PressPlan, Step
from xlbatch.schedule.at_press import PRESSING, Act, at_press, cooling
from xlbatch.schedule.hours import TimePlan, Work

NEAR = 0.01  # s
ORDER = ("cut", "weed", "press")


def time_faults(plan: TimePlan, layout: Layout, pressing: PressPlan, times: WorkTimes) -> tuple[str, ...]:
    """What is wrong with a time plan, in words; nothing where all is well."""
    lanes: dict[int, list[Step]] = defaultdict(list)
    for step in pressing.steps:
        lanes[step.lane].append(step)
    acts = {lane: [act for _, acts in at_press(steps, times) for act in acts] for lane, steps in lanes.items()}
    return (
        *_people(plan.work),
        *_stages(plan.work),
        *_all_there(plan.work, layout, pressing),
        *(fault for lane, steps in lanes.items() for fault in _hands(acts[lane], steps, times)),
        *_heats(pressing.steps),
    )


def _people(work: Sequence[Work]) -> Iterator[str]:
    """Each person does one thing at a time, and each stage has no more people than there are."""
    turns: dict[tuple[str, int], list[Work]] = defaultdict(list)
    for each in work:
        turns[each.stage, each.person].append(each)
        if not 1 <= each.person <= each.people:
            yield f"{each.label}: there is no person {each.person}"
        if abs(each.finishes - each.begins - sum(each.parts.values())) > NEAR * (len(each.parts) + 1):
            yield f"{each.label}: takes another time than its parts"
    for (stage, person), them in turns.items():
        for one, other in pairwise(sorted(them, key=lambda each: each.begins)):
            if other.begins < one.finishes - NEAR:
                yield f"person {person} does {one.label} and {other.label} ({stage}) at one time"


def _stages(work: Sequence[Work]) -> Iterator[str]:
    for before, after in pairwise(ORDER):
        ends = max((each.finishes for each in work if each.stage == before), default=0.0)
        starts = min((each.begins for each in work if each.stage == after), default=ends)
        if starts < ends - NEAR:
            yield f"{after} begins before all is done that is to {before}"


def _all_there(work: Sequence[Work], layout: Layout, pressing: PressPlan) -> Iterator[str]:
    """Every run, batch and block of the press has its turn once."""
    wanted = {
        "cut": [f"Run {run.no}" for run in layout.runs],
        "weed": [f"Batch {batch.no}" for batch in layout.batches],
    }
    for stage, labels in wanted.items():
        if sorted(each.label for each in work if each.stage == stage) != sorted(labels):
            yield f"not all that is to {stage} has one turn"
    blocks = [key for key, _ in groupby(pressing.steps, key=lambda step: (step.lane, step.batch, step.temperature))]
    if len(blocks) != sum(each.stage == "press" for each in work):
        yield "not every block of the press has one turn"


def _hands(acts: Sequence[Act], steps: Sequence[Step], times: WorkTimes) -> Iterator[str]:
    """One act at a time; each piece pressed once and peeled no sooner than it has cooled."""
    for one, other in pairwise(acts):
        if other.begins < one.ends - NEAR:
            yield f"{one.work} and {other.work} at one time"
    closings = [step for step in steps if step.with_step is None]
    pressed = [act for act in acts if act.work == PRESSING]
    if len(pressed) != len(closings):
        yield "not every closing of the plate has its time"
    peels: dict[int, list[Act]] = defaultdict(list)
    for act in acts:
        if act.work == "peel":
            peels[act.garment].append(act)
    for step, act in zip(closings, pressed, strict=False):
        later = [peel for peel in peels[act.garment] if peel.begins >= act.ends - NEAR]
        if times.of("press", "peel") and not later:
            yield f"step {step.no} is never peeled"
        elif later and later[0].begins < act.ends + cooling(step, times) - NEAR:
            yield f"step {step.no} is peeled before it has cooled"


def _heats(steps: Sequence[Step]) -> Iterator[str]:
    """Each garment's films from the hottest down, and only a bare one warmed up."""
    for _, them in groupby(
        sorted(steps, key=lambda step: (step.place.garment.no, step.no)), lambda s: s.place.garment.no
    ):
        for one, other in pairwise(them):
            if other.temperature > one.temperature + NEAR:
                yield f"step {other.no} is hotter than step {one.no} on its garment"
            if other.warm_up and other.with_step is None:
                yield f"step {other.no} warms up a garment with a piece on it"
