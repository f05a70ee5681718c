"""One step at the press."""

from dataclasses import dataclass
from itertools import pairwise

from xlbatch.job.job import Film, Press
from xlbatch.placement.place import Place


@dataclass(frozen=True)
class PressStep:
    """One decal pressed on one garment. Temperatures in °C, times in s."""

    no: int
    batch: int
    lane: int  # which of the presses, from 1
    place: Place
    film: Film
    press: Press
    temperature: float
    warm_up: float  # 0 unless the garment is bare
    front: float
    back: float
    tack: bool  # a lower layer, pressed in full with the last one
    wait: float  # s until the plate has this heat
    trial: bool  # the first step of this film on this fabric
    with_step: int | None  # pressed in the same closing of the plate as that step
    cover: tuple[str, ...] = ()  # finished decals to cover
    first: bool = False  # the garment's first step
    last: bool = False  # the garment's last step


@dataclass(frozen=True)
class PressPlan:
    """All steps in order, and the waiting for the plate (s) of both orders there might be, over all presses."""

    steps: tuple[PressStep, ...]
    by_heat: bool  # whether one heat goes through all batches before the next
    waiting_by_heat: float
    waiting_by_batch: float
    least_waiting: float  # of any order: proven

    @property
    def settings_changed(self) -> int:
        """How often a plate is set to another heat."""
        return sum(
            step.temperature != other.temperature and step.lane == other.lane for step, other in pairwise(self.steps)
        )
