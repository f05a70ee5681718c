"""The proof of how little film is possible, on layouts that can be checked by hand."""

from xlbatch.film.bound import least_length
from xlbatch.film.box import Bed

LONG = 10**9


def test_boxes_more_than_half_as_wide_as_the_bed_must_lie_one_after_another() -> None:
    # five squares of 60 in a bed 100 wide: the area alone would allow 180
    assert least_length([(60_000, 60_000)] * 5, Bed(100_000, LONG, 0, True)) in range(299_990, 300_001)


def test_where_nothing_may_be_turned_the_width_given_counts() -> None:
    bed = Bed(100_000, LONG, 0, False)
    assert least_length([(60_000, 10_000)] * 4, bed) in range(39_990, 40_001)


def test_one_box_needs_its_shorter_side_if_it_may_be_turned_and_fits() -> None:
    assert least_length([(90_000, 40_000)], Bed(100_000, LONG, 0, True)) == 40_000
    assert least_length([(110_000, 40_000)], Bed(100_000, LONG, 0, True)) == 110_000


def test_no_boxes_need_no_film() -> None:
    assert least_length([], Bed(100_000, LONG, 0, True)) == 0
