"""The cheapest set of rolls that some lengths can be cut from, beside pieces that are there already.

Each way to cut one roll or piece is a pattern. Those of the pieces are listed, up to a limit; those of the rolls are
found by column generation (Gilmore and Gomory, 1961). Then whole numbers of them are chosen by an integer program
limited in nodes. First fit decreasing gives the patterns to start with, so there is always an answer.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import islice
from typing import NamedTuple

import numpy as np

from xlbatch.film.solver import Solver

ROUNDS = 40
NODES = 500
MOST = 2000  # ways to cut one piece
TOUCHED, TOUCHED_LENGTH = 0.01, 1e-7  # a piece, and its length, count for so much, so that it is cut only to save more


class Want(NamedTuple):
    """A length to cut, and the pieces it may be cut from, by their places in the list of pieces."""

    length: int
    from_: tuple[int, ...] = ()


class Scrap(NamedTuple):
    """A piece that is there already; what is left of it is spare film if it is at least so long."""

    length: int
    least_rest: int


class Pattern(NamedTuple):
    """A roll or piece, by its place in the list of them, and what is cut from it."""

    at: int
    cut: tuple[Want, ...]
    scrap: bool = False


def cheapest_rolls(
    wants: Sequence[Want], rolls: Sequence[tuple[int, int]], spare: int = 0, scraps: Sequence[Scrap] = ()
) -> tuple[Pattern, ...]:
    """What to cut from each piece and each roll to take. `rolls` are lengths and costs; lengths in one whole unit.

    Besides the wants, at least `spare` is left over in all. Raises ValueError where a want fits no roll."""
    if any(want.length > max((roll for roll, _ in rolls), default=0) for want in wants):
        raise ValueError("a length is longer than every roll")
    if not wants and not spare:
        return ()
    return _Cutting(wants, rolls, spare, scraps).best()


class _Cutting:
    """The linear program over patterns: a row for each kind of want, one for all film together, one for each piece."""

    def __init__(
        self, wants: Sequence[Want], rolls: Sequence[tuple[int, int]], spare: int, scraps: Sequence[Scrap]
    ) -> None:
        self.rolls, self.scraps = rolls, scraps
        self.wanted = Counter(sorted(wants, reverse=True))
        self.row = {want: row_no for row_no, want in enumerate(self.wanted)}
        self.patterns: dict[Pattern, None] = {}
        self.solver = Solver()
        for count in self.wanted.values():
            self.solver.addRow(float(count), np.inf, 0, [], [])
        self.solver.addRow(float(_length(wants) + spare), np.inf, 0, [], [])
        for _ in scraps:
            self.solver.addRow(0.0, 1.0, 0, [], [])
        for pattern in (*self._starts(), *self._scrap_patterns()):
            self._add(pattern)

    def _starts(self) -> Iterator[Pattern]:
        """Every roll uncut, and first fit decreasing into each kind of roll."""
        for roll_no, (roll, _) in enumerate(self.rolls):
            yield Pattern(roll_no, ())
            bins: list[list[Want]] = []
            for want in (wanted for wanted in self.wanted.elements() if wanted.length <= roll):
                fits = next((cut for cut in bins if _length(cut) + want.length <= roll), None)
                if fits is None:
                    bins.append(fits := [])
                fits.append(want)
            yield from (Pattern(roll_no, tuple(cut)) for cut in bins)

    def _scrap_patterns(self) -> Iterator[Pattern]:
        for scrap_no, scrap in enumerate(self.scraps):
            mine = {want: count for want, count in self.wanted.items() if scrap_no in want.from_}
            for cut in islice(_cuts(list(mine.items()), scrap.length), MOST):
                yield Pattern(scrap_no, cut, scrap=True)

    def _add(self, pattern: Pattern) -> bool:
        if pattern in self.patterns:
            return False
        self.patterns[pattern] = None
        times = Counter(self.row[want] for want in pattern.cut)
        length, cost = self._gives(pattern)
        times[len(self.row)] = length
        if pattern.scrap:
            times[len(self.row) + 1 + pattern.at] = 1
        rows, values = np.array(list(times), np.int32), np.array(list(times.values()), np.float64)
        self.solver.addCol(cost, 0.0, np.inf, len(rows), rows, values)
        return True

    def _gives(self, pattern: Pattern) -> tuple[int, float]:
        """How much film a pattern gives, what is left of it included, and its cost."""
        if not pattern.scrap:
            length, cost = self.rolls[pattern.at]
            return length, float(cost)
        scrap, cut = self.scraps[pattern.at], _length(pattern.cut)
        length = scrap.length if scrap.length - cut >= scrap.least_rest else cut
        return length, TOUCHED + TOUCHED_LENGTH * scrap.length if cut else 0.0

    def best(self) -> tuple[Pattern, ...]:
        for _ in range(ROUNDS):
            self.solver.run()
            prices = list(self.solver.getSolution().row_dual)
            added = [
                self._add(Pattern(index, self._dearest(prices, roll))) for index, (roll, _) in enumerate(self.rolls)
            ]
            if not any(added):
                break
        count = len(self.patterns)
        kinds = np.full(count, Solver.whole)
        self.solver.changeColsIntegrality(count, np.arange(count, dtype=np.int32), kinds)
        self.solver.setOptionValue("mip_max_nodes", NODES)
        self.solver.setOptionValue("mip_rel_gap", 0.0)
        self.solver.run()
        return self._cut(round(value) for value in self.solver.getSolution().col_value)

    def _dearest(self, prices: Sequence[float], roll: int) -> tuple[Want, ...]:
        """What is worth most of all that one roll holds: an integer knapsack."""
        copies = [want for want, count in self.wanted.items() for _ in range(min(count, roll // want.length))]
        worth = np.zeros(roll + 1)
        taken = np.zeros((len(copies), roll + 1), dtype=bool)
        for copy_no, want in enumerate(copies):
            length = want.length
            with_it = worth[: roll + 1 - length] + prices[self.row[want]]
            better = with_it > worth[length:] + 1e-9
            taken[copy_no, length:] = better
            worth[length:][better] = with_it[better]
        cut, room = [], roll
        for copy_no in range(len(copies) - 1, -1, -1):
            if taken[copy_no, room]:
                cut.append(copies[copy_no])
                room -= copies[copy_no].length
        return tuple(sorted(cut, reverse=True))

    def _cut(self, times: Iterator[int]) -> tuple[Pattern, ...]:
        """The chosen patterns, nothing cut more often than wanted."""
        left = Counter(self.wanted)
        used: list[Pattern] = []
        for pattern, count in zip(self.patterns, times, strict=True):
            for _ in range(count):
                cut = tuple((Counter(pattern.cut) & left).elements())
                left -= Counter(cut)
                if cut or not pattern.scrap:
                    used.append(pattern._replace(cut=cut))
        return tuple(used)


def _length(wants: Sequence[Want]) -> int:
    return sum(want.length for want in wants)


def _cuts(wants: Sequence[tuple[Want, int]], room: int) -> Iterator[tuple[Want, ...]]:
    """Everything that can be cut from so much film, as much of the first wants as possible first."""
    if not wants:
        yield ()
        return
    (want, count), *others = wants
    for times in range(min(count, room // want.length), -1, -1):
        for rest in _cuts(others, room - times * want.length):
            yield (want,) * times + rest
