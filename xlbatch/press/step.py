"""One step at the press."""

from dataclasses import dataclass

from xlbatch.placement.place import Place
from xlbatch.roster.job import Film, Press


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
    trial: bool  # the first step of this film on this fabric
    with_step: int | None  # pressed in the same closing of the plate as that step
    how: str  # what to mind, in a few words


@dataclass(frozen=True)
class PressPlan:
    """All steps in order, and how often the plate is set anew."""

    steps: tuple[Step, ...]
    settings_changed: int
