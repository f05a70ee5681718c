"""Batches of more garments than usual, where their strips stay handy: less film for the same hands.

A few batches at a time are taken apart, and the cheapest batches of their garments chosen out of all there are.
"""

import random
from collections.abc import Sequence
from itertools import combinations

import numpy as np

from xlbatch.film.batch_costs import BatchCosts, Group, neighbors, sets_of
from xlbatch.film.partition import Floats, cheapest, prices

TOGETHER = 12  # garments taken apart at a time: of so many, every batch is priced
ROUNDS, FULL = 60, 300  # of so many garments, one each, times the effort; of more than the second fewer
TRIES, CLOSER = 24, 120  # for a strip: of every batch, and of the promising ones
PROMISING = 250  # batches looked at more closely
NODES = 50


def enlarged(costs: BatchCosts, batches: Sequence[Group], most: int, effort: int) -> list[Group]:
    """The cheapest batches found of at most `most` garments, none dearer than those given."""
    garments = sum(map(len, batches))
    best = min((list(batches), neighbors(costs, garments, most, TRIES)), key=lambda tried: _cost(costs, tried))
    dice = random.Random(garments)
    seen: list[list[int]] = []  # looked at already: the cheapest of these
    rounds = effort * min(garments, ROUNDS, ROUNDS * (FULL / garments) ** 2)
    waiting: list[Group] = []  # of many garments, the batches not yet looked at in this turn
    for _ in range(round(rounds) if len(best) > 1 else 0):
        waiting = [batch for batch in waiting if batch in best] if garments > ROUNDS else []
        waiting = waiting or dice.sample(best, len(best))
        apart = _some(waiting)
        waiting = [batch for batch in waiting if batch not in apart]
        members = sorted(garment for batch in apart for garment in batch)
        if members in seen:
            continue
        seen.append(members)
        groups = [group for count in range(1, most + 1) for group in combinations(members, count)]
        better = _cheaper(costs, members, groups, apart)
        if better:
            best = [*(batch for batch in best if batch not in apart), *better]
    return best


def _cheaper(costs: BatchCosts, members: Sequence[int], groups: Sequence[Group], apart: Sequence[Group]) -> list[Group]:
    """The batches out of `groups` that cost least, where they cost less than those that were taken apart.

    Those that cost least beyond their members' worth are looked at closely."""
    cost = costs.of(groups, TRIES)
    price = dict(zip(groups, cost.tolist(), strict=True))
    now = sum(map(price.__getitem__, apart))
    sets = sets_of(groups, members)
    areas = np.array([costs.areas[member] for member in members])
    own = _sums(areas, sets)
    least = float((cost / own).min())  # what a unit of area costs at least: no group costs less than its members' worth
    near = np.flatnonzero(cost - least * own < now - least * areas.sum()).tolist()
    if not near:
        return []
    worth = prices([sets[group_no] for group_no in near], cost[near].tolist(), len(members))
    beyond = cost[near] - _sums(worth, [sets[group_no] for group_no in near])
    kept = {groups[near[group_no]] for group_no in np.argsort(beyond, kind="stable")[:PROMISING]} | set(apart)
    closer = sorted(kept)
    price = dict(zip(closer, costs.of(closer, CLOSER).tolist(), strict=True))
    chosen = cheapest(sets_of(closer, members), list(price.values()), len(members), NODES)
    better = [closer[group_no] for group_no in chosen or ()]
    return better if better and sum(map(price.__getitem__, better)) < sum(map(price.__getitem__, apart)) else []


def _sums(values: Floats, sets: Sequence[Sequence[int]]) -> Floats:
    """The sum of the values of each set's members."""
    ends = np.cumsum([len(in_set) for in_set in sets])
    return np.add.reduceat(values[[member for in_set in sets for member in in_set]], [0, *ends[:-1]])


def _cost(costs: BatchCosts, batches: Sequence[Group]) -> int:
    return int(costs.of(batches, TRIES).sum())


def _some(drawn: Sequence[Group]) -> list[Group]:
    """The first of the batches drawn, as many as are looked at together."""
    apart = list(drawn[:1])
    for batch in drawn[1:]:
        if sum(map(len, apart)) + len(batch) <= TOGETHER:
            apart.append(batch)
    return apart
