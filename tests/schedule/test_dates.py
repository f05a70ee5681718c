"""Backward from the day everything is needed, against a table made by hand with a calendar."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date, datetime

import pytest

from tests.workbooks import Rows
from xlbatch.check.planned_days import PlannedDays
from xlbatch.plan import Plan
from xlbatch.roster.read import Reading
from xlbatch.roster.settings import read_settings
from xlbatch.run import make_plan
from xlbatch.schedule.dates import dates
from xlbatch.schedule.hours import Stage, TimedWork, TimePlan

EVERY, WEEK, WEEKEND = frozenset(range(7)), frozenset(range(5)), frozenset((5, 6))
SETTINGS = read_settings(None, "Picnic")[0]


def day(text: str) -> date:
    return date.fromisoformat(text)


def time(cut: int, press: int) -> TimePlan:
    """A time plan that cuts up to one day and presses up to another."""
    stages: tuple[tuple[Stage, int], ...] = (("cut", cut), ("press", press))
    return TimePlan(tuple(TimedWork(stage, "", None, 1, {}, 1, 1, 0, 1, 1, 0, ends, 0) for stage, ends in stages), {})


def test_a_day_without_breaks_has_none() -> None:
    assert TimePlan((), {}).breaks == 0


Row = tuple[str, frozenset[int], int, int, int, int, str, str, str, str, str]

# needed by, work days, days up to the end of cutting and of pressing, delivery of blanks and of film
# -> answer, order, all there, cut, press
TABLE: tuple[Row, ...] = (
    # Saturday 7 November 2026: pressed on Friday, begun on Friday, all there on Thursday
    ("2026-11-07", EVERY, 1, 1, 7, 7, "2026-10-28", "2026-10-29", "2026-11-05", "2026-11-06", "2026-11-06"),
    ("2026-11-07", EVERY, 1, 2, 7, 7, "2026-10-27", "2026-10-28", "2026-11-04", "2026-11-05", "2026-11-06"),
    ("2026-11-07", EVERY, 1, 1, 14, 7, "2026-10-21", "2026-10-22", "2026-11-05", "2026-11-06", "2026-11-06"),
    ("2026-11-07", EVERY, 1, 1, 7, 14, "2026-10-21", "2026-10-22", "2026-11-05", "2026-11-06", "2026-11-06"),
    ("2026-11-07", EVERY, 1, 1, 0, 0, "2026-11-04", "2026-11-05", "2026-11-05", "2026-11-06", "2026-11-06"),
    # a Monday, worked on weekdays: the Friday before
    ("2026-11-09", WEEK, 1, 1, 7, 7, "2026-10-28", "2026-10-29", "2026-11-05", "2026-11-06", "2026-11-06"),
    ("2026-11-09", WEEK, 2, 3, 7, 7, "2026-10-26", "2026-10-27", "2026-11-03", "2026-11-05", "2026-11-06"),
    # worked at weekends alone: Sunday the 1st, Saturday the 31st
    ("2026-11-07", WEEKEND, 1, 2, 7, 7, "2026-10-22", "2026-10-23", "2026-10-30", "2026-10-31", "2026-11-01"),
    ("2026-11-08", WEEKEND, 1, 2, 7, 7, "2026-10-23", "2026-10-24", "2026-10-31", "2026-11-01", "2026-11-07"),
    # across a year's end: worked on Thursday 31 December and Friday 1 January
    ("2027-01-02", EVERY, 1, 2, 7, 7, "2026-12-22", "2026-12-23", "2026-12-30", "2026-12-31", "2027-01-01"),
    # and a leap day: worked on Tuesday 29 February 2028
    ("2028-03-01", EVERY, 1, 1, 7, 7, "2028-02-20", "2028-02-21", "2028-02-28", "2028-02-29", "2028-02-29"),
)


@pytest.mark.parametrize("row", TABLE)
def test_the_days_are_counted_back(
    row: tuple[str, frozenset[int], int, int, int, int, str, str, str, str, str],
) -> None:
    needed, week, cut, press, blanks, film, *expected = row
    settings = replace(SETTINGS, delivery_days_of_blanks=blanks, delivery_days_of_film=film)
    found = dates(PlannedDays(day(needed), work_days=week), settings, time(cut, press), {"blank", "film"})
    reckoned = (found.answer_by, found.order_by, found.ready_by, found.cut_by, found.press_by)
    assert [each.isoformat() if each else None for each in reckoned] == expected
    assert found.answer_by is not None
    assert found.answer_by < day(needed) == found.hand_out


def test_only_what_is_bought_must_be_delivered() -> None:
    settings = replace(SETTINGS, delivery_days_of_blanks=10, delivery_days_of_film=3)
    days = PlannedDays(day("2026-11-07"))
    ordered = [
        dates(days, settings, time(1, 1), kinds).order_by for kinds in ({"blank"}, {"film", "supply"}, set[str]())
    ]
    assert ordered == [day("2026-10-26"), day("2026-11-02"), None]


def test_days_given_by_hand_stand() -> None:
    given = PlannedDays(day("2026-11-07"), order_by=day("2026-10-12"))
    found = dates(given, SETTINGS, time(1, 1), {"blank"})
    assert (found.answer_by, found.order_by) == (day("2026-10-11"), day("2026-10-12"))
    assert dates(replace(given, answer_by=day("2026-10-01")), SETTINGS, time(1, 1), {"blank"}).answer_by == day(
        "2026-10-01"
    )
    assert dates(PlannedDays(), SETTINGS, time(1, 1), {"blank"}).hand_out is None


def test_a_job_without_work_left_is_handed_out_from_the_day_before() -> None:
    found = dates(PlannedDays(day("2026-11-07")), SETTINGS, TimePlan((), {}), set())
    assert (found.press_by, found.cut_by, found.ready_by) == (day("2026-11-06"), None, None)
    assert (found.order_by, found.answer_by) == (None, day("2026-11-05"))


Planned = Callable[..., Plan]


@pytest.fixture
def planned(reading_of: Callable[..., Reading]) -> Planned:
    """The plan of one shirt made on a day, with these settings."""

    def make(today: str, *settings: tuple[str, object]) -> Plan:
        job: Rows = [("Setting", "Value"), *settings]
        reading = reading_of([["Who", "Size"], ["Ana", "M"]], Job=job)
        return make_plan(reading, 0, lambda _step: None, datetime.fromisoformat(f"{today}T09:30"))

    return make


def codes(plan: Plan) -> dict[str, str]:
    wanted = ("day-unclear", "weekday-wrong", "day-passed", "answers-late", "setting-unclear")
    return {found.code: f"{found.where.cell} {found.wrong}" for found in plan.problems if found.code in wanted}


def test_a_day_comes_back_with_its_year(planned: Planned) -> None:
    plan = planned("2026-10-01", ("Needed by", "Saturday 7 November"))
    assert plan.job.settings.needed_by == "Saturday 7 November 2026"
    assert plan.dates.hand_out == day("2026-11-07")
    assert codes(plan) == {}
    later = planned("2027-10-01", ("Needed by", "Saturday 7 November 2026"))
    assert later.dates == plan.dates


def test_a_day_that_has_passed_is_asked(planned: Planned) -> None:
    assert (
        "B2 Some days of this job have passed: Answer by"
        in codes(planned("2026-11-03", ("Needed by", "2026-11-07")))["day-passed"]
    )
    assert (
        "Needed by Saturday 7 November 2026" in codes(planned("2026-11-26", ("Needed by", "7 November")))["day-passed"]
    )
    assert codes(planned("2026-10-20", ("Needed by", "2026-11-07"))) == {}


def test_what_is_no_day_is_asked_and_printed_as_it_stands(planned: Planned) -> None:
    plan = planned("2026-10-01", ("Needed by", "Friday 7 November"), ("Work days", "evenings"))
    assert codes(plan)["weekday-wrong"].startswith("B2 “Friday 7 November” is another day of the week")
    assert codes(plan)["setting-unclear"].startswith("B3 “evenings” cannot be read as days of the week")
    assert plan.job.settings.needed_by == "Friday 7 November"
    assert plan.dates.hand_out is None


def test_answers_asked_for_too_late(planned: Planned) -> None:
    plan = planned("2026-10-01", ("Needed by", "2026-11-07"), ("Answer by", "2026-11-07"))
    assert codes(plan)["answers-late"].startswith(
        "B3 Answers are asked for by 2026-11-07; they are needed before Thursday 29 October 2026"
    )
