"""Columns that count a size, a garment, a cut or a color each. Invented; common practice, no source."""

import pytest

from xlbatch.files.raw import Raw
from xlbatch.tables.size_columns import counted_columns, holds_counts, is_tick, pieces, size_columns, sizes_by_wearer


@pytest.mark.parametrize(
    ("value", "many", "tick"),
    [(2, 2, False), (0, 0, False), ("x", 1, True), ("yes", 1, True), ("no", 0, False), ("1", 1, False),
     ("3", 3, False), ("red", None, False), (True, 1, True), (1.5, None, False)],
)  # fmt: skip
def test_how_many_a_cell_asks_for(value: object, many: int | None, tick: bool) -> None:
    assert pieces(Raw(value)) == many
    assert is_tick(Raw(value)) is tick


@pytest.mark.parametrize(
    ("cells", "are_counts"),
    [("1 2 x", True), ("1 2 x 0 4 5 6 a b c", True), ("1 2 x 0 4 5 a b c d", False), ("a", False), ("", True)],
)
def test_nearly_all_cells_are_counts(cells: str, are_counts: bool) -> None:
    """Seven of ten are."""
    rows = [{1: Raw("Ana"), 2: Raw(cell)} for cell in cells.split()] + [{1: Raw("Bo")}]
    assert holds_counts(rows, [2, 3]) is are_counts


@pytest.mark.parametrize(
    ("titles", "counted"),
    [
        ("Size|Tee|Hoodie", {2: ("Garment", "Tee"), 3: ("Garment", "Hoodie")}),
        ("Size|Qty tee|# Hoodie", {2: ("Garment", "tee"), 3: ("Garment", "Hoodie")}),
        ("Size|Men|Women|Foo", {2: ("Cut", "Men"), 3: ("Cut", "Women")}),
        ("Size|Red|Blue", {2: ("Color", "Red"), 3: ("Color", "Blue")}),
        ("Size|Tee|T-shirt", {}),
        ("Size|Tee", {}),
        ("Foo|Tee|Hoodie", {}),
        ("Size||Tee|Hoodie|Red", {3: ("Garment", "Tee"), 4: ("Garment", "Hoodie")}),
    ],
)
def test_columns_that_count_a_garment_a_cut_or_a_color(titles: str, counted: dict[int, tuple[str, str]]) -> None:
    assert counted_columns(dict(enumerate(titles.split("|"), 1))) == counted


@pytest.mark.parametrize(
    ("titles", "sizes"),
    [("S|M", {1: "S", 2: "M"}), ("S|M|M", {}), ("S|Size", {}), ("S", {}), ("S|Foo|L", {1: "S", 3: "L"}),
     ("|S|M", {2: "S", 3: "M"})],
)  # fmt: skip
def test_columns_that_count_a_size(titles: str, sizes: dict[int, str]) -> None:
    assert size_columns(dict(enumerate(titles.split("|"), 1))) == sizes


def test_whose_sizes_a_column_holds() -> None:
    titles = (
        "Youth size",
        "Youth",
        "Size",
        "Size for kids",
        "Youth and adult size",
        "Women’s t-shirt size",
        "Foo size",
    )
    assert sizes_by_wearer(dict(enumerate(titles, 1))) == {1: "youth", 4: "youth", 6: "ladies"}
