"""What a batch costs, by hand: its strips, 20 mm for each batch to cut, 0.02 mm for each garment it reaches farther."""

import pytest

from xlbatch.film.batch_costs import TOO_LONG, BatchCosts, FilmBoxes, Group, Larger, neighbors
from xlbatch.film.box import Bed, Box

BED = Bed(296_000, 506_000, 6_000, turn=True)
WIDE: Box = (200_000, 56_000)
LOW: Box = (280_000, 30_000)


def costs(*films: list[list[Box]], larger: Larger | None = None, places: list[int] | None = None) -> BatchCosts:
    return BatchCosts([FilmBoxes(BED, tuple(map(tuple, film))) for film in films], larger, 3, places)


def test_a_batch_costs_its_strips_and_its_cutting() -> None:
    one = costs([[WIDE], [WIDE], [LOW]])
    assert one.of([(0,), (2,), (0, 1)], 12).tolist() == [76_000, 50_000, 56_000 * 2 + 20_000 + 20]


def test_the_cutting_is_shared_among_films_and_a_film_without_decals_costs_nothing() -> None:
    two = costs([[WIDE], [LOW]], [[LOW], []])
    assert two.of([(0,), (1,)], 12).tolist() == [56_000 + 30_000 + 20_000, 30_000 + 10_000]


@pytest.mark.parametrize(("places", "more"), [([4, 9], 100), ([9, 4], 100), ([0, 59], 1180), ([0, 60], 1200),
                                              ([0, 61], 1200), ([0, 400], 1200)])  # fmt: skip
def test_garments_far_apart_cost_more_up_to_sixty(places: list[int], more: int) -> None:
    assert costs([[LOW], [LOW]], places=places).of([(0, 1)], 12).tolist() == [80_000 + more]


def test_strips_may_be_as_long_as_allowed_and_one_garment_longer() -> None:
    tall: Box = (280_000, 253_000)
    taller: Box = (280_000, 253_001)
    longest: Box = (280_000, 600_000)
    one = costs([[tall], [tall], [taller], [longest], [(20_000, 20_000)]])
    groups: list[Group] = [(0, 1), (0, 2), (3,), (3, 4)]
    assert one.of(groups, 12).tolist() == [506_000 + 20_020, TOO_LONG, 620_000, TOO_LONG]


@pytest.mark.parametrize(("handy", "allowed"), [(120_000, True), (119_999, False)])
def test_more_garments_than_usual_share_handy_strips_alone(handy: int, allowed: bool) -> None:
    """Four take 120 mm; three may share any strip."""
    four = costs([[LOW]] * 4, larger=Larger(4, handy))
    assert (four.of([(0, 1, 2, 3)], 12)[0] < TOO_LONG) == allowed
    assert four.of([(0, 1, 2)], 12).tolist() == [90_000 + 20_040]


def test_neighbors_share_batches_of_at_most_so_many_the_first_of_them_full() -> None:
    one = costs([[LOW]] * 7)
    assert neighbors(one, 7, 3, 12) == [(0, 1, 2), (3, 4, 5), (6,)]
    assert neighbors(one, 7, 5, 12) == [(0, 1, 2, 3, 4), (5, 6)]
    split = costs([[LOW], [LOW], [(280_000, 480_000)], [LOW]])
    assert neighbors(split, 4, 3, 12) == [(0, 1), (2,), (3,)]


def test_areas_are_lengths_of_film() -> None:
    assert costs([[WIDE, LOW], [LOW]], [[], [WIDE]]).areas.tolist() == pytest.approx(
        [(200 * 56 + 280 * 30) * 1000 / 296, (280 * 30 + 200 * 56) * 1000 / 296]
    )
