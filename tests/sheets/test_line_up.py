"""What is said of where a decal goes, and of how a step is pressed: lengths, words and their limits."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from tests.workbooks import Rows
from xlbatch.job.job import Settings
from xlbatch.placement.place import Register
from xlbatch.placement.sections import Section
from xlbatch.plan import Plan
from xlbatch.press.step import PressStep
from xlbatch.sheets import press_log
from xlbatch.sheets.how import from_below, how, sections_text
from xlbatch.sheets.line_up import edges, layer_columns, line_up_by, measures

IN = 25.4


@pytest.fixture
def step(plan: Plan) -> PressStep:
    """A name pressed in one go."""
    return next(step for step in plan.pressing.steps if step.place.decal.spec.decal == "Name")


@pytest.fixture
def settings(plan: Plan) -> Settings:
    return plan.job.settings


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"from_center": 0.0}, "front collar seam, center crease"),
        ({"from_center": 0.004}, "front collar seam, center crease"),
        ({"from_center": 0.5}, "front collar seam, center crease (wearer’s right)"),
        ({"from_center": -0.5}, "front collar seam, center crease (wearer’s left)"),
        ({"side": "left sleeve"}, "front collar seam, crease along the sleeve"),
        (
            {"register": Register("D001", 0.5, -0.5)},
            "on D001: 0.02 in below its top edge, 0.02 in left of its left edge",
        ),
    ],
)
def test_what_a_decal_is_lined_up_by(step: PressStep, settings: Settings, changes: Any, said: str) -> None:
    place = replace(step.place, measured_from="front collar seam", **{"from_center": 30.0} | changes)
    assert line_up_by(place, settings) == said


@pytest.mark.parametrize(
    ("top", "left", "said"),
    [
        (4 * IN, 3 * IN / 8, "4 in below its top edge, 3/8 in right of its left edge"),
        (-IN, -2 * IN, "1 in above its top edge, 2 in left of its left edge"),
        (0.004, IN, "top edge on its top edge, 1 in right of its left edge"),
        (IN, -0.004, "1 in below its top edge, left edge on its left edge"),
    ],
)
def test_how_a_layer_lies_on_the_piece_under_it(
    step: PressStep, settings: Settings, top: float, left: float, said: str
) -> None:
    assert edges(replace(step.place, register=Register("D001", top, left)), settings) == said


def test_a_layer_has_the_measures_of_its_edges_and_other_pieces_those_on_the_garment(step: PressStep) -> None:
    place = replace(step.place, below_collar=3 * IN, from_center=-2.6 * IN)
    on_garment = {"Below collar seam (in)": 3, "From center (in)": -2.625}
    on_piece = {"On top of": "D009", "From its top (in)": 1.3, "From its left (in)": -0.25}
    assert measures(place, "in") == on_garment | dict.fromkeys(on_piece)
    layer = replace(place, register=Register("D009", 1.3 * IN, -IN / 4))
    assert measures(layer, "in") == dict.fromkeys(on_garment) | on_piece
    assert measures(replace(place, below_collar=None), "in")["Below collar seam (in)"] is None
    for places, outside in (((place,), True), ((place, layer), False)):
        assert {column.outside for column in layer_columns("in", places)} == {outside}
    assert layer_columns("in", (layer,))[0].whole
    assert not layer_columns("in", (place,))[0].whole


def grid(across: tuple[float, ...], up: tuple[float, ...]) -> tuple[Section, ...]:
    return tuple(Section(IN * right, IN * above) for above in up for right in across)


@pytest.mark.parametrize(
    ("sections", "word", "spots"),
    [
        (grid((0,), (0,)), "", ""),
        (grid((-3, 3), (0,)), "2 sections, left to right", "2 across: first 3 in left, then 6 in right"),
        (grid((0,), (4, 0, -4)), "3 sections, top to bottom", "3 down: first 4 in up, then each 4 in down"),
        (grid((-4, 0, 4), (2, -2)), "6 sections, left to right, top to bottom",
         "3 across: first 4 in left, then each 4 in right; 2 down: first 2 in up, then 4 in down"),
    ],
)  # fmt: skip
def test_where_the_plate_comes_down(
    step: PressStep, settings: Settings, sections: tuple[Section, ...], word: str, spots: str
) -> None:
    step = replace(step, trial=False, place=replace(step.place, sections=sections))
    whole = f"plate's middle from the decal's: {spots}" if spots else ""
    assert sections_text(step.place, settings) == whole
    assert how(step, settings, film=False, piece=False) == "; ".join(filter(None, (word, whole)))


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"trial": True}, "trial"),
        ({"with_step": 3}, "with step 3"),
        ({"cover": ("D001", "D004")}, "cover D001, D004"),
        ({"tack": True, "front": 2.5}, "tack 2.5 s"),
    ],
)
def test_what_is_minded_at_a_step(step: PressStep, settings: Settings, changes: Any, said: str) -> None:
    quiet = replace(step, trial=False)
    assert how(quiet, settings, film=False, piece=False) == ""
    film, piece = step.film.name, step.place.decal.piece
    assert how(quiet, settings, film=True, piece=False) == film
    assert how(quiet, settings, film=False, piece=True) == piece
    assert how(replace(quiet, **changes), settings, film=True, piece=True) == f"{film}; {piece}; {said}"
    iron = replace(quiet, press=replace(step.press, kind="iron"))
    assert how(iron, settings, film=False, piece=False) == "cover sheet"


def test_what_is_measured_from_below_says_where_its_bottom_edge_comes(step: PressStep, settings: Settings) -> None:
    assert from_below(step.place, settings) == ""
    sleeve, hem = replace(step.place, above_opening=IN), replace(step.place, above_hem=2 * IN)
    assert from_below(sleeve, settings) == "bottom edge 1 in above the sleeve opening"
    assert from_below(hem, settings) == "bottom edge 2 in above the hem"
    assert from_below(replace(sleeve, register=Register("D001", 0, 0)), settings) == ""


def test_pieces_and_films_are_named_where_they_could_be_mixed_up(plan_of: Callable[..., Plan]) -> None:
    """Two pieces at one place, and one alone on the back; films of one heat that are not pressed alike."""
    heads = ["Design", "Decal", "What", "Text", "Film", "Layer", "Position", "Height"]
    names: Rows = [
        ["Name", "Top line", "text", "OWLS", "White smooth", 1, "full front", "2 in"],
        ["Name", "Low line", "text", "2026", "Black smooth", 1, "full front", "2 in"],
        ["Name", "Back name", "print name", None, "White smooth", 1, "back name", "2 in"],
    ]
    plan = plan_of([["Who", "Size", "Color", "Design"], ["Ana", "M", "red", "Name"]], Designs=[heads, *names])
    one, two, back = (next(step for step in plan.pressing.steps if step.place.decal.piece == row[1]) for row in names)
    assert one.temperature == two.temperature

    def named(*steps: PressStep) -> list[list[str]]:
        """Which pieces and films are named at each step."""
        said = press_log.table(replace(plan, pressing=replace(plan.pressing, steps=steps)))["How"]
        return [[name for name in ("Top line", "Low line", "Back name", "smooth") if name in text] for text in said]

    assert named(one, two, back) == [["Top line"], ["Low line"], []]
    longer = replace(two, film=replace(two.film, press=two.film.press + 5))
    assert named(one, longer) == [["Top line", "smooth"], ["Low line", "smooth"]]
    assert named(one, replace(longer, temperature=one.temperature + 5)) == [["Top line"], ["Low line"]]
    assert named(one, replace(longer, batch=one.batch + 1)) == [["Top line"], ["Low line"]]
