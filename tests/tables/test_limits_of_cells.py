"""What is still read of a cell, and what is too much for any shirt."""

from collections.abc import Callable
from datetime import date, datetime, time, timedelta
from decimal import Decimal

import pytest

from xlbatch.files.raw import Raw
from xlbatch.tables.cells import (
    EITHER_WAY,
    Unclear,
    clock,
    count,
    length,
    likely,
    money,
    number,
    number_text,
    seconds,
    shown_value,
    temperature,
)

READ: list[tuple[Callable[[Raw], object], object, object, object]] = [  # the last that is read, as what, the first not
    (lambda cell: temperature(cell, "°C"), 500, 500.0, 500.5),
    (lambda cell: temperature(cell, "°C"), 0, 0.0, -0.5),
    (seconds, 3600, 3600.0, 3601),
    (seconds, "60 min", 3600.0, "61 min"),
    (money, 999_999_999, Decimal(999_999_999), 1_000_000_000),
    (money, 0, Decimal(0), "-0.01"),
    (count, 999_999, 999_999, 1_000_000),
    (count, 0, 0, -1),
    (count, 7.0, 7, 7.5),
    (lambda cell: length(cell, "mm"), 1_000_000, 1e6, 1_000_001),
    (lambda cell: length(cell, "mm"), 0.5, 0.5, 0),
    (lambda cell: length(cell, "mm", (EITHER_WAY,)), -1_000_000, -1e6, -1_000_001),
    (lambda cell: length(cell, "mm", (EITHER_WAY,)), 0, 0, "1001 m"),
    (lambda cell: length(cell, "mm", (EITHER_WAY,)), "-5 mm", -5.0, "--5 mm"),
    (lambda cell: number(cell, ("1-12",)), 1, 1.0, 0.9),
    (lambda cell: number(cell, ("1-12",)), 12, 12.0, 12.1),
    (clock, "23:59", 1439, "24:00"),
    (clock, "9:59", 599, "9:60"),
    (clock, "12 am", 0, "0 am"),
    (clock, "12 pm", 720, "13 pm"),
    (clock, "1 am", 60, "13 am"),
    (clock, timedelta(minutes=1439), 1439, timedelta(minutes=1440)),
    (clock, timedelta(0), 0, timedelta(minutes=-1)),
    (clock, time(9, 30), 570, "930"),
    (clock, 0.5, 720, 1.5),
]


@pytest.mark.parametrize(("read", "last", "value", "beyond"), READ)
def test_the_last_that_is_read(read: Callable[[Raw], object], last: object, value: object, beyond: object) -> None:
    assert read(Raw(last)) == value
    assert read(Raw(beyond)) == Unclear()


@pytest.mark.parametrize(
    ("value", "text"),
    [(datetime(2026, 6, 14), "14-Jun-2026"), (datetime(2026, 1, 4, 0, 1), "4-Jan-2026 00:01"),
     (date(2026, 12, 31), "31-Dec-2026"), (None, ""), (time(9, 30), "09:30:00")],
)  # fmt: skip
def test_how_a_cell_is_shown(value: object, text: str) -> None:
    assert shown_value(Raw(value)) == text


@pytest.mark.parametrize(
    ("value", "form", "text"),
    [(-7, "00", "-7"), (7, "00.0", "7"), (7.5, "00", "7.5"), (999_999_999_999_999.0, "General", "999999999999999"),
     (1e15, "General", "1e+15"), (-1e15, "General", "-1e+15"), (0, "000", "000"), (12, "", "12")],
)  # fmt: skip
def test_a_number_as_text(value: float, form: str, text: str) -> None:
    assert number_text(value, form) == text


@pytest.mark.parametrize(
    ("typed", "name"), [("sweeper", "Sweater"), ("poodle", ""), ("polar", ""), ("Polo", "Polo shirt")]
)
def test_what_is_likely_meant(typed: str, name: str) -> None:
    assert likely(typed, ["Hoodie", "Sweater", "Polo shirt"]) == name
