"""Turns the sheet Job into Settings: the defaults of trade/job.csv, overlaid with what the person gave."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal
from functools import cache
from typing import Literal, TypeVar, cast

from xlbatch.files.raw import Raw
from xlbatch.job.job import CutFileKind, Settings
from xlbatch.job.source import Source
from xlbatch.problems import Problem, Where, problem
from xlbatch.tables.cells import Margin, likely, shown_value
from xlbatch.tables.headings import plain, split_unit
from xlbatch.tables.input_table import Table
from xlbatch.tables.line import Line, Units
from xlbatch.trade.columns import InputColumn
from xlbatch.trade.tables import table, words
from xlbatch.units import LengthUnit, TemperatureUnit

T = TypeVar("T")
HEADING = "heading"  # the kind of a row that is no setting

# of earlier plans: the settings that each stands for now, and what it wrote where nothing was set
_OLD: Mapping[str, tuple[tuple[str, ...], float]] = {
    "Spoiled per 100": (("Spoiled blanks per 100", "Spoiled film per 100"), 3),
    "Sureness of spares": (("Enough spares per 100 jobs",), 95),
}
_OLD_WORDS = {("Overlapping colors", "knocked out"): "side by side"}  # choices that are called otherwise now
_KEPT, _SINCE = "Last garment no.", "Spoiled blanks per 100"  # a setting of every edition; one of this edition

_NO_SHEET = Table("Job", "Job", 0, {}, {}, {}, {}, {})


def read_settings(sheet: Table | None, stem: str) -> tuple[Settings, Mapping[str, Where], tuple[Problem, ...]]:
    """The settings, the Value cell of each one given, and what was wrong. `stem` names the job where it has no name."""
    given, unknown = _given(sheet)
    usual = {name: column.example for name, column in _columns().items()}
    defaults = Line("Job", Source("Job"), _columns(), {n: Raw(text) for n, text in usual.items() if text}, {}, Units())
    units = _Values(given, defaults)
    length, temperature = units.choice("Length unit"), units.choice("Temperature unit")
    given = replace(given, usual=Units(cast(LengthUnit, length), cast(TemperatureUnit, temperature)))
    where = {name: given.source.at(name) for name in given.cells}
    settings = _settings(_Values(given, defaults), stem)
    return settings, where, (*unknown, *dict.fromkeys(given.problems))


@cache
def _columns() -> Mapping[str, InputColumn]:
    """Each setting as a column of its own kind; its example is its default."""
    return {
        line["Setting"]: InputColumn(
            "Job", line["Setting"], line["Kind"], words(line["Choices"]), False, line["Value"], ()
        )
        for line in table("job")
        if line["Kind"] != HEADING
    }


def _given(sheet: Table | None) -> tuple[Line, tuple[Problem, ...]]:
    """The settings given, as one line with a cell a setting; and the settings that are none."""
    values: dict[str, Raw] = {}
    cells: dict[str, str] = {}
    units: dict[str, str] = {}
    unknown = []
    sheet = sheet or _NO_SHEET
    name_at, value_at = (sheet.columns.get(heading, 0) for heading in ("Setting", "Value"))
    for row, filled in sheet.rows.items():
        typed = shown_value(filled.get(name_at, Raw(None)))
        name, unit = _setting(typed)
        if plain(typed) in _headings():
            continue
        if not name:
            unknown.append(_unknown(sheet, name_at if typed else value_at, row, typed or shown_value(_any(filled))))
        elif value_at in filled:
            if name in values:
                unknown.append(problem("setting-twice", sheet.where(name_at, row), name))
            values[name], cells[name] = _in_todays_words(name, filled[value_at]), sheet.where(value_at, row).cell
            units |= {name: unit} if unit else {}
    _take_over_old(values, cells)
    usual = {name: column.example for name, column in _columns().items()}
    source = Source(sheet.sheet, 0, cells)
    return Line("Job", source, _columns(), values, units, Units(), defaults=usual), tuple(unknown)


@cache
def _headings() -> frozenset[str]:
    """The rows of the sheet that only say what follows."""
    return frozenset(plain(line["Setting"]) for line in table("job") if line["Kind"] == HEADING)


def _in_todays_words(name: str, value: Raw) -> Raw:
    """A choice under the name it has now."""
    word = _OLD_WORDS.get((name, str(value.value).strip().casefold()))
    return value._replace(value=word) if word else value


def _setting(typed: str) -> tuple[str, str]:
    """The setting a name means ("" where none), and the unit written with it."""
    names = {plain(name): name for name in (*_columns(), *_OLD)}
    bare, unit = split_unit(typed)
    return names.get(plain(typed)) or names.get(plain(bare), ""), unit


def todays_name(name: str) -> str:
    """What a setting is called now that an earlier plan has under its old name."""
    today, _ = _OLD.get(name, ((), 0))
    return today[0] if len(today) == 1 else name


def _take_over_old(values: dict[str, Raw], cells: dict[str, str]) -> None:
    """Puts the first edition's settings under their names of today; what a plan of that edition wrote by itself counts
    as not set. A name of today that is given too wins."""
    first_edition = _KEPT in values and _SINCE not in values
    for old, (names, usual) in _OLD.items():
        if old in values:
            value, cell = values.pop(old), cells.pop(old)
            if not (first_edition and value.value in (usual, f"{usual:g}")):
                values |= {name: value for name in names if name not in values}
                cells |= {name: cell for name in names if name not in cells}


def _any(filled: Mapping[int, Raw]) -> Raw:
    return next(iter(filled.values()))


def _unknown(sheet: Table, column: int, row: int, typed: str) -> Problem:
    likely_name = likely(typed, _columns())
    return problem("setting-unknown", sheet.where(column or 1, row), typed, suggestion=likely_name)


@dataclass(frozen=True)
class _Values:
    """Reads each setting from what was given, else from its default."""

    given: Line
    defaults: Line

    def _first(self, read: Callable[[Line], T | None]) -> T | None:
        value = read(self.given)
        return read(self.defaults) if value is None else value

    def _sure(self, read: Callable[[Line], T | None]) -> T:
        """For the settings that job.csv has a default for."""
        value = self._first(read)
        assert value is not None
        return value

    def text(self, name: str) -> str:
        return self.given.any_text(name) or self.defaults.any_text(name)

    def choice(self, name: str) -> str:
        return self.given.choice(name) or self.defaults.choice(name)

    def length(self, name: str) -> float:
        return self._sure(lambda line: line.length(name))

    def number(self, name: str) -> float:
        return self._sure(lambda line: line.number(name))

    def number_or_word(self, name: str) -> float | None:
        """None for the word."""
        return self._sure(lambda line: line.number_or_word(name)).number

    def count_or_word(self, name: str) -> int | None:
        """None for the word."""
        number = self.number_or_word(name)
        return None if number is None else round(number)

    def count(self, name: str) -> int:
        return self._sure(lambda line: line.count(name))

    def yes(self, name: str) -> bool:
        return self._sure(lambda line: line.yes(name))

    def clock(self, name: str) -> int:
        return self._sure(lambda line: line.clock(name))

    def money(self, name: str) -> Decimal | None:
        return self._first(lambda line: line.money(name))

    def margin(self, name: str) -> Margin:
        return self._sure(lambda line: line.margin(name))


def _settings(value: _Values, stem: str) -> Settings:
    margin = value.margin("Margin or fixed price")
    return Settings(
        job_name=value.text("Job name") or stem,
        needed_by=value.text("Needed by"),
        length_unit=value.given.usual.length,
        temperature_unit=value.given.usual.temperature,
        paper=cast(Literal["Letter", "A4"], value.choice("Paper")),
        currency=value.text("Currency"),
        usual_garment=value.text("Usual garment"),
        usual_color=value.text("Usual color"),
        usual_design=value.text("Usual design"),
        print_=cast(Literal["whole name", "first name", "last name"], value.choice("Print")),
        shared_line=value.text("Shared line"),
        font=value.text("Font"),
        least_letter_height=value.length("Least letter height"),
        narrowest_letters=value.number("Narrowest letters"),
        round_sizes_to=value.length("Round sizes to"),
        widest_letters=value.number("Widest letters"),
        gap_in_drawing=value.length("Gap in a drawing"),
        clear_of_side=value.length("Clear of side seams"),
        clear_of_hem=value.length("Clear of the hem"),
        clear_of_sleeve_edge=value.length("Clear of sleeve edges"),
        gap=value.length("Gap between decals"),
        end_margin=value.length("Film end margin"),
        longest_cut=value.length("Longest cut"),
        shirts_per_strip=value.count_or_word("Shirts per strip"),
        handy_strip=value.length("Handy strip"),
        longest_strip=value.length("Longest strip"),
        turn=value.yes("Turn decals"),
        mirror=value.yes("Mirror the cut files"),
        test_cut=value.yes("Test cut"),
        cut_file_kind=cast(CutFileKind, value.choice("Cut file kind")),
        join=value.yes("Join pieces"),
        interlock=value.yes("Save film by interlocking"),
        number_rule=value.text("Number rule"),
        spoiled_blanks_per_100=value.number("Spoiled blanks per 100"),
        spoiled_film_per_100=value.number("Spoiled film per 100"),
        second_order_costs=value.money("Second order costs") or Decimal(0),
        sureness=value.given.number("Enough spares per 100 jobs"),
        answer_by=value.text("Answer by"),
        order_by=value.text("Order by"),
        delivery_days_of_blanks=value.number("Delivery days of blanks"),
        delivery_days_of_film=value.number("Delivery days of film"),
        work_days=value.text("Work days"),
        price_by=cast(Literal["class", "job", "own cost"], value.choice("Price by")),
        people_cutting=value.count("People cutting"),
        people_weeding=value.count("People weeding"),
        people_pressing=value.count("People pressing"),
        start=value.clock("Start"),
        worth_changing_the_order=value.number_or_word("Worth changing the order"),
        hours_a_day=value.number("Hours a day"),
        labor_per_hour=value.money("Labor per hour"),
        supplies_per_garment=value.money("Supplies per garment"),
        margin=margin.margin,
        fixed_price=margin.fixed_price,
        money_on_tags=value.yes("Money on tags"),
        one_tag_for=cast(Literal["garment", "group"], value.choice("One tag for")),
        price_rounding=value.money("Price rounding") or Decimal("0.01"),
        last_no=value.count("Last garment no."),
        overlapping_colors=cast(Literal["stacked", "side by side"], value.choice("Overlapping colors")),
        sizes=cast(Literal["by garment size", "few sizes", "one size for all"], value.choice("Sizes")),
        most_sizes=value.count("Most sizes"),
    )
