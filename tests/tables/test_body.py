"""Measures, ages and numbers given as a size: the reading used, which is always asked.

Chests: EN 13402-3, letter codes by chest or bust girth in cm. Heights of US children's sizes as published beside it.
"""

import pytest

from xlbatch.tables.body import guess_size, usual_chest
from xlbatch.tables.sizes import read_size

MEN = {"2XS": (70, 78), "XS": (78, 86), "S": (86, 94), "M": (94, 102), "L": (102, 110), "XL": (110, 118),
       "2XL": (118, 129), "3XL": (129, 141)}  # fmt: skip
WOMEN = {"2XS": (66, 74), "XS": (74, 82), "S": (82, 90), "M": (90, 98), "L": (98, 107), "XL": (107, 119),
         "2XL": (119, 131), "3XL": (131, 143)}  # fmt: skip
HEIGHTS = {92: "2T", 98: "3T", 104: "Youth XS", 110: "Youth XS", 116: "Youth S", 122: "Youth S", 128: "Youth S",
           140: "Youth M", 152: "Youth M", 164: "Youth L", 176: "Youth L"}  # fmt: skip
READINGS = {
    "10": "Youth M", "10-12": "Youth M", "10/12": "Youth M", "7": "Youth S", "6": "Youth S", "2": "2T", "14": "Youth L",
    "age 7": "Youth S", "12 yrs old": "Youth M", "size 10": "Youth M", "kids 8": "Youth S", "youth 10": "Youth M",
    "38": "M", "38 in": "M", '38"': "M", "chest 38": "M", "adult 38": "M", "46-48": "2XL", "97 cm": "M",
    "chest 96-101 cm": "M", "Women's 36 in": "Ladies M", "bust 90 cm": "Ladies M", "EU 116": "Youth S",
    "height 120": "Youth S", "104": "Youth XS",
    # a range over two neighbors: the larger
    "5-6": "Youth S", "3-4": "Youth XS", "9/11": "Youth M", "12-14": "Youth L", "2-3 years": "3T",
}  # fmt: skip
NONE = ["", "0", "200", "5-12", "3000", "42R", "M", "10-", "ladies 10", "-7", "1", "38 lb", "chest", "12-10",
        "age 40", "chest 38 years"]  # fmt: skip


@pytest.mark.parametrize(("typed", "size"), READINGS.items())
def test_reading(typed: str, size: str) -> None:
    guess = guess_size(typed)
    assert guess is not None
    assert guess.size == size
    assert read_size(typed) is None


@pytest.mark.parametrize("typed", NONE)
def test_what_means_no_size(typed: str) -> None:
    assert guess_size(typed) is None


@pytest.mark.parametrize(("size", "ends"), MEN.items())
def test_a_mans_chest(size: str, ends: tuple[int, int]) -> None:
    for girth in (ends[0], sum(ends) / 2, ends[1] - 1):
        guess = guess_size(f"chest {girth:g} cm")
        assert guess is not None
        assert guess.size == size
    assert usual_chest(size) == pytest.approx(sum(ends) / 4 * 10)


@pytest.mark.parametrize(("size", "ends"), WOMEN.items())
def test_a_womans_bust(size: str, ends: tuple[int, int]) -> None:
    for girth in (ends[0], ends[1] - 1):
        guess = guess_size(f"bust {girth} cm")
        assert guess is not None
        assert guess.size == f"Ladies {size}"


@pytest.mark.parametrize(("height", "size"), HEIGHTS.items())
def test_a_childs_height(height: int, size: str) -> None:
    guess = guess_size(f"height {height}")
    assert guess is not None
    assert guess.size == size
