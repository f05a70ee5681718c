"""The colors of a drawing that are cut, the box it is measured by, and how its colors lie to one another."""

from collections.abc import Mapping
from pathlib import Path

import pytest

from tests.parts.by_hand import Corners, block, drawing, layer
from xlbatch.geometry.path import Box
from xlbatch.parts.color_layers import color_layers, pressed_as_drawn
from xlbatch.parts.find import parts_of
from xlbatch.parts.looked import Looked
from xlbatch.parts.part import Part
from xlbatch.svg.layer import Layer, Letters, LiveText, TextSpan

RED, GREEN, BLUE = "#ff0000", "#00ff00", "#0000ff"
LOOK = Letters(("Anton",), False, False, 20.0, 0.0, 0.0, "start", 0.0, ((BLUE, 0.0), (RED, 2.0)))
TEXT = LiveText((TextSpan("ONE", LOOK),), (1.0, 0.0, 0.0, 1.0, 0.0, 0.0))
TEXT_BOX = (1000.0, 1000.0, 1400.0, 1100.0)
A, B, C, D = block(100, 100, 300, 90), block(100, 600, 500, 80), block(100, 900, 200, 70), block(100, 1300, 90, 60)


def looked(*layers: Layer) -> Looked:
    made = drawing(*layers)
    return Looked(made, parts_of(made, lambda _text: TEXT_BOX), Path())


def live() -> Layer:
    return layer("")._replace(text=TEXT)


def every(drawn: Looked) -> frozenset[str]:
    return frozenset(part.label for part in drawn.parts)


def test_colors_are_those_of_the_parts_cut_the_lowest_first() -> None:
    drawn = looked(layer(GREEN, A), live(), layer(RED, B), layer(GREEN, C))
    assert drawn.colors(every(drawn)) == (GREEN, BLUE, RED)
    text, red, green, more_green = (part.label for part in drawn.parts)
    assert drawn.colors({red}) == (RED,)
    assert drawn.colors({text, green}) == (GREEN, BLUE, RED)
    assert drawn.colors({text, more_green}) == (BLUE, RED, GREEN)
    assert drawn.colors(()) == ()


def test_what_is_left_out_is_no_color_unless_it_is_wanted() -> None:
    drawn = looked(layer(GREEN, A, use=False), layer(RED, B))
    out = next(part.label for part in drawn.parts if not part.use)
    (red,) = drawn.used({})
    assert drawn.colors(drawn.used({})) == (RED,)
    assert drawn.used({out: True}) == {red, out}
    assert drawn.used({out: False, red: False}) == {red}  # what a line leaves out is left out for its garments alone
    assert drawn.colors(drawn.used({out: True})) == (GREEN, RED)


@pytest.mark.parametrize(
    ("layers", "box"),
    [
        ([layer(RED, A), layer(GREEN, B)], (100, 100, 600, 680)),
        ([layer(RED, A), live()], (100, 100, 400, 190)),  # without live texts
        ([layer(RED, A), layer(GREEN, B, use=False)], (100, 100, 400, 190)),
        ([live()], (0, 0, 2000, 2000)),
    ],
)
def test_the_box_that_a_width_is_measured_by(layers: list[Layer], box: Box) -> None:
    assert looked(*layers).box == box


GROUND, OVER = block(100, 100, 800, 800), block(200, 200, 100, 100)
LESS_THAN_HALF, BESIDE = block(860, 200, 100, 100), block(1000, 1000, 300, 90)
OF_ONE_FILM = {RED: "White", GREEN: "white", BLUE: "Black"}


@pytest.mark.parametrize(
    ("layers", "films", "layer_of", "open_on"),
    [
        ([(RED, GROUND), (GREEN, BESIDE)], OF_ONE_FILM, {RED: 0, GREEN: 0}, {}),
        ([(RED, GROUND), (GREEN, BESIDE)], {RED: "White", GREEN: "Black"}, {RED: 0, GREEN: 1}, {}),
        ([(RED, GROUND), (GREEN, OVER)], OF_ONE_FILM, {RED: 0}, {GREEN: RED}),
        ([(RED, GROUND), (GREEN, LESS_THAN_HALF)], OF_ONE_FILM, {RED: 0, GREEN: 0}, {}),
        ([(RED, GROUND), (GREEN, block(860, 200, 70, 100))], OF_ONE_FILM, {RED: 0}, {GREEN: RED}),
        ([(RED, GROUND), (BLUE, block(150, 150, 300, 300)), (GREEN, OVER)], OF_ONE_FILM,
         {RED: 0, BLUE: 1, GREEN: 2}, {}),  # another film between
        ([(RED, GROUND), (BLUE, block(500, 500, 300, 300)), (GREEN, BESIDE)], OF_ONE_FILM,
         {RED: 0, BLUE: 1, GREEN: 0}, {}),
        ([(RED, GROUND), (BLUE, block(500, 500, 300, 300)), (GREEN, block(799, 500, 300, 200))], OF_ONE_FILM,
         {RED: 0, BLUE: 1, GREEN: 2}, {}),  # it meets what lies between
        ([(RED, GROUND), (BLUE, BESIDE), (GREEN, OVER)], {RED: "White", BLUE: "Black", GREEN: "Gold"},
         {RED: 0, BLUE: 1, GREEN: 2}, {}),
    ],
)  # fmt: skip
def test_the_layer_of_each_color(
    layers: list[tuple[str, Corners]], films: dict[str, str], layer_of: Mapping[str, int], open_on: Mapping[str, str]
) -> None:
    drawn = looked(*(layer(color, corners) for color, corners in layers))
    film_of = {color: films[color] for color, _ in layers}
    made = color_layers(drawn, every(drawn), film_of)
    assert (made.layer_of, made.open_on) == (layer_of, open_on)


def test_a_live_text_counts_by_its_box() -> None:
    films = {RED: "White", BLUE: "White"}
    under = looked(layer(RED, block(900, 900, 700, 700)), live())
    assert color_layers(under, every(under), films).open_on == {BLUE: RED}
    beside = looked(layer(RED, block(900, 100, 700, 700)), live())
    assert color_layers(beside, every(beside), films).layer_of == {RED: 0, BLUE: 0}
    text = next(part.label for part in under.parts if part.text)
    assert color_layers(under, every(under) - {text}, films).open_on == {}


@pytest.mark.parametrize(
    ("other", "places", "as_drawn"),
    [
        (OVER, ((1, 5), (2, 1)), True),
        (OVER, ((2, 1), (1, 5)), False),
        (OVER, ((1, 2), (1, 1)), False),
        (OVER, ((1, 1), (1, 2)), True),
        (BESIDE, ((2, 1), (1, 5)), True),  # they do not meet
        (block(900, 200, 100, 100), ((2, 1), (1, 5)), True),  # they touch
    ],
)
def test_colors_that_meet_are_pressed_as_drawn(
    other: Corners, places: tuple[tuple[int, int], tuple[int, int]], as_drawn: bool
) -> None:
    drawn = looked(layer(RED, GROUND), layer(GREEN, other))
    pressed = tuple(zip((RED, GREEN), places, strict=True))
    assert pressed_as_drawn(drawn, every(drawn), pressed) is as_drawn


def test_of_three_colors_each_pair_is_looked_at() -> None:
    drawn = looked(layer(RED, GROUND), layer(GREEN, BESIDE), layer(BLUE, OVER))
    places = {RED: (2, 1), GREEN: (1, 1), BLUE: (1, 2)}
    assert not pressed_as_drawn(drawn, every(drawn), tuple(places.items()))
    blue = next(part.label for part in drawn.parts if part.color == BLUE)
    assert pressed_as_drawn(drawn, every(drawn) - {blue}, tuple(places.items()))


def test_a_part_s_number_is_its_label() -> None:
    assert (Part(3, "shape", "", (0, 0, 1, 1)).label, Part(3, "shape", "", (0, 0, 1, 1), letter="b").label) == (
        "3", "3b",
    )  # fmt: skip
