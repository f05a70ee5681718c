"""Placement: where every decal goes, one row a garment and decal."""

import pandas as pd

from xlbatch.placement.place import Place
from xlbatch.roster.job import Settings
from xlbatch.sheets.cell import Value
from xlbatch.sheets.page import Column, Page, tabled
from xlbatch.sheets.plan import Plan
from xlbatch.units import printed_length


def columns(unit: str) -> tuple[Column, ...]:
    return (
        Column("Garment no.", 0.75, ("count", "strong")),
        Column("Who", 1.3, ("text", "strong", "small")),
        Column("Garment", 0.85, ("text", "small")),
        Column("Size", 0.65),
        Column("Color", 0.6, ("text", "small")),
        Column("Position", 0.75, ("text", "small")),
        Column("Decal", 0.57, ("text", "small")),
        Column("Piece", 0.75, ("text", "small")),
        Column(f"Width ({unit})", 0.6, ("length",)),
        Column(f"Height ({unit})", 0.62, ("length",)),
        Column(f"Below collar seam ({unit})", 0.62, ("length", "strong")),
        Column(f"Above sleeve opening ({unit})", 0.75, ("length", "strong")),
        Column(f"From center ({unit})", 0.62, ("length", "strong")),
        Column(f"Clear at side ({unit})", 0.55, ("length",)),
        Column(f"Clear at hem ({unit})", 0.6, ("length",)),
        Column("Presses", 0.75, ("count",)),
        Column("Line up by", 2.4, ("text", "small")),
    )


def table(plan: Plan) -> pd.DataFrame:
    """The places, garment by garment."""
    return tabled(columns(plan.job.settings.length_unit), (_row(place, plan.job.settings) for place in plan.places))


def _row(place: Place, settings: Settings) -> tuple[Value, ...]:
    def shown(mm: float | None) -> float | None:
        return None if mm is None else printed_length(mm, settings.length_unit)

    garment, decal = place.garment, place.decal
    return (
        garment.no,
        garment.who,
        garment.blank.garment,
        garment.blank.size,
        garment.color,
        decal.spec.position,
        decal.id,
        decal.piece,
        shown(decal.width),
        shown(decal.height),
        shown(place.below_collar),
        shown(place.above_opening),
        shown(place.from_center),
        shown(place.clear_side),
        shown(place.clear_hem),
        place.presses,
        place.line_up_by,
    )


def write(page: Page, plan: Plan) -> None:
    """The placement table, to lie beside the press."""
    frame = table(plan)
    page.lay_columns(columns(plan.job.settings.length_unit), frame)
    page.title(
        "Placement",
        "Fold the garment down the middle and press a crease; fold the carrier sheet the same way; match crease to "
        "crease. Measure to the top edge of the decal. From center: 0 is on the crease, positive is to the wearer's "
        "right. Presses: how many times the plate is set down to cover the decal.",
    )
    page.table(frame, least=22)
