"""Artwork at the edges of what fits, what is assumed of it, and which color is cut out under which."""

from typing import Any

import pytest

from tests.art.test_draw import BAR, FLAG, IN, codes, inches


@pytest.mark.parametrize(
    ("clear", "scale", "fits"),
    [
        (1.55, False, "at most 8 7/8 in"),  # 12 in of chest less twice as much, in eighths
        (5.95, False, "at most 0 in"),  # 0.1 in is no eighth
        (7.0, True, "at most 0 in"),
        (6.0, True, "at most 0 in"),  # nothing is left to be made smaller into
    ],
)
def test_what_would_fit_is_told_in_eighths_and_never_less_than_nothing(
    make: Any, clear: float, scale: bool, fits: str
) -> None:
    spec = make.artwork(BAR, width=10 * IN, sized_for="2T", scale=scale)
    decals, (found,) = make.drawn(spec, size="2T", settings={"clear_of_side": clear * IN})
    assert decals == ()
    assert found.code == "decal-off-garment"
    assert "Logo (10 in × 5 in) does not fit Tee 2T at the position full front" in found.wrong
    assert f"Make it {fits}, or" in found.todo


def test_artwork_as_wide_as_garment_and_film_allow_is_left_as_it_is(make: Any) -> None:
    """On an M 17 in are free; film with a direction is 11 1/2 in wide."""
    for width, film, told in ((17, "Black smooth", []), (11.5, "Flock", []), (11.6, "Flock", ["decal-wider-than-film"]),
                              (17.1, "Flock", ["decal-off-garment"])):  # fmt: skip
        _, problems = make.drawn(make.artwork(BAR, width=width * IN, scale=False, film=film))
        assert [found.code for found in problems] == told
    (wide,) = make.drawn(make.artwork(BAR, width=11.6 * IN, scale=False, film="flock"))[1]
    assert "Logo would be 11 5/8 in × 5 3/4 in; Flock is 11 1/2 in wide" in wide.wrong


def test_a_usual_width_is_told_once_for_a_drawing_and_not_where_one_is_given(make: Any) -> None:
    def assumed(position: str, **changes: Any) -> list[str]:
        field = make.artwork(FLAG, artwork_color="navy", position=position)
        disc = make.artwork(artwork_color="gold", decal="Disc", position=position, layer=2, **changes)
        decals, problems = make.drawn(field, disc)
        assert len(decals) == 2
        assert decals[0].whole == decals[1].whole
        return [found.wrong for found in problems if found.code == "assumed"]

    (told,) = assumed("full front")
    assert "10 in" in told
    (told,) = assumed("left chest")
    assert "3 1/2 in" in told
    assert assumed("full front", width=4 * IN) == []
    assert assumed("full front", height=4 * IN) == []


@pytest.mark.parametrize(
    ("layers", "turned", "settings", "contours"),
    [
        ((1, 2), False, {}, 1),  # pressed as drawn: the disc lies on the field
        ((2, 1), False, {}, 2),  # pressed the other way round, the field would cover it
        ((1, 1), False, {}, 1),  # in one layer the rows are in order
        ((1, 1), True, {}, 2),
        ((1, 2), True, {}, 2),
        ((2, 1), True, {}, 1),
        ((1, 2), False, {"overlapping_colors": "side by side"}, 2),
    ],
)
def test_a_color_is_cut_out_where_it_would_cover_what_is_to_be_seen(
    make: Any, layers: tuple[int, int], turned: bool, settings: Any, contours: int
) -> None:
    first, second = ("gold", "navy") if turned else ("navy", "gold")
    rows = (
        make.artwork(FLAG, artwork_color=first, layer=layers[0], width=10 * IN),
        make.artwork(artwork_color=second, layer=layers[1], width=10 * IN, decal="Other", film="Gold smooth"),
    )
    decals, _ = make.drawn(*rows, settings=settings)
    field = next(decal for decal in decals if decal.spec.artwork_color == "navy")
    assert field.outline.contours == contours


def test_what_a_drawing_says_is_told_at_its_first_row_alone(make: Any) -> None:
    striped = FLAG.replace("</svg>", '<rect width="100" height="5" fill="red"/></svg>')
    rows = [make.artwork(striped, artwork_color="navy", width=5 * IN), make.artwork(artwork_color="gold", decal="Disc")]
    assert codes(make.drawn(*rows)[1]).count(("check", "artwork-color-unused")) == 1
    stops = codes(make.drawn(rows[0], make.artwork(artwork_color="pink"))[1])
    assert stops == [("stop", "artwork-color-missing")]  # what the other row cuts is not known: nothing is unused


def test_a_height_decides_where_it_makes_artwork_smaller(make: Any) -> None:
    for height, size in ((2, (4, 2)), (6, (8, 4)), (4, (8, 4))):
        (decal,), _ = make.drawn(make.artwork(BAR, width=8 * IN, height=height * IN))
        assert inches(decal) == size
    (decal,), _ = make.drawn(make.artwork(BAR, width=8 * IN, widest=6 * IN))
    assert inches(decal) == (6, 3)
