"""How big a decal is: scaled by class and flat chest, rounded, kept on garment and film. Sums in inches."""

import math
from dataclasses import replace
from typing import Any

import pytest

from xlbatch.art.size import (
    Limits,
    center_of,
    chests_of,
    grown,
    letter_ratio,
    limits_of,
    neck_at,
    ratio,
    shrunk,
    usual_width,
)

IN = 25.4
STEP = IN / 4


@pytest.mark.parametrize(
    ("size", "sized_for", "expected"),
    [
        ("M", "", 1.0),  # drawn for an adult M unless said
        ("L", "", 10.75 / 10),
        ("2T", "", 5 / 10),
        ("M", "L", 10 / 10.75),
        ("L", "L", 1.0),
        ("L", "7XL", 1.0),  # no chest known to scale from
    ],
)
def test_a_decal_grows_as_artwork_does_in_its_class(make: Any, size: str, sized_for: str, expected: float) -> None:
    chests = chests_of(make.job().blanks)
    assert ratio(chests, make.garment(make.spec(), size=size), make.spec(sized_for=sized_for)) == pytest.approx(
        expected
    )


@pytest.mark.parametrize(
    ("position", "size", "sized_for", "expected"),
    [
        ("left chest", "Youth XL", "", 2.5 / 3.5),
        ("Right chest", "2T", "", 2 / 3.5),
        ("left chest", "L", "", 10.75 / 10),  # within a class as anywhere
        ("left chest", "Youth XL", "Youth XL", 1.0),  # drawn for the class itself
        ("full front", "Youth XL", "", 9 / 10),
    ],
)
def test_artwork_on_one_side_of_the_chest_has_a_width_for_each_class(
    make: Any, position: str, size: str, sized_for: str, expected: float
) -> None:
    spec = make.spec(position=position, sized_for=sized_for)
    assert ratio(chests_of(make.job().blanks), make.garment(size=size), spec) == pytest.approx(expected)


@pytest.mark.parametrize(
    ("chests", "expected"),
    [
        ({("tee", "M"): 20, ("", "M"): 26}, 10.75 / 10),
        ({("", "M"): 24}, 10.75 / 11.25),  # no chest of this garment's M is known: another garment's
        ({("hood", "M"): 24}, 1.0),
        ({("tee", "S"): 18}, 1.0),
    ],
)
def test_the_size_drawn_for_has_the_chest_of_its_own_garment_if_known(make: Any, chests: Any, expected: float) -> None:
    known = {key: inches * IN for key, inches in chests.items()}
    assert ratio(known, make.garment(size="L"), make.spec()) == pytest.approx(expected)


def test_a_decal_that_is_not_scaled_is_the_same_on_all(make: Any) -> None:
    assert ratio(chests_of(make.job().blanks), make.garment(size="5XL"), make.spec(scale=False)) == 1.0


@pytest.mark.parametrize(
    ("for_", "chest", "least", "most"),
    [  # artwork that is 10 in wide on an adult M: common practice, no source
        ("adult", 18, 9.5, 9.5),
        ("adult", 20, 10, 10),
        ("adult", 22, 10.5, 11),
        ("adult", 24, 11, 11.5),
        ("adult", 32, 11, 11.5),
        ("youth", 16, 7.5, 7.5),
        ("youth", 18, 7.5, 9),
        ("youth", 20, 9, 9),
        ("toddler", 12, 5, 5),
        ("toddler", 13.4, 5, 7),
        ("toddler", 15, 7, 7),
        ("infant", 9, 4, 4),
        ("infant", 11.25, 4.5, 4.5),
    ],
)
def test_artwork_has_the_usual_width_of_its_class(for_: str, chest: float, least: float, most: float) -> None:
    assert least - 1e-9 <= usual_width(for_, chest * IN) / IN <= most + 1e-9


def test_a_class_has_one_letter_height(make: Any) -> None:
    spec = make.spec(what="number", height=10 * IN)

    def letters(size: str) -> float:
        (decal,) = make.drawn(spec, size=size, number="7")[0]
        assert decal.cap_height is not None
        return float(decal.cap_height / IN)

    assert [letters(size) for size in ("S", "M", "5XL")] == pytest.approx([10, 10, 10])
    assert letters("Youth XL") == pytest.approx(8)
    assert letters("2T") == pytest.approx(6)


def test_letters_drawn_for_another_class_are_a_part_of_its_own(make: Any) -> None:
    assert letter_ratio(make.garment(size="M"), make.spec(sized_for="Youth M")) == pytest.approx(1 / 0.8)
    assert letter_ratio(make.garment(size="Youth XL"), make.spec(sized_for="Youth M")) == 1
    assert letter_ratio(make.garment(size="2T"), make.spec(scale=False)) == 1


@pytest.mark.parametrize(
    ("inches", "scale", "expected"),
    [
        (10, 22 / 20, 11.0),
        (10, 12 / 20, 6.0),
        (9, 22 / 20, 10.0),  # 9.9 to the nearest 1/4
        (2, 22 / 20, 2.25),  # 2.2
        (0.1, 0.5, 0.25),  # at least one step
        (2.1, 1, 2.1),  # the size it was drawn for is not rounded
    ],
)
def test_scaled_sizes_are_rounded_to_quarters(inches: float, scale: float, expected: float) -> None:
    assert grown(inches * IN, scale, STEP) == pytest.approx(expected * IN)


def test_a_size_made_to_fit_is_rounded_down() -> None:
    assert shrunk(10 * IN, 0.74, STEP) == pytest.approx(7.25 * IN)
    assert shrunk(10 * IN, 0.75, STEP) == pytest.approx(7.5 * IN)
    assert shrunk(0.3 * IN, 0.5, STEP) == pytest.approx(0.15 * IN)  # no whole step fits


@pytest.mark.parametrize(
    ("position", "expected"),
    [
        ("full front", 20 - 2 * 1.5),  # 1 1/2 in clear of each side seam
        # from the neck, 7.2 in wide and 95 mm deep, a parabola, to 1 1/2 in from the side seam
        ("left chest", 20 / 2 - 1.5 - 0.25 - 3.6 * (1 - 3.5 * 25.4 / 95) ** 0.5),
        ("left sleeve", 7.5 - 2 * 0.5),  # 1/2 in clear at each edge of the opening
    ],
)
def test_the_garment_limits_the_width(make: Any, position: str, expected: float) -> None:
    limits = limits_of(make.job(), make.garment(), make.spec(position=position), (), 0.0)
    assert limits.across == pytest.approx(expected * IN)
    assert limits.usable == math.inf


@pytest.mark.parametrize(
    ("rule", "blank", "expected"),
    [
        ({}, {"between_armholes": 16 * IN}, 16),  # narrower than the chest less 1 1/2 in on either side
        ({}, {"between_armholes": 18 * IN}, 17),
        ({"measured_from": "hem"}, {"between_armholes": 16 * IN}, 17),  # no armholes down there
        ({"across": IN}, {}, 15),  # 1 in off the middle, to either side
        ({"across": -2 * IN}, {"between_armholes": 16 * IN}, 12),
        ({"side": "right sleeve"}, {}, 6.5),
        ({"side": "right sleeve"}, {"sleeve_opening": None}, math.inf),
    ],
)
def test_the_garment_limits_the_width_where_the_position_lies(
    make: Any, rule: Any, blank: Any, expected: float
) -> None:
    job = make.job()
    place = replace(job.position("full front", "adult", "crew"), neckline="crew", **rule)
    garment = make.garment()
    garment = replace(garment, blank=replace(garment.blank, **blank))
    limits = limits_of(replace(job, positions=(place,)), garment, make.spec(), (), 0.0)
    assert limits.across == pytest.approx(expected * IN)
    assert limits_of(replace(job, positions=()), garment, make.spec(), (), 0.0).across == math.inf


@pytest.mark.parametrize(
    ("neckline", "drop", "below", "half"),
    [
        ("crew", 100, 0, 90),
        ("crew", 100, 75, 45),  # the square root of a quarter of it
        ("V", 100, 75, 22.5),
        ("V", 100, 40, 54),
        ("crew", 100, 100, 0),
        ("V", 100, 150, 0),
        ("crew", 0, 50, 0),
    ],
)
def test_how_wide_the_neck_is_open(make: Any, neckline: str, drop: float, below: float, half: float) -> None:
    """0.36 of a chest of 500 mm at the shoulder; and what goes beside it stays 1/4 in away."""
    blank = replace(make.blank("M"), chest=500.0, neckline=neckline, drop_front=drop)
    assert neck_at(blank, below) == pytest.approx(half)
    beside = make.job().position("left chest", "adult", "crew")
    for across in (-60.0, 60.0):
        rule = replace(beside, measured_from="side of the collar seam", across=across)
        out = max(60, half + IN / 4 + 50)
        assert center_of(blank, rule, 100.0, below) == pytest.approx(math.copysign(out, across))
        assert center_of(blank, replace(rule, measured_from="hem"), 100.0, below) == across


def test_an_outline_takes_its_width_from_both_limits(make: Any) -> None:
    job = make.job()
    limits = limits_of(job, make.garment(), make.spec(), job.films, 3.0)
    assert limits.across == pytest.approx(17 * IN - 6)
    assert limits.usable == pytest.approx(11.5 * IN - 6)
    assert not limits.turned  # one of the films has a direction


def test_on_film_that_may_be_turned_only_the_shorter_side_must_fit() -> None:
    free, one_way = Limits(500, 290, turned=True), Limits(500, 290, turned=False)
    assert free.shrink(400, 200) == 1
    assert one_way.shrink(400, 200) == pytest.approx(290 / 400)
    assert free.shrink(400, 320) == pytest.approx(290 / 320)
    assert free.shrink(1000, 200) == pytest.approx(500 / 1000)
    assert free.widths() == (500, 290)
    assert one_way.widths() == (290,)
