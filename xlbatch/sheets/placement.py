"""Placement: where every decal goes, one row a garment and decal."""

from collections.abc import Mapping, Sequence

import pandas as pd

from xlbatch.job.job import Settings
from xlbatch.paper.cell import Link, Value
from xlbatch.paper.page import Column, Page, tabled
from xlbatch.placement.place import Place
from xlbatch.plan import Plan
from xlbatch.sheets.inputs import FIRST
from xlbatch.sheets.line_up import layer_columns, line_up_by, measures
from xlbatch.units import printed_length


def columns(unit: str, places: Sequence[Place]) -> tuple[Column, ...]:
    """The columns; those for positions measured from below only where there are such; those of layers are
    printed only where there are such."""
    layers = layer_columns(unit, places)
    below = (
        (f"Above sleeve opening ({unit})", any(place.above_opening is not None for place in places)),
        (f"Above the hem ({unit})", any(place.above_hem is not None for place in places)),
    )
    return (
        Column("Garment no.", 0.65, ("count", "strong")),
        Column("Who", 1.4, ("text", "strong", "small")),
        Column("Garment", 0.85, ("text", "small")),
        Column("Size", 0.5, whole=True),
        Column("Color", 0.6, ("text", "small")),
        Column("Position", 0.75, ("text", "small"), whole=True),
        Column("Decal", 0.5, ("text", "small")),
        Column("Piece", 0.75, ("text", "small")),
        Column(f"Width ({unit})", 0.6, ("length",)),
        Column(f"Height ({unit})", 0.62, ("length",)),
        Column(f"Below collar seam ({unit})", 0.62, ("length", "strong")),
        *(Column(heading, 0.7, ("length", "strong")) for heading, used in below if used),
        Column(f"From center ({unit})", 0.62, ("length", "strong")),
        Column(f"Clear at side ({unit})", 0.55, ("length",)),
        Column(f"Clear at hem ({unit})", 0.6, ("length",)),
        Column("Presses", 0.6, ("count",)),
        *(column for column in layers if not column.outside),
        Column("Line up by", 2.6, ("text", "small")),
        *(column for column in layers if column.outside),
    )


def table(plan: Plan) -> pd.DataFrame:
    """The places, garment by garment."""
    unit = plan.job.settings.length_unit
    own = columns(unit, plan.places)
    rows = (_row(place, plan.job.settings) for place in plan.places)
    return tabled(own, ([row[column.heading] for column in own] for row in rows))


def _row(place: Place, settings: Settings) -> Mapping[str, Value]:
    """What stands under each heading."""
    unit = settings.length_unit

    def shown(mm: float | None) -> float | None:
        return None if mm is None else printed_length(mm, unit)

    garment, decal = place.garment, place.decal
    return {
        "Garment no.": garment.no,
        "Who": garment.who,
        "Garment": garment.blank.garment,
        "Size": garment.blank.size,
        "Color": garment.color,
        "Position": decal.spec.position,
        "Decal": decal.id,
        "Piece": decal.piece,
        f"Width ({unit})": shown(decal.width),
        f"Height ({unit})": shown(decal.height),
        **measures(place, unit),
        f"Above sleeve opening ({unit})": shown(place.above_opening),
        f"Above the hem ({unit})": shown(place.above_hem),
        f"Clear at side ({unit})": shown(place.clear_side),
        f"Clear at hem ({unit})": shown(place.clear_hem),
        "Presses": place.presses,
        "Line up by": line_up_by(place, settings),
    }


def write(page: Page, plan: Plan) -> None:
    """The placement table, to lie beside the press."""
    frame = table(plan)
    page.lay_columns(columns(plan.job.settings.length_unit, plan.places), frame)
    page.title(
        "Placement",
        "Fold the garment down the middle and press a crease; fold the carrier sheet the same way; match crease to "
        "crease. Measure to the top edge of the decal. From center: 0 is on the crease, positive is to the wearer's "
        "right. Presses: how many times the plate is set down to cover the decal. The Press log has the measures too.",
    )
    page.table(frame)
    rows = {no: row for row, no in enumerate(sorted(place.decal.id for place in plan.places), FIRST)}
    page.links("Decal", (Link(place.decal.id, "Decals", rows[place.decal.id]) for place in plan.places))
    people = {row.no: number for number, row in enumerate(plan.job.roster, FIRST)}
    page.links("Garment no.", (Link("", "Roster", people[place.garment.no]) for place in plan.places))
