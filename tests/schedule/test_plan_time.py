"""Time: work times are common practice, no source; sums stand beside each check."""

from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise

import pytest

from tests.schedule.verify_time import time_faults
from xlbatch.plan import Plan
from xlbatch.schedule.at_press import cooling
from xlbatch.schedule.clock import Clock
from xlbatch.schedule.plan_time import Task, _cutting, _Turn, _work, cutting_parts, weeding_parts

BOX = [
    ["Design", "Decal", "What", "Film", "Position", "Width", "Height", "Scale with size"],
    ["Box", "Box", "artwork", "Black smooth", "full front", "100 mm", "50 mm", "no"],
]
HEAD = ["Design", "Decal", "What", "Text", "Film", "Layer", "Position", "Height"]
TWO_HEATS = [
    HEAD,
    ["Two", "Front", "text", "GO", "Navy smooth", 1, "full front", "2 in"],
    ["Two", "Back", "text", "GO", "Red stretch", 1, "full back", "2 in"],
]
THREE_HEATS = [*TWO_HEATS, ["Two", "Sleeve", "text", "GO", "Gold glitter", 1, "left sleeve", "1 in"]]


def boxes(count: int) -> list[list[str]]:
    return [["Who", "Size", "Design"], *[[f"Person {at}", "M", "Box"] for at in range(count)]]


def two(count: int) -> list[list[str]]:
    return [["Who", "Size", "Design"], *[[f"Person {at}", "M", "Two"] for at in range(count)]]


def faults(plan: Plan) -> tuple[str, ...]:
    return time_faults(plan.time, plan.layout, plan.pressing, plan.job.work_times)


def test_the_seconds_of_three_boxes(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of(boxes(3), Designs=BOX)
    times = plan.job.work_times
    cut = cutting_parts(plan.layout.runs[0], times)
    # load the film 90, test cut 60; three outlines of 300 mm at 200 mm/s, a contour each
    assert sum(cut.values()) == pytest.approx(90 + 60 + 3 * (300 / 200 + 0.15))
    assert sum(weeding_parts(plan.decals, 1, times).values()) == pytest.approx(20 + 3 * (45 + 3))
    (press,) = (work for work in plan.time.work if work.stage == "press")
    again = 0.05 * 10  # an edge in twenty is pressed 10 s more
    # switched on 600, a trial 60 + 30; each creased 20, loaded 20, placed 25, pressed 5 + 30 + 15, peeled 10, folded
    # 15; the first two cool while others are pressed; peeling and folding them takes longer than the last one cools
    one = 20 + 20 + 25 + 50 + again + 10 + 15
    assert press.seconds == pytest.approx(600 + 90 + 3 * one + max(0, 45 - 2 * (10 + 15)))
    assert faults(plan) == ()


def test_one_shirt_s_cooling_is_waited_for(plan_of: Callable[..., Plan]) -> None:
    (press,) = (work for work in plan_of(boxes(1), Designs=BOX).time.work if work.stage == "press")
    assert press.parts["cooling not hidden"] == pytest.approx(45)


def test_what_is_peeled_hot_need_not_cool(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of(boxes(1), Designs=BOX)
    (step,) = plan.pressing.steps
    peeled = {peel: replace(step, film=replace(step.film, peel=peel)) for peel in ("hot", "warm", "cold")}
    seconds = {peel: cooling(step, plan.job.work_times) for peel, step in peeled.items()}
    assert seconds == {"hot": 0, "warm": 15, "cold": 45}  # trade/work_times.csv


def test_layers_of_a_batch_cool_while_others_are_pressed(plan_of: Callable[..., Plan]) -> None:
    designs = [
        [*HEAD, "Outline film", "Outline width"],
        ["Two", "Front", "text", "GO", "Navy smooth", 1, "full front", "2 in", "White smooth", "1/8 in"],
    ]
    plan = plan_of(two(3), Designs=designs)
    shirts = [step.place.garment.no for step in plan.pressing.steps]
    assert shirts == [1, 2, 3, 1, 2, 3]
    assert [step.tack for step in plan.pressing.steps] == [True] * 3 + [False] * 3
    parts = [work.parts for work in plan.time.work if work.stage == "press"]
    assert "cooling not hidden" not in parts[0] or parts[0]["cooling not hidden"] < 45
    assert faults(plan) == ()


def test_where_heats_part_the_layers_the_lower_gets_its_full_time(plan_of: Callable[..., Plan]) -> None:
    designs = [
        [*HEAD, "Outline film", "Outline width"],
        ["Two", "Front", "text", "GO", "Gold glitter", 1, "full front", "2 in", "White smooth", "1/8 in"],
    ]
    low, high = plan_of(two(1), Designs=designs).pressing.steps
    assert (low.film.name, low.tack, low.front, low.back) == ("White smooth", False, 30, 15)
    assert (high.warm_up, high.cover) == (0, (low.place.decal.id,))


def test_one_heat_for_all_batches_where_that_saves_more_than_it_is_worth(plan_of: Callable[..., Plan]) -> None:
    """Three heats on 24 shirts: heat by heat the plate cools once, 330 to 320 to 300 °F."""
    plan = plan_of(two(24), Designs=THREE_HEATS)
    assert plan.pressing.by_heat
    assert plan.pressing.waiting_by_heat == pytest.approx(20 * 30 / 1.8, abs=0.1)
    assert plan.pressing.waiting_by_heat == plan.pressing.least_waiting
    assert plan.pressing.waiting_by_batch > 5 * plan.pressing.waiting_by_heat
    assert sum(step.wait for step in plan.pressing.steps) == pytest.approx(plan.pressing.waiting_by_heat, abs=0.1)
    assert faults(plan) == ()


@pytest.mark.parametrize("worth", ["never", "600"])
def test_below_the_threshold_each_batch_is_pressed_to_its_end(plan_of: Callable[..., Plan], worth: str) -> None:
    job = [["Setting", "Value"], ["Worth changing the order", worth]]
    plan = plan_of(two(24), Designs=THREE_HEATS, Job=job)
    batches = [step.batch for step in plan.pressing.steps]
    assert not plan.pressing.by_heat
    assert sum(a != b for a, b in pairwise(batches)) == len(plan.layout.batches) - 1
    assert sum(step.wait for step in plan.pressing.steps) == pytest.approx(plan.pressing.waiting_by_batch, abs=0.1)
    assert faults(plan) == ()


def test_each_press_has_its_own_batches_and_heats(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of(two(24), Designs=TWO_HEATS, Job=[["Setting", "Value"], ["People pressing", 3]])
    lanes = {step.batch: step.lane for step in plan.pressing.steps}
    assert set(lanes.values()) == {1, 2, 3}
    assert all(lanes[step.batch] == step.lane for step in plan.pressing.steps)
    assert faults(plan) == ()


def test_everything_is_cut_before_anything_is_weeded(plan_of: Callable[..., Plan]) -> None:
    work = plan_of(boxes(9), Designs=BOX).time.work
    assert (work[0].begins, work[0].finishes, work[0].starts) == (0, work[0].seconds, 9 * 60)
    ends = {stage: max((w.ends_day, w.ends) for w in work if w.stage == stage) for stage in ("cut", "weed", "press")}
    starts = {stage: min((w.day, w.starts) for w in work if w.stage == stage) for stage in ends}
    assert ends["cut"] <= starts["weed"]
    assert ends["weed"] <= starts["press"]


def test_another_film_is_changed_to(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of(two(1), Designs=TWO_HEATS)
    times, (one, other) = plan.job.work_times, plan.layout.runs
    runs = _cutting(replace(plan.layout, runs=(one, one, other, one)), times)
    change = times.of("cut", "change to another film")
    assert change > 0
    assert [run.parts.get("change to another film", 0) for run in runs] == [0, 0, change, change]


def test_two_people_weed_in_half_the_time_and_a_day_has_an_end(plan_of: Callable[..., Plan]) -> None:
    one = plan_of(boxes(24), Designs=BOX)
    settings = [["Setting", "Value"], ["People weeding", 2], ["Hours a day", 0.5], ["Start", "10:00"]]
    two_ = plan_of(boxes(24), Designs=BOX, Job=settings)
    took = [
        max(w.finishes for w in weeding) - min(w.begins for w in weeding)
        for weeding in ([w for w in plan.time.work if w.stage == "weed"] for plan in (one, two_))
    ]
    assert took[1] == pytest.approx(took[0] / 2, rel=0.2)
    assert two_.time.stage_seconds == one.time.stage_seconds
    assert two_.time.work[-1].ends_day > 1
    assert all(600 <= work.starts < 630 and 600 <= work.ends <= 630 for work in two_.time.work)
    assert faults(one) == faults(two_) == ()


def test_a_work_time_of_one_s_own_is_counted(plan_of: Callable[..., Plan]) -> None:
    own = [["Stage", "Work", "Value", "Unit"], ["weed", "each decal", 100, "s"]]
    usual, slow = plan_of(boxes(3), Designs=BOX), plan_of(boxes(3), Designs=BOX, **{"Work times": own})
    assert slow.time.stage_seconds["weed"] == pytest.approx(usual.time.stage_seconds["weed"] + 3 * (100 - 45))


@pytest.mark.parametrize(
    ("typed", "column"), [(["weed", "cool", 5, "s"], "B2"), (["weed", "each decal", 5, "mm/s"], "D2"),
                          (["weed", "each decal", "long", "s"], "C2")]
)  # fmt: skip
def test_a_bad_work_time_is_told_and_the_usual_one_holds(
    plan_of: Callable[..., Plan], typed: list[object], column: str
) -> None:
    plan = plan_of(boxes(1), Designs=BOX, **{"Work times": [["Stage", "Work", "Value", "Unit"], typed]})
    assert [(p.where.sheet, p.where.cell) for p in plan.problems if p.where.sheet == "Work times"] == [
        ("Work times", column)
    ]
    assert plan.job.work_times.of("weed", "each decal") == 45


def test_breaks_stand_between_the_hours_of_work() -> None:
    """8 h a day from 9:00: 2 h of work, 15 min of break, and so on: three breaks, 7 h 15 min of work."""
    clock = Clock(540, 7.25 * 3600, 7200, 900)
    assert clock.moment(0, opens=True) == (1, 540)
    assert clock.moment(7200, opens=False) == (1, 660)
    assert clock.moment(7200, opens=True) == (1, 675)
    assert clock.moment(7.25 * 3600, opens=False) == (1, 540 + 480)
    assert clock.moment(7.25 * 3600, opens=True) == (2, 540)
    assert clock.breaks(7.25 * 3600) == 3 * 900


@pytest.mark.parametrize(
    ("begins", "seconds", "day", "starts", "ends_day", "ends"),
    [
        (3600.0, 3600.0, 1, 600, 1, 660),  # it ends at 11:00, when the break begins
        (7200.0, 3600.0, 1, 675, 1, 735),  # and the next begins when it is over
        (3600.0, 6.25 * 3600, 1, 600, 1, 1020),  # it ends with the day, at 17:00
        (7.25 * 3600, 60.0, 2, 540, 2, 541),
    ],
)
def test_work_ends_before_a_break_and_begins_after_it(
    begins: float, seconds: float, day: int, starts: int, ends_day: int, ends: int
) -> None:
    """8 h a day from 9:00, with a break of 15 min after each 2 h of work."""
    turn = _Turn(Task("Batch 1", 1, {"weeding": seconds}), 1, begins)
    work = _work(Clock(540, 7.25 * 3600, 7200, 900), "weed", 1, turn)
    assert (work.day, work.starts, work.ends_day, work.ends) == (day, starts, ends_day, ends)


def test_the_checker_finds_what_is_wrong(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of(two(6), Designs=TWO_HEATS)
    work = plan.time.work
    weeding = [each for each in work if each.stage == "weed"]
    bad = (
        replace(plan.time, work=tuple(replace(w, begins=0.0) if w is weeding[-1] else w for w in work)),
        replace(plan.time, work=work[1:]),
        replace(plan.time, work=tuple(replace(w, person=2) if w is work[0] else w for w in work)),
    )
    for time in bad:
        assert time_faults(time, plan.layout, plan.pressing, plan.job.work_times)
    hot = replace(plan.pressing.steps[-1], temperature=500.0)
    pressing = replace(plan.pressing, steps=(*plan.pressing.steps[:-1], hot))
    assert time_faults(plan.time, plan.layout, pressing, plan.job.work_times)
