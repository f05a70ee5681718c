"""How long each part of the job takes."""

from dataclasses import dataclass
from typing import Literal

Stage = Literal["cut", "weed", "press"]


@dataclass(frozen=True)
class Work:
    """One piece of work: a run to cut, a batch to weed, a batch to press. Seconds of hand work."""

    stage: Stage
    label: str
    batch: int | None
    seconds: float
    people: int
    day: int  # 1 is the first day
    starts: int  # minutes after midnight
    ends_day: int
    ends: int


@dataclass(frozen=True)
class TimePlan:
    work: tuple[Work, ...]
    stage_seconds: dict[Stage, float]

    @property
    def seconds(self) -> float:
        """All hand work, in s."""
        return sum(self.stage_seconds.values())
