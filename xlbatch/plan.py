"""The whole plan: what every returned sheet is drawn from."""

from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal

from xlbatch.art.decal import Decal
from xlbatch.check.garment import Garment
from xlbatch.film.layout import Layout
from xlbatch.job.job import Job, RosterRow
from xlbatch.kept.memory import NO_MEMORY, Memory
from xlbatch.placement.place import Place
from xlbatch.press.step import PressPlan
from xlbatch.problems import Problem
from xlbatch.schedule.dates import Dates
from xlbatch.schedule.hours import TimePlan
from xlbatch.shopping.lines import BuyLine, MoneyLine, SpareChoice


@dataclass(frozen=True)
class Figures:
    """What everything to buy costs (None where no price is known), the film cut (mm), and hand work (minutes)."""

    money: Decimal | None
    film: float
    minutes: float


@dataclass(frozen=True)
class Tried:
    """A change that saves something: what it is, how to set it, and the figures of the plan with it."""

    name: str
    how: str
    figures: Figures


@dataclass(frozen=True)
class Plan:
    """Garments are in roster order; decals, places and steps cover exactly these garments."""

    job: Job
    problems: tuple[Problem, ...]
    held: tuple[RosterRow, ...]  # rows held back
    garments: tuple[Garment, ...]
    decals: tuple[Decal, ...]
    places: tuple[Place, ...]
    layout: Layout
    pressing: PressPlan
    time: TimePlan
    shopping: tuple[BuyLine, ...]
    dates: Dates
    spare_choices: tuple[SpareChoice, ...]
    money: tuple[MoneyLine, ...]
    run_at: datetime  # the one thing that differs between two runs
    memory: Memory = NO_MEMORY  # what the plan takes along
    unused: frozenset[str] = frozenset()  # the decals that lie cut and fit no garment still to make
    as_planned: Figures | None = None  # where it was asked what changes would save
    what_if: tuple[Tried, ...] = ()
