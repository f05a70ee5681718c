"""Turns the Positions sheet into positions; what the person did not list is as in the built-in table."""

from collections.abc import Iterable
from functools import cache

from xlbatch.job.position import ANY, Position
from xlbatch.problems import Problem
from xlbatch.tables.built_in import built_in
from xlbatch.tables.line import Line


def read_positions(given: Iterable[Line]) -> tuple[tuple[Position, ...], tuple[Problem, ...]]:
    """The person's positions, then the built-in ones they did not list; and what was wrong. A bad row is left out."""
    rows = tuple(given)
    own = tuple(position for position in map(_position, rows) if position)
    listed = {position.key for position in own}
    others = tuple(position for position in _built_in() if position.key not in listed)
    return own + others, tuple(dict.fromkeys(problem for line in rows for problem in line.problems))


@cache
def _built_in() -> tuple[Position, ...]:
    return tuple(position for position in map(_position, built_in("placements", "Positions")) if position)


def _position(line: Line) -> Position | None:
    """The position of a row, or None where something on it cannot be read."""
    position = Position(
        source=line.source,
        position=line.needed("Position"),
        for_=line.needed_choice("For"),
        neckline=line.choice("Neckline") or ANY,
        side=line.choice("Side") or "front",
        measured_from=line.needed_choice("Measured from"),
        distance=line.length("Distance") or 0.0,
        across=line.length("From center") or 0.0,
        under=tuple(name.casefold() for name in line.names("Under")),
        gap=line.length("Gap") or 0.0,
    )
    return None if line.stopped or line.unclear else position
