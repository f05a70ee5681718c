"""Turns the Film sheet into films; blanks are filled from the built-in film of that name, or from its kind."""

import re
from collections.abc import Iterable
from functools import cache
from typing import cast

from xlbatch.job.job import Film, Peel
from xlbatch.problems import Problem
from xlbatch.tables.built_in import built_in
from xlbatch.tables.line import Line
from xlbatch.trade.tables import practice, table, words

USUAL_KIND = "smooth"
USUAL_WIDTH = practice("how wide a roll is of which nothing is known")
MARGIN = practice("how much less than the whole width of a roll is used")


def read_films(given: Iterable[Line]) -> tuple[tuple[Film, ...], tuple[Problem, ...]]:
    """The person's films, then the built-in ones they did not list; and what was wrong. A bad row is left out."""
    rows = tuple(given)
    own = {film.name.casefold(): film for film in reversed([film for film in map(_film, rows) if film])}
    _note_twice(rows)
    listed = {line.text("Film").casefold() for line in rows}
    others = tuple(film for name, film in _built_in().items() if name not in listed)
    return (*reversed(own.values()), *others), tuple(
        dict.fromkeys(problem for line in rows for problem in line.problems)
    )


def _note_twice(rows: Iterable[Line]) -> None:
    seen: set[str] = set()
    for line in rows:
        name = line.text("Film")
        if name.casefold() in seen:
            line.found("film-twice", "Film", name)
        seen.add(name.casefold())


@cache
def _built_in() -> dict[str, Film]:
    films = (_film(line) for line in built_in("films", "Film"))
    return {film.name.casefold(): film for film in films if film}


def _film(line: Line) -> Film | None:
    """The film of a row, or None where something on it cannot be read."""
    name = line.needed("Film")
    like = _built_in().get(name.casefold()) if not line.source.built_in else None
    kind = line.text("Kind") or (like.kind if like else _kind_in(name))
    usual = _of_kind(kind)
    roll, usable = _widths(line, like)
    film = Film(
        source=line.source,
        name=name,
        kind=kind,
        color=line.text("Color") or (like.color if like else _color_in(name)),
        roll_width=roll,
        usable_width=usable,
        rolls=line.rolls("Rolls sold") or (like.rolls if like and not line.given("Rolls sold") else ()),
        on_hand=line.pieces("On hand"),
        temperature=_or(line.temperature("Press temperature"), usual.temperature("Press temperature")),
        warm_up=_or(line.seconds("Warm-up"), usual.seconds("Warm-up")),
        press=_or(line.seconds("Press time"), usual.seconds("Press time")),
        back=_or(line.seconds("Back press"), usual.seconds("Back press")),
        peel=cast(Peel, line.choice("Peel") or usual.choice("Peel")),
        pressure=line.text("Pressure") or usual.text("Pressure"),
        one_direction=bool(_or(line.yes("One direction"), usual.yes("One direction"))),
        thinnest=_or(line.length("Thinnest stroke"), usual.length("Thinnest stroke")),
        cut_with=line.text("Cut with"),
    )
    return None if line.stopped else film


def _or(given: float | None, usual: float | None) -> float:
    value = usual if given is None else given
    assert value is not None, "film_kinds.csv has every value"
    return value


def _widths(line: Line, like: Film | None) -> tuple[float, float]:
    """Roll and usable width (mm); the one not given follows from the other."""
    roll, usable = line.length("Roll width"), line.length("Usable width")
    if roll is None:
        roll = round(usable + MARGIN, 3) if usable is not None else like.roll_width if like else USUAL_WIDTH
    return roll, round(roll - MARGIN, 3) if usable is None else usable


@cache
def _of_kind(kind: str) -> Line:
    """The built-in values of a kind of film; those of the usual kind for one that is not in the table."""
    kinds = {line.text("Kind").casefold(): line for line in built_in("film_kinds", "Film")}
    return kinds.get(kind.casefold(), kinds[USUAL_KIND])


def _kind_in(name: str) -> str:
    words_of = name.casefold()
    return next((line["Kind"] for line in table("film_kinds") if line["Kind"] in words_of), USUAL_KIND)


def _color_in(name: str) -> str:
    """The color a film's name speaks of, by its longest word, or ""."""
    words_of = name.casefold()
    names = {other: line["Color"] for line in table("colors") for other in (line["Color"], *words(line["Other names"]))}
    spoken = [color for color in names if re.search(rf"\b{re.escape(color)}\b", words_of)]
    return names[max(spoken, key=len)] if spoken else ""
