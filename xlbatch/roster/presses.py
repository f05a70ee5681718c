"""Turns the Press sheet into presses; the first row is the one used."""

from collections.abc import Iterable
from functools import cache

from xlbatch.job.job import Press
from xlbatch.problems import Problem
from xlbatch.tables.built_in import built_in
from xlbatch.tables.line import Line


def read_presses(given: Iterable[Line]) -> tuple[tuple[Press, ...], tuple[Problem, ...]]:
    """The person's presses, or the built-in ones; and what was wrong. A bad row is left out."""
    rows = tuple(given)
    own = tuple(press for press in map(_press, rows) if press)
    built = tuple(press for press in map(_press, built_in("presses", "Press")) if press)
    return own or built, tuple(dict.fromkeys(problem for line in rows for problem in line.problems))


def _press(line: Line) -> Press | None:
    """The press of a row, its blanks filled from the built-in press of its kind."""
    name, usual = line.needed("Press"), _of_kind(line.choice("Kind"))
    width, depth = line.length("Plate width"), line.length("Plate depth")
    hottest, overlap = line.temperature("Hottest"), line.length("Overlap")
    press = Press(
        source=line.source,
        name=name,
        kind=line.choice("Kind") or usual.choice("Kind"),
        width=_or(width, usual.length("Plate width")),
        depth=_or(depth, usual.length("Plate depth")),
        hottest=_or(hottest, usual.temperature("Hottest")),
        cover=line.text("Cover") or usual.text("Cover"),
        overlap=_or(overlap, usual.length("Overlap")),
    )
    return None if line.stopped else press


@cache
def _of_kind(kind: str) -> Line:
    """The built-in press of a kind; the first one where no kind is given."""
    built = built_in("presses", "Press")
    return next((line for line in built if line.choice("Kind") == kind), built[0])


def _or(given: float | None, usual: float | None) -> float:
    value = usual if given is None else given
    assert value is not None, "presses.csv has every value"
    return value
