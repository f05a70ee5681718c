"""How far the search for batches goes, by hand-made numbers."""

from collections.abc import Sequence

import pytest

from xlbatch.film import enlarge
from xlbatch.film.batch_costs import BatchCosts, FilmBoxes, Group, Larger
from xlbatch.film.batches import _block_size, _blocks, _groups, _reach, _search
from xlbatch.film.box import Bed, Box
from xlbatch.film.interlock import _tries

BED = Bed(300_000, 606_000, 6_000, turn=True)


def of_boxes(*counts: int) -> FilmBoxes:
    return FilmBoxes(BED, tuple(((90_000, 40_000),) * count for count in counts))


def test_groups_are_counted() -> None:
    """Of four, four alone, six pairs and four threes."""
    assert [_groups(4, most) for most in (1, 2, 3)] == [4, 10, 14]


@pytest.mark.parametrize(
    ("garments", "most", "search", "size"),
    [
        (1000, 3, 1.0, 29),  # 4,089 groups of 29 are 141 a garment; 4,525 of 30 would be 150.8
        (2000, 3, 2.0, 29),
        (1000, 3, 0.5, 21),  # 1,561 groups of 21 are 74.3 a garment; 1,793 of 22 would be 81.5
        (1, 3, 1.0, 60),
        (10, 2, 1.0, 60),
        (100_000, 3, 1.0, 3),
    ],
)
def test_a_block_has_as_many_garments_as_every_batch_can_be_priced_of(
    garments: int, most: int, search: float, size: int
) -> None:
    assert _block_size(garments, most, search) == size


@pytest.mark.parametrize(("each", "most", "search"), [(3, 3, 2.0), (1, 3, 2.0), (6, 3, 0.5), (9, 2, 0.5)])
def test_strips_of_more_than_nine_boxes_are_searched_less_by_the_square(each: int, most: int, search: float) -> None:
    assert _search([of_boxes(each, each), of_boxes(0, 1)], most, 2) == search


@pytest.mark.parametrize(("handy", "reach"), [(1_000_000, 7), (84_000, 7), (83_999, 6), (12_000, 1), (11_999, 0)])
def test_as_many_garments_as_the_area_of_a_handy_strip_holds(handy: int, reach: int) -> None:
    """Each has 3,600 mm² on a film of 300 mm, the last two twice as much: 12 mm of film each."""
    film = of_boxes(1, 1, 2, 1, 1, 1, 1, 1, 2)
    assert _reach([of_boxes(*[0] * 9), film], Larger(7, handy)) == reach


def test_blocks_are_as_few_and_as_even_as_can_be() -> None:
    batches: list[Group] = [(0, 1, 2), (3, 4, 5), (6, 7), (8, 9, 10), (11, 12), (13,)]
    assert _blocks(batches, 14, 3) == [batches]
    assert _blocks(batches, 7, 3) == [batches[:3], batches[3:]]
    assert _blocks(batches, 5, 3) == [batches[:2], batches[2:4], batches[4:]]
    assert _blocks(batches, 3, 3) == [[batch] for batch in batches]


def test_a_block_has_at_most_twice_the_groups_of_one_of_the_usual_size() -> None:
    """Of three, up to three together, are 7 groups, of four 14, of five 25."""
    three_and_one: list[Group] = [(0,), (1, 2, 3)]
    two_and_three: list[Group] = [(0, 1), (2, 3, 4)]
    assert _blocks(three_and_one, 3, 3) == [three_and_one]
    assert _blocks(two_and_three, 3, 3) == [[batch] for batch in two_and_three]
    short_first: list[Group] = [(0,), (1,), (2, 3, 4), (5, 6, 7), (8, 9, 10)]
    assert _blocks(short_first, 3, 3) == [short_first[:2], *([batch] for batch in short_first[2:])]
    ones: list[Group] = [(no,) for no in range(6, 14)]
    uneven: list[Group] = [(0, 1, 2), (3, 4, 5), *ones]  # as four blocks the first would have six, with 41 groups
    assert _blocks(uneven, 4, 3) == [uneven[:1], uneven[1:2], ones[:3], ones[3:6], ones[6:]]


@pytest.mark.parametrize(
    ("here", "decals", "effort", "tries"),
    [(3, 3, 1, 1500), (6, 6, 1, 1500), (12, 12, 1, 6000), (12, 12, 2, 12_000), (6, 6, 0, 150), (6, 2000, 1, 1000),
     (6, 2000, 3, 3000), (6, 100_000, 1, 150)],
)  # fmt: skip
def test_strips_of_many_decals_are_interlocked_with_more_tries(here: int, decals: int, effort: int, tries: int) -> None:
    assert _tries(here, decals, effort) == tries


@pytest.mark.parametrize(
    ("garments", "effort", "rounds"), [(8, 1, 8), (8, 2, 16), (60, 1, 60), (150, 1, 60), (300, 1, 60), (600, 1, 15)]
)
def test_so_often_batches_are_taken_apart(
    garments: int, effort: int, rounds: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    seen: list[int] = []

    def first(drawn: Sequence[Group]) -> list[Group]:
        seen.append(len(drawn))
        return [(0, 1)]

    monkeypatch.setattr(enlarge, "_some", first)
    boxes: tuple[tuple[Box, ...], ...] = (((280_000, 60_000),),) * garments
    costs = BatchCosts([FilmBoxes(BED, boxes)], Larger(2, 300_000), 2)
    enlarge.enlarged(costs, [(at, at + 1) for at in range(0, garments, 2)], 2, effort)
    assert len(seen) == rounds
