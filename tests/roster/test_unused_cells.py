"""What stands in a list and was not used is asked about at its rows. Invented; common practice, no source."""

from pathlib import Path

import pytest

from tests.workbooks import Rows, write_workbook
from xlbatch.roster.read import Reading, read


def _asked(rows: Rows, folder: Path) -> list[tuple[str, tuple[int, ...]]]:
    reading = read(write_workbook(folder / "list.xlsx", {"Sheet1": rows}))
    assert isinstance(reading, Reading)
    return [(each.code, each.rows) for each in reading.problems if each.level == "check"]


@pytest.mark.parametrize(("title", "cells", "code", "rows"), [
    ("Sides", ("front", "both"), "column-choice-unused", (2, 3)),
    ("Swap to", ("M", "XL"), "column-size-unused", (3,)),
    ("Hood?", ("yes", "no"), "column-answer-unused", (2, 3)),
    ("Yell", ("left hem", "right hem"), "column-choice-unused", (2, 3)),
    ("Yell", ("C", "left hem"), "column-choice-unused", (2, 3)),
    ("Yell", ("nothing on the back", "see you there"), "note-asks", (2,)),
    ("Yell", ("hello there", "make it XL"), "note-asks", (3,)),
])  # fmt: skip
def test_a_column_no_one_used_names_its_rows(
    title: str, cells: tuple[str, str], code: str, rows: tuple[int, ...], tmp_path: Path
) -> None:
    list_: Rows = [["Name", "Size", title], ["Ana Blom", "M", cells[0]], ["Ivo Berg", "L", cells[1]]]
    assert _asked(list_, tmp_path) == [(code, rows)]


@pytest.mark.parametrize("title", ["Mail", "Locker", "Town"])
def test_a_harmless_column_is_no_question(title: str, tmp_path: Path) -> None:
    list_: Rows = [["Name", "Size", title], ["Ana Blom", "M", "Lund"], ["Ivo Berg", "L", "Lund"]]
    assert _asked(list_, tmp_path) == []


def test_a_line_about_someone_is_asked_at_their_row(tmp_path: Path) -> None:
    list_: Rows = [["Name", "Size"], ["Ana Blom", "M"], ["Ivo Berg", "L"], ["Change: Ivo now XL"]]
    assert ("line-about", (3,)) in _asked(list_, tmp_path)


def test_a_line_above_that_orders_for_all_names_them_all(tmp_path: Path) -> None:
    people: Rows = [["Name", "Size"], ["Ana Blom", "M"], ["Ivo Berg", "L"]]
    assert _asked([["No names on the backs this year"], *people], tmp_path) == [("row-above", (3, 4))]
    assert _asked([["Summer camp of our village 2026"], *people], tmp_path) == []


def test_a_second_column_of_one_meaning_names_the_rows_it_differs_in(tmp_path: Path) -> None:
    list_: Rows = [
        ["Name", "Size", "Color", "Colour"],
        ["Ana Blom", "M", "red", "red"],
        ["Ivo Berg", "L", "red", "blue"],
    ]
    assert _asked(list_, tmp_path) == [("heading-twice", (3,))]


def test_a_choice_read_by_what_stands_in_it_names_its_rows(tmp_path: Path) -> None:
    list_: Rows = [["Name", "Size", "Tint"], ["Ana Blom", "M", "gold"], ["Ivo Berg", "L", "silver"]]
    assert ("heading-by-content", (2, 3)) in _asked(list_, tmp_path)


@pytest.mark.parametrize("heading", ["Ink", "Lettering color", "Colour of the print"])
def test_the_color_of_a_print_is_not_the_garments(heading: str, tmp_path: Path) -> None:
    list_: Rows = [["Name", "Size", heading], ["Ana Blom", "M", "gold"], ["Ivo Berg", "L", "silver"]]
    assert ("column-choice-unused", (2, 3)) in _asked(list_, tmp_path)


@pytest.mark.parametrize("name", ["Ana Blom née Dahl", "Ana's plus one", "N.N."])
def test_a_name_with_words_of_no_name_is_asked_about(name: str, tmp_path: Path) -> None:
    assert _asked([["Name", "Size"], [name, "M"], ["Ivo Berg", "L"]], tmp_path) == [("name-doubtful", (2,))]


@pytest.mark.parametrize("name", ["Inés Peñalver y Sotomayor", "Tomás d'Almeida", "Jan van der Berg", "ana blom"])
def test_words_that_join_names_are_no_question(name: str, tmp_path: Path) -> None:
    asked = _asked([["Name", "Size"], [name, "M"], ["Ivo Berg", "L"]], tmp_path)
    assert "name-doubtful" not in [code for code, _ in asked]


def test_the_families_of_an_order_are_names(tmp_path: Path) -> None:
    rows: Rows = [["Family", "Shirts", "Size"], ["Ana Blom", 2, "M"], ["Ivo Berg", 1, "L"]]
    reading = read(write_workbook(tmp_path / "list.xlsx", {"Sheet1": rows}))
    assert isinstance(reading, Reading)
    assert [row.who for row in reading.job.roster] == ["Ana Blom", "Ana Blom", "Ivo Berg"]


CHOICE = "column-choice-unused"


@pytest.mark.parametrize(
    ("title", "cells", "asked"),
    [
        ("Sides", ("front", "front", "tall"), [(CHOICE, "C1", (2, 3, 4))]),
        ("Swap to", ("M", "L", "XL"), [("column-size-unused", "C1", (4,))]),  # the others have that size
        ("Extra", ("navy", "late", "later"), [(CHOICE, "C1", (2, 3, 4))]),
        ("Extra", (None, "navy", "navy"), [("heading-by-content", "C1", (3, 4))]),
        ("Mail", ("navy", "red", "navy"), []),
        ("Role", ("C", None, "V"), []),
        ("Color of thread", ("1", "2", "3"), [(CHOICE, "C1", (2, 3, 4))]),
        ("Name on back +$5", ("$5", None, "$5"), [(CHOICE, "C1", (2, 4))]),
        ("Sweater fee", ("$5", "$5", "$5"), []),
        ("Hoodie", ("0", "0", "1"), [("column-answer-unused", "C1", (4,))]),
        ("Hoodie", ("x", None, "x"), [("column-answer-unused", "C1", (2, 4))]),
        ("Legend", ("M = 10-12", None, None), []),
        ("Yell", ("make it XL", "hello", "hoodie please"), [("note-asks", "C2", (2,)), ("note-asks", "C4", (4,))]),
        ("Text on back", ("ROADIE", "SOUND", None), [("print-blank", "C1", (4,))]),
        ("Text on back", ("ROADIE", None, None), []),  # one text tells nothing of the column
        ("Text on back", ("ROADIE", "SOUND", "LIGHT"), []),
        ("Print name", ("ROADIE", "SOUND", None), []),
    ],
)
def test_what_a_column_is_asked_about_and_for_whom(
    title: str, cells: tuple[str | None, ...], asked: list[tuple[str, str, tuple[int, ...]]], tmp_path: Path
) -> None:
    people = (("Ana Blom", "M"), ("Ivo Berg", "L"), ("Mei Lin", "S"))
    rows: Rows = [["Name", "Size", title], *([*who, cell] for who, cell in zip(people, cells, strict=True))]
    assert _at(rows, tmp_path) == asked


def test_of_two_parts_of_a_list_a_column_is_asked_about_once(tmp_path: Path) -> None:
    head: list[object] = ["Name", "Size", "Sides"]
    rows: Rows = [head, ["Ana Blom", "M", "front"], ["Bo Dahl", "M", "both"], [], head, ["Ivo Berg", "L", "front"],
                  ["Mei Lin", "S", "both"]]  # fmt: skip
    assert _at(rows, tmp_path) == [(CHOICE, "C1", (2, 3, 6, 7))]


@pytest.mark.parametrize(
    ("line", "rows"),
    [
        ("No names on the backs this year", (3, 4)), ("No names, please", None), ("Front: LAKE CREW", (3, 4)),
        ("Front = LAKE CREW", (3, 4)), ("Where: LAKE CREW", None), ("Sizes: S = small and so on please", None),
    ],
)  # fmt: skip
def test_a_line_above_is_asked_about_where_it_orders_something(
    line: str, rows: tuple[int, ...] | None, tmp_path: Path
) -> None:
    people: Rows = [["Name", "Size"], ["Ana Blom", "M"], ["Ivo Berg", "L"]]
    assert _at([[line], *people], tmp_path) == ([("row-above", "A1", rows)] if rows else [])


@pytest.mark.parametrize(
    ("people", "line", "rows"),
    [
        (("Ana Blom", "Ivo Berg"), "Ivo XL", None),
        (("Ana Blom", "Ivo Berg"), "Ivo and Ana swap their sizes", (3, 2)),
        (("Ana Blom", "Ivo Berg"), "Bob now XL then", None),
        (("Ana Blom", "Bo Berg"), "Bo is now XL", None),  # a word of two letters
        (("Ana Berg", "Ivo Berg"), "The Berg family is late", None),  # of all, it is the family's
        (("Ana Berg", "Ivo Berg", "Mei Lin"), "The Berg family is late", (2, 3)),
        ((*(f"{name} Berg" for name in ("Ana", "Ivo", "Bea", "Cid", "Dag")), "Mei Lin"), "The Berg family is late",
         (2, 3, 4, 5, 6)),
        ((*(f"{name} Berg" for name in ("Ana", "Ivo", "Bea", "Cid", "Dag", "Eva")), "Mei Lin"),
         "The Berg family is late",
         None),
    ],
)  # fmt: skip
def test_a_line_below_is_asked_about_at_the_rows_of_those_it_speaks_of(
    people: tuple[str, ...], line: str, rows: tuple[int, ...] | None, tmp_path: Path
) -> None:
    list_: Rows = [["Name", "Size"], *([who, "M"] for who in people), [line]]
    asked = [each for each in _at(list_, tmp_path) if each[0] == "line-about"]
    assert asked == ([("line-about", f"A{len(list_)}", rows)] if rows else [])


def _at(rows: Rows, folder: Path) -> list[tuple[str, str, tuple[int, ...]]]:
    reading = read(write_workbook(folder / "list.xlsx", {"Sheet1": rows}))
    assert isinstance(reading, Reading)
    return [(each.code, each.where.cell, each.rows) for each in reading.problems if each.level == "check"]
