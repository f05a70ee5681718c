"""Cutting stock: published instances with known optimum, and small cases by hand."""

from collections.abc import Sequence

import pytest

from xlbatch.film.rolls import Pattern, Scrap, Want, cheapest_rolls

# the paper-roll example of the encyclopedia article "Cutting stock problem": 73 rolls of 5600 mm
PAPER = (1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200)
WANTED = (22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20)


def cheapest(lengths: Sequence[int], rolls: Sequence[tuple[int, int]], spare: int = 0) -> tuple[Pattern, ...]:
    return cheapest_rolls([Want(length) for length in lengths], rolls, spare)


def test_the_paper_roll_example_takes_73_rolls() -> None:
    lengths = [length for length, count in zip(PAPER, WANTED, strict=True) for _ in range(count)]
    patterns = cheapest(lengths, [(5600, 1)])
    assert len(patterns) == 73
    assert sorted(want.length for pattern in patterns for want in pattern.cut) == sorted(lengths)
    assert all(sum(want.length for want in pattern.cut) <= 5600 for pattern in patterns)


def test_the_classic_example_of_width_100_takes_453_rolls() -> None:
    # Chvátal, Linear Programming (1983), chapter 13
    assert len(cheapest([45] * 97 + [36] * 610 + [31] * 395 + [14] * 211, [(100, 1)])) == 453


def test_the_cheaper_mix_of_rolls_wins() -> None:
    # 3 × 30 fit one long roll for 20, or three short ones for 7 each
    assert [p.at for p in cheapest([30, 30, 30], [(40, 7), (100, 20)])] == [1]
    assert [p.at for p in cheapest([30, 30, 30], [(40, 6), (100, 20)])] == [0, 0, 0]


def test_spare_film_may_come_from_what_is_left_of_the_rolls() -> None:
    assert len(cheapest([70], [(100, 1)], spare=30)) == 1
    assert len(cheapest([70], [(100, 1)], spare=31)) == 2
    assert len(cheapest([], [(100, 1)], spare=1)) == 1
    assert cheapest([], [(100, 1)]) == ()


def test_a_length_longer_than_every_roll_is_refused() -> None:
    with pytest.raises(ValueError, match="longer"):
        cheapest([101], [(100, 1)])


def test_pieces_that_are_there_are_cut_where_that_saves_a_roll() -> None:
    # 70 and 60 need two rolls of 100; with 60 from the piece, one
    wants = [Want(70), Want(60, (0,))]
    found = cheapest_rolls(wants, [(100, 50)], scraps=[Scrap(65, 10)])
    assert found == (Pattern(0, (Want(70),)), Pattern(0, (Want(60, (0,)),), scrap=True))


def test_a_piece_is_left_alone_where_the_roll_holds_everything() -> None:
    wants = [Want(40, (0,)), Want(50)]
    (roll,) = cheapest_rolls(wants, [(100, 50)], scraps=[Scrap(45, 10)])
    assert (roll.scrap, len(roll.cut)) == (False, 2)


def test_taking_the_longest_first_is_not_always_best() -> None:
    # the piece of 100 holds 60, or 50 and 50; only the latter leaves one roll of 60 to buy
    wants = [Want(60, (0,)), Want(50, (0,)), Want(50, (0,))]
    found = cheapest_rolls(wants, [(60, 9)], scraps=[Scrap(100, 1000)])
    assert [pattern.cut[0].length for pattern in found if not pattern.scrap] == [60]


def test_what_is_left_of_a_piece_is_spare_film_if_long_enough() -> None:
    want = Want(30, (0,))
    assert [p.scrap for p in cheapest_rolls([want], [(100, 9)], 20, [Scrap(50, 20)])] == [True]
    assert [p.scrap for p in cheapest_rolls([want], [(100, 9)], 20, [Scrap(50, 21)])] == [False]


@pytest.mark.parametrize("lengths", [(700_000, 400_000), (400_000, 700_000)])
def test_of_two_pieces_that_do_the_shorter_is_cut(lengths: tuple[int, int]) -> None:
    """In µm; the longer may serve for something long later."""
    want = Want(300_000, (0, 1))
    (piece,) = cheapest_rolls([want], [(900_000, 9)], scraps=[Scrap(length, 100_000) for length in lengths])
    assert (piece.scrap, lengths[piece.at]) == (True, 400_000)
