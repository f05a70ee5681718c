"""Fewer sizes than garments ask for: neighboring sizes are made one, with the least change in all."""

import math
from collections.abc import Mapping, Sequence
from itertools import combinations, pairwise
from typing import NamedTuple


class AskedSize(NamedTuple):
    """A size asked for, of how many garments, and the most that fits all of them."""

    size: float
    garments: int
    most: float = math.inf


class _Group(NamedTuple):
    error: float
    size: float


def few_sizes(asked: Sequence[AskedSize], most: int) -> Mapping[float, float]:
    """Which size is made for each size asked for, at most `most` different ones.

    The sum over garments of how far the size made is from the size asked for is the least possible: sizes that share
    one are neighbors, so the best cut of the first n sizes into k groups follows from those into k - 1 (dynamic
    programming). No group is made larger than fits each of its garments."""
    asked = sorted(asked)
    groups = {(first, last): _group(asked[first:last]) for first, last in combinations(range(len(asked) + 1), 2)}
    best: list[tuple[float, tuple[int, ...]]] = [(0.0, (0,))] + [(math.inf, ())] * len(asked)
    for _ in range(min(most, len(asked))):
        best = [
            min(
                [best[last], *((best[cut][0] + groups[cut, last].error, (*best[cut][1], last)) for cut in range(last))],
                key=lambda tried: (round(tried[0], 9), len(tried[1])),
            )
            for last in range(len(asked) + 1)
        ]
    cuts = best[-1][1]
    return {size.size: groups[first, last].size for first, last in pairwise(cuts) for size in asked[first:last]}


def _group(members: Sequence[AskedSize]) -> _Group:
    """The one size nearest to all members, and how far it is from them."""
    most = min(size.most for size in members)
    tries = [
        *(asked_size.size for asked_size in members if asked_size.size <= most),
        *([most] if math.isfinite(most) else []),
    ]
    return min(
        _Group(sum(asked_size.garments * abs(asked_size.size - size) for asked_size in members), size) for size in tries
    )


def beside(
    asked: Sequence[AskedSize], most: int, anew: Mapping[float, float], lying: Mapping[float, float]
) -> Mapping[float, float]:
    """The sizes to make beside those that lie cut, by the size asked for: these stay, and are among the few.

    A size of which no piece lies cut takes the nearest of those there are that fits; while there may be more sizes,
    new ones are made."""
    if not lying:
        return anew
    made, sizes = dict(lying), set(lying.values())
    others = [other for other in asked if other.size not in lying]
    if len(sizes) < most:
        return made | {**few_sizes(others, most - len(sizes))}
    for asked_size in others:
        fitting = [size for size in sizes if size <= asked_size.most]
        made[asked_size.size] = (
            min(fitting, key=lambda size: abs(size - asked_size.size)) if fitting else anew[asked_size.size]
        )
    return made
