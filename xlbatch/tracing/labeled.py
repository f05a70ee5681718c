"""Each dot of a picture → the color it belongs to: flat places first, then the dots in between by what lies near."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from xlbatch.geometry.flat import Array, Index
from xlbatch.tracing.borders import Labels, Where
from xlbatch.tracing.palette import GENTLE, Colors, Dots, Mask, Steepness

NONE = 255  # the label of a dot that has none
REACH = 3  # dots: a softened edge is no wider on either side
_PURE = 22.0  # levels: a dot no farther off than this from a color has it
_SMOOTH = 16  # levels: where neighboring dots differ less, there is no edge
_NOWHERE = 18.0  # levels added to the misfit of a color that is nowhere near
_MIXED = 2.0  # levels added to that of two
_MISFIT = 40.0  # levels: what is no mixture of two colors
_ALONE = 2  # of nine dots: fewer are a speck
_BITS = 3  # of a level left out where colors are looked up


@dataclass(frozen=True, eq=False)
class Labeled:
    """The label of each dot; whether it lies where a color fades (`soft`); and how many others are like no mixture of
    two colors (`strange`)."""

    labels: Labels
    soft: Mask
    strange: int


def nearest(values: Colors, colors: Colors) -> tuple[Index, Array]:
    """For each value the color nearest to it, and how far off it is, in levels."""
    best, least = np.zeros(len(values), dtype=np.intp), np.full(len(values), np.inf)
    for number, color in enumerate(colors):
        off = ((values - color) ** 2).sum(axis=1)
        closer = off < least
        best[closer], least[closer] = number, off[closer]
    return best, np.sqrt(least)


def labeled(dots: Dots, steep: Steepness, pure: Labels, colors: Colors) -> Labeled:
    """`pure` has the label of every dot that is very nearly of the color of one, `colors` those of the labels."""
    labels = np.where(steep <= GENTLE, pure, np.uint8(NONE))
    soft = (steep <= _SMOOTH) & (pure == NONE)
    row, column = np.nonzero(labels == NONE)
    where = row, column
    label, misfit = _mixtures(dots[where].astype(np.float32), _nearby(labels, where, len(colors)), colors)
    labels[where] = label
    labels[where] = _company(labels, where, len(colors))
    return Labeled(labels, soft, int(np.count_nonzero((misfit > _MISFIT) & ~soft[where])))


def looked_up(dots: Dots, colors: Colors) -> Labels:
    """The number of the color that each dot has, NONE where it has none of them."""
    depth = 8 - _BITS
    packed = np.zeros(dots.shape[:2], dtype=np.int32)
    for channel in range(dots.shape[2]):
        packed <<= depth
        packed |= dots[:, :, channel] >> _BITS
    table = np.full(1 << depth * dots.shape[2], NONE, dtype=np.uint8)
    one_of = np.full(len(table), -1, dtype=np.int32)  # some dot of each box of colors
    one_of[packed.ravel()] = np.arange(packed.size, dtype=np.int32)
    used = np.flatnonzero(one_of >= 0)
    color, off = nearest(dots.reshape(-1, dots.shape[2])[one_of[used]].astype(np.float64), colors)
    table[used] = np.where(off <= _PURE, color, NONE)
    return np.asarray(table[packed])


def _nearby(labels: Labels, where: Where, count: int) -> Mask:
    """For each of the dots which labels are to be seen within reach, one a column."""
    row, column = where
    wide = np.pad(np.minimum(labels, np.uint8(count)), REACH, constant_values=count)
    near = np.zeros((len(row), count + 1), dtype=bool)
    number = np.arange(len(row))
    for down in range(2 * REACH + 1):
        for across in range(2 * REACH + 1):
            near[number, wide[row + down, column + across]] = True
    return near[:, :count]


def _company(labels: Labels, where: Where, count: int) -> Labels:
    """The labels of the dots; of one that is all but alone among the nine around it, what most of them are."""
    row, column = where
    wide = np.pad(labels, 1, mode="edge")
    around = np.stack([wide[row + down, column + across] for down in range(3) for across in range(3)])
    own = labels[where]
    alone = np.count_nonzero(around == own, axis=0) <= _ALONE
    counts = np.stack([np.count_nonzero(around[:, alone] == label, axis=0) for label in range(count)])
    own[alone] = counts.argmax(axis=0)
    return own


def _mixtures(values: NDArray[np.float32], near: Mask, colors: Colors) -> tuple[Labels, Array]:
    """The label of each value that is a color or a mixture of two, and how badly that fits, in levels."""
    best = np.zeros(len(values), dtype=np.uint8)
    least = np.full(len(values), np.inf, dtype=np.float32)
    far = np.where(near, 0, _NOWHERE).astype(np.float32)
    for color_no in range(len(colors)):
        rest = values - colors[color_no].astype(np.float32)
        off = np.sqrt((rest * rest).sum(axis=1)) + far[:, color_no]
        closer = off < least
        best[closer], least[closer] = color_no, off[closer]
        for other in range(color_no + 1, len(colors)):
            way = (colors[other] - colors[color_no]).astype(np.float32)
            part = np.clip(rest @ way / (way @ way), 0, 1)
            astray = rest - part[:, None] * way
            off = np.sqrt((astray * astray).sum(axis=1)) + far[:, color_no] + far[:, other] + _MIXED
            closer = off < least
            least[closer] = off[closer]
            best[closer] = np.where(part[closer] < 0.5, color_no, other)
    return best, least.astype(np.float64)
