"""Lays any number of boxes in a bed of given width, as short as a counted search can make it.

What a box counts for comes from the proof of the least length: a box worth more than its area is hard to lay beside
others, so it is laid early. How much that weighs, and how much its area, changes with every try, and so does the length
that may not be passed.
"""

import math
import random
from collections import Counter, defaultdict
from collections.abc import Sequence

from xlbatch.film.beam import Fill, fill
from xlbatch.film.bound import worths
from xlbatch.film.box import Bed, Box, Laid, Packing, kind_of, packing_of
from xlbatch.film.skyline import OPEN
from xlbatch.film.sweep import sweep

FEW, MOST = 500, 2000  # boxes: from where on sweeps are tried, and up to where the search is
ROUND = 16  # tries whose ceilings follow from what was found before
LANES = 96  # fillings searched for at the same time
HARD, LARGE = (1.0, 3.0), (0.15, 2.0)  # what worth beyond area, and area, weigh against area lost
NEAR = 0.1  # how far above the proof the ceilings of the first round reach
CHANGED = 0.1  # by how much of it a box's weight differs from that


def pack(boxes: Sequence[Box], bed: Bed, tries: int, seed: int = 0) -> Packing:
    """The shortest packing found in so many tries (at least one).

    Raises ValueError where a box fits neither way round."""
    packings = pack_each([boxes], bed, tries, seed) if len(boxes) <= MOST else []
    if len(boxes) > FEW and all(bed.ways(box) for box in boxes):
        packings.append(sweep(boxes, bed, tries, seed))
    return min(packings, key=lambda packing: packing.length)


def pack_each(sets: Sequence[Sequence[Box]], bed: Bed, tries: int, seed: int = 0) -> list[Packing]:
    """The shortest packing found of each set in so many tries (at least one).

    Raises ValueError where a box fits neither way round."""
    if not all(bed.ways(box) for boxes in sets for box in boxes):
        raise ValueError("a box is wider than its bed")
    searches = _searches(sets, bed, seed)
    for first in range(0, tries, ROUND):
        asked = [
            (search, search.next(place))
            for place in range(min(ROUND, tries - first))
            for search in searches
            if search.worthwhile
        ]
        for these in _alike(asked):
            for (search, _), laid in zip(these, fill([filling for _, filling in these], bed), strict=True):
                search.take(laid)
    return [packing_of(search.boxes, search.best, bed) for search in searches]


def _alike(asked: Sequence[tuple["_SetSearch", Fill]]) -> list[list[tuple["_SetSearch", Fill]]]:
    """Those that hold equally many boxes together, at most so many that they can be searched for at the same time."""
    by_count: dict[int, list[tuple[_SetSearch, Fill]]] = defaultdict(list)
    for asked_of in asked:
        by_count[len(asked_of[0].boxes)].append(asked_of)
    return [same[begin : begin + LANES] for same in by_count.values() for begin in range(0, len(same), LANES)]


class _SetSearch:
    """The search for one set's shortest packing: what its kinds of boxes are worth, and the best found."""

    def __init__(
        self, boxes: Sequence[Box], kinds: Sequence[Box], worth: Sequence[float], width: int, seed: int
    ) -> None:
        self.boxes, self.kinds, self.dice = boxes, Counter(kinds), random.Random(seed)
        self.beyond = {kind: worth_of * width - kind[0] * kind[1] for kind, worth_of in zip(kinds, worth, strict=True)}
        self.least, self.length = math.floor(sum(worth)), OPEN
        self.best: tuple[Laid, ...] = ()

    @property
    def worthwhile(self) -> bool:
        """Whether a shorter packing may be possible: by 1 µm it is of no use."""
        return bool(self.boxes) and self.length > self.least + 1

    def next(self, place: int) -> Fill:
        """What to try, at one place of the round: the ceiling is a different one at each, none at the first."""
        hard, large = self.dice.uniform(*HARD), self.dice.uniform(*LARGE)
        gains = {
            kind: round((hard * beyond + large * kind[0] * kind[1]) * (1 + self.dice.uniform(-CHANGED, CHANGED)))
            for kind, beyond in self.beyond.items()
        }
        return Fill(self.kinds, gains, self._ceiling(place))

    def _ceiling(self, place: int) -> int:
        if self.length == OPEN:
            return math.floor(self.least * (1 + NEAR * (place / ROUND) ** 2)) if place else OPEN
        return self.length - 1 - (self.length - self.least) * place // ROUND

    def take(self, laid: tuple[Laid, ...] | None) -> None:
        """Keeps what was found if it is shorter."""
        if laid is None:
            return
        length = max(box.end for box in laid)
        if length < self.length:
            self.best, self.length = laid, length


def _searches(sets: Sequence[Sequence[Box]], bed: Bed, seed: int) -> list[_SetSearch]:
    """One search a set; the proof is made once for all of them, and each has its part in it."""
    worth = iter(worths([box for boxes in sets for box in boxes], bed).tolist())
    return [
        _SetSearch(boxes, [kind_of(box, bed) for box in boxes], [next(worth) for _ in boxes], bed.width, seed)
        for boxes in sets
    ]
