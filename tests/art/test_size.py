"""How big a decal is: scaled by the flat chest, rounded, kept on garment and film. Sums in inches."""

import math
from typing import Any

import pytest

from xlbatch.art.size import Limits, chests_of, grown, limits_of, ratio, shrunk

IN = 25.4
STEP = IN / 4


@pytest.mark.parametrize(
    ("size", "sized_for", "expected"),
    [
        ("M", "", 1.0),  # drawn for an adult M unless said
        ("L", "", 22 / 20),
        ("2T", "", 12 / 20),
        ("M", "L", 20 / 22),
        ("L", "L", 1.0),
        ("L", "7XL", 1.0),  # no chest known to scale from
    ],
)
def test_a_decal_grows_as_the_chest_does(make: Any, size: str, sized_for: str, expected: float) -> None:
    chests = chests_of(make.job().blanks)
    assert ratio(chests, make.garment(make.spec(), size=size), make.spec(sized_for=sized_for)) == pytest.approx(
        expected
    )


def test_a_decal_that_is_not_scaled_is_the_same_on_all(make: Any) -> None:
    assert ratio(chests_of(make.job().blanks), make.garment(size="5XL"), make.spec(scale=False)) == 1.0


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
        # its middle is 4 in off the center line; the neck is 7.2 in wide and 95 mm deep, a parabola
        ("left chest", 2 * (4 - 0.25 - 3.6 * (1 - 3.5 * 25.4 / 95) ** 0.5)),
        ("left sleeve", 7.5 - 2 * 0.5),  # 1/2 in clear at each edge of the opening
    ],
)
def test_the_garment_limits_the_width(make: Any, position: str, expected: float) -> None:
    limits = limits_of(make.job(), make.garment(), make.spec(position=position), (), 0.0)
    assert limits.across == pytest.approx(expected * IN)
    assert limits.usable == math.inf


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
