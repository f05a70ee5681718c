"""A cell that holds a number, or a word in its place."""

from typing import NamedTuple

from xlbatch.files.raw import Raw
from xlbatch.tables.cells import Unclear, number, shown_value


class NumberOrWord(NamedTuple):
    """A number, or None for the word."""

    number: float | None


def number_or_word(cell: Raw, choices: tuple[str, ...]) -> NumberOrWord | Unclear:
    """The first of the choices, a word, or a number within the range that follows it."""
    word, between = choices
    if shown_value(cell).casefold() == word:
        return NumberOrWord(None)
    value = number(cell, (between,))
    return value if isinstance(value, Unclear) else NumberOrWord(value)
