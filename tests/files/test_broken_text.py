"""Letters in pieces: UTF-8 read as Windows-1252 or Latin-1, as lists saved twice have it."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from xlbatch.files.broken_text import is_broken, mended

NAMES = ["María", "Núñez", "Ángel", "Željko", "Đorđević", "İpek", "O’Hara", "Élodie", "Strauß", "Søren", "Łukasz"]
WHOLE = [
    "Ana",
    "São Paulo",
    "Ângela",
    "Ã",
    "Österreich",
    "Ähnlich",
    "naïve",
    "Ðorð",
    "Zoë",
    "Þórdís",
    "Straße",
    "ÂME",
    "北京",
]


@pytest.mark.parametrize("name", NAMES)
def test_letters_in_pieces_are_put_together(name: str) -> None:
    broken = name.encode().decode("latin-1")
    assert is_broken(broken)
    assert mended(broken) == name


def test_windows_1252_too() -> None:
    assert mended("MarÃ­a â€œMiaâ€\u009d OâHara") == "María “Mia” OâHara"
    assert mended("Å½eljko") == "Željko"


@pytest.mark.parametrize("name", WHOLE)
def test_whole_letters_stay(name: str) -> None:
    assert not is_broken(name)
    assert mended(name) == name


def test_a_lost_letter_is_broken_and_stays() -> None:
    assert is_broken("Mar\ufffda")
    assert mended("Mar\ufffda") == "Mar\ufffda"


@settings(max_examples=200)
@given(st.text(max_size=20))
def test_what_is_mended_is_whole(text: str) -> None:
    assert len(mended(text)) <= len(text)
