"""The registry of pint that every factor of a length or temperature comes from."""

from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pint import UnitRegistry

_NEEDED = ("milli-", "centi-", "meter", "inch", "foot", "yard", "kelvin", "degree_Celsius", "degree_Fahrenheit")


@cache
def registry() -> "UnitRegistry[float]":
    """Of pint's own definitions the few needed here, by its own file: to read them all takes half a second."""
    import pint

    own = files("pint").joinpath("default_en.txt").read_text(encoding="utf-8").splitlines()
    made: UnitRegistry[float] = pint.UnitRegistry(None)
    for line in own:
        if line.strip().startswith(tuple(f"{name} =" for name in _NEEDED)):
            made.define(line.split("#")[0].strip())
    return made
