"""Which numbers published rulebooks allow, as typed."""

import pytest

from xlbatch.trade.number_rules import number_rule


@pytest.mark.parametrize(
    ("rule", "legal", "illegal"),
    [
        ("NFHS football to 2021", "1 9 10 99", "0 00 07 100 7a A"),
        ("NFHS football", "0 1 99", "00 01 100"),
        ("NCAA basketball to 2022-23", "0 00 1 5 10 15 55", "6 9 16 56 05 000"),
        ("NCAA basketball", "0 00 99", "000 01 100"),
        ("WFTDA roller derby", "1 42 007 1234", "12345 4x"),
        ("MLB baseball", "0 123 7a", ""),  # the book says nothing of which
    ],
)
def test_a_number_is_legal_by_its_book(rule: str, legal: str, illegal: str) -> None:
    """Sources: the rulebooks named in trade/number_rules.csv."""
    book = number_rule(f" {rule.upper()} ")
    assert book is not None
    assert [number for number in legal.split() if not book.allows(number)] == []
    assert [number for number in illegal.split() if book.allows(number)] == []


def test_a_name_that_is_no_book_has_no_rule() -> None:
    assert number_rule("street ball") is None
