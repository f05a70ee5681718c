"""The decals of a job, and the problems that keep others from being drawn."""

import unicodedata
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from xlbatch.art.draw import draw
from xlbatch.geometry.path import bounds, contours
from xlbatch.problems import Where

IN = 25.4
SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 50">{}</svg>'
FLAG = SVG.format('<rect width="100" height="50" fill="navy"/><circle cx="50" cy="25" r="20" fill="gold"/>')
BAR = SVG.format('<rect width="100" height="50"/>')


def codes(problems: Any) -> list[tuple[str, str]]:
    return [(found.level, found.code) for found in problems]


def inches(decal: Any) -> Any:
    return pytest.approx((decal.width / IN, decal.height / IN), abs=1e-4)


# which decals there are


def test_a_garment_gets_its_decals_in_design_order(make: Any) -> None:
    name, number = make.spec(), make.spec(decal="Number", what="number", height=6 * IN)
    decals, problems = make.drawn(name, number, number="07")
    assert [(decal.id, decal.text, decal.garment_no) for decal in decals] == [
        ("D001", "Ana Ruiz", 1),
        ("D002", "07", 1),
    ]
    assert [decal.font for decal in decals] == ["Archivo Black"] * 2
    assert codes(problems) == [("note", "off-center")]


def test_only_what_is_still_to_do_is_drawn(make: Any) -> None:
    name, number = make.spec(), make.spec(decal="Number", what="number")
    garment = replace(make.garment(name, number, number="7"), to_do=(number,))
    decals, _ = draw(make.job(), (garment,))
    assert [decal.text for decal in decals] == ["7"]


def test_numbers_run_over_the_garments_that_are_not_held_back(make: Any) -> None:
    good, bad = make.garment(make.spec(), no=1), make.garment(make.spec(), no=2, who="日本")
    decals, problems = draw(make.job(), (good, bad, make.garment(make.spec(), no=3)))
    assert [(decal.id, decal.garment_no) for decal in decals] == [("D001", 1), ("D002", 3)]
    assert [(found.code, found.rows) for found in problems] == [("font-lacks", (3,))]


def test_numbers_have_as_many_digits_as_they_need(make: Any) -> None:
    garments = tuple(make.garment(make.spec(), no=no) for no in range(1, 1002))
    decals, _ = draw(make.job(), garments)
    assert (decals[0].id, decals[-1].id) == ("D0001", "D1001")


def test_equal_lettering_at_one_size_is_one_outline(make: Any) -> None:
    spec = make.spec(what="number")
    garments = [make.garment(spec, no=no, number="7", size=size) for no, size in enumerate(("M", "5XL", "2T"), 1)]
    (first, second, small), _ = draw(make.job(), tuple(garments))
    assert first.outline is second.outline is not None
    assert small.width < first.width


def test_a_text_takes_its_placeholders_from_row_and_job(make: Any) -> None:
    spec = make.spec(what="text", text="{Job name} · {Group}  {number}", font="Arimo Bold")
    (decal,), _ = make.drawn(spec, group="Owls", number="07")
    assert decal.text == "Autumn walk · Owls 07"


def test_a_text_with_nothing_to_say_makes_no_decal(make: Any) -> None:
    assert make.drawn(make.spec(what="text", text=" {Shared line} ")) == ((), ())


def test_a_name_is_brought_to_its_composed_form(make: Any) -> None:
    (decal,), _ = make.drawn(make.spec(), who="Zoe\u0308")
    assert decal.text == "Zoë"


# how big lettering is


def test_lettering_is_as_high_as_asked_and_alike_in_its_class(make: Any) -> None:
    """A capital H 2 in high on adults; on youth 2 in × 0.8 = 1.6, rounded to 1 1/2 in, on toddlers 2 in × 0.6."""
    for size, high in (("M", 2), ("5XL", 2), ("Youth XL", 1.5), ("2T", 1.25)):
        (decal,), _ = make.drawn(make.spec(), who="H", size=size)
        assert decal.height / IN == pytest.approx(high, abs=1e-4)


def test_lettering_is_no_wider_than_asked(make: Any) -> None:
    long = "Maximilian Oberstetter"
    for size, wide in (("M", 9), ("L", 9.75), ("5XL", 10.25)):  # 9 in × 1.075 = 9.7, × 1.15 = 10.35
        (decal,), _ = make.drawn(make.spec(), who=long, size=size)
        assert decal.width / IN == pytest.approx(wide, abs=1e-4)


def test_width_of_lettering_means_at_most_so_wide(make: Any) -> None:
    (decal,), _ = make.drawn(make.spec(width=4 * IN, widest=None), who="Maximilian")
    assert decal.width / IN == pytest.approx(4, abs=1e-4)


def test_lettering_wider_than_the_film_is_turned_unless_it_may_not_be(make: Any) -> None:
    long, wide = "Maximilian Oberstetter", 15
    spec = make.spec(widest=13 * IN)  # × 1.15
    (turned,), _ = make.drawn(spec, who=long, size="5XL")
    assert turned.width / IN == pytest.approx(wide, abs=1e-4)
    for one_way, job in ((spec, {"turn": False}), (replace(spec, film="flock"), {})):
        (decal,), _ = make.drawn(one_way, who=long, size="5XL", settings=job)
        assert decal.width / IN == pytest.approx(11.5, abs=1e-4)


def test_lettering_that_cannot_fit_stops_its_row(make: Any) -> None:
    decals, (found,) = make.drawn(make.spec(), who="Maximiliana Oberstetter-Winkelhofer von Hohenfels", size="2T")
    assert decals == ()
    assert (found.level, found.code, found.where, found.rows) == (
        "stop",
        "lettering-too-long",
        Where("Roster", "A2"),
        (2,),
    )
    assert "4 1/2 in wide with letters 1/2 in high" in found.wrong  # 9 in × 5/10


@pytest.mark.parametrize(
    ("changes", "row", "where"),
    [
        ({"what": "print name"}, {"who": "日"}, Where("Roster", "A2")),
        ({"what": "print name"}, {"print_name": "日"}, Where("Roster", "E2")),
        ({"what": "number"}, {"number": "日"}, Where("Roster", "F2")),
        ({"what": "text", "text": "日"}, {}, Where("Designs", "F2")),
    ],
)
def test_a_problem_points_at_the_cell_the_text_came_from(make: Any, changes: Any, row: Any, where: Where) -> None:
    _, (found,) = make.drawn(make.spec(**changes), **row)
    assert (found.code, found.where, found.rows) == ("font-lacks", where, (2,))
    assert "日 (U+65E5)" in found.wrong


def test_a_stated_letter_height_is_used_where_none_is_given(make: Any) -> None:
    (decal,), (note,) = make.drawn(make.spec(height=None), who="H")
    assert decal.height == pytest.approx(2 * IN)
    assert (note.level, note.code) == ("note", "assumed")


# fonts


def test_an_unknown_font_is_replaced_and_said(make: Any) -> None:
    (decal,), (found,) = make.drawn(make.spec(font="Anton Bold"))
    assert decal.font == "Archivo Black"
    assert (found.code, found.level, found.suggestion, found.where) == (
        "font-unknown", "check", "Anton", Where("Designs", "G2"),
    )  # fmt: skip


def test_an_unknown_font_of_the_job_is_said_once(make: Any) -> None:
    garments = tuple(make.garment(make.spec(), no=no) for no in (1, 2, 3))
    job = make.job(replace(make.job().settings, font="Nosuch"))
    _, problems = draw(job, garments)
    assert [(found.code, found.where, found.rows) for found in problems] == [
        ("font-unknown", Where("Job", "B12"), (2, 3, 4)),
    ]  # fmt: skip


def test_a_font_without_a_letter_is_replaced_and_said(make: Any) -> None:
    (decal,), (found,) = make.drawn(make.spec(), who="Анна")
    assert decal.font == "Arimo Bold"
    assert (found.code, found.level) == ("font-other", "check")
    assert "А (U+0410)" in found.wrong


def test_mixed_directions_are_set_and_said(make: Any) -> None:
    assert codes(make.drawn(make.spec(font="Arimo Bold"), who="דנה Ana")[1]) == [("note", "text-directions")]
    assert codes(make.drawn(make.spec(font="Arimo Bold"), who="דנה לוי")[1]) == []


# bent and bordered


def test_an_arch_too_strong_for_a_short_text_is_lessened_and_said(make: Any) -> None:
    (decal,), (found,) = make.drawn(make.spec(arch=-170), who="Jo")
    assert (found.code, found.level) == ("arch-too-strong", "check")
    assert decal.outline.contours == 3  # the o has a counter


def test_an_outline_film_makes_a_piece_under_the_lettering(make: Any) -> None:
    under, decal = make.drawn(make.spec(outline_film="gold SMOOTH", outline_width=3.0))[0]
    assert [(each.film, each.border) for each in (under, decal)] == [("Gold smooth", True), ("Black smooth", False)]
    assert (under.width, under.height) == pytest.approx((decal.width + 6, decal.height + 6))
    assert (under.outline.width, under.outline.height) == pytest.approx((under.width, under.height), abs=0.01)
    assert (under.offset, decal.offset) == ((0, 0), (3, 3))
    assert under.whole == decal.whole == (under.width, under.height)


def test_an_outline_needs_film_and_width(make: Any) -> None:
    assert codes(make.drawn(make.spec(outline_film="Gold smooth"))[1]) == [("stop", "value-needed")]
    assert codes(make.drawn(make.spec(outline_width=2.0))[1]) == [("stop", "value-needed")]


# artwork


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.text(st.characters(exclude_categories=["Cs"]), min_size=1, max_size=8), st.sampled_from([0.0, 40.0, -300.0]))
def test_any_text_is_drawn_or_what_is_wrong_is_said(make: Any, text: str, arch: float) -> None:
    decals, problems = make.drawn(make.spec(arch=arch), who=text)
    assert decals or problems or not any(unicodedata.category(letter)[0] in "LNPS" for letter in text)
    for decal in decals:
        box = bounds(decal.outline.segments)
        assert box == pytest.approx((0, 0, decal.width, decal.height), abs=0.002)
        assert all(contour[-1] == ("Z", ()) for contour in contours(decal.outline.segments))
