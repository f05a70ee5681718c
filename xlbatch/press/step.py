"""One step at the press."""

from dataclasses import dataclass
from itertools import pairwise

from xlbatch.job.job import Film, Press
from xlbatch.placement.place import Place


@dataclass(frozen=True)
class Step:
    """One decal pressed on one garment. Temperatures in °C, times in s."""

    no: int
    batch: int
    place: Place
    film: Film
    press: Press
    temperature: float
    warm_up: float
    front: float
    back: float
    tack: bool  # a lower layer, pressed in full with the last one
    wait: float  # s until the plate has this heat
    trial: bool  # the first step of this film on this fabric
    with_step: int | None  # pressed in the same closing of the plate as that step
    how: str  # what to mind, in a few words


@dataclass(frozen=True)
class PressPlan:
    """All steps in order."""

    steps: tuple[Step, ...]

    @property
    def settings_changed(self) -> int:
        """How often the plate is set to another heat."""
        return sum(one.temperature != other.temperature for one, other in pairwise(self.steps))
