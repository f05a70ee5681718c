"""Names spelled almost alike: what is a slip of the hand, and what are two people."""

import pytest

from xlbatch.check.spelling import _ends, _is_one_slip, _one_off


@pytest.mark.parametrize(
    ("word", "other", "slip"),
    [
        ("novak", "novak", True),  # they differed in their accents
        ("jonathan reed", "jonathon reed", True),  # a letter for another
        ("marcus hale", "marucs hale", True),  # two turned round
        ("theresa hale", "teresa hale", True),  # one left out
        ("jonathan", "janathon", False),  # two letters
        ("jan", "jon", False),  # too short to tell
        ("janes", "jones", True),  # five letters are enough
        ("jane", "janes", False),  # of the shorter one
        ("novak", "novaka", False),  # as a woman's name ends
        ("mario reed", "maria reed", False),
        ("andrea berg", "andrew berg", False),
    ],
)
def test_one_slip_apart(word: str, other: str, slip: bool) -> None:
    """Common practice, no source."""
    assert _is_one_slip(word, other) is slip
    assert _is_one_slip(other, word) is slip


@pytest.mark.parametrize(
    ("word", "other", "ends"),
    [("novak", "novaka", True), ("mario", "maria", True), ("mario", "marin b", True), ("mario", "mirio", False),
     ("mario", "mario", False), ("novak", "novakova", False)],
)  # fmt: skip
def test_the_ends_of_women_s_and_men_s_names(word: str, other: str, ends: bool) -> None:
    assert _ends(word, other) is ends
    assert _ends(other, word) is ends


def test_each_name_goes_with_an_earlier_one() -> None:
    assert list(_one_off(["marcus", "ingrid", "markus", "marcos", "íngrid", "anna", "anne"])) == [
        ("markus", "marcus"), ("marcos", "marcus"), ("íngrid", "ingrid"),
    ]  # fmt: skip


@pytest.mark.parametrize(
    "pair", [("teresa", "theresa"), ("theresa", "teresa"), ("janes", "jones"), ("marcus", "marcsu")]
)
def test_a_letter_more_less_or_otherwise_meets(pair: tuple[str, str]) -> None:
    assert list(_one_off(pair)) == [pair[::-1]]
