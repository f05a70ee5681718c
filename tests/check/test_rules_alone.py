"""Each rule by garments made by hand: what it asks about, at which cell, for which rows, and what it lets be."""

from collections.abc import Iterable
from dataclasses import replace
from typing import Any

import pytest

from tests.art.conftest import FILM, ROW, SPEC
from tests.kept.test_what_is_remembered import job as blank_job
from xlbatch.check.check import check
from xlbatch.check.colors import dye_stays_in_the_cloth, film_shows_on_garment
from xlbatch.check.garment import Garment
from xlbatch.check.given_not_used import given_is_used, numbers_are_printed
from xlbatch.check.heat import heat_limit, heat_problems
from xlbatch.check.numbers import number_is_filled_in, number_is_legal, number_once_in_a_group
from xlbatch.check.rules import (
    braces_are_filled_in,
    color_is_made,
    films_are_known,
    name_is_given,
    no_one_twice,
    number_is_given,
    positions_are_known,
)
from xlbatch.check.worst_first import worst_first
from xlbatch.job.job import NO_NAME, DecalSpec, Job
from xlbatch.job.source import Source
from xlbatch.problems import Problem, Where, problem

HEADINGS = ("Who", "Group", "Garment", "Size", "Color", "Design", "Print name", "Number", "Done so far")
BLANK = replace(blank_job().blanks[0], garment="Tee", size="M", colors=("White", "navy"), fabric="", dots=None)
OWN = Source("Garments", 5, {"Iron dots": "D5", "Heat limit": "E5", "Garment": "A5"})
NUMBER = replace(SPEC, what="number", decal="Number")
NAVY = replace(FILM, name="Navy smooth", color="navy")


def garment(no: int = 1, specs: tuple[DecalSpec, ...] = (SPEC,), name: str = "Ana", **row: Any) -> Garment:
    """In row no + 1, with a blank of its own where `blank` is among the changes."""
    blank = row.pop("blank", BLANK)
    cells = {heading: f"{letter}{no + 1}" for letter, heading in zip("ABCDEFGHI", HEADINGS, strict=True)}
    usual: dict[str, Any] = {"no": no, "source": Source("Roster", no + 1, cells)}
    row_ = replace(ROW, **usual | row)
    return Garment(row_, blank, row_.color, name, specs, specs, True)


def job(**changes: Any) -> Job:
    return replace(blank_job(), **{"films": (FILM, NAVY), "blanks": (BLANK,)} | changes)


def found(problems: Iterable[Problem]) -> list[tuple[str, str, tuple[int, ...]]]:
    return [(each.code, each.where.cell, each.rows) for each in problems]


@pytest.mark.parametrize(
    ("color", "made", "asked"),
    [("white", ("White", "navy"), False), ("red", ("White",), True), ("red", (), False), ("Navy", ("White",), True)],
)
def test_a_color_is_one_that_is_made(color: str, made: tuple[str, ...], asked: bool) -> None:
    garments = (garment(color=color, blank=replace(BLANK, colors=made)),)
    assert found(color_is_made(job(), garments)) == ([("color-not-made", "E2", (2,))] if asked else [])


def test_a_name_is_given_where_one_is_printed() -> None:
    assert found(name_is_given(job(), (garment(name=""),))) == [("name-missing", "A2", (2,))]
    for other in (garment(), garment(name="", print_name=NO_NAME), garment(specs=(NUMBER,), name="")):
        assert found(name_is_given(job(), (other,))) == []


@pytest.mark.parametrize(
    ("other", "code"),
    [
        ({}, "duplicate-row"),
        ({"size": "L"}, "who-twice"),
        ({"who": "ANA RUIZ", "size": "L"}, "who-twice"),
        ({"number": "7"}, "who-twice"),
        ({"group": "Berg", "size": "L"}, ""),  # two people of a name
        ({"group": "Berg"}, "who-twice"),  # by a whole name, and for the same
        ({"who": "Bo Berg"}, ""),
    ],
)
def test_no_one_stands_in_two_rows(other: dict[str, Any], code: str) -> None:
    asked = list(no_one_twice(job(), (garment(group="Ruiz"), garment(2, **{"group": "Ruiz"} | other))))
    assert all("row 2" in each.wrong for each in asked)
    assert found(asked) == ([(code, "A3", (3,))] if code else [])


def test_no_one_twice_by_one_name_alone_in_another_group_or_by_none() -> None:
    for who in ("Ana", ""):
        pair = (garment(who=who, group="A"), garment(2, who=who, group="B" if who else "A"))
        assert found(no_one_twice(job(), pair)) == []
    one_row = (garment(), garment(2, source=Source("Roster", 2)))  # How many: 2
    assert found(no_one_twice(job(), one_row)) == []
    sheets = [Source(sheet, row, {"Who": "A2"}) for sheet, row in (("Day 1", 2), ("Day 2", 1_048_576 + 2))]
    (asked,) = no_one_twice(job(), tuple(garment(no, source=it, group=it.sheet) for no, it in enumerate(sheets, 1)))
    assert (asked.code, "row 2" in asked.wrong) == ("who-twice", True)


def test_a_number_and_what_a_text_asks_for_are_given() -> None:
    assert found(number_is_given(job(), (garment(specs=(NUMBER,)), garment(2, (NUMBER,), number="7")))) == [
        ("number-missing", "H2", (2,))
    ]
    assert found(number_is_given(job(), (garment(),))) == []
    text = replace(SPEC, what="text", text="{Group}{Shared line}")  # a setting may be blank
    assert found(braces_are_filled_in(job(), (garment(specs=(text,)),))) == [("braces-blank", "B2", (2,))]
    assert found(braces_are_filled_in(job(), (garment(specs=(replace(text, what="number"),)),))) == []


def test_films_and_positions_are_known() -> None:
    spec = replace(SPEC, film="Blak smooth", outline_film="navy smoth", position="full frnt",
                   source=Source("Designs", 3, {"Film": "D3", "Outline film": "H3", "Position": "E3"}))  # fmt: skip
    pair = (garment(specs=(spec,)), garment(2, (spec,)))
    asked = list(films_are_known(job(), pair))
    assert found(asked) == [("film-unknown", "D3", (2, 3)), ("film-unknown", "H3", (2, 3))]
    assert [each.suggestion for each in asked] == ["Black smooth", "Navy smooth"]
    (position,) = positions_are_known(job(), pair)
    assert (position.where.cell, position.rows, position.suggestion) == ("E3", (2, 3), "full front")
    known = (garment(specs=(replace(SPEC, film="BLACK smooth", position="Full Front"),)),)
    assert [*films_are_known(job(), known), *positions_are_known(job(), known)] == []


@pytest.mark.parametrize(
    ("limit", "code"),
    [({}, ""), ({"dots": 3}, ""), ({"dots": 2}, "heat-over-limit"), ({"heat_limit": 165.0}, ""),
     ({"heat_limit": 164.0}, "heat-over-limit"), ({"heat_limit": 170.0, "dots": 1}, ""),
     ({"fabric": "polyester"}, "heat-over-limit"), ({"fabric": "cotton/polyester"}, "heat-check-label"),
     ({"fabric": "cotton"}, "")],
)  # fmt: skip
def test_a_film_hotter_than_the_garment_bears(limit: dict[str, Any], code: str) -> None:
    """165 °C; dots by ISO 3758:2012: 110, 150, 200 °C."""
    blank = replace(BLANK, source=OWN, **limit)
    pair = (garment(blank=blank), garment(2, blank=blank), garment(3, blank=replace(BLANK, heat_limit=300.0)))
    cell = "E5" if blank.heat_limit is not None else "D5"
    assert found(heat_problems(job(), pair)) == ([(code, cell, (2, 3))] if code else [])
    built_in = garment(blank=replace(BLANK, **limit))
    assert [each.where.cell for each in heat_problems(job(), (built_in,))] == (["C2"] if code else [])


def test_the_limit_and_its_reason() -> None:
    for dots, reason, celsius in ((1, "1 dot", 110), (2, "2 dots", 150), (3, "3 dots", 200)):
        limit = heat_limit(replace(BLANK, dots=dots))
        assert limit
        assert (limit.celsius, reason in limit.reason, limit.stops) == (celsius, True, True)
    assert heat_limit(BLANK) is None


def test_a_cooler_film_of_the_color_is_suggested_the_hottest_that_will_do() -> None:
    films = [replace(FILM, name=name, color=color, temperature=heat) for name, color, heat in (
        ("Low black", "Black", 120.0), ("Mid black", "black", 150.0), ("Mid red", "red", 149.0),
        ("Hot red", "red", 151.0),
    )]  # fmt: skip
    blank = replace(BLANK, heat_limit=150.0)
    (asked,) = heat_problems(job(films=(FILM, *films)), (garment(blank=blank),))
    assert (asked.suggestion, "smooth (300 °F)" in asked.todo) == ("Mid black", True)
    (asked,) = heat_problems(job(films=(FILM, *films[2:])), (garment(blank=blank),))
    assert asked.suggestion == "Mid red"
    (asked,) = heat_problems(job(films=(FILM,)), (garment(blank=blank),))
    assert (asked.suggestion, "°F)" in asked.todo) == ("", False)


def test_a_press_that_does_not_get_as_hot() -> None:
    own = job()
    for hottest, stops in ((165.0, False), (164.0, True)):
        press = replace(own.presses[0], hottest=hottest, source=Source("Press", 2, {"Hottest": "E2"}))
        asked = heat_problems(
            replace(own, presses=(press,)), (garment(), garment(2, (replace(NUMBER, film="Navy smooth"),)))
        )
        assert found(asked) == ([("press-too-cool", "E2", (2,)), ("press-too-cool", "E2", (3,))] if stops else [])


@pytest.mark.parametrize(
    ("over", "heat", "stops"),
    [({"layer": 2}, 160.0, True), ({"layer": 1}, 160.0, False), ({"layer": 2}, 165.0, False),
     ({"layer": 2}, 170.0, False)],
)  # fmt: skip
def test_a_later_layer_is_no_hotter(over: dict[str, Any], heat: float, stops: bool) -> None:
    below = replace(SPEC, film="Navy smooth", source=Source("Designs", 2, {"Layer": "F2"}))
    above = replace(NUMBER, source=Source("Designs", 3, {"Layer": "F3"}), **over)
    own = job(films=(FILM, replace(NAVY, temperature=heat)))
    asked = heat_problems(own, (garment(specs=(below, above)), garment(2, (above, below))))
    assert found(asked) == ([("heat-order", "F3", (2, 3))] if stops else [])
    border = replace(below, film=FILM.name, outline_film="Navy smooth")  # the border lies below its lettering
    assert found(heat_problems(own, (garment(specs=(border,)),))) == (
        [("heat-order", "F2", (2,))] if heat < 165 else []
    )


def test_numbers_are_of_digits_and_printed_or_asked_about_once() -> None:
    plain = SPEC
    for number, specs, codes in (
        ("7", (NUMBER,), []), ("7a", (NUMBER,), [("number-no-digits", "H2", (2,))]), ("TBD", (NUMBER,), []),
        ("7a", (plain,), [("number-no-digits-unprinted", "H2", (2,)), ("list-numbers-unprinted", "H2", ())]),
        ("TBD", (plain,), [("number-no-digits-unprinted", "H2", (2,)), ("list-numbers-unprinted", "H2", ())]),
        ("7", (plain,), [("list-numbers-unprinted", "H2", ())]), ("", (plain,), []),
    ):  # fmt: skip
        assert found(numbers_are_printed(job(), (garment(specs=specs, number=number),))) == codes
    some = (garment(specs=(plain,), number="7"), garment(2, (NUMBER,), number="8"))
    assert found(numbers_are_printed(job(), some)) == []
    no_column = garment(specs=(plain,), number="7", source=Source("Roster", 2))
    assert found(numbers_are_printed(job(), (no_column,))) == []


@pytest.mark.parametrize(
    ("number", "other", "code"),
    [("7", {}, "number-twice"), ("07", {}, "number-alike"), ("8", {}, ""), ("7", {"who": "ana ruiz"}, ""),
     ("7", {"group": "B"}, ""), ("7", {"group": "a"}, "number-twice"), ("7", {"color": "navy"}, ""),
     ("7", {"color": "White"}, "number-twice"), ("0", {}, ""), ("", {}, "")],
)  # fmt: skip
def test_a_number_once_in_a_group_and_color(number: str, other: dict[str, Any], code: str) -> None:
    usual: dict[str, Any] = {"who": "Bo", "group": "A", "number": number}
    pair = (garment(specs=(NUMBER,), number="7", group="A"), garment(2, (NUMBER,), **usual | other))
    assert found(number_once_in_a_group(job(), pair)) == ([(code, "H3", (3,))] if code else [])
    assert found(number_once_in_a_group(job(), (garment(number="7"), garment(2, who="Bo", number="7")))) == []


def test_open_and_illegal_numbers() -> None:
    them = tuple(garment(no, (NUMBER,), number=number) for no, number in enumerate(("TBD", "", "7", "6"), 1))
    assert found(number_is_filled_in(job(), them)) == [("number-open", "H2", (2,))]
    own = job(settings=replace(job().settings, number_rule="NCAA basketball to 2022-23"))
    assert found(number_is_legal(own, them)) == [("number-illegal", "H4", (4,)), ("number-illegal", "H5", (5,))]
    zeros = [garment(no, (NUMBER,), number=number, group=group)
             for no, (number, group) in enumerate((("0", "A"), ("00", "B"), ("0", "a"), ("00", "A")), 1)]  # fmt: skip
    assert found(number_is_legal(own, tuple(zeros))) == [("number-illegal", "H5", (5,))]
    assert found(number_is_legal(job(), them)) == []


def test_what_a_person_gave_is_used_or_asked_about() -> None:
    films = (
        replace(FILM, source=Source("Film", 2, {"Film": "A2"})),
        replace(NAVY, source=Source("Film", 3, {"Film": "A3"})),
    )
    own = job(films=films, designs=())
    assert found(given_is_used(own, (garment(),))) == []
    red = garment(specs=(replace(SPEC, film="Red", outline_film="Gold"),))
    assert found(given_is_used(own, (red, garment(2, red.design)))) == [("given-unused", "A2", (2, 3))]
    outline = garment(specs=(replace(SPEC, film="Red", outline_film="NAVY smooth"),))
    assert found(given_is_used(own, (outline,))) == []
    assert found(given_is_used(own, ())) == []
    blanks = (replace(BLANK, garment="Polo", source=OWN),)
    assert found(given_is_used(job(blanks=blanks, designs=()), (garment(),))) == [("given-unused", "A5", (2,))]


def test_film_that_hardly_shows_on_the_garment() -> None:
    dark, light = garment(color="black"), garment(2, color="white")
    assert [each.rows for each in film_shows_on_garment(job(), (dark, light, garment(3, color="black")))] == [(2, 4)]
    over = (replace(SPEC, film="Navy smooth"), replace(SPEC, layer=2))
    assert [each.found for each in film_shows_on_garment(job(), (garment(specs=over, color="white"),))] == []
    (cell,) = film_shows_on_garment(job(), (replace(garment(color=""), color="black"),))
    assert cell.where == Where("Job")


def test_light_film_on_dark_cloth_whose_dye_comes_through() -> None:
    own = job(films=(replace(FILM, name="White smooth", color="white"), FILM))
    white, black = (replace(SPEC, film=f"{color} smooth") for color in ("White", "Black"))
    polyester = replace(BLANK, fabric="polyester")
    for specs, color, blank, asked in (
        ((white,), "navy", polyester, True), ((black, white), "navy", polyester, True),
        ((black,), "navy", polyester, False),
        ((white,), "white", polyester, False), ((white,), "navy", replace(BLANK, fabric="cotton"), False),
        ((white,), "heather dream", polyester, False),
    ):  # fmt: skip
        one = garment(specs=specs, color=color, blank=blank)
        assert found(dye_stays_in_the_cloth(own, (one,))) == ([("dye-may-show", "E2", (2,))] if asked else [])


def test_the_worst_comes_first_with_the_people_it_is_about() -> None:
    rows = tuple(replace(ROW, no=no, who=f"P{no}", source=Source("Roster", no + 1)) for no in range(1, 6))
    stop = problem("size-unknown", Where("Roster", "C3"), "x", rows=(3,))
    more = problem("size-unknown", Where("Roster", "C2"), "x", rows=(2, 3, 4, 5))
    cell = problem("capitals-odd", Where("Roster", "A6"), "p", who="P5")
    elsewhere = problem("capitals-odd", Where("Film", "A6"), "p", who="P5")
    ordered = worst_first(job(roster=rows), [elsewhere, cell, stop, more])
    assert [each.where.cell for each in ordered] == ["C2", "C3", "A6", "A6"]
    assert [each.who for each in ordered] == ["P1, P2, P3 and 1 more", "P2", "", "P5"]


@pytest.mark.parametrize(
    ("row", "asked"),
    [({}, []), ({"garment": "Tea"}, [("garment-unknown", "C2", (2,))]),
     ({"size": "L"}, [("size-not-made", "D2", (2,))]),
     ({"design": "Nam"}, [("design-unknown", "F2", (2,))]), ({"status": "done", "size": "L"}, []),
     ({"status": "cancelled", "size": "L"}, [])],
)  # fmt: skip
def test_a_row_names_things_that_are_there(row: dict[str, Any], asked: list[Any]) -> None:
    own = job(roster=(replace(garment().row, **row),), designs=(SPEC,))
    garments, problems = check(own, frozenset())
    assert [
        each for each in found(problems) if each[0] in ("garment-unknown", "size-not-made", "design-unknown")
    ] == asked
    assert len(garments) == (not asked and "status" not in row)
    assert [each.code for each in check(own, frozenset({2}))[1]] == ["assumed"]
