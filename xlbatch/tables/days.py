"""Reads a day as people write it (`Saturday 7 November`, `Nov 7th, 3 pm`, `2026-11-07`), and days that are worked."""

import re
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Literal

WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
MONTHS = ("January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
          "December")  # fmt: skip
EVERY_DAY = frozenset(range(7))
LATELY, SOON = 183, 366  # days: how far a date without a year may lie back or ahead

_ISO = re.compile(r"\b(\d{4})-(\d{1,2})-(\d{1,2})\b")
_NUMBERS = re.compile(r"\b(\d{1,2})([./-])(\d{1,2})(?:\2(\d{4}|\d{2}))?(?!\d)")
_CLOCK = re.compile(r"\b\d{1,2}(?::\d\d)?\s*(?:[ap]\.?m\.?\b)|\b\d{1,2}:\d\d\b|\b\d{1,2}\s*(?:h|o'clock|uhr)\b", re.I)
_WORD = re.compile(r"[^\W\d_]+\.?|\d+")
_YEAR = re.compile(r"\d{4}")

_ORDINAL = re.compile(r"(?<=\d)(?:st|nd|rd|th)\b", re.I)

Named = tuple[int, int, int, int, str]  # year (0: none), month, day, where their text ends, what a year is joined by
Why = Literal["", "weekday", "none"]  # why a text is no day: its weekday does not agree; there is none in it


@dataclass(frozen=True)
class Day:
    """A day, and the text it was read from, with its year."""

    day: date
    text: str


def read_day(text: str, today: date, *, month_first: bool) -> Day | Why:
    """The day a text means; "" for a blank. Without a year it is the one nearest to `today` whose weekday, where one
    is given, agrees. `month_first`: 7/11 is the 11th of July."""
    bare = _CLOCK.sub(lambda clock: " " * len(clock[0]), text)
    if not bare.strip():
        return ""
    weekday = next((day_no for word in _WORD.findall(bare) if (day_no := _named(word, WEEKDAYS)) is not None), None)
    named = _numbered(bare, month_first=month_first) or _in_words(bare)
    if named is None:
        return "none" if weekday is None or _more(bare) else _next(weekday, today, text)
    year, month, number, end, joint = named
    years = [year] if year else range(today.year - 1, today.year + 3)
    days = [day for possible in years if (day := _day(possible, month, number))]
    agree = [day for day in days if weekday in (None, day.weekday())]
    near = [day for day in agree if year or -LATELY <= (day - today).days <= SOON]
    if not near:
        return "weekday" if days and weekday is not None else "none"
    day = min(near, key=lambda day: (abs((day - today).days), day < today))
    return Day(day, text if year else f"{text[:end]}{joint}{day.year}{text[end:]}")


def day_text(day: date) -> str:
    """`Saturday 7 November 2026`."""
    return f"{WEEKDAYS[day.weekday()]} {day.day} {MONTHS[day.month - 1]} {day.year}"


def read_work_days(text: str) -> frozenset[int] | None:
    """The days of the week worked on, Monday 0: `every day`, `Monday to Friday`, `Sat, Sun`; None where unclear."""
    plain = text.casefold().strip()
    whole = {"every day": EVERY_DAY, "daily": EVERY_DAY, "all": EVERY_DAY, "any day": EVERY_DAY,
             "weekdays": frozenset(range(5)), "weekends": frozenset((5, 6)), "weekend": frozenset((5, 6))}  # fmt: skip
    if plain in whole:
        return whole[plain]
    days: set[int] = set()
    for part in re.split(r"[,;/&+]| and ", plain):
        ends = [_named(word.strip(), WEEKDAYS) for word in re.split(r"\s*(?:–|-|\bto\b)\s*", part.strip())]
        if not 1 <= len(ends) <= 2 or None in ends:
            return None
        first, last = (ends[0] or 0), (ends[-1] or 0)
        days |= {(first + more) % 7 for more in range((last - first) % 7 + 1)}
    return frozenset(days)


def _named(word: str, names: tuple[str, ...]) -> int | None:
    """Which of the names a word is, or begins with three letters or more of it, a plural included."""
    plain = word.casefold().rstrip(".")
    if len(plain) < 3:
        return None
    short = {"tues": "tue", "thurs": "thu", "thur": "thu", "sept": "sep"}.get(plain, plain)
    return next((place for place, name in enumerate(names) if f"{name.casefold()}s".startswith(short)), None)


def _numbered(text: str, *, month_first: bool) -> Named | None:
    """A date in numbers."""
    if iso := _ISO.search(text):
        return int(iso[1]), int(iso[2]), int(iso[3]), iso.end(), ""
    if match := _NUMBERS.search(text):
        first_number, other, year = int(match[1]), int(match[3]), int(match[4] or 0)
        first = first_number <= 12 if other > 12 else month_first and match[2] != "." and first_number <= 12
        month, day = (first_number, other) if first else (other, first_number)
        return (year + 2000 if 0 < year < 100 else year), month, day, match.end(), match[2]
    return None


def _in_words(text: str) -> Named | None:
    """A date with the month in letters."""
    words = [(word[0], word.end()) for word in _WORD.finditer(_ORDINAL.sub("  ", text))]
    month = next((place for place, (word, _) in enumerate(words) if _named(word, MONTHS) is not None), None)
    if month is None:
        return None
    number = _named(words[month][0], MONTHS) or 0
    beside = [place for place in (month - 1, month + 1, month - 2) if 0 <= place < len(words)]
    day = next((place for place in beside if words[place][0].isdigit() and len(words[place][0]) <= 2), None)
    if day is None:
        return None
    year = next((int(word) for word, _ in words[max(month, day) + 1 :][:1] if _YEAR.fullmatch(word)), 0)
    end = words[max(month, day)][1]
    suffix = _ORDINAL.match(text, end)
    return year, number + 1, int(words[day][0]), suffix.end() if suffix else end, " "


def _more(text: str) -> bool:
    """Whether there is more in it than a weekday and the words beside one."""
    extra = [word for word in _WORD.findall(text) if _named(word, WEEKDAYS) is None]
    return any(word.casefold() not in ("on", "next", "this", "by", "the") for word in extra)


def _next(weekday: int, today: date, text: str) -> Day:
    """The next such weekday after today."""
    day = today + timedelta(days=(weekday - today.weekday() - 1) % 7 + 1)
    return Day(day, f"{text} {day.day} {MONTHS[day.month - 1]} {day.year}")


def _day(year: int, month: int, number: int) -> date | None:
    try:
        return date(year, month, number)
    except ValueError:
        return None
