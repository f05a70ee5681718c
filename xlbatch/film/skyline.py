"""The upper edges of many fillings of a bed at the same time: their skylines."""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

Ints = NDArray[np.int64]

OPEN = 1 << 60  # µm: no wall, no ceiling


class Notch(NamedTuple):
    """The lowest, then leftmost part of each skyline: its place in it, where it lies, and how far its walls reach."""

    at: Ints
    along: Ints
    across: Ints
    width: Ints
    left: Ints
    right: Ints

    @property
    def low(self) -> Ints:
        return np.minimum(self.left, self.right)

    @property
    def high(self) -> Ints:
        return np.maximum(self.left, self.right)

    def begins(self, of: Ints, width: Ints) -> Ints:
        """How far across boxes of these widths begin in the notches `of` these rows: at the higher wall."""
        rest = np.where(self.left[of] >= self.right[of], 0, self.width[of] - width)
        return self.across[of] + rest


class Skylines:
    """One a row, in parts from left to right: how far along each reaches and how wide it is (0: no part)."""

    def __init__(self, along: Ints, width: Ints) -> None:
        self.along, self.width = along, width
        self._join()

    def _join(self) -> None:
        """Joins neighbors that reach equally far, and keeps one column free at the right."""
        rows, parts = self.along.shape
        first = np.ones((rows, parts), bool)
        first[:, 1:] = self.along[:, 1:] != self.along[:, :-1]
        onto = np.cumsum(first, axis=1) + (np.arange(rows) * (parts + 1) - 1)[:, None]
        along, width = np.full((rows, parts + 1), OPEN), np.zeros((rows, parts + 1), np.int64)
        along.ravel()[onto] = self.along
        np.add.at(width.ravel(), onto, self.width)
        along[width == 0] = OPEN
        used = int((width > 0).sum(axis=1).max()) + 1
        self.along, self.width = along[:, :used], width[:, :used]

    def notch(self) -> Notch:
        rows, lowest = np.arange(len(self.along)), self.along.argmin(axis=1)
        width = self.width[rows, lowest]
        left = np.where(lowest > 0, self.along[rows, lowest - 1], OPEN)
        across = np.cumsum(self.width, axis=1)[rows, lowest] - width
        return Notch(lowest, self.along[rows, lowest], across, width, left, self.along[rows, lowest + 1])

    def raised(self, narrowest: Ints) -> Notch:
        """The notches, after filling those in which no box fits up to their lower wall."""
        while True:
            notch = self.notch()
            useless = np.flatnonzero(narrowest > notch.width)
            if not len(useless):
                return notch
            self.along[useless, notch.at[useless]] = notch.low[useless]
            self._join()

    def under(self) -> Ints:
        """The area below each."""
        return np.asarray((np.where(self.width > 0, self.along, 0) * self.width).sum(axis=1), np.int64)

    def raised_by(self, of: Ints, notch: Notch, width: Ints, end: Ints) -> "Skylines":
        """Those `of` these rows, as much of each notch raised to `end`, at its higher wall."""
        lowest, rest, floor = notch.at[of], notch.width[of] - width, notch.along[of]
        place = np.arange(self.along.shape[1] + 1)
        source = np.where(place <= lowest[:, None], place, place - 1)
        along, widths = (np.take_along_axis(values[of], source, axis=1) for values in (self.along, self.width))
        rows, left = np.arange(len(of)), notch.left[of] >= notch.right[of]
        along[rows, lowest] = np.where(left | (rest == 0), end, floor)
        along[rows, lowest + 1] = np.where(left & (rest > 0), floor, end)
        widths[rows, lowest], widths[rows, lowest + 1] = np.where(left, width, rest), np.where(left, rest, width)
        return Skylines(along, widths)
