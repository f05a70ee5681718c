"""How long each part of the job takes."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

Stage = Literal["cut", "weed", "press"]
Parts = Mapping[str, float]  # seconds by piece of work, as the sheet Work times calls them


@dataclass(frozen=True)
class TimedWork:
    """One piece of work of one person: a run to cut, a batch to weed, a batch to press at one heat.

    `begins` and `finishes` are s of work since the job began, breaks and nights left out; days and minutes after
    midnight are on the clock."""

    stage: Stage
    label: str
    batch: int | None
    seconds: float
    parts: Parts
    people: int  # how many do this stage
    person: int  # which of them, from 1
    begins: float
    finishes: float
    day: int  # 1 is the first day
    starts: int  # minutes after midnight
    ends_day: int
    ends: int


@dataclass(frozen=True)
class TimePlan:
    """`breaks` are s of breaks from the first piece of work to the last."""

    work: tuple[TimedWork, ...]
    stage_seconds: dict[Stage, float]
    breaks: float = 0.0

    @property
    def seconds(self) -> float:
        """All hand work, in s."""
        return sum(self.stage_seconds.values())

    @property
    def parts(self) -> Mapping[tuple[Stage, str], float]:
        """Seconds by stage and piece of work."""
        totals: dict[tuple[Stage, str], float] = {}
        for work in self.work:
            for name, seconds in work.parts.items():
                totals[work.stage, name] = totals.get((work.stage, name), 0.0) + seconds
        return totals
