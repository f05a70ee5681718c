"""What one person does at the press: act after act, none that takes no time."""

from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise

import pytest

from xlbatch.job.work_time import WorkTimes
from xlbatch.plan import Plan
from xlbatch.schedule.at_press import at_press
from xlbatch.schedule.clock import Clock, clock_of

ROSTER = [["Who", "Size"], ["Ana", "M"], ["Bo", "L"]]


def test_acts_follow_one_another_and_each_takes_time(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of(ROSTER)
    acts = [act for _, done in at_press(plan.pressing.steps, plan.job.work_times) for act in done]
    assert acts[0].work == "switch on and heat up"
    assert all(act.ends > act.begins for act in acts)
    assert all(before.ends == after.begins for before, after in pairwise(acts))
    for work in ("load the garment", "fold"):
        assert [act.garment for act in acts if act.work == work] == [1, 2]


@pytest.mark.parametrize(("between", "pause"), [(0.0, 600.0), (7200.0, 0.0), (0.0, 0.0)])
def test_without_a_break_or_work_between_there_are_none(
    between: float, pause: float, plan_of: Callable[..., Plan]
) -> None:
    job = plan_of(ROSTER).job
    own = {"work between breaks": between, "break": pause}
    rows = tuple(replace(row, value=own.get(row.work, row.value)) for row in job.work_times.rows)
    settings = replace(job.settings, start=540, hours_a_day=8)
    clock = clock_of(replace(job, settings=settings, work_times=WorkTimes(rows)))
    assert clock == Clock(540, 8 * 3600.0, 0.0, 0.0)
