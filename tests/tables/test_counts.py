"""Counts beside a size or in columns of their own, and what headings ask of the texts below them."""

from collections.abc import Callable

import pytest

from xlbatch.roster.read import Reading
from xlbatch.tables.size_cell import read_size_cell
from xlbatch.tables.size_columns import counted_columns

ReadingOf = Callable[..., Reading]


@pytest.mark.parametrize(
    ("typed", "size", "many", "asked"),
    [
        ("1 x S", "S", 1, False),  # there is no 1XS
        ("2 x S", "S", 2, True),  # or 2XS
        ("2 x small", "S", 2, True),
        ("1 x L", "L", 1, True),  # or XL
        ("3 × Large", "L", 3, True),
        ("2x Large", "2XL", 1, False),
        ("2 x M", "M", 2, False),
    ],
)
def test_a_count_is_no_x_of_the_size(typed: str, size: str, many: int, *, asked: bool) -> None:
    read = read_size_cell(typed)
    assert (read.size, read.many, read.doubtful) == (size, many, asked)


@pytest.mark.parametrize(
    ("titles", "garments"),
    [
        (["Nom", "Taille", "Nb t-shirts", "Nb sweats à capuche"], ["t-shirts", "sweats à capuche"]),
        (["Nom", "Taille", "Nombre de tee-shirts", "Nombre de pulls"], ["tee-shirts", "pulls"]),
        (["Name", "Größe", "Anzahl T-Shirts", "Anzahl an Kapuzenpullis"], ["T-Shirts", "Kapuzenpullis"]),
        (["Nombre", "Talla", "Camisetas", "Sudaderas"], ["Camisetas", "Sudaderas"]),
        (["Name", "Size", "# of tees", "How many hoodies?"], ["tees", "hoodies"]),
        (["Name", "T-shirt size", "T-shirt qty", "Hoodie qty"], []),  # the size of the one is not the other's
        (["Name", "Tees", "Hoodies"], []),
    ],
)
def test_columns_that_count_a_garment_each(titles: list[str], garments: list[str]) -> None:
    counted = counted_columns(dict(enumerate(titles)))
    assert counted == {
        titles.index(title): ("Garment", said) for title, said in zip(titles[2:], garments, strict=False)
    }


def codes(reading: Reading) -> list[tuple[str, str]]:
    return [(each.code, each.where.cell) for each in reading.problems if each.level != "note"]


@pytest.mark.parametrize(
    "heading", ["Back (ALL CAPS)", "Name on shirt - capital letters!", "Aufdruck in Großbuchstaben"]
)
def test_a_heading_that_asks_for_capitals(heading: str, reading_of: ReadingOf) -> None:
    people = [["Ana Quill", "ANNIE", "M"], ["Bo Rusk", "Bo", "L"], ["Cy Tarn", "Tarny", "L"]]
    reading = reading_of([["Name", heading, "Size"], *people])
    assert [row.print_name for row in reading.job.roster] == ["ANNIE", "Bo", "Tarny"]
    assert codes(reading) == [("list-capitals", "B1")]
    assert "Bo; Tarny" in next(each.wrong for each in reading.problems if each.code == "list-capitals")
    assert codes(reading_of([["Name", heading, "Size"], *people[:1], ["Bo Rusk", "BO", "L"]])) == []


@pytest.mark.parametrize(
    ("heading", "answers", "asked"),
    [
        ("I agree that photos may be taken", ["No", "Yes"], False),
        ("Will your camper attend all five days?", ["Yes", "No, misses Monday"], False),
        ("Username", ["a@b.example", "c@b.example"], False),
        ("Shirt for the dinner, and photos?", ["Yes", "No"], True),
    ],
)
def test_answers_about_other_things_leave_the_garment_alone(
    heading: str, answers: list[str], reading_of: ReadingOf, *, asked: bool
) -> None:
    people = [["Ana Quill", answers[0], "M"], ["Bo Rusk", answers[1], "L"]]
    reading = reading_of([["Name", heading, "Size"], *people])
    assert [(row.who, row.status) for row in reading.job.roster][:1] == [("Ana Quill", "")]
    assert bool(codes(reading)) is asked
    assert asked or all(not row.status for row in reading.job.roster)
