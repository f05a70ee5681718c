"""The columns of the input sheets: one line of columns.csv each, used to read them and to write them back."""

from dataclasses import dataclass
from functools import cache

from xlbatch.trade.tables import table, words


@dataclass(frozen=True)
class InputColumn:
    """One column of an input sheet. `kind` says how its cells are read: text, length, prices …"""

    sheet: str
    heading: str
    kind: str
    choices: tuple[str, ...]
    needed: bool
    example: str
    other_headings: tuple[str, ...]


@cache
def columns(sheet: str) -> tuple[InputColumn, ...]:
    """The columns of an input sheet, in order."""
    return tuple(
        InputColumn(
            line["Sheet"],
            line["Heading"],
            line["Kind"],
            words(line["Choices"]),
            line["Needed"] == "yes",
            line["Example"],
            words(line["Other headings"]),
        )
        for line in table("columns")
        if line["Sheet"] == sheet
    )
