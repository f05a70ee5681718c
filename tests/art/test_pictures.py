"""Artwork that is a picture: cut as its outlines, told of as it was read, and held to as many dots as it has."""

from typing import Any

import pytest

from tests.tracing.pictures import FADES, PLAIN, TWO, drawn, saved

IN = 25.4


def test_a_picture_is_cut_like_a_drawing(make: Any) -> None:
    """The inked box of TWO is 570 by 560 dots."""
    saved(drawn(TWO), make.folder / "two.png")
    red = make.artwork("", artwork="two.png", artwork_color="#dd0000", width=5 * IN, decal="Red")
    blue = make.artwork("", artwork="two.png", artwork_color="#0000aa", width=5 * IN, decal="Blue", layer=2)
    (one, other), problems = make.drawn(red, blue)
    assert not [each for each in problems if each.level == "stop"]
    assert one.whole == other.whole
    assert one.whole == pytest.approx((5 * IN, 5 * IN * 560 / 570), abs=0.2)
    assert (one.width, one.height) == pytest.approx((5 * IN * 440 / 570, 5 * IN * 560 / 570), abs=0.2)
    assert other.offset == pytest.approx((5 * IN * 310 / 570, 5 * IN * 300 / 570), abs=0.2)


def test_a_picture_of_too_few_dots_for_its_width_is_told(make: Any) -> None:
    """674 dots of 0.4 mm are 10.61 in: in whole eighths 10 1/2."""
    saved(drawn(PLAIN), make.folder / "plain.png")
    for width, told in ((8 * IN, False), (11 * IN, True)):
        _, problems = make.drawn(make.artwork("", artwork="plain.png", width=width))
        coarse = [each.wrong for each in problems if each.code == "picture-coarse"]
        assert [each.partition(" dots ")[2] for each in coarse] == [
            "to be 11 in wide: its outlines are good up to 10 1/2 in."
        ] * told


def test_what_is_no_drawing_holds_the_garment_back(make: Any) -> None:
    saved(drawn(FADES), make.folder / "fades.png")
    _, problems = make.drawn(make.artwork("", artwork="fades.png", width=5 * IN))
    (found,) = [each for each in problems if each.level == "stop"]
    assert found.code == "artwork-unreadable"
    assert "fade" in found.wrong
