"""The records a workbook is read into. Lengths in mm, temperatures in °C, times in s, money in Decimal."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from functools import cached_property
from pathlib import Path
from typing import Literal

from xlbatch.job.costs import Costs
from xlbatch.job.feature import Feature
from xlbatch.job.marks import Beside, Delivery, OrderKey, Result, Stock
from xlbatch.job.part_line import PartLine
from xlbatch.job.position import ANY, Position
from xlbatch.job.source import Heading, Source, Unread
from xlbatch.job.work_time import WorkTimes
from xlbatch.problems import Where
from xlbatch.units import LengthUnit, TemperatureUnit

What = Literal["artwork", "print name", "number", "text"]
Class = Literal["adult", "ladies", "youth", "toddler", "infant"]
Neckline = Literal["crew", "V", "scoop", "polo", "hood"]
Peel = Literal["hot", "warm", "cold"]
JOINED = " + "  # between the names of a joined piece's parts
LONGEST_TEXT = 32_767  # characters: the published limit of the spreadsheet programs for one cell
Paid = Decimal | Literal["yes"] | None  # yes: in full
NO_NAME = "no name"  # as a Print name: nothing is printed for this person
Status = Literal["", "done", "redo film", "redo garment", "cancelled"]
CutFileKind = Literal["SVG", "DXF", "both"]


@dataclass(frozen=True)
class RosterRow:
    """One row of the roster after `How many` was spread out: one garment with its lasting number."""

    source: Source
    no: int
    who: str
    group: str
    garment: str
    size: str  # in one spelling (M, Youth M, 2T, 12M, Ladies L); as typed if it was not understood
    color: str
    design: str
    print_name: str
    number: str
    note: str
    paid: Paid
    status: Status
    done_so_far: tuple[str, ...]  # "blank in hand" and the pieces already pressed on it
    first_name: str = ""  # where the list gives them apart
    last_name: str = ""
    unclear: Mapping[str, str] = field(default_factory=dict)  # cells that could not be read, as they are, by heading
    confirmed: bool = False  # whether whoever it is for has said that it is right
    adult_said: bool = False  # Adult L, in a family where a bare letter could be a child's

    @property
    def size_said(self) -> str:
        """The size, with its class where that was said and is needed."""
        return f"Adult {self.size}" if self.size and self.adult_said else self.size


@dataclass(frozen=True)
class DecalSpec:
    """One row of Designs: a decal, and a border piece under it where an outline film is named."""

    source: Source
    design: str
    decal: str
    what: What
    artwork: str
    artwork_color: str
    text: str
    font: str
    film: str
    layer: int
    position: str
    width: float | None
    height: float | None
    widest: float | None
    sized_for: str
    scale: bool
    arch: float = 0.0
    outline_film: str = ""
    outline_width: float | None = None

    @property
    def border(self) -> str:
        """What the border piece is called."""
        return f"{self.decal} border"

    @property
    def pieces(self) -> tuple[str, ...]:
        """What its pieces of film are called, bottom one first."""
        return (self.border, self.decal) if self.outline_film else (self.decal,)


@dataclass(frozen=True)
class PriceBreak:
    """From `count` pieces on, each costs `price`."""

    count: int
    price: Decimal


@dataclass(frozen=True)
class Blank:
    """One row of Garments: a garment in one size."""

    source: Source
    garment: str
    for_: Class
    neckline: Neckline
    fabric: str
    dots: int | None  # None: not checked
    heat_limit: float | None
    size: str
    chest: float
    length: float
    drop_front: float
    drop_back: float
    sleeve_length: float | None
    sleeve_opening: float | None
    colors: tuple[str, ...]
    prices: tuple[PriceBreak, ...]
    on_hand: Mapping[str, int] = field(default_factory=dict)  # by color; "" where no color was said
    keep_clear: tuple[Feature, ...] = ()
    between_armholes: float | None = None  # from seam to seam, where a decal reaches above the armpits


@dataclass(frozen=True)
class Roll:
    """A roll as it is sold; the price None where not given."""

    length: float
    price: Decimal | None


@dataclass(frozen=True)
class FilmPiece:
    """A piece of film on hand."""

    width: float
    length: float


@dataclass(frozen=True)
class Film:
    """One row of Film."""

    source: Source
    name: str
    kind: str
    color: str
    roll_width: float
    usable_width: float
    rolls: tuple[Roll, ...]
    on_hand: tuple[FilmPiece, ...]
    temperature: float
    warm_up: float
    press: float
    back: float
    peel: Peel
    pressure: str
    one_direction: bool
    thinnest: float
    cut_with: str = ""  # the person's own cutter settings, in their words


@dataclass(frozen=True)
class Press:
    """One row of Press. The first row is the one used."""

    source: Source
    name: str
    kind: str
    width: float
    depth: float
    hottest: float
    cover: str
    overlap: float


@dataclass(frozen=True)
class Settings:
    """The Job sheet."""

    job_name: str
    needed_by: str
    length_unit: LengthUnit
    temperature_unit: TemperatureUnit
    paper: Literal["Letter", "A4"]
    currency: str
    usual_garment: str
    usual_color: str
    usual_design: str
    print_: Literal["whole name", "first name", "last name"]
    shared_line: str
    font: str
    least_letter_height: float
    round_sizes_to: float
    clear_of_side: float
    clear_of_hem: float
    clear_of_sleeve_edge: float
    gap: float
    end_margin: float
    longest_cut: float
    shirts_per_strip: int | None  # None: by itself
    handy_strip: float
    longest_strip: float
    turn: bool
    mirror: bool
    number_rule: str
    spoiled_blanks_per_100: float
    spoiled_film_per_100: float
    sureness: float | None  # None: spares are bought only where they pay
    people_cutting: int
    people_weeding: int
    people_pressing: int
    start: int  # minutes after midnight
    hours_a_day: float
    labor_per_hour: Decimal | None
    margin: Decimal | None  # 0.30 for 30 %; None where a fixed price is given
    fixed_price: Decimal | None
    price_rounding: Decimal
    last_no: int
    supplies_per_garment: Decimal | None
    overlapping_colors: Literal["stacked", "side by side"]
    sizes: Literal["by garment size", "few sizes", "one size for all"]
    most_sizes: int
    test_cut: bool
    interlock: bool
    narrowest_letters: float  # percent
    widest_letters: float
    gap_in_drawing: float
    cut_file_kind: CutFileKind
    second_order_costs: Decimal
    answer_by: str
    order_by: str
    delivery_days_of_blanks: float
    delivery_days_of_film: float
    work_days: str
    price_by: Literal["class", "job", "own cost"]
    join: bool
    worth_changing_the_order: float | None  # minutes; None: never
    money_on_tags: bool
    one_tag_for: Literal["garment", "group"]


@dataclass(frozen=True)
class Job:
    """Everything the workbook says, with defaults filled in."""

    path: Path
    settings: Settings
    setting_cells: Mapping[str, Where]  # the Value cell of each setting the person gave
    roster: tuple[RosterRow, ...]
    designs: tuple[DecalSpec, ...]
    blanks: tuple[Blank, ...]  # every garment and size known: the person's rows first
    films: tuple[Film, ...]
    presses: tuple[Press, ...]
    positions: tuple[Position, ...]
    work_times: WorkTimes
    results: tuple[Result, ...]
    headings: tuple[Heading, ...]
    in_log: frozenset[int] = frozenset()  # the garment numbers of the press log, marked or not
    deliveries: tuple[Delivery, ...] = ()
    orders: Mapping[OrderKey, Stock] = field(default_factory=dict)  # what is on the way, and supplies on hand
    film_came: tuple[str, ...] = ()  # the film items of the shopping list that are marked as arrived
    prices: Mapping[int, Decimal] = field(default_factory=dict)  # of a plan's Money sheet, by garment number
    costs: Mapping[int, Costs] = field(default_factory=dict)  # likewise
    told: frozenset[int] = frozenset()  # the garments whose prices stand, by number
    unread: Mapping[str, tuple[Unread, ...]] = field(default_factory=dict)  # by sheet
    drawing_parts: tuple[PartLine, ...] = ()
    beside_settings: tuple[Beside, ...] = ()  # what people wrote beside the settings

    @cached_property
    def film_of(self) -> Mapping[str, Film]:
        """The films by their lower-case names; of several with the same name the first."""
        return {film.name.casefold(): film for film in reversed(self.films)}

    @cached_property
    def film_colors(self) -> Mapping[str, str]:
        """The colors of the films by their lower-case names."""
        return {name: film.color for name, film in self.film_of.items()}

    @cached_property
    def _positions(self) -> Mapping[tuple[str, str, str], Position]:
        return {position.key: position for position in reversed(self.positions)}

    @property
    def position_names(self) -> tuple[str, ...]:
        """The names of all positions, in the sheet's order."""
        return tuple(dict.fromkeys(position.position for position in self.positions))

    def position(self, name: str, for_: str, neckline: str) -> Position | None:
        """The position of that name on a kind of garment, or None where the trade has no such place."""
        rows = self._positions
        return rows.get((name.casefold(), for_, neckline)) or rows.get((name.casefold(), for_, ANY))
