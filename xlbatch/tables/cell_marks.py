"""A few letters that stand for what a cell holds: a plan remembers them instead of the text."""

from collections.abc import Iterator
from datetime import time
from decimal import Decimal
from functools import lru_cache
from zlib import crc32

from xlbatch.files.raw import Raw
from xlbatch.tables.cells import shown_value

MARK = 3  # letters a cell
BLANK, ANY = "-" * MARK, "=" * MARK  # of a blank cell, and of one that may hold anything
FORMULA = "~" * MARK  # of one that holds a formula, whose result may become any other
_LETTERS = "0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ+/"


@lru_cache(maxsize=20_000)  # few texts stand in many cells
def mark_of(text: str) -> str:
    """A few letters that stand for a text: one in 262,144 others has the same."""
    number = crc32(text.encode())
    return "".join(_LETTERS[number >> shift & 63] for shift in (0, 6, 12)) if text else BLANK


@lru_cache(maxsize=20_000, typed=True)
def plain(value: object) -> str:
    """A cell's text, however the program that saved it keeps numbers."""
    number = isinstance(value, int | float) and not isinstance(value, bool)
    return f"{float(value):.6g}" if number else shown_value(Raw(value))  # type: ignore[arg-type]


def mark_of_value(value: object) -> str:
    """The mark of a value that is written: None is blank, one of no plain kind a formula."""
    if isinstance(value, Decimal):
        return _of_plain(float(value))
    return _of_plain(value) if value is None or isinstance(value, str | int | float | time) else FORMULA


@lru_cache(maxsize=1 << 14, typed=True)  # sheets say the same again and again
def _of_plain(value: object) -> str:
    return mark_of(plain(value))


def is_other(text: str, written: str, *, result: bool) -> bool:
    """Whether a text is none that a cell with this mark may hold; `result`: a formula's may stand there."""
    return not result if written == FORMULA else written not in (ANY, mark_of(text))


def each_mark(marks: str) -> Iterator[str]:
    """The marks of a row's cells."""
    return (marks[begins : begins + MARK] for begins in range(0, len(marks), MARK))
