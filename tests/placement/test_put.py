"""Where decals go: defaults are common practice, no source; sums stand beside each check."""

from collections.abc import Callable

import pytest

from xlbatch.placement.place import Place
from xlbatch.plan import Plan
from xlbatch.problems import Where

INCH = 25.4
HEAD = ["Who", "Garment", "Size", "Design", "Number"]
DESIGN = ["Design", "Decal", "What", "Film", "Position", "Width", "Height", "Scale with size"]

APART = [["Setting", "Value"], ["Join pieces", "no"]]


def box(position: str, width: float, height: float) -> list[list[object]]:
    """A design of one decal known only by width and height, the same on every size."""
    return [list(DESIGN), ["Box", "Box", "artwork", "Black smooth", position, width, height, "no"]]


def only(plan: Plan) -> Place:
    assert len(plan.places) == 1, [found.sentence for found in plan.problems if found.level == "stop"]
    return plan.places[0]


def place_box(
    plan_of: Callable[..., Plan], size: str, position: str, garment: str = "Crew-neck tee", width: float = 4
) -> Place:
    return only(plan_of([HEAD, ["Ana", garment, size, "Box"]], Designs=box(position, width, 3)))


@pytest.mark.parametrize(
    ("garment", "size", "inches"),
    [
        ("Crew-neck tee", "M", 3),
        ("Crew-neck tee", "Youth M", 2),
        ("V-neck tee", "M", 1),
        ("V-neck tee", "Youth M", 0.75),
        ("Crew-neck tee", "4T", 1.25),
    ],
)
def test_full_front_below_the_collar_seam(plan_of: Callable[..., Plan], garment: str, size: str, inches: float) -> None:
    place = place_box(plan_of, size, "full front", garment)
    assert place.below_collar == pytest.approx(inches * INCH)
    assert place.from_center == 0


def test_clearances_of_a_full_front_on_an_adult_m(plan_of: Callable[..., Plan]) -> None:
    place = place_box(plan_of, "M", "full front")
    assert place.clear_side == pytest.approx((20 / 2 - 4 / 2) * INCH)
    assert place.clear_hem == pytest.approx((29 - 3.75 - 3 - 3) * INCH)  # length - collar drop - down - height


def test_left_chest_lies_on_the_wearer_s_left(plan_of: Callable[..., Plan]) -> None:
    assert place_box(plan_of, "M", "left chest").from_center == pytest.approx(-4 * INCH)
    assert place_box(plan_of, "Youth M", "right chest", width=2.5).from_center == pytest.approx(3 * INCH)


def test_a_sleeve_is_measured_from_its_opening(plan_of: Callable[..., Plan]) -> None:
    place = place_box(plan_of, "M", "left sleeve")
    assert (place.below_collar, place.clear_hem) == (None, None)
    assert place.above_opening == pytest.approx(1 * INCH)
    assert place.measured_from == "sleeve opening"


@pytest.mark.parametrize(("height", "codes"), [(8, []), (8.03, ["decal-off-garment"])])
def test_a_decal_at_the_opening_itself_may_be_as_high_as_the_sleeve(
    plan_of: Callable[..., Plan], height: float, codes: list[str]
) -> None:
    """A sleeve of 8 1/2 in, less 1/2 in kept clear of its seam."""
    rows = [
        ["Position", "For", "Neckline", "Side", "Measured from", "Distance (in)", "From center (in)", "Gap (in)"],
        ["cuff", "adult", "any", "left sleeve", "sleeve opening", 0, 0, 0.5],
    ]
    plan = plan_of([HEAD, ["Ana", "Crew-neck tee", "M", "Box"]], Designs=box("cuff", 2, height), Positions=rows)
    assert [found.code for found in plan.problems if found.level == "stop"] == codes
    assert [place.above_opening for place in plan.places] == [0] * (not codes)


def test_a_number_goes_two_inches_under_the_name(plan_of: Callable[..., Plan]) -> None:
    designs = [
        DESIGN,
        ["Squad", "Number", "number", "Black smooth", "back number", None, 6, "no"],
        ["Squad", "Name", "print name", "Black smooth", "back name", None, 2, "no"],
    ]
    plan = plan_of([HEAD, ["HOHE", "Crew-neck tee", "XL", "Squad", "11"]], Designs=designs, Job=APART)
    number, name = plan.places
    assert name.below_collar == pytest.approx(4 * INCH)
    assert number.below_collar == pytest.approx(4 * INCH + name.decal.height + 2 * INCH)


def test_decals_in_one_position_go_one_below_the_other(plan_of: Callable[..., Plan]) -> None:
    roster = [["Who", "Size"], ["Ana", "M"]]
    plan = plan_of(roster, Job=[*APART, ["Shared line", "Lantern Walk"]])
    line, name = plan.places
    assert (line.decal.text, name.decal.text) == ("Lantern Walk", "Ana")
    assert name.below_collar == pytest.approx(3 * INCH + line.decal.height + INCH / 2, abs=0.01)


def test_a_decal_that_does_not_fit_is_held_back_with_what_would(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of([HEAD, ["Ana", "Crew-neck tee", "2T", "Box"]], Designs=box("full front", 10, 4))
    stop = next(found for found in plan.problems if found.code == "decal-off-garment")
    assert stop.where == Where("Designs", "F2")
    assert "at most 9 in" in stop.todo  # 12 in chest less 1 1/2 in at each side
    assert plan.garments == ()


@pytest.mark.parametrize(
    ("below", "fits"),
    [
        (3, "at most 8 in wide and 19 1/4 in high"),  # 29 in long, less 3 3/4 in collar drop, 3 in down, 3 in of hem
        (23, "smaller"),  # the clear part of the front ends 22 1/4 in below the collar
    ],
)
def test_a_decal_too_high_is_told_how_high_it_may_be(plan_of: Callable[..., Plan], below: float, fits: str) -> None:
    rows = [
        ["Position", "For", "Neckline", "Side", "Measured from", "Distance (in)", "From center (in)", "Gap (in)"],
        ["low", "adult", "any", "front", "front collar seam", below, 0, 0.5],
    ]
    plan = plan_of([HEAD, ["Ana", "Crew-neck tee", "M", "Box"]], Designs=box("low", 8, 25), Positions=rows)
    (stop,) = [found for found in plan.problems if found.code == "decal-off-garment"]
    assert f"{fits}, or" in stop.todo


def test_a_position_the_trade_does_not_have(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of([HEAD, ["Ana", "Crew-neck tee", "12M", "Box"]], Designs=box("left chest", 2, 1))
    assert [found.code for found in plan.problems if found.level == "stop"] == ["position-not-made"]


def test_above_the_hem_is_measured_from_the_hem(plan_of: Callable[..., Plan]) -> None:
    place = place_box(plan_of, "M", "above the hem")
    assert place.above_hem == place.clear_hem == pytest.approx(3 * INCH)
    assert (place.below_collar, place.above_opening) == (None, None)
    assert place.measured_from == "hem"


def test_positions_measured_from_different_seams_are_compared_on_the_garment(plan_of: Callable[..., Plan]) -> None:
    """Left chest counts from the collar's side, full front from its lowest point, 3 3/4 in further down."""
    designs: list[list[object]] = [
        [*DESIGN],
        ["Two", "Badge", "artwork", "Black smooth", "left chest", 3, 3, "no"],  # 3 1/2 to 6 1/2 in below the shoulder
        ["Two", "Front", "artwork", "Black smooth", "full front", 10, 4, "no"],  # from 3 3/4 + 3 = 6 3/4 in on
    ]
    plan = plan_of([HEAD, ["Ana", "Crew-neck tee", "XL", "Two"]], Designs=designs)
    assert len(plan.places) == 2
    designs[1][6] = 3.5
    plan = plan_of([HEAD, ["Ana", "Crew-neck tee", "XL", "Two"]], Designs=designs)
    assert [found.code for found in plan.problems if found.level == "stop"] == ["decals-overlap"]
