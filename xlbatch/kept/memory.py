"""What a plan remembers of the job: the records that stand on its hidden last sheet. Lengths in mm."""

from collections.abc import Iterable
from dataclasses import dataclass, field, fields
from typing import Literal, get_args

from xlbatch.job.marks import OrderKey

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
    length: float  # its share of the run's film, margins and gaps included
    cut_from: str
    counted: str = ""  # "yes": what is on hand was measured after it was cut

    @property
    def place(self) -> tuple[str, int, int]:
        """The strip as its decals name it."""
        return self.film.casefold(), self.run, self.strip


@dataclass(frozen=True)
class KeptGarment:
    """A garment as planned: its blank, and whether that is in hand or done."""

    no: int
    garment: str
    size: str
    color: str
    stage: Stage


@dataclass(frozen=True)
class KeptOrder:
    """A line of the shopping list: how many are on the way, of supplies how many are there, of blanks how many were
    used that are not known to have come."""

    kind: str
    item: str
    garment: str
    size: str
    color: str
    on_the_way: int
    on_hand: int
    short: int
    note: str

    @property
    def key(self) -> OrderKey:
        return OrderKey(self.kind, self.item, self.garment, self.size, self.color)


@dataclass(frozen=True)
class KeptFilm:
    """The film there was when it was last measured and what has come since, strips cut since not taken off."""

    film: str
    pieces: tuple[str, ...]  # 304.8 x 4572: width and length in mm


@dataclass(frozen=True)
class KeptHeadings:
    """The headings of an input sheet, for the values of its rows."""

    sheet: str
    headings: tuple[str, ...]


@dataclass(frozen=True)
class KeptRow:
    """A row of an input sheet as the plan wrote it. Its key is its garment number, its film, its design and decal."""

    sheet: str
    key: str
    values: tuple[str, ...]


@dataclass(frozen=True)
class KeptChange:
    """A change since the plan before, and what followed from it."""

    plan: int  # the plan it came in
    sheet: str
    cell: str
    who: str
    what: str
    before: str
    now: str
    follows: str


@dataclass(frozen=True)
class KeptAnswer:
    """What a person answered to a problem; it holds while the garment and the text it was found at are the same."""

    code: str
    garment: str
    found: str
    answer: str


@dataclass(frozen=True)
class KeptNote:
    """What a person wrote beside a row of one of the plan's own sheets, where only people write."""

    sheet: str
    key: str  # what the row is called: its decal, its garment number …
    heading: str
    text: str
    on_cell: str = ""  # "yes": a note on the cell, not what stands in it


@dataclass(frozen=True)
class KeptOffer:
    """A decal that fits its garment no more, and the garment and piece it was offered for."""

    decal: str
    garment_no: int
    piece: str


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
    orders: tuple[KeptOrder, ...] = ()
    films: tuple[KeptFilm, ...] = ()
    changes: tuple[KeptChange, ...] = ()  # newest first
    answers: tuple[KeptAnswer, ...] = ()
    notes: tuple[KeptNote, ...] = ()
    offers: tuple[KeptOffer, ...] = ()
    headings: tuple[KeptHeadings, ...] = ()
    rows: tuple[KeptRow, ...] = field(default=(), repr=False)


RECORDS: dict[str, type] = {
    "decals": KeptDecal,
    "strips": KeptStrip,
    "garments": KeptGarment,
    "orders": KeptOrder,
    "films": KeptFilm,
    "changes": KeptChange,
    "answers": KeptAnswer,
    "notes": KeptNote,
    "offers": KeptOffer,
    "headings": KeptHeadings,
    "rows": KeptRow,
}
NUMBERS = tuple(field.name for field in fields(Memory) if field.name not in RECORDS)
NO_MEMORY = Memory()


def strips_cut(decals: Iterable[KeptDecal]) -> frozenset[tuple[str, int, int]]:
    """The strips of which any decal was cut."""
    return frozenset(decal.place for decal in decals if decal.state != "to cut")
