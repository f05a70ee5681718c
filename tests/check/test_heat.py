"""Heat: no film goes on a garment that does not bear it."""

from collections.abc import Callable

from xlbatch.plan import Plan
from xlbatch.units import parse_temperature

ROSTER = [["Who", "Size", "Color"], ["Ana", "M", "white"]]
GARMENT = ["Garment", "Size", "Fabric", "Iron dots", "Heat limit (°F)"]


def tee(fabric: str, dots: object, limit: object = None) -> list[list[object]]:
    return [list(GARMENT), ["Crew-neck tee", "M", fabric, dots, limit]]


def heat(plan: Plan) -> list[tuple[str, str]]:
    return [(found.code, found.where.cell) for found in plan.problems if found.code.startswith("heat")]


def test_two_dots_stop_a_film_pressed_at_330_degrees(plan_of: Callable[..., Plan]) -> None:
    """Source: ISO 3758:2012, two dots: 150 °C; 330 °F is 165.6 °C."""
    plan = plan_of(ROSTER, Garments=tee("cotton", 2))
    assert heat(plan) == [("heat-over-limit", "D2")]
    stop = next(found for found in plan.problems if found.code == "heat-over-limit")
    assert "330 °F" in stop.wrong
    assert "302 °F" in stop.wrong
    assert "stretch (300 °F)" in stop.todo
    assert stop.suggestion == "Black stretch"
    assert plan.garments == ()


def test_three_dots_bear_it(plan_of: Callable[..., Plan]) -> None:
    """Source: ISO 3758:2012, three dots: 200 °C."""
    assert heat(plan_of(ROSTER, Garments=tee("cotton", 3))) == []


def test_the_maker_s_limit_wins_over_the_dots(plan_of: Callable[..., Plan]) -> None:
    assert heat(plan_of(ROSTER, Garments=tee("cotton", 2, 340))) == []
    assert heat(plan_of(ROSTER, Garments=tee("cotton", 3, 300))) == [("heat-over-limit", "E2")]


def test_without_a_label_pure_polyester_stops_and_a_blend_is_a_check(plan_of: Callable[..., Plan]) -> None:
    assert heat(plan_of(ROSTER, Garments=tee("polyester", None)))[0][0] == "heat-over-limit"
    blend = plan_of(ROSTER, Garments=tee("cotton/polyester", None))
    assert heat(blend)[0][0] == "heat-check-label"
    assert len(blend.garments) == 1


def test_no_step_is_hotter_than_its_garment_bears(plan_of: Callable[..., Plan]) -> None:
    roster = [
        ["Who", "Garment", "Size", "Design"],
        ["Ana", "Crew-neck tee", "M", "Cool"],
        ["Ivo", "Polyester sports tee", "L", "Cool"],
        ["Mei", "Polyester sports tee", "L", "Hot"],
    ]
    designs = [
        ["Design", "Decal", "What", "Film", "Position"],
        ["Cool", "Name", "print name", "Navy low-heat", "full front"],
        ["Hot", "Name", "print name", "Navy smooth", "full front"],
    ]
    plan = plan_of(roster, Designs=designs)
    assert {step.place.garment.who for step in plan.pressing.steps} == {"Ana", "Ivo"}
    polyester = parse_temperature(150, "°C")
    assert polyester is not None
    assert all(step.temperature <= polyester for step in plan.pressing.steps)


def test_a_press_that_is_too_cool_stops(plan_of: Callable[..., Plan]) -> None:
    press = [["Press", "Hottest (°F)"], ["Old iron", 300]]
    assert ("press-too-cool", "Press", "B2") in [(f.code, *f.where) for f in plan_of(ROSTER, Press=press).problems]


def test_lighter_film_on_dark_polyester_may_take_its_dye(plan_of: Callable[..., Plan]) -> None:
    """Common practice, no source."""
    designs = [
        ["Design", "Decal", "What", "Film", "Position"],
        ["Name", "Name", "print name", "White low-heat", "full front"],
    ]
    head = ["Who", "Garment", "Size", "Color"]
    plan = plan_of(
        [head, ["Ana", "Polyester sports tee", "M", "navy"], ["Ivo", "Polyester sports tee", "M", "white"]],
        Designs=designs,
    )
    assert [(each.where.cell, each.rows) for each in plan.problems if each.code == "dye-may-show"] == [("D2", (2,))]
    cotton = plan_of([head, ["Ana", "Crew-neck tee", "M", "navy"]], Designs=designs)
    assert not any(each.code == "dye-may-show" for each in cotton.problems)
