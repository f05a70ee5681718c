"""Names in small letters or capitals, of two alphabets, family name first or with titles: asked of each or once."""

from collections.abc import Callable

import pytest

from xlbatch.check.printed_text import (
    _has_capitals,
    _in_latin,
    _is_small,
    _is_turned_round,
    _shouts,
    _strays,
    _the_name_in,
)
from xlbatch.plan import Plan


@pytest.mark.parametrize(
    ("name", "small", "shouts", "turned"),
    [
        ("ana", True, False, False), ("o", False, False, False), ("jo", True, False, False),
        ("Ana", False, False, False), ("ANA", False, False, False),  # maybe initials
        ("ANNA", False, True, False), ("JO-AN", False, True, False), ("J. R. B.", False, False, False),
        ("aNNA", False, False, True), ("nOVAK Ana", False, False, True), ("dA Silva", False, False, False),
        ("ანა", False, False, False),  # Georgian has no capitals in names
        ("анна", True, False, False), ("ԱՆՆԱ", False, True, False),
    ],
)  # fmt: skip
def test_letters_as_a_name_hardly_has_them(name: str, small: bool, shouts: bool, turned: bool) -> None:
    assert (_is_small(name), _shouts(name), _is_turned_round(name)) == (small, shouts, turned)


@pytest.mark.parametrize(
    ("name", "begins"),
    [("Ana 7", True), ("Ана", True), ("Ανα", True), ("Անա", True), ("ანა", False), ("Ana ანა", False)],
)
def test_alphabets_whose_names_begin_with_a_capital(name: str, begins: bool) -> None:
    """Source: the Unicode Standard, 7: Georgian and Cherokee are written in one case."""
    assert _has_capitals(name) is begins


@pytest.mark.parametrize(
    ("word", "strays", "latin"),
    [("Ana", "", "Ana"), ("Аna", "А", "Ana"), ("Анa", "a", ""), ("Ωmega", "Ω", ""), ("Анна", "", "Анна")],
)  # А and а are Cyrillic
def test_the_letters_of_the_alphabet_a_word_has_fewer_of(word: str, strays: str, latin: str) -> None:
    assert "".join(_strays(word)) == strays
    if strays:
        assert _in_latin(word) == latin


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("Novak, Ana", "Ana Novak"), ("Ana (late)", "Ana"), ("Novak, Ana [2]", "Ana Novak"),
        ("Novak, Ana, Jr", ""), ("Ana 3B", ""), ("Ana / Ivo", ""), ("(late)", ""),
    ],
)  # fmt: skip
def test_the_name_in_a_text_with_more(text: str, name: str) -> None:
    assert _the_name_in(text) == name


@pytest.mark.parametrize(
    ("names", "asked"),
    [
        (["Novak, Ana", "Berg, Ivo", "Mei Lin"], ["list-last-first A2"]),  # more than half: asked once
        (["Novak, Ana", "Berg, Ivo", "Mei Lin", "Kai Olsen"], ["name-turned A2", "name-turned A3"]),
        (["Novak, Ana"], ["name-turned A2"]),  # of a list of two it takes both
        (["Dr. Ana Novak", "Dr. Ivo Berg", "Mei Lin"], ["list-with-titles A2"]),
        (["Dr. Ana Novak", "Ivo Berg", "Mei Lin"], ["name-and-more A2"]),
        (["ana novak", "ivo berg", "Mei Lin"], ["list-small-letters A2"]),
        (["ana novak", "Ivo Berg", "Mei Lin"], ["capitals-odd A2"]),
        (["ANNA NOVAK", "Ivo Berg", "Mei Lin", "Kai Olsen"], ["capitals-odd A2"]),  # one in four
        (["ANNA NOVAK", "Ivo Berg", "Mei Lin"], []),  # too few to tell how the list writes names
        (["ANNA NOVAK", "IVO BERG", "Mei Lin", "Kai Olsen"], []),
    ],
)
def test_the_list_s_own_way_is_asked_about_once(
    names: list[str], asked: list[str], plan_of: Callable[..., Plan]
) -> None:
    plan = plan_of([["Who", "Size"], *([name, "M"] for name in names)])
    codes = (
        "list-last-first",
        "list-with-titles",
        "list-small-letters",
        "capitals-odd",
        "name-and-more",
        "name-turned",
    )
    assert [f"{problem.code} {problem.where.cell}" for problem in plan.problems if problem.code in codes] == asked
