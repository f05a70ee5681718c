"""A proof of how little film is possible: the slice bound.

Every straight cut across a layout meets boxes whose widths add up to no more than the bed's. So a layout is a
set of slices, each a set of widths that fit side by side, and the least total length of such slices that covers every
box's length (some part of each box lying one way round, the rest the other) is no longer than any layout. That linear
program is solved by column generation (Gilmore and Gomory, 1961). Farley's bound (1990) turns the prices of any
round into a valid proof, so the search for better prices may stop at any time.
"""

import math
from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from xlbatch.film.box import Bed, Box
from xlbatch.film.knapsack import Floats, Ints, fullest
from xlbatch.film.solver import Solver
from xlbatch.how_far import alive

Slice = Counter[int]  # how many of each width lie side by side

CELLS = (1200, 600, 300)  # across the bed: the finest grid that leaves few enough different widths
MOST_WIDTHS = 600
ROUNDS = 60  # of column generation
SLICES_A_ROUND = 8
CLOSE = 5e-4  # stop when the proof is this near to the best slices known
SAFE = 1e-6  # taken off against floating-point error


def least_length(boxes: Sequence[Box], bed: Bed) -> int:
    """A length in µm, gap included, that no layout of these boxes in one piece can be shorter than."""
    kinds = sorted(Counter(boxes).items())
    ways = [bed.ways(box) for box, _ in kinds]
    if not boxes or not all(ways):
        return 0
    plain = max(
        max(min(way[1] for way in box_ways) for box_ways in ways), math.ceil(sum(a * b for a, b in boxes) / bed.width)
    )
    return max(plain, math.floor(_proved(tuple(kinds), bed)[0] * (1 - SAFE)))


def worths(boxes: Sequence[Box], bed: Bed) -> Floats:
    """How much of the proof each box accounts for, in µm: what it adds to any layout. Each must fit across the bed."""
    if not boxes:
        return np.zeros(0)
    kinds = tuple(sorted(Counter(boxes).items()))
    place = {kind: kind_no for kind_no, (kind, _) in enumerate(kinds)}
    return _proved(kinds, bed)[1][[place[box] for box in boxes]] * (1 - SAFE)


@lru_cache(maxsize=8)
def _proved(kinds: tuple[tuple[Box, int], ...], bed: Bed) -> tuple[float, Floats]:
    """The proof for so many boxes of each kind, and each kind's part of it: both are asked for, one after the other."""
    slices = Slices([bed.ways(kind) for kind, _ in kinds], bed.width)
    return slices.proof([count for _, count in kinds]), slices.worth


def _grid(ways: Sequence[tuple[Box, ...]], width: int, finest: Sequence[int]) -> int:
    """What widths are rounded down to, in µm: more then fits side by side than really does."""
    grids = [max(1, width // cells) for cells in finest]
    fine = (grid for grid in grids if len({way[0] // grid for box_ways in ways for way in box_ways}) <= MOST_WIDTHS)
    return next(fine, grids[-1])


class Prices(NamedTuple):
    """What a µm along the bed costs by the proof, in µm across it; together they never cost more than its width."""

    of: Ints  # boxes of each width asked for
    most: Ints  # what fits side by side in so many cells of the grid
    grid: int


class Slices:
    """The linear program over slices. Its rows are widths in grid cells, from narrow to wide."""

    def __init__(self, ways: Sequence[tuple[Box, ...]], width: int, finest: Sequence[int] = CELLS) -> None:
        """`ways`: those of each kind of box."""
        self.width, self.grid = width, _grid(ways, width, finest)
        self.room = width // self.grid
        self.area = np.array([box_ways[0][0] * box_ways[0][1] for box_ways in ways])
        self.by_area = False  # whether area alone proved more
        self.cells = sorted({way[0] // self.grid for box_ways in ways for way in box_ways})
        row = {cells: row_no for row_no, cells in enumerate(self.cells)}
        rounded = [
            [(row[way[0] // self.grid], float(way[1])) for way in (box_ways[0], box_ways[-1])] for box_ways in ways
        ]
        self.rows = np.array([[way[0] for way in box_ways] for box_ways in rounded])
        self.lengths = np.array([[way[1] for way in box_ways] for box_ways in rounded])
        self.known: list[Slice] = [Counter({len(self.cells) - 1: 1})]
        self.prices = np.zeros(len(self.cells))  # of a width, a µm long; the dearest slice costs 1
        self.worth = np.zeros(len(ways))  # each box's part of the proof

    def _program(self, counts: Ints) -> Solver:
        """For so many boxes of each kind, with the slices known so far."""
        program = Solver()
        needed = np.bincount(self.rows[:, 1], self.lengths[:, 1] * counts, len(self.cells))
        for length in needed:
            program.addRow(float(length), math.inf, 0, [], [])
        self._add_shares(program, counts)
        for cell in range(len(self.cells) - 1):  # the place of a wider box may hold a narrower one
            program.addCol(0.0, 0.0, math.inf, 2, np.array([cell, cell + 1], np.int32), np.array([1.0, -1.0]))
        for slice_ in self.known:
            self._add(program, slice_)
        return program

    def _add_shares(self, program: Solver, counts: Ints) -> None:
        """For boxes of the same two widths, the share that lies the first way round instead of the second."""
        alike: dict[tuple[int, int], Floats] = defaultdict(lambda: np.zeros(2))
        for (first, second), lengths in zip(self.rows.tolist(), self.lengths * counts[:, None], strict=True):
            if first != second:
                alike[first, second] += lengths
        for rows, total in alike.items():
            program.addCol(0.0, 0.0, 1.0, 2, np.array(rows, np.int32), total * (-1.0, 1.0))

    def _add(self, program: Solver, piece: Slice) -> None:
        rows, times = np.array(list(piece), np.int32), np.array(list(piece.values()), np.float64)
        program.addCol(1.0, 0.0, math.inf, len(rows), rows, times)

    def proof(self, counts: Sequence[int] | Ints) -> float:
        """The best of Farley's bounds over all rounds, in µm, for so many boxes of each kind."""
        counts = np.array(counts)
        program, most = self._program(counts), self._most(counts)
        best = 0.0
        for _ in range(ROUNDS):
            alive()
            program.run()
            if best >= (1 - CLOSE) * program.getInfo().objective_function_value:
                break
            prices = np.maximum(np.array(program.getSolution().row_dual), 0.0)
            slices = list(self._dear_slices(prices, most))
            prices = prices / sum(prices[row] * times for row, times in slices[0].items())
            worth = (self.lengths * prices[self.rows]).min(axis=1)
            if worth @ counts > best:
                best, self.worth, self.prices = float(worth @ counts), worth, prices
            self.known += slices
            for slice_ in slices:
                self._add(program, slice_)
        return best

    def prices_of(self, widths: Ints, counts: Ints) -> Prices:
        """What these widths cost with so many boxes of each kind: just themselves where their area proves more."""
        area = float((self.area * counts).sum()) / self.width
        if self.by_area or self.proof(counts) <= area:
            self.by_area = True
            return Prices(widths, np.arange(self.width + 1), 1)
        worth = np.floor(self.prices * self.width).astype(np.int64)
        return Prices(worth[np.searchsorted(self.cells, widths // self.grid)], self._most_worth(worth), self.grid)

    def _most_worth(self, worth: Ints) -> Ints:
        """The most that fits side by side in so many cells costs, each width as often as one likes."""
        most = np.zeros(self.room + 1, np.int64)
        cells, first = np.array(self.cells), int(self.cells[0] == 0)
        for room in range(1, self.room + 1):
            fits = slice(first, np.searchsorted(cells, room, side="right"))
            most[room] = max(most[room - 1], (worth[fits] + most[room - cells[fits]]).max(initial=0))
        return most

    def _most(self, counts: Ints) -> Ints:
        """How many boxes can lie in each width."""
        both = np.where(self.rows[:, 0] != self.rows[:, 1], counts, 0)
        ways = zip(self.rows.T, (counts, both), strict=True)
        first, second = (np.bincount(rows, many, len(self.cells)) for rows, many in ways)
        return (first + second).astype(np.int64)

    def _dear_slices(self, prices: Floats, most: Ints) -> Iterator[Slice]:
        """The dearest slice of all, then dear ones that share no width with those before."""
        free, cells = most.copy(), np.array(self.cells)
        for _ in range(SLICES_A_ROUND):
            slice_ = fullest(self.room, cells, prices, free)
            if not slice_:
                return
            yield slice_
            free[list(slice_)] = 0
