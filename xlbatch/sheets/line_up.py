"""What a decal is lined up by: its measures on the garment, or on the piece under it, and in words."""

from collections.abc import Iterable, Mapping

from xlbatch.job.job import Settings
from xlbatch.job.position import SLEEVES
from xlbatch.paper.cell import Value
from xlbatch.paper.page import Column
from xlbatch.placement.place import Place
from xlbatch.sheets.runs import exact
from xlbatch.units import length_text, printed_length

NEAR = 0.01  # mm: below this two lengths are the same


def layer_columns(unit: str, places: Iterable[Place]) -> tuple[Column, ...]:
    """How layers lie on the lowest piece; outside the printed area where there are none."""
    outside = not any(place.register for place in places)
    return (
        Column("On top of", 0.5, ("text", "strong"), outside=outside, whole=not outside),
        Column(f"From its top ({unit})", 0.5, ("exact",), outside=outside),
        Column(f"From its left ({unit})", 0.5, ("exact",), outside=outside),
    )


def measures(place: Place, unit: str) -> Mapping[str, Value]:
    """The measures of a place by their headings: on the garment, or of a layer on the piece under it."""
    register = place.register
    return {
        f"Below collar seam ({unit})": None
        if register or place.below_collar is None
        else printed_length(place.below_collar, unit),
        f"From center ({unit})": None if register else printed_length(place.from_center, unit),
        "On top of": register.on if register else None,
        f"From its top ({unit})": exact(register.from_top, unit) if register else None,
        f"From its left ({unit})": exact(register.from_left, unit) if register else None,
    }


def line_up_by(place: Place, settings: Settings) -> str:
    """`front collar seam, center crease`; of a layer, how its edges lie to those of the lowest piece."""
    if place.register:
        return f"on {place.register.on}: {edges(place, settings)}"
    if place.side in SLEEVES:
        return f"{place.measured_from}, crease along the sleeve"
    if abs(place.from_center) < NEAR:
        return f"{place.measured_from}, center crease"
    return f"{place.measured_from}, center crease ({'wearer’s right' if place.from_center > 0 else 'wearer’s left'})"


def edges(place: Place, settings: Settings) -> str:
    """`4 1/16 in below its top edge, 3/8 in right of its left edge`: its of the lowest piece."""
    register, unit = place.register, settings.length_unit
    assert register is not None
    sides = (
        (register.from_top, "below", "above", "top edge"),
        (register.from_left, "right of", "left of", "left edge"),
    )
    return ", ".join(
        f"{length_text(abs(off), unit)} {more if off > 0 else less} its {edge}"
        if abs(off) >= NEAR
        else f"{edge} on its {edge}"
        for off, more, less, edge in sides
    )
