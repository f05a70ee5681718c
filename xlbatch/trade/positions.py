"""The placement table: for a position, kind of garment and neckline, where a decal goes."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

from xlbatch.trade.tables import table, words
from xlbatch.units import mm_per

SLEEVES = ("left sleeve", "right sleeve")
SLEEVE_EDGE = mm_per("in") / 2  # clear at each edge of a sleeve: common practice, no source


@dataclass(frozen=True)
class Rule:
    """One line of placements.csv, in mm. `across` is positive to the wearer's right."""

    position: str
    side: str  # front, back, left sleeve, right sleeve
    measured_from: str
    distance: float
    across: float
    under: tuple[str, ...]  # positions this one goes below, where the garment has one of them
    gap: float  # to the decal above it


@cache
def positions() -> tuple[str, ...]:
    """All positions, in table order."""
    return tuple(dict.fromkeys(line["Position"] for line in table("placements")))


@cache
def placement_rule(position: str, for_: str, neckline: str) -> Rule | None:
    """The rule for a position on a kind of garment, or None where the trade has no such place."""
    for line in table("placements"):
        if (line["Position"], line["For"]) == (position.casefold(), for_) and line["Neckline"] in (neckline, "any"):
            return Rule(
                position=line["Position"],
                side=line["Side"],
                measured_from=line["Measured from"],
                distance=_mm(line["Distance (in)"]),
                across=_mm(line["From center (in)"]),
                under=words(line["Under"]),
                gap=_mm(line["Gap (in)"]),
            )
    return None


def hangs_from(position: str, positions: Iterable[str], for_: str, neckline: str) -> str:
    """The one of `positions` (in lower case) that this position goes below, itself where it goes below none."""
    rule = placement_rule(position, for_, neckline)
    return next((above for above in (rule.under if rule else ()) if above in positions), position.casefold())


def _mm(inches: str) -> float:
    return round(float(inches) * mm_per("in"), 3)
