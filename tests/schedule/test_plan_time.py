"""Time: work times are common practice, no source; sums stand beside each check."""

from collections.abc import Callable

import pytest

from xlbatch.plan import Plan
from xlbatch.schedule.plan_time import cutting_seconds, pressing_seconds, weeding_seconds

BOX = [
    ["Design", "Decal", "What", "Film", "Position", "Width", "Height", "Scale with size"],
    ["Box", "Box", "artwork", "Black smooth", "full front", "100 mm", "50 mm", "no"],
]


def boxes(count: int) -> list[list[str]]:
    return [["Who", "Size", "Design"], *[[f"Person {at}", "M", "Box"] for at in range(count)]]


def test_the_seconds_of_three_boxes(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of(boxes(3), Designs=BOX)
    assert cutting_seconds(plan.layout.runs[0]) == pytest.approx(3 * (300 / 200 + 0.15))
    assert weeding_seconds(plan.decals) == pytest.approx(3 * (45 + 3))
    # load 20, place 25, press 5 + 30 + 15, peel 10, fold 15 each; the last one cools 45
    assert pressing_seconds(plan.pressing.steps) == pytest.approx(3 * (20 + 25 + 50 + 10 + 15) + 45)


def test_everything_is_cut_before_anything_is_weeded(plan_of: Callable[..., Plan]) -> None:
    work = plan_of(boxes(9), Designs=BOX).time.work
    ends = {stage: max((w.ends_day, w.ends) for w in work if w.stage == stage) for stage in ("cut", "weed", "press")}
    starts = {stage: min((w.day, w.starts) for w in work if w.stage == stage) for stage in ends}
    assert ends["cut"] <= starts["weed"]
    assert ends["weed"] <= starts["press"]


def test_two_people_weed_in_half_the_time_and_a_day_has_an_end(plan_of: Callable[..., Plan]) -> None:
    one = plan_of(boxes(24), Designs=BOX)
    settings = [["Setting", "Value"], ["People weeding", 2], ["Hours a day", 0.5], ["Start", "10:00"]]
    two = plan_of(boxes(24), Designs=BOX, Job=settings)
    weeding = [work for work in one.time.work if work.stage == "weed"]
    assert len(weeding) == len(one.layout.batches)
    assert max(work.ends for work in weeding) - weeding[0].starts == pytest.approx(24 * 48 / 60, abs=1)
    assert two.time.stage_seconds == one.time.stage_seconds
    assert two.time.work[-1].ends_day > 1
    assert all(600 <= work.starts < 630 and 600 <= work.ends <= 630 for work in two.time.work)
