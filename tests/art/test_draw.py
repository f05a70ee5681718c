"""The decals of a job, and the problems that keep others from being drawn."""

import unicodedata
from dataclasses import replace
from pathlib import Path
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


@pytest.mark.parametrize(
    ("size", "changes", "expected"),
    [
        ("M", {}, (10, 5)),  # 10 in wide where nothing is said
        ("L", {}, (10.75, 5.375)),
        ("2T", {}, (5, 2.5)),
        ("2T", {"scale": False, "width": 8 * IN}, (8, 4)),
        ("M", {"width": 3 * IN}, (3, 1.5)),
        ("M", {"height": 3 * IN}, (6, 3)),
        ("L", {"height": 3 * IN}, (6.5, 3.25)),  # 3.225 high, rounded
        ("M", {"width": 8 * IN, "height": 2 * IN}, (4, 2)),  # inside the box, its shape kept
        ("M", {"widest": 7 * IN}, (7, 3.5)),
        ("L", {"width": 10.1 * IN, "sized_for": "L"}, (10.1, 5.05)),  # not rounded for the size it was drawn for
    ],
)
def test_artwork_keeps_its_shape_and_grows_with_the_garment(make: Any, size: str, changes: Any, expected: Any) -> None:
    (decal,), problems = make.drawn(make.artwork(BAR, **changes), size=size)
    assert inches(decal) == expected
    assert not [found for found in problems if found.level != "note"]
    assert (decal.text, decal.font, decal.offset, decal.whole) == ("", "", (0, 0), None)


def test_artwork_is_kept_off_the_seams_and_on_the_film(make: Any) -> None:
    """On a 2T with 12 in of chest 9 in are free; film with a direction is 11 1/2 in wide."""
    (decal,), _ = make.drawn(make.artwork(BAR, width=20 * IN, sized_for="2T"), size="2T")
    assert inches(decal) == (9, 4.5)
    (decal,), _ = make.drawn(make.artwork(BAR, film="Flock", width=14 * IN), size="5XL")
    assert inches(decal) == (11.5, 5.75)
    (decal,), _ = make.drawn(make.artwork(BAR, width=14 * IN), size="5XL")
    assert inches(decal) == (16, 8)  # 14 in × 1.15 = 16.1


def test_artwork_of_one_size_for_all_that_does_not_fit_is_a_stop(make: Any) -> None:
    _, (off,) = make.drawn(make.artwork(BAR, width=10 * IN, scale=False), size="2T")
    assert (off.code, off.where, off.rows) == ("decal-off-garment", Where("Designs", "K2"), (2,))
    assert "at most 9 in" in off.todo
    _, (wide,) = make.drawn(make.artwork(BAR, width=14 * IN, scale=False, film="Flock"), size="5XL")
    assert wide.code == "decal-wider-than-film"
    assert "at most 11 1/2 in" in wide.todo


def test_without_a_drawing_a_box_of_the_given_size_is_planned(make: Any) -> None:
    (decal,), problems = make.drawn(make.artwork(artwork="", width=4 * IN, height=6 * IN), size="L")
    assert inches(decal) == (4.25, 6.5)  # 4.3 and 6.45, rounded
    assert decal.outline is None
    assert problems == ()
    assert codes(make.drawn(make.artwork(artwork="", width=4 * IN))[1]) == [("stop", "value-needed")]


def test_the_films_of_one_drawing_line_up(make: Any) -> None:
    """100 × 50 units on 10 in: the disc is 4 in wide, 3 in from the left, 1/2 in from the bottom."""
    field = make.artwork(FLAG, artwork_color="#000080", width=10 * IN)
    disc = make.artwork(artwork_color="Gold", film="Gold smooth", decal="Disc")
    below, above = make.drawn(field, disc)[0]
    assert inches(below) == (10, 5)
    assert inches(above) == (4, 4)
    assert below.whole == above.whole == pytest.approx((10 * IN, 5 * IN))
    assert below.offset == (0, 0)
    assert above.offset == pytest.approx((3 * IN, 0.5 * IN), abs=0.01)


def test_the_films_of_one_drawing_shrink_together(make: Any) -> None:
    """The narrower film decides: on a 5XL the drawing would be 16 in wide, and one film has a direction."""
    specs = make.artwork(FLAG, artwork_color="navy"), make.artwork(artwork_color="gold", film="Flock", decal="Disc")
    below, above = make.drawn(*specs, size="5XL")[0]
    assert below.whole == above.whole == pytest.approx((11.5 * IN, 5.75 * IN))


@pytest.mark.parametrize(
    ("changes", "found"),
    [
        ({"artwork_color": "navy"}, ("check", "artwork-color-unused")),
        ({}, ("stop", "artwork-color-needed")),
        ({"artwork_color": "pink"}, ("stop", "artwork-color-missing")),
        ({"artwork_color": "pinkish"}, ("stop", "artwork-color-missing")),
    ],
)
def test_colors_must_be_chosen(make: Any, changes: Any, found: tuple[str, str]) -> None:
    assert codes(make.drawn(make.artwork(FLAG, width=100.0, **changes))[1]) == [found]


def test_a_missing_drawing_is_looked_for_among_those_there(make: Any) -> None:
    make.artwork(BAR, artwork="owl logo.svg")
    _, (found,) = make.drawn(make.artwork(artwork="owl-logo.svg"))
    assert (found.code, found.suggestion) == ("artwork-missing", "owl logo.svg")
    assert found.where == Where("Designs", "D2")


def test_a_drawing_outside_the_folder_is_not_opened(make: Any, tmp_path: Path) -> None:
    (tmp_path.parent / "secret.svg").write_text(BAR)
    assert codes(make.drawn(make.artwork(artwork="../secret.svg"))[1]) == [("stop", "artwork-missing")]


def test_an_unreadable_drawing_stops_every_garment_with_it_once(make: Any) -> None:
    spec = make.artwork(SVG.format("<image/>"))
    decals, (found,) = draw(make.job(), tuple(make.garment(spec, no=no) for no in (1, 2)))
    assert decals == ()
    assert (found.code, found.rows) == ("artwork-unreadable", (2, 3))
    assert "it holds a picture made of dots" in found.wrong
    assert found.todo == "Trace the picture into filled shapes, or take it out."


@settings(
    derandomize=True, max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(st.text(st.characters(exclude_categories=["Cs"]), min_size=1, max_size=8), st.sampled_from([0.0, 40.0, -300.0]))
def test_any_text_is_drawn_or_what_is_wrong_is_said(make: Any, text: str, arch: float) -> None:
    decals, problems = make.drawn(make.spec(arch=arch), who=text)
    assert decals or problems or not any(unicodedata.category(letter)[0] in "LNPS" for letter in text)
    for decal in decals:
        box = bounds(decal.outline.segments)
        assert box == pytest.approx((0, 0, decal.width, decal.height), abs=0.002)
        assert all(contour[-1] == ("Z", ()) for contour in contours(decal.outline.segments))
