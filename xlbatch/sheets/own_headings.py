"""The headings of the columns that a plan's own sheets have, in every unit: all others are people's."""

from collections.abc import Mapping

from xlbatch.paper.page import Column
from xlbatch.sheets import cut_list, money, press_log, problems_sheet, proof, shopping_list
from xlbatch.sheets.line_up import layer_columns

LENGTHS, TEMPERATURES = ("in", "cm", "mm"), ("°F", "°C")


def own_headings() -> Mapping[str, frozenset[str]]:
    """By sheet."""
    return {
        "Problems": _named(problems_sheet.COLUMNS),
        "Proof": _named(proof.COLUMNS),
        "Shopping list": _named(shopping_list.COLUMNS),
        "Cut list": _named(*(cut_list.columns(unit) for unit in LENGTHS)),
        "Press log": _named(
            *(press_log.columns(unit, degrees, layer_columns(unit, ())) for unit in LENGTHS for degrees in TEMPERATURES)
        ),
        "Money": _named(money.COLUMNS),
    }


def _named(*columns: tuple[Column, ...]) -> frozenset[str]:
    return frozenset(column.heading for of_sheet in columns for column in of_sheet)
