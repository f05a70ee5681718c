"""Which row of Garments a kind of blank is taken from, and what its stock is once some came."""

from dataclasses import replace
from pathlib import Path

import pytest

from xlbatch.check.stock import _arrived, blank_kind, color_in, listed
from xlbatch.roster.read import blank_job

BLANK = replace(blank_job(Path("list.xlsx")).blanks[0], garment="Field tee", size="M")
BLANKS = [
    replace(BLANK, size="L", colors=("navy",)),
    replace(BLANK, colors=("white", "red")),
    replace(BLANK, colors=("navy blue",)),
    replace(BLANK, garment="Hoodie", colors=("navy",)),
]


@pytest.mark.parametrize(
    ("garment", "size", "color", "row"),
    [
        ("FIELD TEE", "M", "Red", 1),
        ("Field tee", "M", "navy", 2),  # the row that lists its color, by any of its names
        ("Field tee", "M", "orange", 1),  # none does: the first of that garment and size
        ("Field tee", "L", "white", 0),
        ("Hoodie", "M", "navy", 3),
        ("Hoodie", "L", "navy", None),
    ],
)
def test_the_row_a_blank_is_taken_from(garment: str, size: str, color: str, row: int | None) -> None:
    assert listed(BLANKS, blank_kind(garment, size, color)) == row


@pytest.mark.parametrize(
    ("stock", "alone", "after"),
    [
        ({"navy blue": 2, "white": 5}, True, {"navy blue": 7, "white": 5}),  # in the stock's own word
        ({"white": 5}, True, {"white": 5, "navy": 7}),
        ({"": 3}, True, {"navy": 7}),  # the number without a color was of this one
        ({"": 3}, False, {"": 3, "navy": 7}),  # it may be of another
        ({}, False, {"navy": 7}),
    ],
)
def test_what_is_there_once_some_came(stock: dict[str, int], alone: bool, after: dict[str, int]) -> None:
    assert _arrived(stock, "navy", 7, alone=alone) == after


def test_a_stock_s_own_word_for_a_color() -> None:
    assert color_in({"": 1, "Navy Blue": 2}, "navy") == "Navy Blue"
    assert color_in({"": 1}, "navy") == ""
