"""Loads the trade tables: one CSV a table, a `source` column in each. To change a number, change the table."""

import csv
from collections.abc import Mapping
from functools import cache

from xlbatch.resources import trade_file
from xlbatch.units import mm_per

Line = Mapping[str, str]


@cache
def table(name: str) -> tuple[Line, ...]:
    """The lines of `name`.csv, each a mapping from heading to text."""
    with trade_file(f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return tuple(csv.DictReader(file))


@cache
def words(cell: str) -> tuple[str, ...]:
    """The parts of a `a; b; c` cell."""
    return tuple(part for part in (piece.strip() for piece in cell.split(";")) if part)


@cache
def practice(name: str) -> float:
    """A number of the trade that is no one's to type in a cell; a length in mm, whatever its line's unit. Raises
    KeyError for one not in the table."""
    line = {line["Practice"]: line for line in table("practice")}[name]
    value, unit = float(line["Value"]), line["Unit"]
    return round(value * mm_per(unit), 3) if unit in ("in", "mm") else value


@cache
def color_hex(color: str) -> str | None:
    """The `#rrggbb` of a color by its name or another name for it, or None."""
    name = color_name(color)
    return next((line["Hex"] for line in table("colors") if line["Color"] == name), None)


@cache
def dot_limit(dots: int) -> float:
    """The hottest iron (°C) a care label with `dots` dots allows: ISO 3758:2012."""
    return next(float(line["Hottest (°C)"]) for line in table("care_label") if line["Iron dots"] == str(dots))


@cache
def color_name(color: str) -> str:
    """A color's name in the table for any of its names, else the name as given, in lower case."""
    wanted = color.strip().casefold()
    for line in table("colors"):
        if wanted == line["Color"] or wanted in words(line["Other names"]):
            return line["Color"]
    return wanted


@cache
def iron_dial(celsius: float) -> str:
    """Where an iron's dial stands for a heat (°C), in words."""
    lines = table("iron_dial")
    return next((line["Dial"] for line in lines if celsius <= float(line["Up to (°C)"]) + 0.5), lines[-1]["Dial"])
