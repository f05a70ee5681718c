"""What rows of Film and Designs leave open, and whose a bare size letter is."""

from collections.abc import Callable, Sequence
from typing import Any

import pytest

from xlbatch.job.job import DecalSpec, Film
from xlbatch.roster.read import Reading

Read = Callable[..., Reading]
IN = 25.4


def films(
    reading_of: Read, head: Sequence[object], *rows: Sequence[object]
) -> tuple[tuple[Film, ...], list[tuple[str, str]]]:
    reading = reading_of([["Who", "Size"], ["Ana", "M"]], Film=[list(head), *map(list, rows)])
    asked = [(each.code, each.where.cell) for each in reading.problems if each.where.sheet == "Film"]
    return reading.job.films, asked


@pytest.mark.parametrize(
    ("name", "kind", "color", "peel", "one_direction"),
    [
        ("Black smooth", "smooth", "black", "cold", False), ("Our navy blue flock", "flock", "navy", "cold", True),
        ("Own glitter", "glitter", "", "warm", False), ("Light blue", "smooth", "light blue", "cold", False),
        ("Gold stretch", "stretch", "gold", "warm", False), ("Blackboard", "smooth", "", "cold", False),
    ],
)  # fmt: skip
def test_a_films_name_tells_its_kind_and_color(
    name: str, kind: str, color: str, peel: str, one_direction: bool, reading_of: Read
) -> None:
    (own, *others), asked = films(reading_of, ["Film"], [name])
    assert ((own.kind, own.color, own.peel, own.one_direction), asked) == ((kind, color, peel, one_direction), [])
    assert name not in [film.name for film in others]


@pytest.mark.parametrize(
    ("roll", "usable", "widths"),
    [(None, None, (12, 11.5)), (20, None, (20, 19.5)), (None, 14, (14.5, 14)), (20, 15, (20, 15))],
)
def test_the_width_not_given_follows_from_the_other(
    roll: object, usable: object, widths: tuple[float, float], reading_of: Read
) -> None:
    (own, *_), _ = films(reading_of, ["Film", "Roll width (in)", "Usable width (in)"], ["Own", roll, usable])
    assert [own.roll_width, own.usable_width] == pytest.approx([width * IN for width in widths])


def test_a_zero_or_a_no_counts_as_given(reading_of: Read) -> None:
    head = ["Film", "Press temperature (°F)", "Press time (s)", "Warm-up (s)", "Back press (s)", "One direction"]
    (own, *_), _ = films(reading_of, head, ["Own flock", 300, 11, 0, 0, "no"])
    assert (round(own.temperature, 3), own.press, own.warm_up, own.back, own.one_direction) == (
        148.889,
        11,
        0,
        0,
        False,
    )
    (usual, *_), _ = films(reading_of, ["Film"], ["Own smooth"])
    assert (usual.press, usual.warm_up, usual.back) == (30, 5, 15)
    (unknown, *_), _ = films(reading_of, ["Film", "Kind"], ["Own", "no such"])
    assert (unknown.kind, unknown.press, unknown.back) == ("no such", 30, 15)


def test_rolls_of_a_known_film_and_a_film_listed_twice(reading_of: Read) -> None:
    (own, *others), _ = films(reading_of, ["Film", "Rolls sold"], ["black SMOOTH", "1 yd = 5"])
    assert [roll.length for roll in own.rolls] == [pytest.approx(36 * IN)]
    assert "Black smooth" not in [film.name for film in others]
    (own, *_), _ = films(reading_of, ["Film", "Rolls sold"], ["Black smooth", None])
    assert len(own.rolls) > 1
    own_ones, asked = films(reading_of, ["Film", "Color"], ["Own", "red"], ["Two", "red"], ["OWN", "blue"])
    assert {film.name: film.color for film in own_ones[:2]} == {"Own": "red", "Two": "red"}
    assert asked == [("film-twice", "A4")]


DESIGN = ["Design", "Decal", "What", "Text", "Artwork", "Layer", "Scale with size", "Arch", "Height"]
PEOPLE = [["Who", "Size", "Design"], ["Ana", "M", "A"], ["Bo", "M", "b"], ["Cy", "M", None]]


def designs(
    reading_of: Read, *rows: Sequence[object]
) -> tuple[list[DecalSpec], list[tuple[str, str, tuple[int, ...]]]]:
    reading = reading_of(PEOPLE, Designs=[DESIGN, *map(list, rows)])
    asked = [(each.code, each.where.cell, each.rows) for each in reading.problems if each.where.sheet == "Designs"]
    return [spec for spec in reading.job.designs if not spec.source.built_in], asked


def row(design: object, decal: object, **cells: object) -> list[object]:
    usual: dict[str, object] = {"What": "text", "Text": "GO"} | {
        key.replace("_", " "): value for key, value in cells.items()
    }
    return [design, decal, *(usual.get(name) for name in DESIGN[2:])]


def test_what_a_row_of_a_design_leaves_open(reading_of: Read) -> None:
    (plain, said, art), asked = designs(
        reading_of,
        row("A", "x"),
        row("A", "y", What=None, Layer=0, Scale_with_size="no", Arch=30),
        row("B", "z", What=None, Artwork="a.svg"),
    )
    assert asked == []
    assert (plain.layer, plain.scale, plain.arch, plain.position, plain.sized_for) == (1, True, 0, "full front", "M")
    assert (said.what, said.layer, said.scale, said.arch) == ("text", 0, False, 30)
    assert art.what == "artwork"


@pytest.mark.parametrize(
    ("bad", "asked"),
    [
        (row("A", "X"), [("decal-twice", "B3", ())]),
        (row("B", "x"), []),
        (row("A", "y", Height="tall"), [("value-unclear", "I3", (2,))]),
        (row("B", "y", Height="tall"), [("value-unclear", "I3", (3,))]),
        (row("B", "y", What=None, Text=None), [("value-needed", "C3", (3,))]),
        (row("B", "y", What="picture?", Text=None), [("value-unclear", "C3", (3,))]),
        (row(None, "y"), [("value-needed", "A3", (2, 3, 4))]),
        (row("Name", "y", Height="tall"), [("value-unclear", "I3", (4,))]),
    ],
)
def test_a_bad_row_holds_back_those_who_wear_the_design(bad: list[object], asked: list[Any], reading_of: Read) -> None:
    assert designs(reading_of, row("A", "x"), bad)[1] == asked


def test_the_built_in_design_is_there_where_the_usual_one_is_not_given(reading_of: Read) -> None:
    for name, built_in in (("A", True), ("name", False)):
        reading = reading_of(PEOPLE, Designs=[DESIGN, row(name, "x")])
        assert any(spec.source.built_in for spec in reading.job.designs) is built_in


@pytest.mark.parametrize(
    ("sizes", "asked"),
    [
        (("M", "Youth L"), ["C2"]), (("L", "M"), []), (("Adult M", "Youth S"), []), (("Youth M", "2XL"), []),
        (("S", "2T"), ["C2"]), (("XS", "Youth S"), ["C2"]), (("XL", "Youth S"), []), (("12M", "M"), ["C3"]),
        (("Adult M", "Youth S", "L"), ["C4"]), (("M", "L", "Youth S"), ["C2"]),
        (("M",) * 7 + ("Youth S",), ["C2"]), (("M",) * 8 + ("Youth S",), []),  # more are no family
    ],
)  # fmt: skip
def test_whose_a_bare_letter_is_in_a_family_with_children(
    sizes: Sequence[str], asked: list[str], reading_of: Read
) -> None:
    rows = [
        ["Who", "Group", "Size"],
        *([f"Novak {no}", "Novak" if no % 2 else "NOVAK", size] for no, size in enumerate(sizes)),
    ]
    reading = reading_of([*rows, ["Cy", "Lin", "M"], ["Di", None, "M"]])
    assert [each.where.cell for each in reading.problems if each.code == "size-whose"] == asked
    adults = [row.size_said for row in reading.job.roster if row.adult_said]
    assert adults == (["Adult M"] if "Adult M" in sizes else [])


def test_only_those_still_to_make_count_for_a_family(reading_of: Read) -> None:
    for status, asked in ((None, ["C2"]), ("done", []), ("cancelled", [])):
        head = ["Who", "Group", "Size", "Status"]
        reading = reading_of([head, ["Ana", "Novak", "M", None], ["Bo", "Novak", "Youth S", status]])
        assert [each.where.cell for each in reading.problems if each.code == "size-whose"] == asked
