"""Runs: one row a run, with what its cut file should measure when it is opened."""

import math

import pandas as pd

from xlbatch.film.cutting import cutting
from xlbatch.film.layout import Run
from xlbatch.job.job import Settings
from xlbatch.paper.cell import Value
from xlbatch.paper.page import Column, Page, tabled
from xlbatch.plan import Plan
from xlbatch.units import mm_per, printed_length


def exact(mm: float, unit: str) -> float:
    """A true length in `unit`, to 0.01 mm or 0.001 in: what a cut file is measured against."""
    return round(mm / mm_per(unit), 2 if unit == "mm" else 3)


def _far(unit: str) -> str:
    """The unit of long ways: what a blade runs in one go is told in feet or meters."""
    return "ft" if unit == "in" else "m"


def columns(unit: str) -> tuple[Column, ...]:
    return (
        Column("Run", 0.6, ("count",)),
        Column("Film", 1.5),
        Column(f"Length ({unit})", 0.9, ("length",)),
        Column("Strips", 0.7, ("count",)),
        Column("Decals", 0.7, ("count",)),
        Column("Cut from", 1.5),
        Column("Cut file", 3.2),
        Column(f"Measures across ({unit})", 1.0, ("exact",)),
        Column(f"Measures along ({unit})", 1.0, ("exact",)),
        Column(f"Cut length ({_far(unit)})", 0.8, ("count",)),
        Column(f"Travel ({_far(unit)})", 0.7, ("count",)),
    )


def table(plan: Plan) -> pd.DataFrame:
    """The runs in cutting order."""
    settings = plan.job.settings
    return tabled(columns(settings.length_unit), (_row(run, settings) for run in plan.layout.runs))


def _row(run: Run, settings: Settings) -> tuple[Value, ...]:
    unit = settings.length_unit
    across, along = run.ink_box or (None, None)
    cut = cutting(run)
    return (
        run.no,
        run.film.name,
        printed_length(run.length, unit, up=True),
        len(run.strips),
        len(run.lying),
        run.cut_from,
        run.cut_file,
        None if across is None else exact(across, unit),
        None if along is None else exact(along, unit),
        math.ceil(cut.length / mm_per(_far(unit))) if cut.pieces else None,
        math.ceil(cut.travel / mm_per(_far(unit))) if cut.pieces else None,
    )


def write(page: Page, plan: Plan) -> None:
    """The runs."""
    frame = table(plan)
    page.lay_columns(columns(plan.job.settings.length_unit), frame, fill=False)
    page.title(
        "Runs",
        "Open a cut file where you send it to the cutter and measure: it must be as wide and long as stated here, or "
        "its size was changed on the way. Cut length is all that the blade cuts, Travel its way between the cuts.",
    )
    page.table(frame)
