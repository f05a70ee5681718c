"""Chooses which garments make a batch, for all films together: the less film their strips take in total, the better.

Neighbors on the roster are tried first; then decals side by side, where each garment has one. Where that is no better,
block by block of the roster, every possible batch is priced roughly, the promising ones more and more closely, and the
best batches that hold every garment once are chosen.
"""

from collections.abc import Sequence
from itertools import combinations
from math import comb
from typing import NamedTuple

from xlbatch.film.batch_costs import TOO_LONG, BatchCosts, FilmBoxes, Group, Ints, Larger, neighbors, sets_of
from xlbatch.film.cores import spread
from xlbatch.film.enlarge import enlarged
from xlbatch.film.partition import cheapest, prices
from xlbatch.film.side_by_side import side_by_side
from xlbatch.how_far import alive

ROUGH = 12  # tries for one strip, and then: tries, batches a garment looked at again, and in all times the effort
CLOSER, CLOSEST = (150, 40, 40_000), (800, 12, 12_000)
GROUPS = 150_000  # batches priced roughly, times the effort
BLOCK = 60  # garments
USUAL = 9  # boxes in a strip; with more of them fewer batches are priced, as each takes longer
BLOCKS_PAY = 20  # blocks whose choice takes longer than starting processes for it
NODES = 200  # of the choice among batches


def choose_batches(
    films: Sequence[FilmBoxes],
    most: int,
    effort: int,
    larger: Larger | None = None,
    places: Sequence[int] | None = None,
) -> tuple[Group, ...]:
    """Batches of at most `most` garments, each strip within its bed, in roster order of their first garments; more
    garments where `larger` allows it. `places`: the garments' in an order that has like shirts next to one another,
    which share batches where that costs no film; usually that of the roster."""
    costs, handy = BatchCosts(films, places=places), BatchCosts(films, larger, most, places)
    batches = neighbors(costs, len(films[0].boxes), most, CLOSER[0] if effort else ROUGH)
    reach = _reach(films, larger) if larger else most
    beside = side_by_side(films, reach) if reach > most else None
    if beside and handy.of(beside, ROUGH).sum() < handy.of(batches, ROUGH).sum():
        batches = beside
    elif effort:
        search = _search(films, most, effort)
        size = _block_size(len(films[0].boxes), most, search)
        batches = _regrouped(costs, _blocks(batches, size, most), most, search)
    if reach > most:
        batches = enlarged(handy, batches, reach, effort)
    return tuple(sorted(batches))


def _reach(films: Sequence[FilmBoxes], larger: Larger) -> int:
    """At most how many garments a handy strip may hold, by the area of the smallest."""
    reach = larger.most
    for film in films:
        areas = sorted(sum(a * b for a, b in boxes) for boxes in film.boxes)
        room = film.bed.width * larger.handy
        while reach and sum(areas[:reach]) > room:
            reach -= 1
    return reach


def _search(films: Sequence[FilmBoxes], most: int, effort: int) -> float:
    """The effort, less where a batch has more boxes than usual: each then takes longer, by about their square."""
    boxes = max(sum(len(boxes_) for boxes_ in film.boxes) / len(film.boxes) for film in films) * most
    return effort / max(1.0, boxes / USUAL) ** 2


def _block_size(garments: int, most: int, search: float) -> int:
    """How many garments every batch can be priced of."""
    size = most
    while size < BLOCK and _groups(size + 1, most) * garments <= GROUPS * search * (size + 1):
        size += 1
    return size


def _groups(garments: int, most: int) -> int:
    return sum(comb(garments, count) for count in range(1, most + 1))


def _blocks(batches: Sequence[Group], size: int, most: int) -> list[list[Group]]:
    """Consecutive batches gathered into blocks of about as many garments each, as few as make blocks of at most `size`
    garments, or not much more: no block has more than twice the groups to price."""
    garments = sum(len(batch) for batch in batches)
    many = -(-garments // size)
    while True:  # up to one block a batch, at the most
        blocks: list[list[Group]] = [[] for _ in range(many)]
        before = 0
        for batch in batches:
            blocks[min(before * many // garments, many - 1)].append(batch)
            before += len(batch)
        if all(_groups(sum(map(len, block)), most) <= 2 * _groups(size, most) for block in blocks):
            return [block for block in blocks if block]
        many += 1


def _regrouped(costs: BatchCosts, blocks: Sequence[Sequence[Group]], most: int, search: float) -> list[Group]:
    """The cheapest batches found for the garments of each block."""
    members = [sorted(garment for batch in block for garment in batch) for block in blocks]
    garments = sum(len(garments_) for garments_ in members)
    groups = [
        [group for count in range(1, most + 1) for group in combinations(block_members, count)]
        for block_members in members
    ]
    cost = costs.of_each(groups, ROUGH)
    for tries, keep, budget in (CLOSER, CLOSEST):
        a_garment = min(keep, budget * search / garments)
        for block_no, block in enumerate(blocks):
            alive()
            most_kept = round(a_garment * len(members[block_no]))
            groups[block_no] = _promising(groups[block_no], cost[block_no], members[block_no], set(block), most_kept)
        alive()
        cost = costs.of_each(groups, tries)
    choices = [_Choice(*choice) for choice in zip(groups, cost, members, blocks, strict=True)]
    return [batch for chosen in spread(_chosen, choices, pays=len(blocks) >= BLOCKS_PAY) for batch in chosen]


class _Choice(NamedTuple):
    """Groups to choose from and their costs, the members they must hold, and the groups that stand already."""

    groups: Sequence[Group]
    cost: Ints
    members: Sequence[int]
    own: Sequence[Group]


def _chosen(choice: _Choice) -> Sequence[Group]:
    """The groups that hold every member once at the least cost; those that stand already if none cost less."""
    groups, cost, members, own = choice
    chosen = cheapest(sets_of(groups, members), cost.tolist(), len(members), NODES)
    price = dict(zip(groups, cost.tolist(), strict=True))
    better = [groups[group_no] for group_no in chosen or ()]
    return better if better and sum(map(price.__getitem__, better)) < sum(map(price.__getitem__, own)) else own


def _promising(groups: Sequence[Group], cost: Ints, members: Sequence[int], own: set[Group], keep: int) -> list[Group]:
    """The groups that cost least beyond what their garments are worth, and those that stand already."""
    usable = [
        group_no
        for group_no, group in enumerate(groups)
        if cost[group_no] < TOO_LONG or len(group) == 1 or group in own
    ]
    sets = sets_of([groups[group_no] for group_no in usable], members)
    worth = prices(sets, cost[usable].tolist(), len(members))
    beyond = [
        round(cost[group_no] - sum(worth[member] for member in in_set))
        for group_no, in_set in zip(usable, sets, strict=True)
    ]
    ranked = sorted(zip(beyond, usable, strict=True))
    return sorted({groups[group_no] for _, group_no in ranked[:keep]} | own)
