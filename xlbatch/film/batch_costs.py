"""What batches cost in film, all films together."""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from xlbatch.film.box import UM, Bed, Box
from xlbatch.film.strip_lengths import least_lengths
from xlbatch.how_far import alive
from xlbatch.trade.tables import practice

Ints = NDArray[np.int64]
Group = tuple[int, ...]  # garments by their place on the roster

CUT = round(practice("film worth a batch less to cut and weed, shared among the films it may have") * UM)
APART = round(practice("film worth keeping a batch one garment closer together among like shirts") * UM)
MOST_APART = 60  # garments: farther apart is all the same
TOO_LONG = 1 << 36  # µm; the cost of a batch with a strip longer than allowed


@dataclass(frozen=True)
class FilmBoxes:
    """One film's bed, and for every garment the boxes it needs of that film."""

    bed: Bed
    boxes: tuple[tuple[Box, ...], ...]


class Larger(NamedTuple):
    """Batches may have up to `most` garments while each of their strips is at most `handy` µm long, gap included."""

    most: int
    handy: int


class BatchCosts:
    """What batches cost in film (µm), all films together; garments with the same boxes are priced once."""

    def __init__(
        self,
        films: Sequence[FilmBoxes],
        larger: Larger | None = None,
        usual: int = 0,
        places: Sequence[int] | None = None,
    ) -> None:
        self.films, self.larger, self.usual = films, larger, usual
        self.places = places if places is not None else range(len(films[0].boxes))
        self._known: defaultdict[tuple[int, int], dict[Group, int]] = defaultdict(dict)  # lengths by film and tries
        self.kinds = [list(dict.fromkeys(tuple(sorted(boxes)) for boxes in film.boxes)) for film in films]
        kind_at = [{boxes: kind_no for kind_no, boxes in enumerate(kinds)} for kinds in self.kinds]
        self.kind_of = [
            [kind[tuple(sorted(boxes))] for boxes in film.boxes] for film, kind in zip(films, kind_at, strict=True)
        ]

    @cached_property
    def areas(self) -> NDArray[np.float64]:
        """How much of its films each garment takes at least, in µm along them."""
        areas = [[sum(a * b for a, b in boxes) / film.bed.width for boxes in film.boxes] for film in self.films]
        total: NDArray[np.float64] = np.array(areas, np.float64).sum(axis=0)
        return total

    def of(self, groups: Sequence[Group], tries: int) -> Ints:
        total = np.array([APART * self._apart(group) for group in groups], np.int64)
        for film_no in range(len(self.films)):
            lengths = self._strips(film_no, groups, tries)
            total += lengths + CUT // len(self.films) * (lengths > 0)
        return np.minimum(total, TOO_LONG)

    def _apart(self, group: Group) -> int:
        """How far apart the garments are among like shirts."""
        places = [self.places[garment] for garment in group]
        return min(MOST_APART, max(places) - min(places))

    def of_each(self, blocks: Sequence[Sequence[Group]], tries: int) -> list[Ints]:
        """The costs of the groups of many blocks, computed together."""
        ends = np.cumsum([len(block) for block in blocks])
        return np.split(self.of([group for block in blocks for group in block], tries), ends[:-1])

    def _strips(self, film_no: int, groups: Sequence[Group], tries: int) -> Ints:
        kind_of, bed = self.kind_of[film_no], self.films[film_no].bed
        keys = [tuple(sorted(kind_of[garment] for garment in group)) for group in groups]
        alive()
        boxes = {key: [box for kind in key for box in self.kinds[film_no][kind]] for key in dict.fromkeys(keys)}
        alive()
        longest = {key: self._longest(key, bed) for key in boxes}
        short = [
            key
            for key, boxes_ in boxes.items()
            if len(key) == 1 or sum(a * b for a, b in boxes_) <= longest[key] * bed.width
        ]
        known = self._known[film_no, tries]
        new = [key for key in short if key not in known]
        known.update(zip(new, least_lengths([boxes[key] for key in new], bed, tries).tolist(), strict=True))
        lengths = {key: known[key] if known[key] <= longest[key] or len(key) == 1 else TOO_LONG for key in short}
        return np.array([lengths.get(key, TOO_LONG) for key in keys], np.int64)

    def _longest(self, key: Group, bed: Bed) -> int:
        """How long a strip of so many garments may be."""
        return min(bed.longest, self.larger.handy) if self.larger and len(key) > self.usual else bed.longest


def neighbors(costs: BatchCosts, garments: int, most: int, tries: int) -> list[Group]:
    """The cheapest batches of garments that follow each other on the roster."""
    groups = [tuple(range(begin, end)) for end in range(1, garments + 1) for begin in range(max(0, end - most), end)]
    best = [(0, 0)]  # least cost of the first garments, and minus where their last batch begins
    for group, cost in zip(groups, costs.of(groups, tries).tolist(), strict=True):
        begin, end = group[0], group[-1] + 1
        best[end:] = [min([*best[end:], (best[begin][0] + cost, -begin)])]
    batches: list[Group] = []
    end = garments
    while end:
        begin = -best[end][1]
        batches.append(tuple(range(begin, end)))
        end = begin
    return batches[::-1]


def sets_of(groups: Sequence[Group], members: Sequence[int]) -> list[list[int]]:
    place = {garment: number for number, garment in enumerate(members)}
    return [[place[garment] for garment in group] for group in groups]
