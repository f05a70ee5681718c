"""What a person wrote on a plan's own sheets: at the cutter and the weeding table, at the press."""

from dataclasses import dataclass
from typing import Literal

from xlbatch.job.source import Source

Outcome = Literal["", "ok", "redo film", "redo garment"]
ALL = "all"


@dataclass(frozen=True)
class StripMark:
    """A row of the Cut list: whether the strip is cut and weeded, and which of its decals went wrong since."""

    source: Source
    run: int
    strip: int
    film: str
    cut: bool
    weeded: bool
    spoiled: tuple[str, ...]  # decal numbers in capitals, or ALL


@dataclass(frozen=True)
class StepMark:
    """A row of the Press log. `result` is what the row itself says, `outcome` what it comes to beside the others."""

    source: Source
    garment_no: int
    piece: str
    decal: str
    pressed: bool
    result: Outcome
    outcome: Outcome
    by: str = ""
    note: str = ""


@dataclass(frozen=True)
class Marks:
    """All marks of one plan."""

    strips: tuple[StripMark, ...] = ()
    steps: tuple[StepMark, ...] = ()


NO_MARKS = Marks()
