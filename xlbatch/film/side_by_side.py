"""Batches of garments with one decal each, such as a name: decals of about one length lie turned, side by side.

Each batch begins with the longest decal left; which others lie beside it is a knapsack problem: those that cover the
most film (dynamic programming over the bed's width and the number of decals; Kellerer, Pferschy and Pisinger,
Knapsack Problems, 2004, on a bounded number of items; cited from memory).
"""

from collections.abc import Sequence

import numpy as np

from xlbatch.film.batch_costs import FilmBoxes, Group
from xlbatch.film.box import UM
from xlbatch.how_far import alive

STEP = UM // 5  # what widths are counted in, rounded up
NEXT = 40  # decals that may lie beside the longest: those next to it in length


def side_by_side(films: Sequence[FilmBoxes], most: int) -> list[Group] | None:
    """Batches of at most `most` garments; None unless each has one box of one film, which may be turned."""
    film = films[0]
    if len(films) > 1 or not film.bed.turn or any(len(boxes) != 1 for boxes in film.boxes):
        return None
    sides = [sorted(boxes[0]) for boxes in film.boxes]
    left = sorted(range(len(sides)), key=lambda garment: (-sides[garment][1], -sides[garment][0], garment))
    batches: list[Group] = []
    while left:
        alive()
        first, near = left[0], left[1 : NEXT + 1]
        widths = [-(-sides[garment][0] // STEP) for garment in near]
        areas = [sides[garment][0] * sides[garment][1] for garment in near]
        room = max(0, film.bed.width - sides[first][0]) // STEP
        beside = [near[near_no] for near_no in _most_covered(widths, areas, room, most - 1)]
        batches.append(tuple(sorted((first, *beside))))
        left = [garment for garment in near if garment not in beside] + left[NEXT + 1 :]
    return batches


def _most_covered(widths: Sequence[int], areas: Sequence[int], room: int, most: int) -> list[int]:
    """The places of at most `most` items that fit into the room and cover the largest area."""
    covered = np.zeros((most + 1, room + 1), np.int64)  # by how many items at most, and how much room at most
    taken = np.zeros((len(widths), most + 1, room + 1), np.bool_)
    for place, (width, area) in enumerate(zip(widths, areas, strict=True)):
        if width <= room:
            more = covered[:-1, : room + 1 - width] + area
            taken[place, 1:, width:] = more > covered[1:, width:]
            covered[1:, width:] = np.maximum(more, covered[1:, width:])
    covered_by: list[int] = []
    for place in reversed(range(len(widths))):
        if taken[place, most, room]:
            covered_by.append(place)
            most, room = most - 1, room - widths[place]
    return covered_by
