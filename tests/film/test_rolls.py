"""Cutting stock: published instances with known optimum, and small cases by hand."""

import pytest

from xlbatch.film.rolls import cheapest_rolls

# the paper-roll example of the encyclopedia article "Cutting stock problem": 73 rolls of 5600 mm
PAPER = (1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200)
WANTED = (22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20)


def test_the_paper_roll_example_takes_73_rolls() -> None:
    lengths = [length for length, count in zip(PAPER, WANTED, strict=True) for _ in range(count)]
    patterns = cheapest_rolls(lengths, [(5600, 1)])
    assert len(patterns) == 73
    assert sorted(length for pattern in patterns for length in pattern.cut) == sorted(lengths)
    assert all(sum(pattern.cut) <= 5600 for pattern in patterns)


def test_the_classic_example_of_width_100_takes_453_rolls() -> None:
    # Chvátal, Linear Programming (1983), chapter 13
    assert len(cheapest_rolls([45] * 97 + [36] * 610 + [31] * 395 + [14] * 211, [(100, 1)])) == 453


def test_the_cheaper_mix_of_rolls_wins() -> None:
    # 3 × 30 fit one long roll for 20, or three short ones for 7 each
    assert [p.roll for p in cheapest_rolls([30, 30, 30], [(40, 7), (100, 20)])] == [1]
    assert [p.roll for p in cheapest_rolls([30, 30, 30], [(40, 6), (100, 20)])] == [0, 0, 0]


def test_spare_film_may_come_from_what_is_left_of_the_rolls() -> None:
    assert len(cheapest_rolls([70], [(100, 1)], spare=30)) == 1
    assert len(cheapest_rolls([70], [(100, 1)], spare=31)) == 2
    assert len(cheapest_rolls([], [(100, 1)], spare=1)) == 1
    assert cheapest_rolls([], [(100, 1)]) == ()


def test_a_length_longer_than_every_roll_is_refused() -> None:
    with pytest.raises(ValueError, match="longer"):
        cheapest_rolls([101], [(100, 1)])
