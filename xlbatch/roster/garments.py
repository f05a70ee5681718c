"""Turns the Garments sheet into blanks; what a row leaves open is taken from the built-in garment nearest to it."""

from collections.abc import Iterable
from functools import cache
from typing import cast

from xlbatch.job.job import Blank, Class, Neckline
from xlbatch.problems import Problem
from xlbatch.problems.phrases import phrase
from xlbatch.tables.built_in import built_in
from xlbatch.tables.line import Line
from xlbatch.tables.sizes import read_size, size_class, wearer
from xlbatch.trade.tables import practice

Key = tuple[str, str]  # garment and size, without regard to case
MEASURES = ("Chest width", "Body length", "Collar drop front", "Collar drop back")


def read_garments(given: Iterable[Line]) -> tuple[tuple[Blank, ...], tuple[Problem, ...]]:
    """The person's blanks, then the built-in ones they did not list; and what was wrong. A bad row is left out."""
    rows = tuple(given)
    own = tuple(blank for blank in map(_blank, rows) if blank)
    _note_twice(rows)
    listed = {_key(line) for line in rows}
    others = tuple(blank for key, blank in _built_in().items() if key not in listed)
    return own + others, _once(problem for line in rows for problem in line.problems)


def _note_twice(rows: Iterable[Line]) -> None:
    """One garment may have several rows for a size, each for other colors."""
    seen: set[tuple[Key, str]] = set()
    for line in rows:
        garment, size = _key(line)
        colors = {color.casefold() for color in line.names("Colors")} or {""}
        if any(((garment, size), color) in seen for color in colors):
            line.found("garment-twice", "Garment", line.text("Garment"), garment=line.text("Garment"), size=size)
        seen |= {((garment, size), color) for color in colors}


def _once(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """The problems without repeats; what was assumed, once for each garment."""
    kept: dict[object, Problem] = {}
    for problem in problems:
        kept.setdefault((problem.code, problem.found) if problem.code == "assumed" else problem, problem)
    return tuple(kept.values())


@cache
def _built_in() -> dict[Key, Blank]:
    blanks = (_blank(line) for line in built_in("garments", "Garments"))
    return {(blank.garment.casefold(), blank.size): blank for blank in blanks if blank}


@cache
def _nearest(for_: Class, size: str, neckline: Neckline | None) -> Blank | None:
    """The first built-in blank for the same wearers in that size and neckline, else with a crew neck."""
    alike = [blank for blank in _built_in().values() if (blank.for_, blank.size) == (for_, size)]
    for wanted in (neckline, "crew"):
        for blank in alike:
            if blank.neckline == wanted:
                return blank
    return None


def _key(line: Line) -> Key:
    return line.text("Garment").casefold(), read_size(line.text("Size"), _for(line)) or ""


def _for(line: Line) -> Class | None:
    return wearer(line.text("For")) or cast(Class | None, line.choice("For") or None)


def _blank(line: Line) -> Blank | None:
    """The blank of a row, or None where something on it cannot be read or is not known."""
    garment, size = line.needed("Garment"), line.size("Size", _for(line))
    if not line.given("Size"):
        line.found("value-needed", "Size", heading="Size")
    for_ = _for(line) or size_class(size)
    neckline = cast(Neckline | None, line.choice("Neckline") or None)
    same = _built_in().get((garment.casefold(), size)) if not line.source.built_in else None
    like = same or _nearest(for_, size, neckline) if not line.source.built_in else None
    measures = _measures(line, like)
    if like and not same and not line.stopped and not all(map(line.given, MEASURES)):
        what, used = phrase("measures of", garment=garment), phrase("as the same size", garment=like.garment)
        line.found("assumed", MEASURES[0], garment, what=what, used=used, sheet="Garments")
    if line.stopped or measures is None:
        return None
    chest, length, drop_front, drop_back = measures
    clear = line.features("Keep clear")
    sleeve, opening = line.length("Sleeve length"), line.length("Sleeve opening")
    return Blank(
        source=line.source,
        garment=garment,
        for_=for_,
        neckline=neckline or (like.neckline if like else "crew"),
        fabric=line.text("Fabric") or (same.fabric if same else ""),
        dots=line.dots("Iron dots"),
        heat_limit=line.temperature("Heat limit"),
        size=size,
        chest=chest,
        length=length,
        drop_front=drop_front,
        drop_back=drop_back,
        sleeve_length=like.sleeve_length if sleeve is None and like else sleeve,
        sleeve_opening=like.sleeve_opening if opening is None and like else opening,
        colors=line.names("Colors") or (same.colors if same else ()),
        prices=line.prices("Price"),
        on_hand=line.stock("On hand"),
        keep_clear=like.keep_clear if clear is None and like else clear or (),
        between_armholes=line.length("Between armholes") or _between_armholes(chest, like),
    )


def _between_armholes(chest: float, like: Blank | None) -> float:
    """From armhole to armhole: in the part of the chest width that it is on the garment most like this one."""
    usual = practice("between the armhole seams, of the chest width")
    return round(chest * (like.between_armholes / like.chest if like and like.between_armholes else usual), 3)


def _measures(line: Line, like: Blank | None) -> tuple[float, float, float, float] | None:
    """Chest width, body length, collar drop front and back (mm); None, with the problem, where one is not known."""
    usual = (like.chest, like.length, like.drop_front, like.drop_back) if like else (None,) * 4
    measures: list[float] = []
    for heading, other in zip(MEASURES, usual, strict=True):
        given = line.length(heading)
        value = other if given is None else given
        if value is not None:
            measures.append(value)
        elif not line.given(heading):
            line.found("value-needed", heading, heading=heading)
    return (measures[0], measures[1], measures[2], measures[3]) if len(measures) == 4 else None
