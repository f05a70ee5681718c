"""Further ugly lists, made after the ten: lines in one cell, people side by side, answers of several, other languages.

A garment is written `who|group|size|number|color`. What is asked about a list stands beside it by code and cell.
"""

from collections.abc import Callable
from datetime import datetime
from pathlib import Path

import pytest

from xlbatch.plan import Plan
from xlbatch.roster.read import Reading, read
from xlbatch.run import make_plan
from xlbatch.sheets.job_sheet import ASSUMED

Rows = list[list[object]]
AT = datetime(2026, 3, 1, 9)
OF_THE_DRAWING = (*ASSUMED, "gap-thin", "stroke-thin", "dot-small", "off-center", "contrast-low")

SIGN_UP_FORM: Rows = [
    ["Timestamp", "E-mail", "Parent / guardian name", "Child's name", "Photos?", "T-shirt size (tick all)"],
    [AT, "a@example.org", "Pia Novak", "Ana Novak", "Yes", "Youth M"],
    [AT, "b@example.org", "Jon Berg", "Ivo Berg", "Yes", "S, M"],
    [AT, "c@example.org", "Ada Lin", "Mei & Bo Lin", "No", "Youth S, Youth L"],
]
MESSAGE: Rows = [
    ["Hi! here are the sizes for Saturday:"], [], ["Maria - M - blue - 7"], ["Jo - youth L - blue - 12"],
    ["Sven-Olof - XL - white - 3"], ["Ana Novak - S - red"], [], ["thanks!! Pia"],
]  # fmt: skip
SIDEWAYS: Rows = [
    ["Name", "Ana", "Ivo", "Mei", "Bo"],
    ["Size", "M", "XL", "Youth M", "mediun"],
    ["Number", 7, 12, 3, 9],
    ["Color", "red", "red", "white", "red"],
]
SEVERAL_A_ROW: Rows = [
    ["Family", "Child 1 name", "Child 1 size", "Child 2 name", "Child 2 size", "Phone"],
    ["Novak", "Ana", "YM", "Bo", "S", 123],
    ["Berg", "Ivo", "YL", None, None, 456],
    ["Lin", None, None, "Mei", None, 789],
    ["Okafor", None, None, None, None, 12],
]
HOUSEHOLDS: Rows = [
    ["Reunion shirts"], ["NOVAK FAMILY"], ["Ana", "M", "red"], ["Ivo", "XL", "red"], ["Cousins:"], ["Jon", "L", "red"],
    ["Zoe", "2XL", "red"],
]  # fmt: skip
OFFICE: Rows = [
    ["Printed 03/05/2026 from the office"],
    ["Stu ID", "Student Name (Last, First)", "Gr", "Hmrm", "Shirt"],
    [10234, "Novak, Ana", "03", "3B", "YM"],
    [10236, "Lin, Mei Li", "04", "4A", "AS"],
    ["Count: 2"],
]
FRENCH: Rows = [
    ["Nom", "Prénom", "Taille", "Couleur", "Numéro", "Quantité"],
    ["Dubois", "Agnès", "M", "bleu", 7, 1],
    ["Martin", "Zoë", "8 ans", "rouge", 3, 1],
    ["Petit", "Léo", "enfant M", "noir", 4, 1],
]
SPANISH: Rows = [
    ["Nombre", "Apellidos", "Talla", "Color", "Número", "Cantidad"],
    ["María", "Núñez Ruiz", "mediana", "azul marino", 7, 2],
    ["José", "García", "XG", "rojo", 12, 1],
]
GERMAN: Rows = [
    ["Vorname", "Nachname", "Größe", "Farbe", "Rückennummer", "Anzahl"],
    ["Jürgen", "Groß", "XL", "weiß", 7, 1],
    ["Uwe", "Lang", 152, "rot", 3, 1],
    ["Ute", "Klein", "Damen L", "schwarz", 4, 1],
]

LISTS = {
    "sign-up form": (
        SIGN_UP_FORM,
        "Ana Novak||Youth M||  Ivo Berg||S||  Ivo Berg||M||  Mei Lin||Youth S||  Bo Lin||Youth L||",
        "heading-unknown A1  list-in-cells D4  size-several F3",
    ),
    "message": (
        MESSAGE,
        "Maria||M||blue  Jo||Youth L||blue  Sven-Olof||XL||white  Ana Novak||S||red",
        "headings-missing A3  line-not-read A1  line-not-read A8",
    ),
    "sideways": (
        SIDEWAYS,
        "Ana||M|7|red  Ivo||XL|12|red  Mei||Youth M|3|white",
        "list-numbers-unprinted B3  list-sideways A1  size-unknown E2",
    ),
    "several people a row": (
        SEVERAL_A_ROW,
        "Ana|Novak|Youth M||  Ivo|Berg|Youth L||  Bo|Novak|Youth S||",
        "heading-unknown F1  size-missing C5  size-missing E4",
    ),
    "households": (
        HOUSEHOLDS,
        "Ana|NOVAK FAMILY|M||red  Ivo|NOVAK FAMILY|XL||red  Jon|Cousins|L||red  Zoe|Cousins|2XL||red",
        "headings-missing A3  row-above A1  row-group A2  row-group A5",
    ),
    "office": (
        OFFICE,
        "Novak, Ana|3B|Youth M||  Lin, Mei Li|4A|S||",
        "heading-by-content E2  heading-unknown A2  list-last-first B3  row-aside A5",
    ),
    "French": (
        FRENCH,
        "Agnès Dubois||M|7|bleu  Zoë Martin||Youth S|3|rouge  Léo Petit||Youth M|4|noir",
        "list-numbers-unprinted E2  size-read-as C3",
    ),
    "Spanish": (
        SPANISH,
        "María Núñez Ruiz||M|7|azul marino  María Núñez Ruiz||M|7|azul marino  José García||XL|12|rojo",
        "list-numbers-unprinted E2",
    ),
    "German": (
        GERMAN,
        "Jürgen Groß||XL|7|weiß  Uwe Lang||Youth M|3|rot  Ute Klein||Ladies L|4|schwarz",
        "list-numbers-unprinted E2  size-read-as C3",
    ),
}


@pytest.mark.parametrize(("rows", "garments", "problems"), LISTS.values(), ids=LISTS)
def test_an_ugly_list_is_read_right(plan_of: Callable[..., Plan], rows: Rows, garments: str, problems: str) -> None:
    plan = plan_of(rows)
    made = [each.row for each in plan.garments]
    assert "  ".join(f"{row.who}|{row.group}|{row.size}|{row.number}|{row.color}" for row in made) == garments
    odd = sorted(f"{each.code} {each.where.cell}" for each in plan.problems if each.code not in OF_THE_DRAWING)
    assert "  ".join(odd) == problems


@pytest.mark.parametrize(
    "text",
    [
        "Hi Jo,\n\nhere they are:\n\nMaria: M\nJo Lin: YL\nAna Novak: 2XL\n\nThanks, Pia\n",
        "1. Maria (M)\n2. Jo Lin (youth L)\n3. Ana Novak (2XL) - allergic to wool\n",
        "Maria M\nJo Lin youth L\nAna Novak 2XL\n",
        "Name | Size\nMaria | M\nJo Lin | YL\nAna Novak | XXL\n",
    ],
)
def test_a_message_saved_as_text_is_read(text: str, tmp_path: Path) -> None:
    path = tmp_path / "from cousin.txt"
    path.write_text(text, encoding="utf-8")
    reading = read(path)
    assert isinstance(reading, Reading)
    assert [(row.who, row.size) for row in reading.job.roster] == [
        ("Maria", "M"),
        ("Jo Lin", "Youth L"),
        ("Ana Novak", "2XL"),
    ]
    assert not [each for each in make_plan(reading, 0, lambda _stage: None, AT).problems if each.level == "stop"]


def test_what_stands_beside_a_line_is_kept(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of(MESSAGE)
    assert [dict(each.row.source.extra) for each in plan.garments] == [
        {"Part 4": "7"},
        {"Part 4": "12"},
        {"Part 4": "3"},
        {},
    ]
    assert plan.garments[0].row.source.at("Size").cell == "A3"


def test_a_person_without_a_size_is_no_group(plan_of: Callable[..., Plan]) -> None:
    """Neither after a blank row nor at the top: only where each block begins so, or the text says it."""
    plan = plan_of([["Who", "Size"], ["Ana"], ["Ivo", "M"], [], ["Mei", "L"], ["Zoe"], ["Bo", "S"]])
    assert [row.who for row in plan.held] == ["Ana", "Zoe"]


def test_a_list_that_cannot_be_found_says_how_to_write_one(plan_of: Callable[..., Plan]) -> None:
    (stop,) = (
        each
        for each in plan_of([["Monday", "Tuesday"], ["soup", "rice"], ["bread", "fish"]]).problems
        if each.level == "stop"
    )
    assert stop.code == "list-not-found"
    assert "with the headings Who and Size" in stop.todo
