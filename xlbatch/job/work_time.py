"""How long a piece of work takes: one row of the sheet Work times."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property

from xlbatch.job.source import Source


@dataclass(frozen=True)
class WorkTime:
    """`value` is in s, or in what `unit` says: mm/s along outlines, s a °C of the plate, pieces in a hundred."""

    source: Source
    stage: str  # cut, weed, press, any
    work: str
    value: float
    unit: str


@dataclass(frozen=True)
class WorkTimes:
    """All rows, the person's own first."""

    rows: tuple[WorkTime, ...]

    @cached_property
    def _values(self) -> Mapping[tuple[str, str], float]:
        return {(row.stage, row.work): row.value for row in reversed(self.rows)}

    def of(self, stage: str, work: str) -> float:
        """The value of a piece of work. Raises KeyError for work not in the table."""
        return self._values[stage, work]

    def sum(self, stage: str, works: Iterable[str]) -> float:
        """Several pieces of work of one stage together."""
        return sum(self.of(stage, work) for work in works)
