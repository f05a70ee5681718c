"""The cheapest set of rolls that some lengths can be cut from.

Each way to cut one roll is a pattern. Patterns are found by column generation (Gilmore and Gomory, 1961), then whole
numbers of them are chosen by an integer program limited in nodes. First fit decreasing gives the patterns to start
with, so there is always an answer.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from typing import NamedTuple

import numpy as np

from xlbatch.film.solver import Solver

ROUNDS = 40
NODES = 500


class Pattern(NamedTuple):
    """A roll, by its place in the list of rolls, and the lengths cut from it."""

    roll: int
    cut: tuple[int, ...]


def cheapest_rolls(lengths: Sequence[int], rolls: Sequence[tuple[int, int]], spare: int = 0) -> tuple[Pattern, ...]:
    """The rolls to take, and what to cut from each. `rolls` are lengths and costs; all lengths in one whole unit.

    Besides the `lengths`, at least `spare` is left over in all. Raises ValueError where a length fits no roll."""
    if any(length > max((roll for roll, _ in rolls), default=0) for length in lengths):
        raise ValueError("a length is longer than every roll")
    if not lengths and not spare:
        return ()
    return _Cutting(lengths, rolls, spare).best()


class _Cutting:
    """The linear program over patterns: a row for each length wanted, and one for all film together."""

    def __init__(self, lengths: Sequence[int], rolls: Sequence[tuple[int, int]], spare: int) -> None:
        self.rolls = rolls
        self.wanted = Counter(sorted(lengths, reverse=True))
        self.row = {length: at for at, length in enumerate(self.wanted)}
        self.patterns: dict[Pattern, None] = {}
        self.solver = Solver()
        for count in self.wanted.values():
            self.solver.addRow(float(count), np.inf, 0, [], [])
        self.solver.addRow(float(sum(lengths) + spare), np.inf, 0, [], [])
        for pattern in self._starts(lengths):
            self._add(pattern)

    def _starts(self, lengths: Sequence[int]) -> Iterator[Pattern]:
        """Every roll uncut, and first fit decreasing into each kind of roll."""
        for at, (roll, _) in enumerate(self.rolls):
            yield Pattern(at, ())
            bins: list[list[int]] = []
            for length in sorted((each for each in lengths if each <= roll), reverse=True):
                fits = next((one for one in bins if sum(one) + length <= roll), None)
                if fits is None:
                    bins.append(fits := [])
                fits.append(length)
            yield from (Pattern(at, tuple(one)) for one in bins)

    def _add(self, pattern: Pattern) -> bool:
        if pattern in self.patterns:
            return False
        self.patterns[pattern] = None
        times = Counter(self.row[length] for length in pattern.cut)
        length, cost = self.rolls[pattern.roll]
        rows = np.array([*times, len(self.row)], np.int32)
        self.solver.addCol(float(cost), 0.0, np.inf, len(rows), rows, np.array([*times.values(), length], np.float64))
        return True

    def best(self) -> tuple[Pattern, ...]:
        for _ in range(ROUNDS):
            self.solver.run()
            prices = list(self.solver.getSolution().row_dual)
            added = [self._add(Pattern(at, self._dearest(prices, roll))) for at, (roll, _) in enumerate(self.rolls)]
            if not any(added):
                break
        count = len(self.patterns)
        kinds = np.full(count, Solver.whole)
        self.solver.changeColsIntegrality(count, np.arange(count, dtype=np.int32), kinds)
        self.solver.setOptionValue("mip_max_nodes", NODES)
        self.solver.run()
        return self._cut(round(value) for value in self.solver.getSolution().col_value)

    def _dearest(self, prices: Sequence[float], roll: int) -> tuple[int, ...]:
        """The lengths worth most that one roll holds: an integer knapsack."""
        copies = [length for length, count in self.wanted.items() for _ in range(min(count, roll // length))]
        worth = np.zeros(roll + 1)
        taken = np.zeros((len(copies), roll + 1), dtype=bool)
        for at, length in enumerate(copies):
            with_it = worth[: roll + 1 - length] + prices[self.row[length]]
            better = with_it > worth[length:] + 1e-9
            taken[at, length:] = better
            worth[length:][better] = with_it[better]
        cut, room = [], roll
        for at in range(len(copies) - 1, -1, -1):
            if taken[at, room]:
                cut.append(copies[at])
                room -= copies[at]
        return tuple(sorted(cut, reverse=True))

    def _cut(self, times: Iterator[int]) -> tuple[Pattern, ...]:
        """The chosen patterns, nothing cut more often than wanted."""
        left = Counter(self.wanted)
        used: list[Pattern] = []
        for pattern, count in zip(self.patterns, times, strict=True):
            for _ in range(count):
                cut = tuple((Counter(pattern.cut) & left).elements())
                left -= Counter(cut)
                used.append(Pattern(pattern.roll, cut))
        return tuple(used)
