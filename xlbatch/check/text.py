"""What a decal of a garment says: the print name, the number, or a text with columns and settings in braces."""

import re
from collections.abc import Iterator, Mapping
from functools import cache, lru_cache
from typing import NamedTuple

from xlbatch.check.names import did_you_mean
from xlbatch.job.job import NO_NAME, DecalSpec, RosterRow, Settings
from xlbatch.problems import Problem, Where, problem
from xlbatch.trade.name_parts import first_name, last_name, whole_name
from xlbatch.trade.tables import table

_BRACES = re.compile(r"\{([^{}]*)\}")
LEFT_EMPTY = "-"  # in a cell: nothing is printed there
_WORDED = ("text", "choice", "count")  # kinds of settings that read the same in print
# the columns of the roster that say something in print, and their fields
_COLUMNS = {
    **{"who": "who", "first name": "first_name", "last name": "last_name", "group": "group", "garment": "garment"},
    **{"size": "size", "color": "color", "design": "design", "number": "number", "note": "note"},
}


class Filled(NamedTuple):
    """A text with its braces filled in for one garment: "" where a cell leaves the room empty. `unknown` braces name
    nothing; `blank` ones have nothing for this garment."""

    text: str
    unknown: tuple[str, ...] = ()
    blank: tuple[str, ...] = ()


def print_name(row: RosterRow, settings: Settings) -> str:
    """The name to print: as typed in Print name, else the whole, first or last name of Who; "" for none."""
    if row.print_name == NO_NAME:
        return ""
    if row.print_name:
        return row.print_name
    if settings.print_ == "first name":
        return row.first_name or first_name(row.who)
    if settings.print_ == "last name":
        return row.last_name or last_name(row.who)
    return whole_name(row.who)


def decal_text(spec: DecalSpec, row: RosterRow, settings: Settings) -> str:
    """The text of one decal on one garment; "" for artwork, and for a text with nothing to say."""
    match spec.what:
        case "artwork":
            return ""
        case "print name":
            return print_name(row, settings)
        case "number":
            return row.number
        case "text":
            return filled(spec.text, row, settings).text


def filled(text: str, row: RosterRow, settings: Settings) -> Filled:
    """`text` with {Who}, {Group}, {Shared line} … filled in for a garment; a cell with only `-` leaves it all empty."""
    names = _names_in(text)
    if not names:
        return Filled(text.strip())
    values = {name: _value(name, row, settings) for name in names}
    unknown = tuple(name for name, value in values.items() if value is None)
    blank = tuple(name for name, value in values.items() if value == "")
    if LEFT_EMPTY in values.values():
        return Filled("", unknown)
    text_of = {name: f"{{{name}}}" if value is None else value for name, value in values.items()}
    return Filled(_BRACES.sub(lambda match: text_of[match[1].strip()], text).strip(), unknown, blank)


@lru_cache(maxsize=1000)
def _names_in(text: str) -> tuple[str, ...]:
    """The names in the braces of a text."""
    return tuple(dict.fromkeys(match[1].strip() for match in _BRACES.finditer(text)))


def braces_problems(text: str, row: RosterRow, settings: Settings, where: Where) -> Iterator[Problem]:
    """Braces of a text at `where` that name nothing, and columns with nothing in them for this garment."""
    made = filled(text, row, settings)
    rows = (row.source.row,)
    for name in made.unknown:
        near = did_you_mean(name, (*_names(row), *_called()))
        near = _called().get(near, near)
        hint = f"{{{near}}}" if near else ""
        yield problem("braces-unknown", where, f"{{{name}}}", suggestion=hint, rows=rows)
    for name in made.blank:
        yield problem(
            "braces-blank", _cell(name, row), "", rows=rows, name=name, who=row.who or f"row {row.source.row}"
        )


def has_braces(text: str) -> bool:
    """Whether a text asks for a column or setting."""
    return bool(_BRACES.search(text))


def of_settings(name: str) -> bool:
    """Whether braces with this name ask for a setting."""
    return name.casefold() in _settings()


def _names(row: RosterRow) -> tuple[str, ...]:
    return (*(name.capitalize() for name in _COLUMNS), "Print name", *row.source.extra, *_settings().values())


def _cell(name: str, row: RosterRow) -> Where:
    """The cell that braces ask for."""
    heading = next((known for known in row.source.cells if known.casefold() == name.casefold()), "")
    return Where("Job") if of_settings(name) else row.source.at(heading)


def _value(name: str, row: RosterRow, settings: Settings) -> str | None:
    """What stands for braces with this name; None where they name nothing."""
    value = _as_typed(" ".join(name.casefold().split()), row, settings)
    return value.upper() if value and len(name) > 1 and name.isupper() else value  # {GROUP} asks for capitals


def _as_typed(wanted: str, row: RosterRow, settings: Settings) -> str | None:
    if wanted == "print name":
        return print_name(row, settings)
    if wanted in ("first name", "last name"):
        return row.first_name or first_name(row.who) if wanted == "first name" else row.last_name or last_name(row.who)
    if wanted in _COLUMNS:
        return str(getattr(row, _COLUMNS[wanted]))
    for heading, value in row.source.extra.items():
        if heading.casefold() == wanted:
            return value
    if wanted in _settings():
        return str(getattr(settings, _field(wanted)))
    return _as_typed(_called()[wanted].casefold(), row, settings) if wanted in _called() else None


@cache
def _called() -> Mapping[str, str]:
    """The columns that can be asked for by other words for them, in lower case: family is Group."""
    meanings: dict[str, set[str]] = {}
    for line in table("roster_words"):
        if line["Means"].casefold() in (*_COLUMNS, "print name"):
            for word in line["Whole headings"].split(";"):
                meanings.setdefault(word.strip().casefold(), set()).add(line["Means"])
    return {word: min(means) for word, means in meanings.items() if len(means) == 1}


@cache
def _settings() -> Mapping[str, str]:
    """The settings whose values can be printed as they are, by their names in lower case."""
    return {line["Setting"].casefold(): line["Setting"] for line in table("job") if line["Kind"] in _WORDED}


def _field(setting: str) -> str:
    return {"print": "print_"}.get(setting, setting.replace(" ", "_").rstrip("."))
