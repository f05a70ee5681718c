"""Time plan: how long each stage takes, and when each run and batch has its turn."""

from datetime import time

import pandas as pd

from xlbatch.paper.page import Column, Page, tabled
from xlbatch.plan import Plan
from xlbatch.press.step import PressPlan
from xlbatch.schedule.hours import TimePlan

STAGES = {"cut": "Cutting", "weed": "Weeding", "press": "Pressing"}
COLUMNS = (
    Column("Stage", 1.2),
    Column("Work", 1.4, ("text", "strong")),
    Column("Batch", 0.7, ("count",)),
    Column("People", 0.8, ("count",)),
    Column("Person", 0.8, ("count",)),
    Column("Minutes", 0.9, ("minutes", "center")),
    Column("Day", 0.7, ("count",)),
    Column("Starts", 0.9, ("time",)),
    Column("Ends on day", 0.8, ("count",)),
    Column("Ends", 0.9, ("time",)),
)


def table(plan: Plan) -> pd.DataFrame:
    """One row a piece of work: a run to cut, a batch to weed, a batch to press."""
    rows = (
        (
            work.stage,
            work.label,
            work.batch,
            work.people,
            work.person,
            round(work.seconds / 60, 1),
            work.day,
            _clock(work.starts),
            work.ends_day,
            _clock(work.ends),
        )
        for work in plan.time.work
    )
    return tabled(COLUMNS, rows)


def _clock(minutes: int) -> time:
    return time(minutes // 60 % 24, minutes % 60)


def hours_text(seconds: float) -> str:
    """`3 h 20 min`, to the minute."""
    hours, minutes = divmod(round(seconds / 60), 60)
    return f"{hours} h {minutes} min" if hours else f"{minutes} min"


def stage_lines(time_plan: TimePlan) -> list[str]:
    """Hand work by stage, and all together."""
    lines = [f"{STAGES[stage]} {hours_text(seconds)}" for stage, seconds in time_plan.stage_seconds.items()]
    breaks = [f"breaks {hours_text(time_plan.breaks)}"] if time_plan.breaks else []
    return [*lines, f"all hand work {hours_text(time_plan.seconds)}", *breaks]


def parts_lines(time_plan: TimePlan) -> list[str]:
    """What the work of each stage is made of: `Cutting: load the film 3 min, …`."""
    works: dict[str, list[str]] = {}
    for (stage, work), seconds in time_plan.parts.items():
        works.setdefault(stage, []).append(f"{work} {hours_text(seconds)}")
    return [f"{STAGES[stage]}: {', '.join(parts)}." for stage, parts in works.items()]


def order_line(pressing: PressPlan) -> str:
    """How long the plate is waited for in either order, and which one the Press log has."""
    if not pressing.settings_changed:
        return "Every film is pressed at one heat: the plate is not waited for."
    ways = {
        "one heat for all batches before the next": pressing.waiting_by_heat,
        "each batch to its end before the next": pressing.waiting_by_batch,
    }
    waits = "; ".join(f"{way} {hours_text(seconds)}" for way, seconds in ways.items())
    by_heat, by_batch = ways
    return f"Waiting for the plate: {waits}. The Press log has {by_heat if pressing.by_heat else by_batch}."


def write(page: Page, plan: Plan) -> None:
    """The time plan; the totals by stage, and what they are made of, stand above it."""
    frame = table(plan)
    page.lay_columns(COLUMNS, frame)
    page.title(
        "Time plan",
        "Cut everything, then weed everything, then press everything. Minutes are hand work; the clock has the breaks "
        "too. Change the sheet Work times to what your hands need.",
        *parts_lines(plan.time),
        order_line(plan.pressing),
    )
    page.line(" · ".join(stage_lines(plan.time)), "strong", least=18)
    page.table(frame, least=17)
