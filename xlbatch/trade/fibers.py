"""The fibers that cloth is made of, and what heat does to them."""

import re
from dataclasses import dataclass
from functools import cache

from xlbatch.trade.tables import dot_limit, table


@dataclass(frozen=True)
class Fiber:
    """One line of fibers.csv."""

    name: str
    usual_limit: float  # °C, by the iron dots its care label usually has
    synthetic: bool
    dye_comes_through: bool  # in the heat, into lighter film


@cache
def fibers_in(fabric: str) -> tuple[Fiber, ...]:
    """The known fibers that a fabric names, in the table's order."""
    named = re.findall(r"[^\W\d_]+", fabric.casefold())
    return tuple(fiber for fiber in _fibers() if fiber.name in named)


@cache
def _fibers() -> tuple[Fiber, ...]:
    return tuple(
        Fiber(
            line["Fiber"],
            dot_limit(int(line["Usual iron dots"])),
            line["Synthetic"] == "yes",
            line["Dye comes through"] == "yes",
        )
        for line in table("fibers")
    )
