"""Rectangles on a strip: published instances with known optimum, and any list at all.

Hopper and Turton's instances C1 to C7 (2001) as the package `hyperpack` carries them; shapely judges overlap.
"""

import importlib
import random
from collections.abc import Sequence

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import STRtree, box

from xlbatch.film import free
from xlbatch.film.beam import Fill, fill
from xlbatch.film.bound import least_length
from xlbatch.film.box import Bed, Box, BoxSpot, Laid, Packing
from xlbatch.film.free import pack
from xlbatch.film.pack_sets import pack_sets
from xlbatch.film.strip_lengths import least_lengths
from xlbatch.film.sweep import sweep

OPTIMUM = {"C1": 20, "C2": 15, "C3": 30, "C4": 60, "C5": 90, "C6": 120, "C7": 240}
LONG = 10**9


def instance(name: str, letter: str) -> tuple[list[Box], int]:
    """The boxes, and the width of the strip: the container's side that is not the optimal height."""
    data = importlib.import_module(f"hyperpack.benchmarks.datasets.hopper_and_turton_2000.{name}")
    boxes = [(item["w"], item["l"]) for item in getattr(data, f"items_{letter}").values()]
    return boxes, sum(w * h for w, h in boxes) // OPTIMUM[name]


def laid(boxes: Sequence[Box], packing: Packing) -> list[tuple[int, int, int, int]]:
    """Left, bottom, right and top of each box as it lies."""
    ways = [b[::-1] if spot.turned else b for b, spot in zip(boxes, packing.spots, strict=True)]
    return [(s.across, s.along, s.across + w, s.along + h) for (w, h), s in zip(ways, packing.spots, strict=True)]


def judge(boxes: Sequence[Box], packing: Packing, width: int) -> None:
    """Nothing overlaps, nothing lies outside, and the length is that of the last box's end."""
    found = laid(boxes, packing)
    assert min((left, bottom) for left, bottom, _, _ in found) >= (0, 0)
    assert max(right for _, _, right, _ in found) <= width
    assert max(top for _, _, _, top in found) == packing.length
    shapes = [box(*each) for each in found]
    for one, other in STRtree(shapes).query(shapes, predicate="intersects").T:
        assert one == other or shapes[one].intersection(shapes[other]).area == 0


@pytest.mark.parametrize("name", OPTIMUM)
def test_the_published_instances_have_the_published_optimum(name: str) -> None:
    """Their area fills the strip exactly, and the proof of the least length is no longer than it."""
    boxes, width = instance(name, "a")
    assert sum(w * h for w, h in boxes) == width * OPTIMUM[name]
    assert least_length(boxes, Bed(width, LONG, 0, True)) == OPTIMUM[name]


@pytest.mark.parametrize("letter", "abc")
@pytest.mark.parametrize("name", ["C1", "C2", "C3"])
def test_small_instances_come_within_a_sixth_of_the_optimum(name: str, letter: str) -> None:
    boxes, width = instance(name, letter)
    packing = pack(boxes, Bed(width, LONG, 0, True), 64)
    judge(boxes, packing, width)
    assert packing.length <= OPTIMUM[name] * 1.17


@pytest.mark.parametrize("name", ["C5", "C7"])
def test_one_pass_over_large_instances_comes_within_a_tenth(name: str) -> None:
    boxes, width = instance(name, "a")
    packing = pack(boxes, Bed(width, LONG, 0, True), 1)
    judge(boxes, packing, width)
    assert packing.length <= OPTIMUM[name] * 1.1


def cut_apart(width: int, length: int, count: int, seed: int) -> list[Box]:
    """Boxes that fill a strip: the larger of two is cut straight across, again and again; each then turned or not."""
    dice = random.Random(seed)
    boxes = [(width, length)]
    while len(boxes) < count:
        boxes.sort(key=lambda box: box[0] * box[1])
        w, h = box = boxes.pop(max(dice.randrange(len(boxes)), dice.randrange(len(boxes))))
        side = dice.random() * (w + h) < w
        at = dice.randint(1, max(1, (w if side else h) - 1))
        pieces = [(at, h), (w - at, h)] if side else [(w, at), (w, h - at)]
        boxes += pieces if min(map(min, pieces)) > 0 else [box]
    return [box if box[1] > width or dice.random() < 0.5 else box[::-1] for box in boxes]


@pytest.mark.parametrize(("width", "length", "count", "least"), [(300, 1000, 700, 1.06), (600, 3000, 2001, 1.03)])
def test_one_pass_over_boxes_that_can_fill_a_strip_nearly_does(
    width: int, length: int, count: int, least: float
) -> None:
    """Every such box fits together without waste, by how it was made."""
    boxes, bed = cut_apart(width, length, count, seed=count), Bed(width, LONG, 0, True)
    packing = pack(boxes, bed, 1)
    judge(boxes, packing, width)
    assert length <= packing.length <= length * least


def test_where_the_area_can_not_be_used_boxes_come_near_to_the_proof() -> None:
    """Boxes of which no two widths fill the film, as decals are: the proof is then far above their area."""
    dice = random.Random(7)
    fronts = [(side, side * 4 // 5) for side in dice.choices(range(206, 307, 14), k=700)]
    boxes = fronts + [(dice.randint(66, 306), dice.randint(46, 66)) for _ in fronts]
    bed = Bed(296, LONG, 0, True)
    least = least_length(boxes, bed)
    assert least > 1.02 * sum(w * h for w, h in boxes) / 296
    packing = sweep(boxes, bed, 1)
    judge(boxes, packing, 296)
    assert packing.length <= 1.03 * least


SIDES = st.integers(1, 60)
BOXES = st.lists(st.tuples(SIDES, SIDES), min_size=1, max_size=20)


@settings(max_examples=60, deadline=None)
@given(BOXES, st.booleans())
def test_any_boxes_are_laid_without_overlap_and_never_shorter_than_the_bound(boxes: list[Box], turn: bool) -> None:
    bed = Bed(60, LONG, 0, turn)
    least = least_length(boxes, bed)
    for packing in (pack(boxes, bed, 20), sweep(boxes, bed, 3), pack_sets([boxes], bed, 10)[0]):
        judge(boxes, packing, 60)
        assert turn or not any(spot.turned for spot in packing.spots)
        assert least <= packing.length


def test_a_box_that_fits_neither_way_is_refused() -> None:
    with pytest.raises(ValueError, match="wider"):
        pack([(70, 80)], Bed(60, LONG, 0, True), 1)


def test_a_box_that_fits_only_turned_is_turned() -> None:
    bed = Bed(60, LONG, 0, True)
    assert pack([(70, 50)], bed, 1) == Packing(70, (BoxSpot(0, 0, True),))
    assert pack_sets([[(70, 50)]], bed, 0) == [Packing(70, (BoxSpot(0, 0, True),))]


def straight_cut_least(boxes: Sequence[Box], width: int) -> int:
    """The least length of up to three boxes, by all ways of cutting them apart straight: beside or above."""

    def shapes(these: tuple[Box, ...]) -> set[Box]:
        if len(these) == 1:
            return {these[0], these[0][::-1]}
        found: set[Box] = set()
        for mask in range(1, 2 ** len(these) - 1):
            some = tuple(b for at, b in enumerate(these) if mask >> at & 1)
            rest = tuple(b for at, b in enumerate(these) if not mask >> at & 1)
            for w, h in shapes(some):
                for v, g in shapes(rest):
                    found |= {(w + v, max(h, g)), (max(w, v), h + g)}
        return found

    return min(h for w, h in shapes(tuple(boxes)) if w <= width)


@settings(max_examples=150, deadline=None)
@given(st.lists(st.tuples(SIDES, SIDES), min_size=1, max_size=3))
def test_up_to_three_boxes_get_their_least_length(boxes: list[Box]) -> None:
    assert least_lengths([boxes], Bed(60, LONG, 0, True), 1).tolist() == [straight_cut_least(boxes, 60)]


def test_more_tries_never_make_a_set_longer_and_its_order_does_not_matter() -> None:
    boxes, width = instance("C1", "b")
    bed = Bed(width, LONG, 0, True)
    lengths = [int(least_lengths([boxes], bed, tries)[0]) for tries in (0, 20, 100, 400)]
    assert lengths == sorted(lengths, reverse=True)
    assert int(least_lengths([boxes[::-1]], bed, 400)[0]) == lengths[-1]
    assert pack_sets([boxes], bed, 400)[0].length == lengths[-1]


@given(st.lists(st.lists(st.tuples(st.integers(1, 90), st.integers(1, 90)), min_size=1, max_size=8), max_size=12))
@settings(max_examples=30, deadline=None)
def test_sets_of_different_numbers_of_boxes_lie_as_each_would_by_itself(sets: list[list[Box]]) -> None:
    bed = Bed(100, 10_000, 0, True)
    assert pack_sets(sets, bed, 20) == [pack_sets([boxes], bed, 20)[0] for boxes in sets]
    assert [packing.length for packing in pack_sets(sets, bed, 20)] == least_lengths(sets, bed, 20).tolist()


def test_what_is_proven_the_shortest_is_searched_for_no_longer(monkeypatch: pytest.MonkeyPatch) -> None:
    tried: list[int] = []

    def counted(fills: Sequence[Fill], bed: Bed) -> list[tuple[Laid, ...] | None]:
        tried.append(len(fills))
        return fill(fills, bed)

    monkeypatch.setattr(free, "fill", counted)
    assert pack([(70, 50)], Bed(100, LONG, 0, True), 40).length == 50
    assert pack([], Bed(100, LONG, 0, True), 40) == Packing(0, ())
    assert tried == [16]  # those of one round
