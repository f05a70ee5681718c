"""Where the plate comes down to cover a decal: overlapping sections on a grid, as few as that allows."""

import math
from collections.abc import Sequence
from typing import NamedTuple

from xlbatch.job.job import Press
from xlbatch.trade.tables import practice
from xlbatch.units import print_step


class Section(NamedTuple):
    """The middle of one plate placement, in mm from the decal's middle: to the right and up, as one looks at it."""

    right: float
    up: float


def moves_of(unit: str) -> tuple[float, ...]:
    """The steps (mm) the plate is moved by where the overlap allows it: large ones, else what can be measured."""
    if unit == "in":
        step = practice("how far the plate is moved at a time, in whole steps of inches")
    else:
        step = practice("how far the plate is moved at a time, in whole steps of the metric system")
    return step, print_step(unit)


def sections(width: float, height: float, press: Press, moves: Sequence[float] = ()) -> tuple[Section, ...]:
    """The plate placements for a decal of width × height (mm), row by row from the top left, moved by whole steps, the
    first of `moves` that the overlap allows.

    The garment may lie either way round on the press; the way that needs fewer is taken. Neighbors overlap by at
    least the press's overlap, or by half the plate where the overlap is more than that."""
    _, columns, rows = _way(width, height, press, moves)
    return tuple(Section(right, -down) for down in rows for right in columns)


def plate_lying(width: float, height: float, press: Press) -> tuple[float, float]:
    """The plate's reach across and down (mm) as the garment lies for these sections."""
    return _way(width, height, press, ())[0]


def _way(
    width: float, height: float, press: Press, moves: Sequence[float]
) -> tuple[tuple[float, float], tuple[float, ...], tuple[float, ...]]:
    """The plate across and down, and the columns and rows of its sections, the way round that needs fewest."""
    ways = [
        ((across, down), _along(width, across, press.overlap, moves), _along(height, down, press.overlap, moves))
        for across, down in ((press.width, press.depth), (press.depth, press.width))
    ]
    return min(ways, key=lambda way: len(way[1]) * len(way[2]))


def _along(length: float, plate: float, overlap: float, moves: Sequence[float]) -> tuple[float, ...]:
    """The middles of the sections of `plate` that cover `length`, spread evenly about its middle; by whole steps
    where neighbors still overlap enough."""
    if length <= plate:
        return (0.0,)
    most = max(plate - overlap, plate / 2)
    count = 1 + math.ceil((length - plate) / most - 1e-9)
    step = (length - plate) / (count - 1)
    whole = (math.ceil(step / move - 1e-9) * move for move in moves)
    step = next((steps for steps in whole if steps <= most + 1e-9), step)
    return tuple(round((section - (count - 1) / 2) * step, 3) for section in range(count))
