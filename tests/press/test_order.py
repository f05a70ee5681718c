"""The order at the press: layers, then the hottest film first; the plate set as seldom as that allows."""

from collections.abc import Callable
from itertools import groupby

import pytest

from xlbatch.plan import Plan

HEAD = ["Who", "Size", "Design", "Print name"]
DESIGN = ["Design", "Decal", "What", "Text", "Film", "Layer", "Position", "Height"]
TWO_FILMS = [
    DESIGN,
    ["Two", "Front", "text", "GO", "Navy smooth", 1, "full front", "2 in"],
    ["Two", "Back", "text", "GO", "Red stretch", 1, "full back", "2 in"],
]
FOUR_PEOPLE = [HEAD, *([who, "M", "Two"] for who in ("Ana", "Ivo", "Mei", "Tùng"))]


def test_the_hottest_film_of_a_garment_comes_first(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of(FOUR_PEOPLE, Designs=TWO_FILMS)
    for no in (1, 2, 3, 4):
        steps = [step for step in plan.pressing.steps if step.place.garment.no == no]
        assert [step.film.name for step in steps] == ["Navy smooth", "Red stretch"]


def test_a_batch_s_garments_share_a_plate_setting(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of(FOUR_PEOPLE, Designs=TWO_FILMS)
    settings = [film for film, _ in groupby(step.film.name for step in plan.pressing.steps)]
    assert plan.pressing.settings_changed == len(settings) - 1
    assert len(settings) <= 2 * len(plan.layout.batches)


def test_steps_are_numbered_and_go_batch_by_batch(plan_of: Callable[..., Plan]) -> None:
    never = [["Setting", "Value"], ["Worth changing the order", "never"]]
    steps = plan_of(FOUR_PEOPLE, Designs=TWO_FILMS, Job=never).pressing.steps
    assert [step.no for step in steps] == list(range(1, 9))
    assert [step.batch for step in steps] == sorted(step.batch for step in steps)


def test_an_order_that_saves_no_waiting_is_not_changed(plan_of: Callable[..., Plan]) -> None:
    """One film needs one heat: however little is worth changing the order, there is nothing to gain."""
    always = [["Setting", "Value"], ["Worth changing the order", 0]]
    pressing = plan_of(FOUR_PEOPLE, Designs=TWO_FILMS[:2], Job=always).pressing
    assert (pressing.waiting_by_heat, pressing.waiting_by_batch) == (0, 0)
    assert not pressing.by_heat


def test_the_first_step_of_a_film_on_a_fabric_is_a_trial(plan_of: Callable[..., Plan]) -> None:
    steps = plan_of(FOUR_PEOPLE, Designs=TWO_FILMS).pressing.steps
    assert sorted(step.film.name for step in steps if step.trial) == ["Navy smooth", "Red stretch"]


def test_smooth_film_is_pressed_30_seconds_and_15_from_the_back(plan_of: Callable[..., Plan]) -> None:
    """Common practice, no source."""
    step = plan_of([["Who", "Size"], ["Ana", "M"]]).pressing.steps[0]
    assert (step.warm_up, step.front, step.back, step.film.peel) == (5, 30, 15, "cold")


def test_a_hotter_film_in_a_later_layer_is_held_back(plan_of: Callable[..., Plan]) -> None:
    designs = [
        DESIGN,
        ["Two", "Front", "text", "GO", "Red stretch", 1, "full front", "2 in"],
        ["Two", "Back", "text", "GO", "Navy smooth", 2, "full back", "2 in"],
    ]
    plan = plan_of(FOUR_PEOPLE, Designs=designs)
    stops = [(found.code, found.where.cell, found.rows) for found in plan.problems if found.level == "stop"]
    assert stops == [("heat-order", "F3", (2, 3, 4, 5))]


def test_one_side_is_finished_before_the_garment_is_turned_over(plan_of: Callable[..., Plan]) -> None:
    designs = [
        [*DESIGN, "Outline film", "Outline width"],
        ["Two", "Front", "text", "GO", "Navy smooth", 1, "full front", "2 in", "White smooth", "1/8 in"],
        ["Two", "Back", "text", "GO", "Navy smooth", 1, "full back", "2 in"],
    ]
    steps = plan_of([HEAD, ["Ana", "M", "Two"]], Designs=designs).pressing.steps
    assert [(step.place.decal.piece, step.tack) for step in steps] == [
        ("Front border", True),
        ("Front", False),
        ("Back", False),
    ]
    assert [step.front for step in steps] == [5, 30, 30]


def test_two_decals_under_one_plate_are_one_closing(plan_of: Callable[..., Plan]) -> None:
    job = [["Setting", "Value"], ["Shared line", "Lantern Walk"], ["Join pieces", "no"]]
    plan = plan_of([["Who", "Size"], ["Ana", "M"]], Job=job)
    first, second = plan.pressing.steps
    assert (first.no, second.no) == (1, 2)
    assert (first.with_step, second.with_step) == (None, 1)


@pytest.mark.parametrize(("width", "depth", "together"), [(12, 4, True), (4, 12, True), (10, 10, False)])
def test_one_closing_covers_what_lies_within_the_plate_laid_along_or_across(
    plan_of: Callable[..., Plan], width: float, depth: float, together: bool
) -> None:
    """A pair of boxes that are, with what is between them, 11 in wide and 3 in high."""
    pair = [
        [*DESIGN, "Width"],
        ["Two", "Left", "artwork", "", "Navy smooth", 1, "left chest", "3 in", "3 in"],
        ["Two", "Right", "artwork", "", "Navy smooth", 1, "right chest", "3 in", "3 in"],
    ]
    presses = [["Press", "Kind", "Plate width (in)", "Plate depth (in)"], ["Own", "plate press", width, depth]]
    plan = plan_of([HEAD, ["Ana", "M", "Two"]], Designs=pair, Press=presses)
    assert [step.with_step for step in plan.pressing.steps] == [None, 1 if together else None]


def test_what_is_pressed_already_is_covered_when_its_side_is_pressed_again(plan_of: Callable[..., Plan]) -> None:
    designs = [
        DESIGN,
        ["Two", "Name", "text", "GO", "Navy smooth", 1, "back name", "2 in"],
        ["Two", "Number", "text", "7", "Red stretch", 1, "back number", "6 in"],
        ["Two", "Front", "text", "GO", "Red stretch", 1, "full front", "2 in"],
    ]
    steps = plan_of([HEAD, ["Ana", "M", "Two"]], Designs=designs).pressing.steps
    assert [(step.place.decal.piece, step.trial, step.cover) for step in steps] == [
        ("Name", True, ()),
        ("Number", True, ("D001",)),
        ("Front", False, ()),
    ]
