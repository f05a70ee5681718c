"""Which strips are cut from which piece or roll, each in as few runs as they take.

A run is cut in one go: its strips with a gap between them and a margin at both ends, no longer than the longest cut. A
strip counts with one gap, so that a run takes its strips and one `margins`, which is both margins less one gap. All
lengths are whole µm, so that nothing is given away or made up. Tried first are best fit and filling one stock after
another as full as can be; where they fail, an integer program says whether it can be done at all.
"""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise, product
from typing import Literal, NamedTuple

import numpy as np

from xlbatch.film.solver import Solver

NODES = 400  # of the integer program
MOST = 800  # columns of the integer program
FEW = 800  # strips, up to which runs are also filled one after another
COARSE = 100  # µm: how exactly a stock is filled up


class StripCut(NamedTuple):
    """A strip to be cut: its length with one gap, and how wide a film it needs."""

    length: int
    across: int = 0


class StockPiece(NamedTuple):
    """A piece or a roll: its length and its usable width."""

    length: int
    usable: int = 1 << 40


@dataclass(frozen=True)
class Knife:
    """What a run takes: at most so much of strips, and its margins besides."""

    longest: int
    margins: int

    def holds(self, stock: StockPiece) -> int:
        """The most strips' length that a stock holds, cut in as many runs as that takes."""
        if stock.length <= self.margins:
            return 0
        runs = stock.length // (self.longest + self.margins)
        return max(runs * self.longest, stock.length - (runs + 1) * self.margins)


Runs = tuple[tuple[int, ...], ...]  # the strips of each run, by their places
Fit = tuple[Runs, ...]  # for each stock


def taken(runs: Runs, cuts: Sequence[StripCut], knife: Knife) -> int:
    """The length that runs take of their stock."""
    return sum(sum(cuts[cut].length for cut in run) + knife.margins for run in runs)


def fit(
    cuts: Sequence[StripCut], stocks: Sequence[StockPiece], knife: Knife, *, exact: bool
) -> Fit | Literal["no"] | None:
    """The runs cut from each stock; "no" where it is proven that they cannot be, None where that is not known."""
    if sum(cut.length for cut in cuts) > sum(knife.holds(stock) for stock in stocks):
        return "no"
    tried = [way(cuts, stocks, knife, back) for way, back in product((_best_fit, _filled), (False, True))]
    done = [runs for runs in tried if runs is not None]
    if done:
        return min(done, key=lambda runs_of: sum(len(runs) for runs in runs_of))
    program = _Program(cuts, stocks, knife) if exact else None
    return program.solved() if program and program.size <= MOST else None


def fewest_runs(cuts: Sequence[StripCut], knife: Knife, *, exact: bool) -> Runs:
    """The strips of one stock that is long enough, in as few runs as were found; `exact`: in as few as is proven, where
    it can be."""
    plain, a_run = [StripCut(cut.length) for cut in cuts], StockPiece(knife.longest + knife.margins)
    least = -(-sum(cut.length for cut in cuts) // knife.longest)
    if exact:
        for count in range(least, len(cuts)):
            laid = fit(plain, [a_run] * count, knife, exact=True)
            if laid is not None and laid != "no":
                return _together(laid)
    ways = (_best_fit, _filled)[: 2 if len(cuts) <= FEW else 1]
    tried = [way(plain, [a_run] * len(cuts), knife, False) for way in ways]
    return min((_together(laid) for laid in tried if laid is not None), key=len, default=())


def _together(laid: Fit) -> Runs:
    return tuple(run for runs in laid for run in runs)


@dataclass
class _Open:
    """A run being filled, in a stock of which so much is left."""

    stock: int
    strips: list[int]
    free: int


def _best_fit(cuts: Sequence[StripCut], stocks: Sequence[StockPiece], knife: Knife, back: bool) -> Fit | None:
    """The longest strip first, each where least room is left: in a run begun, else in a stock begun, else in one more;
    `back`: of stocks not begun the longest first."""
    room = [stock.length for stock in stocks]
    runs: list[_Open] = []
    begun: set[int] = set()
    for cut_no in sorted(range(len(cuts)), key=lambda number: (-cuts[number].length, number)):
        length, across = cuts[cut_no]
        fits = [run for run in runs if min(run.free, room[run.stock]) >= length and stocks[run.stock].usable >= across]
        if fits:
            run = min(fits, key=lambda run: min(run.free, room[run.stock]))
        else:
            needed = length + knife.margins
            places = [p for p, left in enumerate(room) if left >= needed and stocks[p].usable >= across]
            if not places or length > knife.longest:
                return None
            place = min(places, key=lambda p: (p not in begun, room[p] if p in begun or not back else -room[p], p))
            runs.append(run := _Open(place, [], knife.longest))
            begun.add(place)
            room[place] -= knife.margins
        run.strips.append(cut_no)
        run.free -= length
        room[run.stock] -= length
    return tuple(tuple(tuple(run.strips) for run in runs if run.stock == place) for place in range(len(stocks)))


def _filled(cuts: Sequence[StripCut], stocks: Sequence[StockPiece], knife: Knife, back: bool) -> Fit | None:
    laid, left = filled(cuts, stocks, knife, back=back)
    return None if left else laid


def filled(
    cuts: Sequence[StripCut], stocks: Sequence[StockPiece], knife: Knife, *, back: bool = False
) -> tuple[Fit, tuple[int, ...]]:
    """One stock after another, the shortest or (`back`) the longest first: each run takes the longest strip left and
    what fills it best. Also the strips that are left."""
    left = sorted(range(len(cuts)), key=lambda cut_no: (-cuts[cut_no].length, cut_no))
    laid: dict[int, list[tuple[int, ...]]] = {}
    for place in sorted(range(len(stocks)), key=lambda p: (stocks[p].length, p), reverse=back):
        room = stocks[place].length
        while True:
            most = min(knife.longest, room - knife.margins)
            fits = [
                cut_no for cut_no in left if cuts[cut_no].length <= most and cuts[cut_no].across <= stocks[place].usable
            ]
            if not fits:
                break
            first, *others = fits
            run = (first, *_fullest({cut_no: cuts[cut_no].length for cut_no in others}, most - cuts[first].length))
            laid.setdefault(place, []).append(run)
            room -= sum(cuts[cut_no].length for cut_no in run) + knife.margins
            left = [cut_no for cut_no in left if cut_no not in run]
    return tuple(tuple(laid.get(place, ())) for place in range(len(stocks))), tuple(left)


def _fullest(lengths: Mapping[int, int], room: int) -> list[int]:
    """Some of the lengths that fill the room as far as can be; sums are found on a coarse scale, rounded up."""
    steps = room // COARSE
    reached, before = 1, []
    for length in lengths.values():
        before.append(reached)
        reached |= reached << -(-length // COARSE)
        reached &= (1 << steps + 1) - 1
    total, chosen = reached.bit_length() - 1, []
    for (cut_no, length), earlier in zip(reversed(list(lengths.items())), reversed(before), strict=True):
        if not earlier >> total & 1:
            chosen.append(cut_no)
            total -= -(-length // COARSE)
    return chosen


class _Program:
    """The integer program: how many strips of each kind go into each run, and which runs there are."""

    def __init__(self, cuts: Sequence[StripCut], stocks: Sequence[StockPiece], knife: Knife) -> None:
        self.cuts, self.stocks, self.knife = cuts, stocks, knife
        self.kinds = Counter(cuts)
        self.slots = [place for place, stock in enumerate(stocks) for _ in range(self._most_runs(stock))]
        self.size = len(self.slots) * (1 + len(self.kinds))
        self.solver = Solver()
        self.columns: dict[tuple[StripCut, int], int] = {}  # by kind and slot
        self.used: list[int] = []  # by slot

    def _most_runs(self, stock: StockPiece) -> int:
        """Of two runs that are half full or less one can be made, so that all but one are fuller."""
        if stock.length <= self.knife.longest + self.knife.margins:
            return 1
        return min(1 + 2 * stock.length // (self.knife.longest + 2 * self.knife.margins), len(self.cuts))

    def _column(self, cost: float, most: int) -> int:
        self.solver.addCol(cost, 0.0, float(most), 0, np.array([], np.int32), np.array([]))
        column = int(self.solver.getNumCol()) - 1
        self.solver.changeColIntegrality(column, Solver.whole)
        return column

    def _add_columns(self) -> None:
        for slot, place in enumerate(self.slots):
            self.used.append(self._column(1.0, 1))
            for kind, count in self.kinds.items():
                if kind.across <= self.stocks[place].usable:
                    self.columns[kind, slot] = self._column(0.0, count)

    def _add_rows(self) -> None:
        for kind, count in self.kinds.items():
            self._row(
                float(count),
                float(count),
                {placed: 1.0 for (of_kind, _), placed in self.columns.items() if of_kind == kind},
            )
        loads: list[dict[int, float]] = [{} for _ in self.slots]
        for (kind, slot), column in self.columns.items():
            loads[slot][column] = kind.length / 1000
        for slot, load in enumerate(loads):
            self._row(-np.inf, 0.0, load | {self.used[slot]: -self.knife.longest / 1000})
        for place, stock in enumerate(self.stocks):
            slots = [slot for slot, own in enumerate(self.slots) if own == place]
            load = {placed: value for slot in slots for placed, value in loads[slot].items()}
            load |= {self.used[slot]: self.knife.margins / 1000 for slot in slots}
            self._row(-np.inf, stock.length / 1000, load)
            for earlier, next_ in pairwise(slots):
                self._row(0.0, np.inf, {self.used[earlier]: 1.0, self.used[next_]: -1.0})

    def _row(self, least: float, most: float, values: Mapping[int, float]) -> None:
        self.solver.addRow(least, most, len(values), np.array(list(values), np.int32), np.array(list(values.values())))

    def solved(self) -> Fit | Literal["no"] | None:
        self._add_columns()
        self._add_rows()
        self.solver.setOptionValue("mip_max_nodes", NODES)
        self.solver.run()
        status = self.solver.modelStatusToString(self.solver.getModelStatus())
        if status == "Infeasible":
            return "no"
        values = self.solver.getSolution().col_value
        made = self._fit(values) if len(values) == self.solver.getNumCol() else None
        return made if made and self._good(made) else None

    def _fit(self, values: Sequence[float]) -> Fit:
        waiting = {kind: [cut_no for cut_no, cut in enumerate(self.cuts) if cut == kind] for kind in self.kinds}
        runs: list[list[int]] = [[] for _ in self.slots]
        for (kind, slot), column in self.columns.items():
            for _ in range(round(values[column])):
                runs[slot] += [waiting[kind].pop()] if waiting[kind] else []
        return tuple(
            tuple(tuple(run) for run, own in zip(runs, self.slots, strict=True) if own == place and run)
            for place in range(len(self.stocks))
        )

    def _good(self, made: Fit) -> bool:
        """Whether it holds in whole µm too; the program counts in floats."""
        whole = all(
            taken(runs, self.cuts, self.knife) <= stock.length for runs, stock in zip(made, self.stocks, strict=True)
        )
        short = all(
            sum(self.cuts[cut_no].length for cut_no in run) <= self.knife.longest for runs in made for run in runs
        )
        return whole and short and sum(len(run) for runs in made for run in runs) == len(self.cuts)
