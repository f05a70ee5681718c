"""Sizes within answers, messages and titles, and whom they are for. Invented; common practice, no source."""

import pytest

from xlbatch.tables.sizes import SIZES, says_tall, says_whose, several_sizes, sizes_in, wearer, wearer_in


@pytest.mark.parametrize(
    ("typed", "sizes"),
    [("S, M", "S M"), ("S and M", "S M"), ("S, M, L", "S M L"), ("YS & YM", "Youth S,Youth M"), ("S", ""),
     ("S, huh", ""), ("YS, M", ""), ("S, 2T", ""), ("Medium, unisex", ""), (", S", "")],
)  # fmt: skip
def test_an_answer_with_several_sizes(typed: str, sizes: str) -> None:
    assert several_sizes(typed) == tuple(sizes.split("," if "," in sizes else " ")) * bool(sizes)


@pytest.mark.parametrize(
    ("message", "sizes"),
    [
        ("M for me", ["M"]),
        ("l for me", []),
        ("XL, thanks", ["XL"]),
        ("youth m for Ned", ["youth m"]),
        ("extra extra large please", ["extra extra large"]),
        ("Size S or M?", ["Size S", "M"]),
        ("M M", ["M", "M"]),
        ("2 XL and 1 M", ["2 XL", "M"]),
        ("Women's medium, youth large", ["Women's medium", "youth large"]),
        ("a 3T for Bo", ["3T"]),
        ("10 for Ned", []),
        ("no size here", []),
    ],
)
def test_the_sizes_in_a_message(message: str, sizes: list[str]) -> None:
    assert sizes_in(message) == sizes


@pytest.mark.parametrize(
    ("typed", "whose", "tall"),
    [("Adult M", True, False), ("YM", True, False), ("2T", True, False), ("18M", True, False), ("youth", True, False),
     ("M", False, False), ("M tall", False, True), ("LT", False, True), ("huh", False, False)],
)  # fmt: skip
def test_whether_a_size_says_whose_it_is_or_how_long(typed: str, whose: bool, tall: bool) -> None:
    assert says_whose(typed) is whose
    assert says_tall(typed) is tall


@pytest.mark.parametrize(
    ("text", "whom", "in_a_title"),
    [("kids", "youth", "youth"), ("women's", "ladies", "ladies"), ("unisex", "adult", "adult"), ("M", None, None),
     ("youth M", None, None), ("", None, None), ("Grade 3 (youth sizes)", None, "youth"),
     ("Adult - red", None, "adult"), ("Team (foo)", None, None), ("Kids and adults", None, None)],
)  # fmt: skip
def test_whom_a_text_speaks_of(text: str, whom: str | None, in_a_title: str | None) -> None:
    assert wearer(text) == whom
    assert wearer_in(text) == in_a_title


def test_the_sizes_there_are() -> None:
    """Ladies' and youth sizes go from XS to 2XL."""
    assert [size for size in SIZES if size.startswith("Youth ")][::5] == ["Youth XS", "Youth 2XL"]
    assert "Ladies 3XL" not in SIZES
    assert len(SIZES) == 30
