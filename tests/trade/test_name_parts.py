"""First and last names: titles before them, tails after them and particles between them are no names."""

import pytest

from xlbatch.trade.name_parts import first_name, last_name, whole_name, words_of_no_name


@pytest.mark.parametrize(
    ("name", "first", "last"),
    [
        ("Ana Novak", "Ana", "Novak"), ("Novak, Ana", "Ana", "Novak"), ("Ana", "Ana", "Ana"), ("", "", ""),
        ("Dr. Ana Novak", "Ana", "Novak"), ("Dr Ana Novak", "Ana", "Novak"), ("Dr. Novak", "Novak", "Novak"),
        ("Dr Novak", "Dr", "Novak"), ("Ana Novak Jr.", "Ana", "Novak"), ("Ana Novak, Jr.", "Ana", "Novak"),
        ("Jan van Dijk", "Jan", "van Dijk"),
        ("Jan Piet van Dijk", "Jan", "van Dijk"), ("van Dijk, Jan", "Jan", "van Dijk"),
    ],
)  # fmt: skip
def test_the_parts_of_a_name(name: str, first: str, last: str) -> None:
    assert (first_name(name), last_name(name)) == (first, last)


@pytest.mark.parametrize(
    ("name", "last"),
    [
        ("ana maria lopez", "lopez"),  # no particle, though all in lower case
        ("Ana Van Lopez", "Lopez"),  # a particle is one only in lower case
        ("Ana van der Lopez", "van der Lopez"),
    ],
)
def test_a_last_name_begins_with_a_particle_in_lower_case_or_is_the_last_word(name: str, last: str) -> None:
    """Common practice, no source."""
    assert (first_name(name), last_name(name)) == (name.split()[0], last)


@pytest.mark.parametrize(
    ("typed", "whole"),
    [
        ("Novak, Ana", "Ana Novak"), ("Novak, Ana Maria", "Ana Maria Novak"), ("Novak, Ana Jr.", "Ana Novak Jr."),
        ("Dr. Novak, Ana", "Dr. Ana Novak"), ("Ana Novak, Jr.", "Ana Novak, Jr."),
    ],
)  # fmt: skip
def test_a_name_with_the_last_name_first_is_turned(typed: str, whole: str) -> None:
    assert whole_name(typed) == whole


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("Ana plus one", ("plus", "one")), ("ana novak", ()), ("ana", ()), ("Ana Novak", ()), ("Jan van Dijk", ()),
        ("baby Sue", ("baby",)), ("ana Novak", ()), ("Ana (late)", ("(late)",)), ("N. N.", ("N. N.",)),
    ],
)  # fmt: skip
def test_words_in_small_letters_beside_others_are_no_name(name: str, words: tuple[str, ...]) -> None:
    assert words_of_no_name(name) == words
