"""One row of an input table, read cell by cell; what cannot be read becomes a problem at its cell."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from typing import NamedTuple, TypeVar

from xlbatch.files.broken_text import LOST, is_broken, mended
from xlbatch.files.clean import clean, shown
from xlbatch.files.raw import Raw
from xlbatch.job.feature import Feature
from xlbatch.job.job import Class, FilmPiece, Paid, PriceBreak, Roll
from xlbatch.job.source import Source, Unread
from xlbatch.problems import Problem, problem
from xlbatch.problems.phrases import phrase
from xlbatch.tables import boxes, cell_lists, cells
from xlbatch.tables.body import guess_size
from xlbatch.tables.cells import Margin, Unclear, shown_value
from xlbatch.tables.features import features
from xlbatch.tables.number_or_word import NumberOrWord, number_or_word
from xlbatch.tables.sizes import likely_size, read_size
from xlbatch.trade.columns import InputColumn
from xlbatch.units import LengthUnit, TemperatureUnit

T = TypeVar("T")

# Problems of their own for the cells people most often get wrong.
_CODES = {
    ("Roster", "How many"): "how-many-unclear",
    ("Roster", "Status"): "status-unknown",
    ("Roster", "Paid"): "paid-unclear",
    ("Press log", "Result"): "result-unknown",
    ("Money", "Price"): "price-unclear",
    ("Press log", "Pressed"): "mark-unclear",
    ("Roster", "Confirmed"): "mark-unclear",
    **{("Cut list", heading): "mark-unclear" for heading in ("Run", "Strip", "Cut", "Weeded")},
    **{("Shopping list", heading): "arrived-unclear" for heading in ("Needed", "Spares", "On hand", "Arrived")},
}


class Units(NamedTuple):
    """The job's units, for numbers that come without one."""

    length: LengthUnit = "in"
    temperature: TemperatureUnit = "°F"


@dataclass
class Line:
    """A row of an input table while it is read. The readers give None (or "") for a blank cell and for one that cannot
    be read, which they add to `problems` and `unclear`: lines of one row share both, so that each is told once."""

    meaning: str
    source: Source
    columns: Mapping[str, InputColumn]
    cells: Mapping[str, Raw]
    units: Mapping[str, str]
    usual: Units
    rows: tuple[int, ...] = ()  # what its problems hold back
    for_: Class | None = None  # whom the title or sheet it stands under says its size is for
    left_out: str = ""  # why it looks as if it were not wanted: struck through, or the title it stands under
    defaults: Mapping[str, str] = field(default_factory=dict)  # used where a cell is unclear: settings alone
    problems: list[Problem] = field(default_factory=list)
    unclear: dict[str, str] = field(default_factory=dict)  # what stands in the cells that cannot be read

    @property
    def stopped(self) -> bool:
        """Whether something was found that makes the row unusable."""
        return any(fault.level == "stop" for fault in self.problems)

    @property
    def as_typed(self) -> Unread:
        """The row as it stands; lengths and temperatures carry the unit of their heading."""
        typed = {heading: shown_value(cell) for heading, cell in self.cells.items()}
        units = {heading: self._unit(heading) for heading, text in typed.items() if cells.decimal(text) is not None}
        return Unread(self.source, {name: f"{text} {units.get(name, '')}".strip() for name, text in typed.items()})

    def given(self, heading: str) -> bool:
        """Whether the cell holds anything."""
        return heading in self.cells

    def found(self, code: str, column: str, typed: object = "", suggestion: str = "", **facts: object) -> None:
        """Adds a problem at the cell under a heading."""
        where = self.source.at(column)
        self.problems.append(problem(code, where, typed, suggestion=suggestion, rows=self.rows, **facts))

    def text(self, heading: str) -> str:
        """Cleaned text; what was taken out, more than outer spaces, is noted."""
        cell = self.cells.get(heading)
        if cell is None:
            return ""
        if isinstance(cell.value, str) and not cell.fault:
            if is_broken(cell.value):
                typed = cell.value.strip(" ")
                self.found("encoding-broken", heading, typed, clean(mended(typed)).text.replace(LOST, "…"))
                return typed
            cleaned = clean(cell.value)
            if cleaned.changed:
                self.found("text-cleaned", heading, shown(cell.value.strip(" ")), now=cleaned.text)
            return cleaned.text
        return self._read(heading, cells.text) or ""

    def any_text(self, heading: str) -> str:
        """Text where a date is welcome too."""
        cell = self.cells.get(heading)
        return self.text(heading) if cell is None or cell.fault or isinstance(cell.value, str) else shown_value(cell)

    def needed(self, heading: str) -> str:
        """Text that may not be blank."""
        value = self.text(heading)
        if not value and not self.given(heading):
            self.found("value-needed", heading, heading=heading)
        return value

    def choice(self, heading: str) -> str:
        """One of the column's choices."""
        choices = self.columns[heading].choices
        return self._read(heading, lambda cell: cells.choice(cell, choices)) or ""

    def needed_choice(self, heading: str) -> str:
        """One of the column's choices, which may not be blank."""
        if not self.given(heading):
            self.found("value-needed", heading, heading=heading)
        return self.choice(heading)

    def size(self, heading: str, for_: Class | None = None) -> str:
        """A size in its one spelling; as typed where it is none, with the problem."""
        cell = self.cells.get(heading)
        if cell is None:
            return ""
        typed = self._read(heading, cells.text)
        if typed is None:
            return "" if cell.fault else shown_value(cell)
        size = read_size(typed, for_)
        if size:
            return size
        guess = guess_size(typed, for_)
        if guess:
            self.found("size-read-as", heading, typed, size=guess.size, taken_for=guess.taken_for)
            return guess.size
        self.found("size-unknown", heading, typed, likely_size(typed))
        return typed

    def count(self, heading: str) -> int | None:
        """A whole number within the column's range."""
        return self._read(heading, lambda cell: cells.count(cell, self.columns[heading].choices))

    def number(self, heading: str) -> float | None:
        """A number within the column's range."""
        return self._read(heading, lambda cell: cells.number(cell, self.columns[heading].choices))

    def number_or_word(self, heading: str) -> NumberOrWord | None:
        """The column's word, or a number within its range."""
        return self._read(heading, lambda cell: number_or_word(cell, self.columns[heading].choices))

    def length(self, heading: str) -> float | None:
        """A length in mm."""
        unit, ends = self._length_unit(heading), self.columns[heading].choices
        return self._read(heading, lambda cell: cells.length(cell, unit, ends))

    def temperature(self, heading: str) -> float | None:
        """A temperature in °C."""
        return self._read(heading, lambda cell: cells.temperature(cell, self._temperature_unit(heading)))

    def seconds(self, heading: str) -> float | None:
        """A time in s."""
        return self._read(heading, cells.seconds)

    def yes(self, heading: str) -> bool | None:
        """Yes or no."""
        return self._read(heading, cells.yes_no)

    def money(self, heading: str) -> Decimal | None:
        """An amount of money."""
        return self._read(heading, cells.money)

    def margin(self, heading: str) -> Margin | None:
        """A margin or a fixed price."""
        return self._read(heading, cells.margin)

    def clock(self, heading: str) -> int | None:
        """Minutes after midnight."""
        return self._read(heading, cells.clock)

    def paid(self, heading: str) -> Paid:
        """An amount, or "yes"."""
        return self._read(heading, cells.paid)

    def arrived(self, heading: str) -> bool | int | None:
        """Whether what was ordered has come, or how many have."""
        return self._read(heading, boxes.arrived)

    def mark(self, heading: str) -> bool | None:
        """Whether a box is marked."""
        return self._read(heading, boxes.mark)

    def dots(self, heading: str) -> int | None:
        """Iron dots, 1 to 3; None where not checked."""
        return self._read(heading, cells.dots)

    def names(self, heading: str) -> tuple[str, ...]:
        """The parts of a list."""
        return self._read(heading, cell_lists.names) or ()

    def pieces_done(self, heading: str) -> tuple[str, ...]:
        """The parts of a list between semicolons."""
        return self._read(heading, cell_lists.pieces_done) or ()

    def prices(self, heading: str) -> tuple[PriceBreak, ...]:
        """Prices by number of pieces."""
        return self._read(heading, cell_lists.prices) or ()

    def rolls(self, heading: str) -> tuple[Roll, ...]:
        """Rolls as they are sold."""
        return self._read(heading, lambda cell: cell_lists.rolls(cell, self.units.get(heading, ""))) or ()

    def pieces(self, heading: str) -> tuple[FilmPiece, ...]:
        """Pieces of film on hand."""
        return self._read(heading, lambda cell: cell_lists.pieces(cell, self._length_unit(heading))) or ()

    def stock(self, heading: str) -> Mapping[str, int]:
        """How many are on hand, by color."""
        return self._read(heading, cell_lists.stock) or {}

    def features(self, heading: str) -> tuple[Feature, ...] | None:
        """Places to keep clear; None where nothing is said."""
        return self._read(heading, lambda cell: features(cell, self._length_unit(heading)))

    def _length_unit(self, heading: str) -> str:
        return self.units.get(heading, self.usual.length)

    def _temperature_unit(self, heading: str) -> str:
        return self.units.get(heading, self.usual.temperature)

    def _unit(self, heading: str) -> str:
        """The unit a bare number under the heading is in, or ""."""
        unit = {"length": self._length_unit, "temperature": self._temperature_unit}.get(self.columns[heading].kind)
        return unit(heading) if unit else ""

    def _read(self, heading: str, read: Callable[[Raw], T | Unclear]) -> T | None:
        cell = self.cells.get(heading)
        if cell is None:
            return None
        if cell.fault:
            self._faulty(heading, cell)
            return None
        value = read(cell)
        if isinstance(value, Unclear):
            self._unclear(heading, cell, value.suggestion)
            return None
        return value

    def _faulty(self, heading: str, cell: Raw) -> None:
        if heading in self.defaults:
            self._unclear(heading, cell, "")
        elif cell.fault == "error":
            self.unclear[heading] = shown_value(cell)
            self.found("cell-error", heading, shown_value(cell))
        else:
            self.found("formula-unsaved", heading)

    def _unclear(self, heading: str, cell: Raw, suggestion: str) -> None:
        column, typed = self.columns[heading], shown_value(cell)
        self.unclear[heading] = typed
        if column.kind == "size":
            self.found("date-for-size", heading, typed, suggestion)
            return
        code = "setting-unclear" if heading in self.defaults else _CODES.get((self.meaning, heading), "value-unclear")
        used = self.defaults.get(heading) or "nothing"
        self.found(code, heading, typed, suggestion, wanted=_wanted(column), example=column.example, used=used)


def _wanted(column: InputColumn) -> str:
    if column.kind == "number or word":
        between = cells.limits(column.choices[1])
        assert between is not None  # the table gives word and range
        return phrase("number or word", low=between[0], high=between[1], word=column.choices[0])
    if column.kind == "choice":
        return phrase("one of", choices=", ".join(column.choices))
    between = cells.limits(column.choices[0]) if column.choices else None
    wanted = phrase(column.kind)
    return phrase("between", wanted=wanted, low=between[0], high=between[1]) if between else wanted
