"""Cut list: one row a strip, in cutting order."""

import pandas as pd

from xlbatch.paper.page import Column, Page, tabled
from xlbatch.paper.style import BOX
from xlbatch.plan import Plan
from xlbatch.units import printed_length

MIRRORED = "The cut files are already mirrored: do not mirror again."
NOT_MIRRORED = "The cut files are not mirrored: your cutter must mirror them."
INTERLOCKED = " Once a strip is weeded, cut its decals apart with scissors as the thin lines on Roll layout show."


def columns(unit: str) -> tuple[Column, ...]:
    return (
        Column("Run", 0.4, ("count", "strong")),
        Column("Strip", 0.4, ("count", "strong")),
        Column("Film", 1.0, whole=True),
        Column("Cut from", 0.6),
        Column(f"Run length ({unit})", 0.6, ("length",)),
        Column(f"Starts at ({unit})", 0.55, ("length",)),
        Column(f"Length ({unit})", 0.55, ("length",)),
        Column("Garments", 0.8),
        Column("Decals", 1.6),
        Column("Cut", 0.4, ("box",)),
        Column("Weeded", 0.6, ("box",)),
    )


def table(plan: Plan) -> pd.DataFrame:
    """The strips of every run; a strip has its batch's number."""
    unit = plan.job.settings.length_unit
    rows = (
        (
            run.no,
            strip.batch,
            run.film.name,
            run.cut_from,
            printed_length(run.length, unit, up=True),
            printed_length(strip.start, unit),
            printed_length(strip.length, unit, up=True),
            ", ".join(str(no) for no in dict.fromkeys(lying.decal.garment_no for lying in strip.lying)),
            ", ".join(lying.decal.id for lying in strip.lying),
            BOX,
            BOX,
        )
        for run in plan.layout.runs
        for strip in run.strips
    )
    return tabled(columns(unit), rows)


def write(page: Page, plan: Plan) -> None:
    """The cut list, for the cutter and the weeding table."""
    frame = table(plan)
    page.lay_columns(columns(plan.job.settings.length_unit), frame)
    page.title(
        "Cut list",
        "Cut one test piece of each film first. Load the film with the shiny carrier side down, the side to be cut up. "
        + (MIRRORED if plan.job.settings.mirror else NOT_MIRRORED),
        "A cut file's name begins with its run's number; Cut from and Run length say which film to load, and how much. "
        "Cut a run apart straight across between its strips, weed strip by strip, and keep each strip with its number: "
        "strip 1 of every film goes to batch 1 at the press." + (INTERLOCKED if plan.job.settings.interlock else ""),
    )
    page.table(frame)
