"""Judges a time plan by itself: no one in two places, nothing before what it needs, nothing left out."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from itertools import groupby, pairwise

from xlbatch.film.layout import Layout
from xlbatch.job.work_time import WorkTimes
from xlbatch.press.step import PressPlan, PressStep
from xlbatch.schedule.at_press import PRESSING, Act, at_press, cooling
from xlbatch.schedule.hours import TimedWork, TimePlan

NEAR = 0.01  # s
ORDER = ("cut", "weed", "press")


def time_faults(plan: TimePlan, layout: Layout, pressing: PressPlan, times: WorkTimes) -> tuple[str, ...]:
    """What is wrong with a time plan, in words; nothing where all is well."""
    lanes: dict[int, list[PressStep]] = defaultdict(list)
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


def _people(work: Sequence[TimedWork]) -> Iterator[str]:
    """Each person does one thing at a time, and each stage has no more people than there are."""
    turns: dict[tuple[str, int], list[TimedWork]] = defaultdict(list)
    for turn in work:
        turns[turn.stage, turn.person].append(turn)
        if not 1 <= turn.person <= turn.people:
            yield f"{turn.label}: there is no person {turn.person}"
        if abs(turn.finishes - turn.begins - sum(turn.parts.values())) > NEAR * (len(turn.parts) + 1):
            yield f"{turn.label}: takes another time than its parts"
    for (stage, person), them in turns.items():
        for earlier, later in pairwise(sorted(them, key=lambda turn: turn.begins)):
            if later.begins < earlier.finishes - NEAR:
                yield f"person {person} does {earlier.label} and {later.label} ({stage}) at one time"


def _stages(work: Sequence[TimedWork]) -> Iterator[str]:
    for before, after in pairwise(ORDER):
        ends = max((turn.finishes for turn in work if turn.stage == before), default=0.0)
        starts = min((turn.begins for turn in work if turn.stage == after), default=ends)
        if starts < ends - NEAR:
            yield f"{after} begins before all is done that is to {before}"


def _all_there(work: Sequence[TimedWork], layout: Layout, pressing: PressPlan) -> Iterator[str]:
    """Every run, batch and block of the press has its turn once."""
    wanted = {
        "cut": [f"Run {run.no}" for run in layout.runs],
        "weed": [f"Batch {batch.no}" for batch in layout.batches],
    }
    for stage, labels in wanted.items():
        if sorted(turn.label for turn in work if turn.stage == stage) != sorted(labels):
            yield f"not all that is to {stage} has one turn"
    blocks = [key for key, _ in groupby(pressing.steps, key=lambda step: (step.lane, step.batch, step.temperature))]
    if len(blocks) != sum(turn.stage == "press" for turn in work):
        yield "not every block of the press has one turn"


def _hands(acts: Sequence[Act], steps: Sequence[PressStep], times: WorkTimes) -> Iterator[str]:
    """One act at a time; each piece pressed once and peeled no sooner than it has cooled."""
    for act, next_act in pairwise(acts):
        if next_act.begins < act.ends - NEAR:
            yield f"{act.work} and {next_act.work} at one time"
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


def _heats(steps: Sequence[PressStep]) -> Iterator[str]:
    """Each garment's films from the hottest down, and only a bare one warmed up."""
    for _, them in groupby(
        sorted(steps, key=lambda step: (step.place.garment.no, step.no)), lambda s: s.place.garment.no
    ):
        for earlier, later in pairwise(them):
            if later.temperature > earlier.temperature + NEAR:
                yield f"step {later.no} is hotter than step {earlier.no} on its garment"
            if later.warm_up and later.with_step is None:
                yield f"step {later.no} warms up a garment with a piece on it"
