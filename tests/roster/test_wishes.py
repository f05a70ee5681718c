"""What a remark wishes for a row, and which of two parts of an answer is printed."""

import pytest

from xlbatch.roster.names_given import _text_and_aside
from xlbatch.roster.wishes import wish

SIZE, GARMENT, MORE = "another size or a change", "another garment or color", "more than one"


@pytest.mark.parametrize(
    ("remark", "asks"),
    [
        ("XL", SIZE), ("M", SIZE), ("now L", SIZE), ("better XXL", SIZE), ("2x", SIZE),
        ("hoodie", GARMENT), ("in navy", GARMENT), ("navy", GARMENT),
        ("2", MORE), ("x 3", MORE), ("2 shirts", MORE),
        ("1", ""), ("200", ""), ("Navy", ""),  # a name or a heading
        ("vegetarian", ""),
    ],
)  # fmt: skip
def test_what_a_remark_wishes(remark: str, asks: str) -> None:
    assert wish(remark) == asks


@pytest.mark.parametrize(
    ("typed", "text", "aside"),
    [
        ("Ana", "Ana", ""),
        ("“Ana”!", "Ana", "!"),
        ("Ana (mum of Ivo)", "Ana", "mum of Ivo"),
        ("Ana - no", "Ana", "no"),
        ("Ana, yes", "Ana", "yes"),
        ("Novak, Ana", "Novak, Ana", ""),  # no answer, so a part of the name
        ("Jo-Ann", "Jo-Ann", ""),
        ('Ana "Nan" Novak', 'Ana "Nan" Novak', ""),  # a name around it
    ],
)
def test_what_is_printed_and_what_stands_aside(typed: str, text: str, aside: str) -> None:
    assert _text_and_aside(typed) == (text, aside)
