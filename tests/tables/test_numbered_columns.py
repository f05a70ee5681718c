"""Rows for several garments or people are told by their headings. Invented headings; common practice, no source."""

import pytest

from xlbatch.files.raw import Raw
from xlbatch.tables.numbered_columns import over_sizes, parts_of_a_row


@pytest.mark.parametrize(("titles", "parts"), [
    (["Name", "Size", "Size 2"], 2),
    (["Name", "Size", "Extra shirt size"], 2),
    (["Name", "1st shirt size", "2nd shirt size", "3rd shirt size"], 3),
    (["Name", "Size", "2nd choice size"], 0),
    (["Name", "1st choice size", "2nd choice size"], 0),
    (["First name", "Second name", "Size"], 0),
    (["Name", "Size", "Plus one", "Plus one size"], 2),
    (["Employee", "T-shirt size", "Spouse", "Spouse T-shirt size", "Email"], 2),
    (["Parent", "Child name", "Child size"], 0),
    (["Name", "Size", "Shoe", "Shoe size"], 0),
])  # fmt: skip
def test_how_many_a_row_is_for(titles: list[str], parts: int) -> None:
    assert len(parts_of_a_row(dict(enumerate(titles, 1)))) == parts


def test_garments_over_sizes_are_a_garment_each() -> None:
    titles = {1: "Name", 2: "T-shirt", 3: "Hoodie"}
    rows = [{1: Raw("Ada Bo"), 2: Raw("M"), 3: Raw("L")}, {1: Raw("Cy Do"), 2: Raw("S")}]
    parts = parts_of_a_row(titles, over_sizes(titles, rows))
    assert [part.garment for part in parts] == ["Crew-neck tee", "Hooded sweatshirt"]


def test_garments_over_counts_are_none() -> None:
    titles = {1: "Name", 2: "T-shirt", 3: "Hoodie"}
    rows = [{1: Raw("Ada Bo"), 2: Raw(1), 3: Raw(2)}]
    assert not over_sizes(titles, rows)
