"""Turns one raw cell into a value, one function for each kind of column. None: nothing was given."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from decimal import Decimal, InvalidOperation
from functools import lru_cache
from typing import Literal, NamedTuple

from rapidfuzz import fuzz, process

from xlbatch.files.clean import clean
from xlbatch.files.raw import Raw
from xlbatch.trade.answer_words import answer
from xlbatch.units import mm_per, parse_length, parse_temperature

LIKELY = 70  # of 100: below this a suggestion helps less than it misleads
LONGEST = 1_000_000.0  # mm: no length in this trade is a kilometer
HOTTEST = 500.0  # °C: no press comes near
EITHER_WAY = "left or right"  # among a length column's choices: it may be negative
SLOWEST = 3600.0  # s
DEAREST = Decimal(10**9)

MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
_YES = ("yes", "y", "true", "1", "x", "on", "✓", "✔", "☑", "✅")
_NO = ("no", "n", "false", "0", "off", "-", "☐", "✗", "✘", "❌")
_FORMAT_UNIT = re.compile(r'"?\s*\\?\s*(in|cm|mm|ft|yd|°F|°C|″)"?\s*$')
_NUMBER = re.compile(r"[+-]?(\d+([.,]\d+)?|[.,]\d+)")
_MONEY = re.compile(r"(?:[^\W\d_]{1,3}|[^\w\s.,+-])?\.?\s*(\d[\d.,' ]*|\.\d+)\s*(?:[^\W\d_]{1,3}|[^\w\s.,+-])?")
_SECONDS = re.compile(r"([\d.,]+)\s*(s|secs?|seconds?|m|mins?|minutes?)?\.?", re.IGNORECASE)
_TIME = re.compile(r"(\d{1,2})(?:[:.h](\d{2}))?(?::\d{2})?\s*([ap])?\.?(?:m\.?)?", re.IGNORECASE)
_DOTS = re.compile(r"([123])\s*(?:dots?)?|(•{1,3})", re.IGNORECASE)
_RANGE = re.compile(r"(-?[\d.]+)-(-?[\d.]+)")
_CHOICE_ENDINGS = ("", "neck", "necked", "ed", "s")


@dataclass(frozen=True)
class Unclear:
    """A cell that cannot be read as its kind, and what it may have been meant to be."""

    suggestion: str = ""


class Margin(NamedTuple):
    """What is added to the cost (0.30 for 30 %), or one price a garment; the other is None."""

    margin: Decimal | None
    fixed_price: Decimal | None


def shown_value(cell: Raw) -> str:
    """A cell's value as a person sees it."""
    value = cell.value
    if isinstance(value, str):
        return clean(value).text
    if isinstance(value, bool):
        return "TRUE" if value else "FALSE"
    if isinstance(value, int | float):
        return number_text(value, cell.format)
    if isinstance(value, datetime | date):
        clock = f" {value:%H:%M}" if isinstance(value, datetime) and value.time() != time() else ""
        return f"{value.day}-{MONTHS[value.month - 1]}-{value.year}{clock}"
    return "" if value is None else str(value)


@lru_cache(maxsize=10_000)
def number_text(value: float, number_format: str = "General") -> str:
    """A number as text: 7 and 7.0 are `7`, and `07` under the number format `00`."""
    whole = isinstance(value, int) or value.is_integer()
    digits = str(int(value)) if whole and abs(value) < 1e15 else f"{value:.15g}"
    zeros = number_format.split(";")[0]
    return digits.zfill(len(zeros)) if whole and value >= 0 and zeros.strip("0") == "" else digits


def text(cell: Raw) -> str | Unclear:
    """The text of a cell. A date is unclear: people type no dates where a name or a number is wanted."""
    if isinstance(cell.value, date | time | timedelta):
        return Unclear(typed_before(cell))
    return shown_value(cell)


def typed_before(cell: Raw) -> str:
    """What was most likely typed before the spreadsheet made a date of it: `3-5` for 3 May or 5 March."""
    day = cell.value
    if not isinstance(day, date):
        return ""
    form = cell.format.lower()
    if "d" not in form:
        return f"{day.month}-{day.year % 100}"
    numeric = re.search(r"[dm]+", form.replace("yyyy", "").replace("yy", ""))
    if "mmm" in form or numeric is None or form == "mm-dd-yy":  # the last stands for the computer's own order
        return f"{min(day.day, day.month)}-{max(day.day, day.month)}"
    return f"{day.month}-{day.day}" if numeric[0].startswith("m") else f"{day.day}-{day.month}"


def _typed(cell: Raw) -> str:
    """Cleaned text for the parsers below; numbers and bools in their plain spelling."""
    return shown_value(Raw(cell.value))


def decimal(typed: str) -> Decimal | None:
    """The number `1200`, `4,20` or `1,200.50`, or None."""
    digits = re.sub(r"[' ](?=\d)", "", typed.strip())
    if "," in digits and "." in digits:
        digits = digits.replace("," if digits.rfind(".") > digits.rfind(",") else ".", "")
    elif re.fullmatch(r"[1-9]\d{0,2}(,\d{3})+", digits):
        digits = digits.replace(",", "")
    try:
        return Decimal(digits.replace(",", ".")) if _NUMBER.fullmatch(digits) else None
    except InvalidOperation:
        return None


@lru_cache(maxsize=1000)
def limits(choices: str) -> tuple[str, str] | None:
    """The two ends of a range such as `1-12`, or None."""
    match = _RANGE.fullmatch(choices)
    return (match[1], match[2]) if match else None


def in_range(value: float, choices: Iterable[str]) -> bool:
    """Whether a number is within the range `1-12`, where one is given."""
    ends = [limits(choice) for choice in choices]
    return all(float(limit[0]) <= value <= float(limit[1]) for limit in ends if limit)


def number(cell: Raw, choices: tuple[str, ...] = ()) -> float | Unclear:
    """A number within the range given, `95 %` read as 95."""
    value = cell.value if type(cell.value) is int else decimal(_typed(cell).removesuffix("%"))
    if value is None or isinstance(cell.value, bool):
        return Unclear()
    read = float(value) * (100 if "%" in cell.format and not isinstance(cell.value, str) else 1)
    return round(read, 9) if in_range(read, choices) else Unclear()


def count(cell: Raw, choices: tuple[str, ...] = ()) -> int | Unclear:
    """A whole number, at least 0."""
    value = number(cell, choices)
    if (
        isinstance(value, Unclear) or not 0 <= value <= 999_999 or value != int(value)
    ):  # in this order: it may be infinite
        return Unclear()
    return int(value)


def length(cell: Raw, unit: str, ends: tuple[str, ...] = ()) -> float | Unclear:
    """A length in mm, more than 0 unless `ends` says otherwise; a bare number in `unit`, or in the unit its number
    format shows."""
    plain, either_way = _plain(cell), EITHER_WAY in ends
    left = either_way and isinstance(plain, str) and plain[:1] in "-−"
    value = parse_length(plain[1:] if left and isinstance(plain, str) else plain, _format_unit(cell) or unit)
    if value is None or not (-LONGEST if either_way else 0) <= value <= LONGEST or (not value and not ends):
        return Unclear()
    return -value if left else value


def temperature(cell: Raw, unit: str) -> float | Unclear:
    """A temperature in °C; a bare number in `unit`, or in the unit its number format shows."""
    value = parse_temperature(_plain(cell), _format_unit(cell) or unit)
    return value if value is not None and 0 <= value <= HOTTEST else Unclear()


def _plain(cell: Raw) -> object:
    if isinstance(cell.value, date | time | timedelta):
        return "a date"
    return clean(cell.value).text if isinstance(cell.value, str) else cell.value


def _format_unit(cell: Raw) -> str:
    if isinstance(cell.value, str) or cell.format == "General":
        return ""
    match = _FORMAT_UNIT.search(cell.format.split(";")[0])
    return match[1] if match else ""


def seconds(cell: Raw) -> float | Unclear:
    """A time in seconds: `30`, `30 s` or `1 min`."""
    match = _SECONDS.fullmatch(_typed(cell))
    value = decimal(match[1]) if match else None
    if match is None or value is None:
        return Unclear()
    whole = float(value) * (60 if (match[2] or "s").lower().startswith("m") else 1)
    return whole if whole <= SLOWEST else Unclear()


def yes_no(cell: Raw) -> bool | Unclear:
    """Yes or no, in the usual ways to write them, in any of the languages of trade/answers.csv."""
    typed = _typed(cell).casefold()
    means = "yes" if typed in _YES else "no" if typed in _NO else answer("Yes or no", typed)
    return means == "yes" if means else Unclear()


def choice(cell: Raw, choices: tuple[str, ...]) -> str | Unclear:
    """One of the choices, without regard to case, spaces, signs and doubled letters; with a question mark it is none,
    but the likely one."""
    typed = _typed(cell)
    chosen = _choice(typed, choices)
    return Unclear(chosen) if "?" in typed and isinstance(chosen, str) else chosen


@lru_cache(maxsize=10_000)
def _choice(typed: str, choices: tuple[str, ...]) -> str | Unclear:
    for choice in choices:
        if _letters(typed) in {_letters(choice + ending) for ending in _CHOICE_ENDINGS}:
            return choice
    for choice in choices:
        if _same_unit(typed, choice):
            return choice
    return Unclear(likely(typed, choices))


@lru_cache(maxsize=10_000)
def _letters(typed: str) -> str:
    letters = re.sub(r"[\W_]", "", typed.casefold())
    return re.sub(r"([a-z])\1+", r"\1", letters) or typed


def _same_unit(typed: str, choice: str) -> bool:
    try:
        return mm_per(typed) == mm_per(choice)
    except KeyError:
        return False


def likely(typed: str, names: Iterable[str]) -> str:
    """The most similar of the names, or "" where none is likely."""
    known = {name.casefold(): name for name in names}
    best = process.extractOne(typed.casefold(), list(known), scorer=fuzz.WRatio, score_cutoff=LIKELY)
    return known[best[0]] if best else ""


def money(cell: Raw) -> Decimal | Unclear:
    """An amount of money, at least 0, to at most four places; a currency sign before or after it is allowed."""
    value = None if isinstance(cell.value, bool) else amount(_typed(cell))
    return Unclear() if value is None else value


def amount(typed: str) -> Decimal | None:
    """The amount in `4.20`, `$ 4.20`, `4,20 €` or `1 200 CHF`, or None."""
    match = _MONEY.fullmatch(typed.strip())
    value = decimal(match[1]) if match else decimal(typed)
    if value is None or not 0 <= value < DEAREST:
        return None
    return value if value == round(value, 4) else round(value, 4)


def margin(cell: Raw) -> Margin | Unclear:
    """`30 %` (also a number cell formatted so) is a margin, `15.00` a fixed price, 0 no margin."""
    typed = _typed(cell)
    percent = typed.endswith("%") or ("%" in cell.format and not isinstance(cell.value, str))
    value = None if isinstance(cell.value, bool) else amount(typed.removesuffix("%"))
    if value is None:
        return Unclear()
    if percent:
        return Margin(value / 100 if typed.endswith("%") else value, None)
    return Margin(None, value) if value else Margin(Decimal(0), None)


def paid(cell: Raw) -> Decimal | Literal["yes"] | Unclear | None:
    """An amount, or yes (also the day it was paid); no is nothing paid."""
    typed = _typed(cell).casefold()
    if isinstance(cell.value, date):
        return "yes"
    yes = Unclear() if typed in ("1", "0") else yes_no(cell)
    means = answer("Paid", typed)
    if yes is True or means == "yes":
        return "yes"
    return None if yes is False or means == "no" else money(cell)


def dots(cell: Raw) -> int | Unclear | None:
    """The iron dots of a care label, 1 to 3; None where it says they were not checked."""
    typed = _typed(cell)
    if _letters(typed) == _letters("not checked"):
        return None
    match = _DOTS.fullmatch(typed)
    return int(match[1] or len(match[2])) if match else Unclear()


def clock(cell: Raw) -> int | Unclear:
    """A time of day in minutes after midnight: `9:00`, `9`, `9 am`, `5:30 pm`, or a time cell."""
    value = cell.value
    if isinstance(value, datetime | time):
        return value.hour * 60 + value.minute
    if isinstance(value, timedelta):
        minutes = round(value.total_seconds() / 60)
        return minutes if 0 <= minutes < 1440 else Unclear()
    if isinstance(value, float) and 0 < value < 1:
        return round(value * 1440) % 1440
    match = _TIME.fullmatch(_typed(cell))
    if not match:
        return Unclear()
    hour, minute, half = int(match[1]), int(match[2] or 0), (match[3] or "").lower()
    if half and not 1 <= hour <= 12:
        return Unclear()
    hour = hour % 12 + (12 if half == "p" else 0) if half else hour
    return hour * 60 + minute if hour < 24 and minute < 60 else Unclear()
