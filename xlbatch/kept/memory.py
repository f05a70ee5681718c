"""What a plan remembers of the job: the records that stand on its hidden last sheet. Lengths in mm."""

from dataclasses import dataclass, field, fields
from typing import Literal, get_args

State = Literal["to cut", "cut", "weeded", "pressed", "spoiled"]
Stage = Literal["", "begun", "done"]
STATES: tuple[State, ...] = get_args(State)
READY: tuple[State, ...] = ("cut", "weeded")  # on the table, still to press


@dataclass(frozen=True)
class KeptDecal:
    """A decal that was laid on film once, and where it stands. Its number is its own for good."""

    id: str
    garment_no: int
    piece: str
    text: str
    film: str
    width: float
    height: float
    area: float  # of its outline, 0 where only its box is known
    run: int
    strip: int
    batch: int  # the batch it is pressed in
    state: State

    @property
    def ready(self) -> bool:
        return self.state in READY

    @property
    def place(self) -> tuple[str, int, int]:
        """Its strip: film without regard to case, run and strip number."""
        return self.film.casefold(), self.run, self.strip


@dataclass(frozen=True)
class KeptStrip:
    """A strip of a run, and how much film it took or will take."""

    film: str
    run: int
    strip: int
    length: float
    cut_from: str


@dataclass(frozen=True)
class KeptGarment:
    """A garment as planned: its blank, and whether that is in hand or done."""

    no: int
    garment: str
    size: str
    color: str
    stage: Stage


@dataclass(frozen=True)
class KeptRow:
    """A row of an input sheet as the plan wrote it: the row's number among its records, a heading, what stood there."""

    sheet: str
    row: str
    heading: str
    value: str


@dataclass(frozen=True)
class Memory:
    """Everything a plan remembers."""

    plan: int = 1  # which plan of the job
    last_decal: int = 0
    last_run: int = 0  # of this plan, as the next two
    last_strip: int = 0
    retired_run: int = 0  # up to here run numbers are given for good
    retired_strip: int = 0
    decals: tuple[KeptDecal, ...] = ()
    strips: tuple[KeptStrip, ...] = ()
    garments: tuple[KeptGarment, ...] = ()
    rows: tuple[KeptRow, ...] = field(default=(), repr=False)


RECORDS: dict[str, type] = {"decals": KeptDecal, "strips": KeptStrip, "garments": KeptGarment, "rows": KeptRow}
NUMBERS = tuple(each.name for each in fields(Memory) if each.name not in RECORDS)
NO_MEMORY = Memory()
