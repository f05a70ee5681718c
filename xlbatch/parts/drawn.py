"""A drawing as a design uses it."""

from dataclasses import dataclass

from xlbatch.job.job import DecalSpec
from xlbatch.parts.looked import Looked


@dataclass(frozen=True, eq=False)
class Drawn:
    """A drawing of a design: its name as typed, what it looks like, and mm a unit on the shirt."""

    name: str
    spec: DecalSpec
    looked: Looked
    unit: float
