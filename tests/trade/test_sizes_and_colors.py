"""How large artwork usually is, a color by any of its names, a heat as an iron's dial tells it, titles."""

import pytest

from xlbatch.trade.contrast import contrast
from xlbatch.trade.name_parts import without_title, words_of_no_name
from xlbatch.trade.tables import color_hex, color_name, iron_dial, table, words
from xlbatch.trade.usual_sizes import artwork_width, chest_art_width


def test_artwork_on_the_chest_is_small_and_elsewhere_as_usual() -> None:
    """Common practice, no source: 3 1/2 in on an adult's left chest."""
    assert artwork_width("Left chest") == pytest.approx(88.9)
    assert chest_art_width("left chest", "youth") == pytest.approx(63.5)
    assert chest_art_width("full front", "adult") == 0
    assert artwork_width("full front") == artwork_width("full back") > 200


def test_a_color_is_known_by_each_of_its_names() -> None:
    for line in table("colors"):
        for name in set(words(line["Other names"])) - {"sarı"}:  # in capitals it reads as Sari, a first name
            assert (color_name(f" {name.upper()} "), color_hex(name)) == (line["Color"], line["Hex"])
    assert (color_name("Heather Dream"), color_hex("heather dream")) == ("heather dream", None)


@pytest.mark.parametrize(
    ("color", "on_black"),
    [
        ("#0a0a0a", 1.0607),
        ("#0b0b0b", 1.0669),
        ("#808080", 5.3172),
        ("#ff0000", 5.252),
        ("#00ff00", 15.304),
        ("#0000ff", 2.444),
    ],
)
def test_dark_shades_are_nearly_linear(color: str, on_black: float) -> None:
    """Source: W3C, WCAG 2.1, relative luminance, worked by hand: of a channel to 0.04045 1/12.92, above it a power."""
    assert contrast(color, "#000000") == pytest.approx(on_black, abs=5e-4)


@pytest.mark.parametrize(
    ("name", "bare"),
    [
        ("Dr. Ana Novak Jr.", "Ana Novak Jr."), ("Dr Ana Novak", "Ana Novak"), ("Prof. Dr. Ana Novak", "Ana Novak"),
        ("Mr. Lund", "Mr. Lund"), ("Dr", "Dr"), ("", ""), ("Ana  Novak", "Ana  Novak"),
    ],
)  # fmt: skip
def test_a_title_goes_where_a_whole_name_is_left(name: str, bare: str) -> None:
    assert without_title(name) == bare


@pytest.mark.parametrize(
    ("name", "them"),
    [
        ("Ana y Bo Reed", ()), ("Ana née Berg", ("née",)), ("Rui d'Almeida", ()), ("Ana ‘Nan’ Reed", ("‘Nan’",)),
        ("Ana \"Nan\" Reed (mum)", ('"Nan"', "(mum)")), ("Ana O'Hara", ()),
    ],
)  # fmt: skip
def test_what_in_a_name_is_none(name: str, them: tuple[str, ...]) -> None:
    assert words_of_no_name(name) == them


@pytest.mark.parametrize(
    ("celsius", "dial"),
    [
        (100, "synthetics mark"), (110, "synthetics mark"), (110.4, "synthetics mark"), (111, "synthetics and wool"),
        (150, "at the wool mark"), (153, "wool and cotton"), (160, "at the cotton mark"), (170, "cotton and linen"),
        (500, "cotton and linen"),
    ],
)  # fmt: skip
def test_where_the_dial_of_an_iron_stands(celsius: float, dial: str) -> None:
    """Source: ISO 3758:2012 for the dots; the words between them are common practice, no source."""
    assert dial in iron_dial(celsius)
