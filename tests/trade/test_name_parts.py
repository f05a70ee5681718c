"""First and last names: titles before them, tails after them and particles between them are no names."""

import pytest

from xlbatch.trade.name_parts import first_name, last_name


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
