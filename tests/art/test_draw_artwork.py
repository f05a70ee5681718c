"""Decals of artwork: shape, size, colors, and drawings that cannot be found."""

from pathlib import Path
from typing import Any

import pytest

from tests.art.test_draw import BAR, FLAG, IN, SVG, codes, inches
from xlbatch.art.draw import draw
from xlbatch.problems import Where


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


@pytest.mark.parametrize("left", [0, 200])
@pytest.mark.parametrize(("who", "told"), [("Annabella", []), ("Annabella Fernandes Villan", ["part-too-long"])])
def test_how_small_the_letters_of_words_get_goes_by_the_height_given(
    make: Any, left: int, who: str, told: list[str]
) -> None:
    """A name between two bars 3 in apart; wherever on its page that is drawn, letters are no less than 1/2 in high."""
    bars = f'<path d="M{left + 10} 5h160v10h-160zM{left + 10} 85h160v10h-160z"/>'
    name = f'<text x="{left + 90}" y="70" font-size="50" font-family="Anton" text-anchor="middle">{{Who}}</text>'
    sketch = SVG.replace("100 50", "400 100").format(bars + name)
    _, problems = make.drawn(make.artwork(sketch, height=3 * IN), who=who)
    assert [found.code for found in problems if found.level != "note"] == told
