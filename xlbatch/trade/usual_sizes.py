"""How big things usually are by their position, where nobody says."""

from functools import cache

from xlbatch.trade.tables import practice, table
from xlbatch.units import mm_per


@cache
def chest_art_width(position: str, for_: str) -> float:
    """How wide artwork on one side of the chest usually is on a class of garments, in mm; 0 at other positions."""
    return next(
        (
            float(line["Width (in)"]) * mm_per("in")
            for line in table("chest_art")
            if (line["Position"], line["For"]) == (position.casefold(), for_)
        ),
        0.0,
    )


def artwork_width(position: str) -> float:
    """How wide artwork usually is on an adult M, in mm."""
    whole = practice("how wide artwork is on an adult M, where nothing is said")
    return round(chest_art_width(position, "adult") or whole, 3)
