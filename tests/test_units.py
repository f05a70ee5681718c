"""Lengths and temperatures: read as people write them, printed to an eighth of an inch or a millimeter."""

import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from xlbatch.units import (
    film_text,
    length_in,
    length_text,
    long_text,
    mm_per,
    parse_length,
    parse_temperature,
    printed_length,
    temperature_in,
    thin_text,
)

REGISTRY: pint.UnitRegistry[float] = pint.UnitRegistry()


@pytest.mark.parametrize(("unit", "mm"), [("in", 25.4), ("ft", 304.8), ("yd", 914.4), ("cm", 10), ("m", 1000)])
def test_factors_are_those_of_nist_sp_811(unit: str, mm: float) -> None:
    """Source: NIST SP 811 (2008), appendix B."""
    assert mm_per(unit) == pytest.approx(mm, abs=1e-9)


@pytest.mark.parametrize("unit", ["in", "ft", "yd", "mm", "cm", "m"])
def test_factors_are_those_of_pints_registry(unit: str) -> None:
    assert mm_per(unit) == pytest.approx(REGISTRY.Quantity(1, unit).to("mm").magnitude, rel=1e-15)


@given(st.integers(-4000, 5000).map(lambda tenths: tenths / 10))
def test_temperatures_are_those_of_pints_registry(degrees: float) -> None:
    assert parse_temperature(degrees, "°F") == round(REGISTRY.Quantity(degrees, "degF").to("degC").magnitude, 6)
    assert temperature_in(degrees, "°F") == round(REGISTRY.Quantity(degrees, "degC").to("degF").magnitude, 3)


@pytest.mark.parametrize(("fahrenheit", "celsius"), [(330, 165.56), (305, 151.67), (212, 100), (32, 0)])
def test_temperatures_follow_nist_sp_811(fahrenheit: float, celsius: float) -> None:
    """Source: NIST SP 811 (2008), section B.7: t/°C = (t/°F - 32)/1.8."""
    assert parse_temperature(fahrenheit, "°F") == pytest.approx(celsius, abs=0.005)


@pytest.mark.parametrize(
    ("written", "mm"),
    [
        ('10 1/2"', 266.7),
        ("10½ in", 266.7),
        ("10-1/2 in", 266.7),
        ("1/4", 6.35),
        ("27 cm", 270),
        ("27,5cm", 275),
        ("5 yd", 4572),
        ("3 ft 6 in", 1066.8),
        ("3'6\"", 1066.8),
        ("3''", 76.2),  # two feet signs are inches
        ("3'6''", 1066.8),
        ("2 ft. 6 inches", 762),
        ("9 feet", 2743.2),
        ("1.5 m", 1500),
        (12, 304.8),
        ("12", 304.8),
    ],
)
def test_lengths_as_people_write_them(written: object, mm: float) -> None:
    assert parse_length(written, "in") == pytest.approx(mm)


@pytest.mark.parametrize("written", ["", "wide", "12 in x 40 in", "5 men", "1/0", True, None, float("nan"), "3 4 in"])
def test_what_is_no_length(written: object) -> None:
    assert parse_length(written, "in") is None


@pytest.mark.parametrize(
    ("written", "celsius"), [("330 °F", 165.555556), ("165C", 165), ("150 deg C", 150), ("329", 165)]
)
def test_temperatures_as_people_write_them(written: str, celsius: float) -> None:
    assert parse_temperature(written, "°F") == pytest.approx(celsius, abs=1e-5)


@pytest.mark.parametrize("unit", ["in", "cm", "mm"])
@given(mm=st.integers(0, 10_000_000).map(lambda thousandths: thousandths / 1000))
@settings(max_examples=200)
def test_a_written_length_reads_back_as_the_same(unit: str, mm: float) -> None:
    assert parse_length(length_in(mm, unit), unit) == mm


@pytest.mark.parametrize("unit", ["°F", "°C"])
@given(tenths=st.integers(0, 3000))
@settings(max_examples=200)
def test_a_written_temperature_reads_back_as_the_same(unit: str, tenths: int) -> None:
    celsius = parse_temperature(tenths / 10, "°F")
    assert celsius is not None
    assert parse_temperature(temperature_in(celsius, unit), unit) == pytest.approx(celsius, abs=1e-3)
    if unit == "°F":
        assert parse_temperature(temperature_in(celsius, unit), unit) == celsius


@given(value=st.one_of(st.text(), st.integers(), st.floats(), st.booleans(), st.none()))
@settings(max_examples=300)
def test_nothing_a_cell_may_hold_makes_the_parsers_fail(value: object) -> None:
    assert parse_length(value, "in") is None or isinstance(parse_length(value, "in"), float)
    assert parse_temperature(value, "°F") is None or isinstance(parse_temperature(value, "°F"), float)


@pytest.mark.parametrize(
    ("mm", "unit", "up", "printed"),
    [
        (266.7, "in", False, 10.5),
        (268.0, "in", False, 10.5),  # 10.551 in: nearest eighth is 10 1/2
        (268.0, "in", True, 10.625),
        (100.4, "mm", False, 100),
        (100.4, "cm", True, 10.1),
        (0, "in", True, 0),
    ],
)
def test_printed_lengths_go_to_an_eighth_or_a_millimeter(mm: float, unit: str, up: bool, printed: float) -> None:
    assert printed_length(mm, unit, up=up) == printed


@pytest.mark.parametrize(
    ("mm", "unit", "text"),
    [(266.7, "in", "10 1/2 in"), (6.35, "in", "1/4 in"), (0, "in", "0 in"), (270, "cm", "27 cm")],
)
def test_lengths_to_read(mm: float, unit: str, text: str) -> None:
    assert length_text(mm, unit) == text


@pytest.mark.parametrize(
    ("mm", "text"), [(4572, "5 yd"), (1016, "40 in"), (2743.2, "3 yd"), (5000, "5 m"), (304.8, "1 ft")]
)
def test_roll_lengths_to_read(mm: float, text: str) -> None:
    assert long_text(mm, "in") == text


@pytest.mark.parametrize(
    ("mm", "unit", "text"),
    [
        (5257.8, "in", "17 ft 3 in (5.26 m)"),
        (5257.9, "in", "17 ft 4 in (5.26 m)"),  # film is rounded up
        (5260.1, "cm", "5.27 m (17 ft 4 in)"),
        (3657.6, "in", "12 ft (3.66 m)"),
        (279.4, "in", "11 in (0.28 m)"),
        (0, "cm", "0.00 m (0 in)"),
    ],
)
def test_lengths_of_film_to_read(mm: float, unit: str, text: str) -> None:
    assert film_text(mm, unit) == text


def test_what_is_thin_is_told_finely_enough_to_tell_it_from_its_limit() -> None:
    assert (thin_text(0.94, "cm"), thin_text(1.0, "cm"), thin_text(0.94, "in")) == ("0.94 mm", "1 mm", "0.037 in")
    assert (thin_text(0.996, "cm", down=True), thin_text(1.0, "cm", down=True)) == ("0.99 mm", "1 mm")
    assert (thin_text(0.99, "in", down=True), thin_text(1.0, "in", down=True)) == ("0.038 in", "0.039 in")
