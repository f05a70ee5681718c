"""The clock by hand: work from 9:00, 8 hours a day with a break of 10 min after every 2 h of work."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from xlbatch.job.work_time import WorkTimes
from xlbatch.roster.read import Reading
from xlbatch.schedule.clock import Clock, clock_of

HOUR, NINE = 3600.0, 9 * 60
DAY = 7.5 * HOUR  # three times 2 h and 10 min are 6.5 h; of the last 1.5 h nothing is a break


def test_the_breaks_are_taken_out_of_the_hours(reading_of: Callable[..., Reading]) -> None:
    job = reading_of([["Who", "Size"], ["Ana", "M"]]).job
    own = {"work between breaks": 2 * HOUR, "break": 600.0}
    rows = tuple(replace(row, value=own.get(row.work, row.value)) for row in job.work_times.rows)
    settings = replace(job.settings, start=NINE, hours_a_day=8)
    clock = clock_of(replace(job, settings=settings, work_times=WorkTimes(rows)))
    assert clock == Clock(NINE, DAY, 2 * HOUR, 600.0)


@pytest.mark.parametrize(
    ("work", "opens", "day", "minute"),
    [
        (0, True, 1, NINE), (2 * HOUR, False, 1, NINE + 120), (2 * HOUR, True, 1, NINE + 130),
        (4 * HOUR, False, 1, NINE + 250), (4 * HOUR, True, 1, NINE + 260), (DAY, False, 1, NINE + 480),
        (DAY, True, 2, NINE), (DAY + HOUR, True, 2, NINE + 60), (2 * DAY, False, 2, NINE + 480),
    ],
)  # fmt: skip
def test_a_moment_of_work_on_the_clock(work: float, opens: bool, day: int, minute: int) -> None:
    assert Clock(NINE, DAY, 2 * HOUR, 600.0).moment(work, opens=opens) == (day, minute)


def test_all_breaks_up_to_a_moment() -> None:
    clock = Clock(NINE, DAY, 2 * HOUR, 600.0)
    assert [clock.breaks(hours * HOUR) for hours in (0, 2, 2.5, 6.5, 7.5, 8)] == [0, 0, 600, 1800, 1800, 1800]
    assert Clock(NINE, DAY, 0, 600.0).breaks(7 * HOUR) == 0
