"""Where the plate comes down to cover a decal: overlapping sections on a grid, as few as that allows."""

import math
from typing import NamedTuple

from xlbatch.job.job import Press


class Section(NamedTuple):
    """The middle of one plate placement, in mm from the decal's middle: to the right and up, as one looks at it."""

    right: float
    up: float


def sections(width: float, height: float, press: Press) -> tuple[Section, ...]:
    """The plate placements for a decal of width × height (mm), row by row from the top left.

    The garment may lie either way round on the press; the way that needs fewer is taken. Neighbors overlap by at
    least the press's overlap, or by half the plate where the overlap is more than that."""
    ways = [
        (_along(width, across, press.overlap), _along(height, down, press.overlap))
        for across, down in ((press.width, press.depth), (press.depth, press.width))
    ]
    columns, rows = min(ways, key=lambda way: len(way[0]) * len(way[1]))
    return tuple(Section(right, -down) for down in rows for right in columns)


def _along(length: float, plate: float, overlap: float) -> tuple[float, ...]:
    """The middles of the sections of `plate` that cover `length`, spread evenly about its middle."""
    if length <= plate:
        return (0.0,)
    count = 1 + math.ceil((length - plate) / max(plate - overlap, plate / 2) - 1e-9)
    step = (length - plate) / (count - 1)
    return tuple(round((at - (count - 1) / 2) * step, 3) for at in range(count))
