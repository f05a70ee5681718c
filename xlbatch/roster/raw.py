"""Cells and sheets as they stand in a file, before anything in them is understood."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, NamedTuple


class Raw(NamedTuple):
    """One cell: its value (text, number, bool, date, time), its number format, and what is wrong with it."""

    value: object
    format: str = "General"
    fault: Literal["", "error", "unsaved"] = ""


@dataclass(frozen=True)
class RawSheet:
    """The filled rows of a sheet, from row number to (column number to cell), both counted from 1."""

    name: str
    rows: Mapping[int, Mapping[int, Raw]]
    hidden: frozenset[int] = frozenset()


@dataclass(frozen=True)
class Unreadable:
    """Why a file cannot be read at all, in a plain sentence or two."""

    sentence: str


class Refusal(Exception):
    """Raised inside the file readers when a file cannot be read; its text is the person's sentence."""
