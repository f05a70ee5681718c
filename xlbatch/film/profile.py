"""How far a decal reaches along the film in every column across it, half a gap around its outline included.

Decals whose profiles do not meet keep the gap. A profile holds what lies between the lowest and the highest point of
each column, and what a ball rolled along it from outside does not reach. The ball is as large as it takes for all of
the decal to hang together, so that scissors can part it from its neighbors in one piece.
"""

import math
from typing import Literal, NamedTuple

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray

from xlbatch.art.decal import Decal
from xlbatch.film.box import UM, Bed, um
from xlbatch.film.layout import Lying
from xlbatch.geometry.flat import edges_of
from xlbatch.geometry.outline import Outline
from xlbatch.trade.tables import practice

Lengths = NDArray[np.int32]  # µm: no strip is 2 km long
Turn = Literal[0, 90, 180, 270]

COLUMN = 1  # mm
STEP, NEAR = 0.4, 0.005  # mm: how far apart the points are that stand for an outline, and how far from it at most
BALLS = 10, 20, 40, 80, 160, 640  # mm, their radii
HELD = practice("how wide a piece of film is anywhere that hangs together")
DRAWN = 3  # columns from one point of a drawn piece to the next
NOTHING = 1 << 29  # µm: where a column holds nothing; farther than any film


class Profile(NamedTuple):
    """A decal turned, and mirrored where its film is: its box with the gap, and what it fills of each column."""

    turned: Turn
    across: int  # µm
    along: int  # µm
    low: Lengths
    high: Lengths


def profiles(decal: Decal, bed: Bed, *, mirrored: bool) -> tuple[Profile, ...]:
    """The ways round in which a decal fits across; half turns too where it has an outline and may be turned."""
    turns: tuple[Turn, ...] = (0, 90, 180, 270) if decal.outline else (0, 90)
    ways = (_profile(decal, turn, bed.gap, mirrored) for turn in (turns if bed.turn else turns[:1]))
    return tuple(way for way in ways if way.across <= bed.width)


def cut_out(lying: Lying, gap: float, *, mirrored: bool) -> tuple[tuple[float, float], ...]:
    """Around the piece of film to cut out for a decal, half a gap wide of its outline: across and along, in mm."""
    profile = _profile(lying.decal, lying.turned, um(gap), mirrored)
    left, along = lying.across - gap / 2, lying.along - gap / 2
    across = np.append(np.arange(0, len(profile.low), DRAWN), len(profile.low) - 1)
    under, over = (
        zip((left + (across + 0.5) * COLUMN).tolist(), (along + side[across] / UM).tolist(), strict=True)
        for side in (profile.low, profile.high)
    )
    return (*under, *reversed(list(over)))


def _profile(decal: Decal, turned: Turn, gap: int, mirrored: bool) -> Profile:
    lying = Lying(decal, 0.0, 0.0, turned)
    across, along = um(lying.width) + gap, um(lying.length) + gap
    columns = math.ceil(across / UM / COLUMN)
    if decal.outline is None:
        low, high = np.zeros(columns, np.int32), np.full(columns, along, np.int32)
    else:
        low, high = _in_one_piece(*_reach(lying, decal.outline, gap / UM / 2, columns, mirrored))
    return Profile(turned, across, along, np.maximum(low, 0), np.minimum(high, along))


def _reach(lying: Lying, outline: Outline, around: float, columns: int, mirrored: bool) -> tuple[Lengths, Lengths]:
    """The lowest and the highest point of each column: of circles around points so near each other that all that is
    less than `around` (mm) from the outline lies in one of them."""
    a, b, c, d, e, f = lying.matrix(mirrored=mirrored)
    points = edges_of(outline.segments, STEP, NEAR).start
    x, y = (p * points.real + q * points.imag + r + around for p, q, r in ((a, c, e), (b, d, f)))
    radius = math.sqrt(around**2 + (STEP / 2) ** 2) + NEAR
    low, high = np.full(columns, float(NOTHING)), np.full(columns, -float(NOTHING))
    reach = math.ceil(radius / COLUMN)
    for beside in range(-reach, reach + 1):
        column = np.floor(x / COLUMN).astype(np.intp) + beside
        away = np.maximum(0, np.maximum(column * COLUMN - x, x - (column + 1) * COLUMN))
        met = (away < radius) & (column >= 0) & (column < columns)
        half, met_column = np.sqrt(radius**2 - away[met] ** 2), column[met]
        np.minimum.at(low, met_column, (y[met] - half) * UM)
        np.maximum.at(high, met_column, (y[met] + half) * UM)
    return np.floor(low).astype(np.int32), np.ceil(high).astype(np.int32)


def _in_one_piece(low: Lengths, high: Lengths) -> tuple[Lengths, Lengths]:
    """The profile rounded with the smallest ball that makes it hang together, or else with the largest."""
    for ball in BALLS:
        under, over = -_rounded(-low, ball), _rounded(high, ball)
        shared = np.minimum(over[1:], over[:-1]) - np.maximum(under[1:], under[:-1])
        if shared.min(initial=NOTHING) >= HELD * UM:
            break
    return under, over


def _rounded(high: Lengths, ball: int) -> Lengths:
    """The heights closed by a ball of this radius (mm) from above, as mathematical morphology has it."""
    beside = np.arange(-ball, ball + 1, COLUMN)
    disc = np.floor(np.sqrt(ball**2 - beside.astype(float) ** 2) * UM).astype(np.int32)
    padded = np.pad(high, len(disc) - 1, constant_values=-NOTHING)
    middle = (sliding_window_view(padded, len(disc)) + disc).max(axis=1)  # of the ball as it rolls
    return np.asarray((sliding_window_view(middle, len(disc)) - disc).min(axis=1))
