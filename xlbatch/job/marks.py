"""What a person wrote on a plan's own sheets: at the cutter and the weeding table, at the press."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Literal, NamedTuple

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
    by: str
    note: str
    peeled: bool


class OrderKey(NamedTuple):
    """A line of the Shopping list: what it is about."""

    kind: str
    item: str
    garment: str
    size: str
    color: str


class Stock(NamedTuple):
    """How many of it are ordered and have not come, and how many are there."""

    on_the_way: int
    on_hand: int
    note: str = ""


@dataclass(frozen=True)
class OrderMark:
    """A row of the Shopping list: how many it says to buy, and what of that is ordered and has come (True: all)."""

    source: Source
    key: OrderKey
    buy: int
    ordered: bool | int | None
    arrived: bool | int | None
    note: str = ""
    row: str = ""  # what its row is called


@dataclass(frozen=True)
class Result:
    """What the press log of a plan says of one piece of one garment."""

    garment_no: int
    piece: str
    result: Literal["ok", "redo film", "redo garment"]


@dataclass(frozen=True)
class Delivery:
    """What the shopping list of a plan says of one kind of blank; `came` is None while Arrived is not ticked."""

    source: Source
    garment: str
    size: str
    color: str
    on_hand: int
    came: int | None


@dataclass(frozen=True)
class AnswerMark:
    """A row of Problems with an answer."""

    source: Source
    level: str
    code: str
    garment: str
    found: str
    answer: str


def row_key(texts: Iterable[str]) -> str:
    """What a row is called, by the cells that tell it from others; "" where all are empty."""
    return " · ".join(filter(None, texts))


@dataclass(frozen=True)
class Beside:
    """What stands beside a row of a plan's own sheet, in a column of no meaning or in a note on a cell."""

    source: Source
    sheet: str
    key: str
    heading: str
    text: str
    on_cell: bool = False


@dataclass(frozen=True)
class Marks:
    """All marks of one plan."""

    strips: tuple[StripMark, ...] = ()
    steps: tuple[StepMark, ...] = ()
    orders: tuple[OrderMark, ...] = ()
    answers: tuple[AnswerMark, ...] = ()
    checked: Mapping[int, tuple[str, Source]] = field(default_factory=dict)  # Checked on Proof, by garment number
    beside: tuple[Beside, ...] = ()


NO_MARKS = Marks()
