"""Cells of each kind: what is typed, and the value it is read as."""

from collections.abc import Callable
from datetime import date, datetime
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from xlbatch.files.clean import clean, shown
from xlbatch.files.raw import Raw
from xlbatch.tables import cell_lists, cells
from xlbatch.tables.cells import Margin, Unclear
from xlbatch.tables.features import features

UNCLEAR = Unclear()


@pytest.mark.parametrize(
    ("cell", "text"),
    [
        (Raw("01", "@"), "01"),  # text stays text
        (Raw(7, "00"), "07"),
        (Raw(7, "000;-000"), "007"),
        (Raw(7), "7"),
        (Raw(7.0), "7"),
        (Raw(12, "00"), "12"),
        (Raw(7.5), "7.5"),
        (Raw(0, "00"), "00"),
        (Raw(0), "0"),
        (Raw(True), "TRUE"),
        (Raw(False), "FALSE"),
        *((Raw(name), name) for name in ("NA", "None", "TRUE", "1E5", "Null", "nan", "True", "N/A")),
        (Raw(1e15), "1e+15"),
    ],
)
def test_text(cell: Raw, text: str) -> None:
    assert cells.text(cell) == text


@pytest.mark.parametrize(
    ("value", "form", "typed"),
    [
        (datetime(2026, 5, 3), "d-mmm", "3-5"),  # 3 May, where the day comes first
        (datetime(2026, 3, 5), "d-mmm", "3-5"),  # 5 March, where the month comes first
        (datetime(2026, 12, 10), "d-mmm", "10-12"),
        (datetime(2026, 3, 5), "m/d/yyyy", "3-5"),
        (datetime(2026, 5, 3), "dd/mm/yyyy", "3-5"),
        (datetime(2026, 5, 3), "yyyy-mm-dd", "5-3"),
        (datetime(2024, 6, 1), "mmm-yy", "6-24"),
    ],
)
def test_what_was_typed_before_the_spreadsheet_made_it_a_date(value: datetime, form: str, typed: str) -> None:
    assert cells.text(Raw(value, form)) == Unclear(typed)


@pytest.mark.parametrize(
    ("raw", "text", "changed"),
    [
        ("  Ana ", "Ana", False),  # outer plain spaces go without a word
        ("Ana\u00a0Novak", "Ana Novak", True),
        ("Ana  Novak", "Ana Novak", True),
        ("\u200bAna\ufeff", "Ana", True),
        ("Ana_x000D_", "Ana", True),
        ("Ana\tNovak\r\n", "Ana Novak", True),
        ("A\u0001na\u007f", "Ana", True),
        ("Jose\u0301", "José", True),
        ("José", "José", False),
        ("نمی\u200cخواهم", "نمی\u200cخواهم", False),  # a Persian word needs its joiner
        ("श्री\u200dमती", "श्री\u200dमती", False),
        ("A\u200dna", "Ana", True),
        ("👩\u200d🚀", "👩\u200d🚀", False),
        ("\u202eAna\u202c", "Ana", True),
        ("O’Brien-Łuczak", "O’Brien-Łuczak", False),
        ("snake_case_x", "snake_case_x", False),
    ],
)
def test_cleaning(raw: str, text: str, changed: bool) -> None:
    assert clean(raw) == (text, changed)


@pytest.mark.parametrize("first", ["=", "+", "-", "@", "\t", "\r", "\n"])
def test_first_characters_that_start_formulas_are_text(first: str) -> None:
    """The list is that of OWASP, CSV Injection. Tab and line ends are spaces, and go as spaces do."""
    assert cells.text(Raw(f"{first}Ana")) == f"{first}Ana".strip()


def test_hidden_characters_are_shown() -> None:
    assert shown("A\u200bna\t") == "A·na·"


@pytest.mark.parametrize(
    ("value", "number"),
    [(7, 7), (7.25, 7.25), ("7", 7), ("7.25", 7.25), ("7,25", 7.25), (" 1,200 ", 1200), ("-3", -3), ("95 %", 95),
     ("1 200", 1200), ("1.200,5", 1200.5), ("1,200.5", 1200.5), ("0,125", 0.125)],
)  # fmt: skip
def test_number(value: object, number: float) -> None:
    assert cells.number(Raw(value)) == number


def test_number_formatted_as_percent() -> None:
    assert cells.number(Raw(0.95, "0%")) == 95


def test_number_in_range() -> None:
    assert cells.number(Raw(-270), ("-270-270",)) == -270
    assert cells.number(Raw(271), ("-270-270",)) == UNCLEAR
    assert cells.count(Raw("12"), ("1-12",)) == 12
    assert cells.count(Raw("0"), ("1-12",)) == UNCLEAR


@pytest.mark.parametrize(
    "value", ["two", "", "1/2", True, datetime(2026, 1, 1), float("nan"), float("inf"), "1e5", "7 8x"]
)
def test_no_number(value: object) -> None:
    assert cells.number(Raw(value)) == UNCLEAR


@pytest.mark.parametrize("value", [1.5, "1.5", -1, "-1", "x", True])
def test_no_count(value: object) -> None:
    assert cells.count(Raw(value)) == UNCLEAR


@pytest.mark.parametrize(
    ("value", "form", "mm"),
    [
        (10.5, "General", 266.7),
        ('10 1/2"', "@", 266.7),
        ("27 cm", "@", 270),
        (27, '0" cm"', 270),
        (27, "0.0 \\c\\m", 685.8),
        ("10½ in", "@", 266.7),
        ("3 ft 6 in", "@", 1066.8),
    ],
)
def test_length(value: object, form: str, mm: float) -> None:
    assert cells.length(Raw(value, form), "in") == mm


def test_length_of_nothing_or_less() -> None:
    assert cells.length(Raw(0), "in", ("from 0",)) == 0
    assert cells.length(Raw(0), "in") == cells.length(Raw(-1), "in", ("from 0",)) == UNCLEAR
    for left in (-1, "-1", "−1 in"):
        assert cells.length(Raw(left), "in", ("left or right",)) == -25.4
    assert cells.length(Raw("wide"), "in") == cells.length(Raw(1e300), "in") == UNCLEAR
    assert cells.length(Raw(datetime(2026, 1, 1)), "in") == UNCLEAR


def test_temperature() -> None:
    # NIST SP 811: 330 °F is 165.56 °C
    assert cells.temperature(Raw(330), "°F") == pytest.approx(165.5556, abs=1e-4)
    assert cells.temperature(Raw("165 °C"), "°F") == 165
    assert cells.temperature(Raw(165, '0" °C"'), "°F") == 165
    assert cells.temperature(Raw("hot"), "°F") == cells.temperature(Raw(5000), "°F") == UNCLEAR


def test_seconds() -> None:
    times = {"5": 5, "5 s": 5, "30 sec": 30, "1.5 min": 90, "0": 0}
    assert {typed: cells.seconds(Raw(typed)) for typed in times} == times
    assert cells.seconds(Raw("a while")) == cells.seconds(Raw("3 h")) == UNCLEAR


def test_yes_no() -> None:
    assert {cells.yes_no(Raw(each)) for each in ("yes", "Y", "TRUE", True, 1, "x")} == {True}
    assert {cells.yes_no(Raw(each)) for each in ("no", "N", False, 0, "false")} == {False}
    assert cells.yes_no(Raw("maybe")) == UNCLEAR


@pytest.mark.parametrize(
    ("typed", "choices", "found"),
    [
        ("Redo Film", ("ok", "redo film"), "redo film"),
        ("redo-film", ("ok", "redo film"), "redo film"),
        ("canceled", ("done", "cancelled"), "cancelled"),
        ("V-neck", ("crew", "V"), "V"),
        ("crewneck", ("crew", "V"), "crew"),
        ("inches", ("in", "cm"), "in"),
        ("f", ("°F", "°C"), "°F"),
        ("Doen", ("done", "cancelled"), Unclear("done")),
        ("ok but crooked", ("ok", "redo film"), Unclear("ok")),
        ("ok?", ("ok", "redo film"), Unclear("ok")),
        ("later", ("done", "cancelled"), Unclear("")),
    ],
)
def test_choice(typed: str, choices: tuple[str, ...], found: object) -> None:
    assert cells.choice(Raw(typed), choices) == found


@pytest.mark.parametrize(
    ("value", "amount"),
    [
        (4.2, "4.2"),
        (0.1 + 0.2, "0.3"),  # a float's noise goes
        ("4.20", "4.20"),
        ("$4.20", "4.20"),
        ("$ 4.20", "4.20"),
        ("4,20 €", "4.20"),
        ("1 200 CHF", "1200"),
        ("1,200.50", "1200.50"),
        ("1.200,50", "1200.50"),
        ("Fr. 12", "12"),
        (15, "15"),
        ("0.00005", "0.0000"),
    ],
)
def test_money(value: object, amount: str) -> None:
    assert cells.money(Raw(value)) == Decimal(amount)


@pytest.mark.parametrize("value", ["free", "-4", -4, True, "4.20 each", "1e3", "12.5.1", datetime(2026, 1, 1)])
def test_no_money(value: object) -> None:
    assert cells.money(Raw(value)) == UNCLEAR


def test_margin_or_fixed_price() -> None:
    margin = Margin(Decimal("0.3"), None)
    assert cells.margin(Raw("30 %")) == cells.margin(Raw("30%")) == cells.margin(Raw(0.3, "0%")) == margin
    assert cells.margin(Raw("15.00")) == cells.margin(Raw(15)) == Margin(None, Decimal(15))
    assert cells.margin(Raw(0)) == cells.margin(Raw("0 %")) == Margin(Decimal(0), None)
    assert cells.margin(Raw("some")) == cells.margin(Raw(True)) == UNCLEAR


def test_paid() -> None:
    assert cells.paid(Raw("yes")) == cells.paid(Raw("Paid")) == cells.paid(Raw(True)) == "yes"
    assert cells.paid(Raw(15)) == cells.paid(Raw("$15.00")) == Decimal(15)
    assert cells.paid(Raw(1)) == Decimal(1)
    assert cells.paid(Raw("no")) is None
    assert cells.paid(Raw("half")) == UNCLEAR
    assert cells.paid(Raw("later")) is None


def test_dots() -> None:
    assert [cells.dots(Raw(each)) for each in (1, "2", "3 dots", "••")] == [1, 2, 3, 2]
    assert cells.dots(Raw("Not checked")) is None
    assert cells.dots(Raw(4)) == cells.dots(Raw("warm")) == UNCLEAR


READERS: dict[str, Callable[[Raw], object]] = {
    "text": cells.text,
    "number": cells.number,
    "count": cells.count,
    "length": lambda cell: cells.length(cell, "in"),
    "temperature": lambda cell: cells.temperature(cell, "°F"),
    "seconds": cells.seconds,
    "yes/no": cells.yes_no,
    "choice": lambda cell: cells.choice(cell, ("done", "cancelled")),
    "money": cells.money,
    "margin": cells.margin,
    "paid": cells.paid,
    "dots": cells.dots,
    "time": cells.clock,
    "list": cell_lists.names,
    "pieces done": cell_lists.pieces_done,
    "prices": cell_lists.prices,
    "rolls": cell_lists.rolls,
    "pieces": lambda cell: cell_lists.pieces(cell, "in"),
    "stock": cell_lists.stock,
    "features": lambda cell: features(cell, "in"),
}
_LIKELY = st.text(alphabet="0123456789.,:;=x×/%$ -+'\"°FCinydtm•", max_size=20)
_VALUES = st.one_of(
    _LIKELY, st.text(max_size=30), st.integers(), st.floats(), st.booleans(), st.none(), st.datetimes(), st.dates(),
    st.times(), st.timedeltas(),
)  # fmt: skip


@pytest.mark.parametrize("kind", READERS)
@settings(max_examples=150, deadline=None)
@given(value=_VALUES, form=st.sampled_from(["General", "00", "0%", '0" in"', "d-mmm", "@", ""]))
def test_any_cell_is_read_or_unclear(kind: str, value: object, form: str) -> None:
    READERS[kind](Raw(value, form))  # does not raise


@settings(max_examples=200)
@given(st.text(max_size=40))
def test_cleaning_twice_changes_nothing(raw: str) -> None:
    once = clean(raw).text
    assert clean(once) == (once, False)


def test_date_alone() -> None:
    assert cells.shown_value(Raw(date(2026, 6, 14))) == "14-Jun-2026"
    assert cells.shown_value(Raw(datetime(2026, 6, 14, 9, 30))) == "14-Jun-2026 09:30"
