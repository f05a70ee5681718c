"""Colors of a drawing by the words people type, and the film nearest to one."""

from dataclasses import replace

import pytest

from tests.art.conftest import FILM
from xlbatch.parts.color_words import color_in, difference, nearest_film, word_for, words_for

COLORS = ("#c41f30", "#ffffff", "#17233f")


@pytest.mark.parametrize(
    ("colors", "typed", "color"),
    [
        (COLORS, "#C41F30", "#c41f30"),  # its code in capitals
        (COLORS, " #ffffff ", "#ffffff"),
        (COLORS, "white", "#ffffff"),
        (COLORS, "WHITE", "#ffffff"),
        (COLORS, "red", "#c41f30"),  # neither CSS's red nor the trade's, but the only one called so
        (COLORS, "navy blue", "#17233f"),  # another name of the trade's navy
        (COLORS, "orange", None),  # called so by none
        (COLORS, "", None),  # which of three?
        (COLORS[:1], "", "#c41f30"),
        ((), "", None),
        (("#c41f30", "#c3202f"), "red", "#c3202f"),  # the trade's own red goes before one near to it
        (("#c41f30", "#c21f2e"), "red", None),  # two are called so
    ],
)
def test_a_color_is_known_by_its_code_or_by_a_word_only_it_has(
    colors: tuple[str, ...], typed: str, color: str | None
) -> None:
    assert color_in(colors, typed) == color


@pytest.mark.parametrize(
    ("color", "word"), [("#ffffff", "white"), ("#c41f30", "red"), ("#18243e", "navy"), ("#000000", "black")]
)
def test_a_color_is_called_by_the_trade_s_nearest(color: str, word: str) -> None:
    assert word_for(color) == word


def test_two_colors_of_one_word_keep_their_codes() -> None:
    assert words_for(("#c41f30", "#ffffff", "#c21f2e")) == {
        "#c41f30": "#c41f30",
        "#ffffff": "white",
        "#c21f2e": "#c21f2e",
    }
    assert words_for(("", "#ffffff")) == {"": "", "#ffffff": "white"}  # letters that have no color yet


@pytest.mark.parametrize(
    ("color", "film"), [("#1d2a4a", "Navy"), ("#fefefe", "White"), ("#101010", "Black"), ("#e0e0ff", "White")]
)
def test_the_film_nearest_to_a_color_is_taken(color: str, film: str) -> None:
    films = [replace(FILM, name=name, color=name.lower()) for name in ("Black", "Navy", "White")]
    nearest = nearest_film(color, films)
    assert nearest
    assert nearest.name == film


def test_of_films_alike_the_first_and_none_of_a_color_that_no_one_knows() -> None:
    films = [replace(FILM, name="Odd", color="mixed")]
    assert nearest_film("#ffffff", films) is None
    same = [*films, replace(FILM, name="Smooth", color="white"), replace(FILM, name="Glitter", color="white")]
    nearest = nearest_film("#000000", same)
    assert nearest
    assert nearest.name == "Smooth"


@pytest.mark.parametrize(("gray", "lightness"), [("#0a0a0a", 2.742), ("#030303", 0.8227), ("#777777", 50.03)])
def test_grays_lie_as_far_from_black_as_their_lightness(gray: str, lightness: float) -> None:
    """CIE 15: 903.3 Y for the darkest, then 116 times the cube root of Y less 16; Y of sRGB by IEC 61966-2-1."""
    assert difference(gray, "#000000") == pytest.approx(lightness, abs=0.02)
