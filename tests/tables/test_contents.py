"""What the cells of a column look like. Invented; common practice, no source."""

from datetime import date

import pytest

from xlbatch.files.raw import Raw
from xlbatch.tables.contents import Contents, contents, kind_of_text, yes_or_no

KINDS = {
    "size": "M | M? | 2 x M | M, L | Klein | L (late)",
    "wearer": "youth | women | A",
    "color": "navy",
    "garment": "hoodie",
    "status": "no shirt | n/a | cancelled | none | TBD | 0",
    "answer": "whole name | same | no name",
    "yes or no": "yes | Y | x | X | no, thanks | yes, if there is room | Yes!",
    "number": "1 | 7 | 123 | #7 | nr 7 | n° 12 | 7.0 | III | I I",
    "price": "4.20 | $4 | 4,20 € | 15 usd",
    "date": "2026-05-04 | 5/4/2026 | 12:30 | 12:30:15 | 4.5.26 9:00",
    "contact": "ana@b.org | http://x.org | 555-1234 | 1234567",
    "letter": "B | Q.",
    "name": "É | Ana | Ana Blom | Ana van der Berg | Ana, Bo | O'Neil | Ana Blom 8 | 3. Ana | 12) Ana | Ana B C D E"
    f" | {'Abcdefghi ' * 3}Abcdefghij",
    "words": "ana | ana blom | Ana blom",
    "remark": "- | 1234 | 15.5 | 123 Ana | Ana B C D E F | nuts! | Mr. (Bo) Berg | Ana 812"
    f" | {'Abcdefghij ' * 3}Abcdefgh",
}


@pytest.mark.parametrize(
    ("text", "kind"), [(text, kind) for kind, texts in KINDS.items() for text in texts.split(" | ")]
)
def test_what_a_text_is(text: str, kind: str) -> None:
    assert kind_of_text(text) == kind


@pytest.mark.parametrize(
    ("value", "kind"),
    [(0, "number"), (999, "number"), (7.0, "number"), (1000, "price"), (-1, "price"), (7.5, "price"),
     (True, "yes or no"), (date(2026, 5, 4), "date")],
)  # fmt: skip
def test_what_a_cell_is(value: object, kind: str) -> None:
    assert contents([Raw(value), Raw("Ana")]).shares == {kind: 0.5, "name": 0.5}


def of(texts: str) -> Contents:
    return contents([Raw(text) for text in texts.split()])


@pytest.mark.parametrize(
    ("texts", "kinds"),
    [
        ("1 2", {"counter"}),
        ("1 2 4", {"number", "differ"}),  # none may be missing of so few
        ("1 2 3 4 6", {"counter"}),  # one of five may
        ("1 2 3 4 7", {"number", "differ"}),
        ("1) 2) 3)", {"counter"}),
        ("1", {"number"}),
        ("2 3 4", {"number", "differ"}),
        ("1 3 2", {"number", "differ"}),
        ("1 2 2", {"number", "few"}),
        ("1 2 three", {"number", "words"}),
        ("9 9", {"number", "few"}),
        ("10 10", {"number"}),
        ("2 9", {"number"}),  # two may differ by chance
        ("2 9 9", {"number", "few"}),
        ("AB CD", {"letter"}),
        ("AB Cd", {"name"}),
        ("AB CDE", {"name"}),
        ("AB", {"name"}),
        ("AB nuts!", {"name", "remark"}),
    ],
)
def test_what_a_column_holds(texts: str, kinds: set[str]) -> None:
    found = of(texts)
    assert set(found.shares) == kinds
    assert found.filled == len(texts.split())


def test_how_much_of_a_column_is_of_a_kind() -> None:
    found = contents(list(map(Raw, ("Ana Blom", "ANA BLOM", "Bo", "navy", "7", "7", "8", "Cy Kim"))))
    assert found.shares == {"name": 0.5, "color": 0.125, "number": 0.375, "few": 0.375}
    assert (found.filled, found.different, found.single) == (8, 6, 0.625)
    assert contents([]) == Contents({})
    assert contents([*[Raw("M")] * 50, Raw("Ana")]).shares == {"size": 1}  # the first ones


@pytest.mark.parametrize(
    ("texts", "rows", "like"),
    [
        ("Ana Bo Cy", 3, "text"),
        ("Ana Bo Cy", 6, "text"),
        ("Ana Bo Cy", 7, ""),  # less than half of the rows
        ("Ana", 1, ""),
        ("Ana Bo", 1, "text"),
        ("Ana Bo Cy 7 $4", 5, "text"),  # three of five
        ("Ana Bo cy 7 $4", 5, ""),  # words count half
        ("Ana Bo cy di $4", 5, "text"),
        ("Ana Bo Ana Bo Cy", 5, "text"),  # three of five differ
        ("Ana Bo Ana Bo Bo", 5, ""),
        ("yes no cancelled Ana Bo", 5, "answer"),
        ("yes no $4 Ana Bo", 5, ""),
        ("M L S Ana Bo", 5, "size"),
        ("M L 4 Ana Bo", 5, ""),
        ("7 8 7 Ana Bo", 5, "number"),
        ("7 8 $4 Ana Bo", 5, ""),
        (" ".join(["M"] * 25), 1000, "size"),
        (" ".join(["M"] * 24), 1000, ""),
    ],
)
def test_what_a_column_looks_like(texts: str, rows: int, like: str) -> None:
    assert of(texts).looks_like(rows) == like


@pytest.mark.parametrize(
    ("typed", "means"),
    [("yes", "wanted"), ("no", "not wanted"), ("cancelled", "not wanted"), ("TBD", "ask"), ("Ana", "")],
)
def test_whether_one_is_wanted(typed: str, means: str) -> None:
    assert yes_or_no(typed) == means
