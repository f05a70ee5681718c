"""The heat in a batch's title on the press cards, and how long the plate takes to it."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from xlbatch.pages.press_cards import _heat_text, _range
from xlbatch.pages.work import look_up
from xlbatch.plan import Plan


def test_a_wait_is_told_from_half_a_minute_on_in_whole_minutes(plan_of: Callable[..., Plan]) -> None:
    work = look_up(plan_of([["Who", "Size"], ["Ana", "M"]]))
    step = replace(work.plan.pressing.steps[0], temperature=160.0)
    waits = (0, 29.9, 30, 89, 91, 149, 151)
    told = [_heat_text(work, [replace(step, wait=wait), replace(step, wait=600.0)]) for wait in waits]
    minutes = ["", "", " (wait 1 min)", " (wait 1 min)", " (wait 2 min)", " (wait 2 min)", " (wait 3 min)"]
    assert told == [f"320 °F{wait}" for wait in minutes]


@pytest.mark.parametrize(
    ("numbers", "told"),
    [([1], "1"), ([1, 2], "1, 2"), ([1, 2, 3], "1–3"), ([2, 3, 4, 1, 6, 7], "2–4, 1, 6, 7"), ([3, 2, 1], "3, 2, 1")],
)
def test_batches_that_follow_one_another_are_told_as_a_range(numbers: list[int], told: str) -> None:
    assert _range(numbers) == told
