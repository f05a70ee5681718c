"""Decals: one row a decal, and where it lies on the film."""

from collections.abc import Iterator

import pandas as pd

from xlbatch.kept.memory import KeptDecal
from xlbatch.paper.cell import Link, Value
from xlbatch.paper.page import Column, Page, tabled
from xlbatch.plan import Plan
from xlbatch.sheets.inputs import FIRST
from xlbatch.sheets.runs import exact

TO_CUT, NOT_NEEDED = "to cut", "not needed"


def columns(unit: str) -> tuple[Column, ...]:
    return (
        Column("Decal", 0.7, ("text", "strong")),
        Column("Garment no.", 0.9, ("count",)),
        Column("Who", 1.6),
        Column("Piece", 1.2),
        Column("What", 1.0),
        Column("Text", 1.8),
        Column("Film", 1.4),
        Column("Now", 0.8, whole=True),
        Column("Run", 0.6, ("count",)),
        Column("Strip", 0.6, ("count",)),
        Column(f"Across ({unit})", 0.9, ("exact",)),
        Column(f"Along ({unit})", 0.9, ("exact",)),
        Column(f"Width ({unit})", 0.9, ("exact",)),
        Column(f"Height ({unit})", 0.9, ("exact",)),
        Column("Turned", 0.8, ("count",)),
        Column(f"To look centered ({unit})", 0.9, ("exact",)),
    )


def table(plan: Plan) -> pd.DataFrame:
    """All decals by number: those to cut as they lie, those cut before as they are remembered. A number given to what
    was never cut and is not made now is not listed."""
    laid = {str(row[0]): row for row in _laid(plan)}
    listed = (decal for decal in plan.memory.decals if decal.id in laid or decal.state != TO_CUT)
    rows = (laid[decal.id] if decal.id in laid else _kept(decal, plan) for decal in listed)
    return tabled(columns(plan.job.settings.length_unit), rows)


def _laid(plan: Plan) -> Iterator[tuple[Value, ...]]:
    unit = plan.job.settings.length_unit
    who = {garment.no: garment.who for garment in plan.garments}
    for run in plan.layout.runs:
        for strip in run.strips:
            for lying in strip.lying:
                decal = lying.decal
                yield (
                    decal.id,
                    decal.garment_no,
                    who[decal.garment_no],
                    decal.piece,
                    ", ".join(spec.what for spec in decal.specs),
                    decal.text,
                    decal.film,
                    TO_CUT,
                    run.no,
                    strip.batch,
                    exact(lying.across, unit),
                    exact(lying.along, unit),
                    exact(decal.width, unit),
                    exact(decal.height, unit),
                    lying.turned,
                    exact(decal.shift, unit) if decal.shift else None,
                )


def _kept(decal: KeptDecal, plan: Plan) -> tuple[Value, ...]:
    unit = plan.job.settings.length_unit
    who = next((row.who for row in plan.job.roster if row.no == decal.garment_no), None)
    place = (decal.run or None, decal.strip or None, None, None)
    box = (exact(decal.width, unit), exact(decal.height, unit), None, None)
    now = NOT_NEEDED if decal.id in plan.unused else decal.state
    return decal.id, decal.garment_no, who, decal.piece, None, decal.text, decal.film, now, *place, *box


def write(page: Page, plan: Plan) -> None:
    """The decals."""
    frame = table(plan)
    page.lay_columns(columns(plan.job.settings.length_unit), frame, fill=False)
    page.title(
        "Decals",
        "Across and Along: the lower-left corner of the decal's box as it lies on the cutter, from the left edge of "
        "the usable width and from the run's leading end. Width and Height: the upright decal. "
        "To look centered: how far to the right, as one reads it (left where negative), if more of it lies to one "
        "side.",
    )
    page.table(frame)
    places = {run.no: row for row, run in enumerate(plan.layout.runs)}
    page.links("Run", (Link("", "Runs", FIRST + places[run]) if run in places else None for run in frame["Run"]))
