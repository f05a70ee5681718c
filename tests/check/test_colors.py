"""Film on garment color: the contrast ratio of WCAG 2."""

from collections.abc import Callable

import pytest

from xlbatch.plan import Plan
from xlbatch.trade.contrast import LEAST, contrast, shade


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        ("#ffffff", "#000000", 21.0),
        ("#ffffff", "#767676", 4.54),
        ("#000080", "#000000", 1.31),  # navy on black
        ("#800000", "#000080", 1.46),  # maroon on navy
    ],
)
def test_published_ratios(one: str, other: str, ratio: float) -> None:
    """Source: W3C, WCAG 2.1, contrast ratio; the colors by their CSS values."""
    assert contrast(one, other) == pytest.approx(ratio, abs=0.005)
    assert contrast(other, one) == contrast(one, other)


def test_the_least_ratio_is_that_of_large_text() -> None:
    """Source: W3C, WCAG 2.1, 1.4.3: 3 to 1."""
    assert LEAST == 3


def test_shades_by_the_trades_names_then_by_those_of_css() -> None:
    assert shade("Navy Blue") == shade("navy")
    assert shade("Teal") == "#008080"
    assert shade("dark olive green") == "#556b2f"
    assert shade("heather dream") is None


def found(plan: Plan) -> list[tuple[str, tuple[int, ...]]]:
    return [(each.where.cell, each.rows) for each in plan.problems if each.code == "contrast-low"]


def test_dark_film_on_a_dark_garment_is_asked_once_for_a_color(plan_of: Callable[..., Plan]) -> None:
    rows = [
        ["Who", "Size", "Color"],
        ["Ana", "M", "navy"],
        ["Ivo", "L", "white"],
        ["Mei", "S", "navy"],
        ["Bo", "M", "moss"],
    ]
    assert found(plan_of(rows)) == [("C2", (2, 4))]


def test_an_outline_that_shows_is_enough(plan_of: Callable[..., Plan]) -> None:
    designs = [
        ["Design", "Decal", "What", "Film", "Position", "Height", "Outline film", "Outline width"],
        ["Name", "Name", "print name", "Black smooth", "full front", "2 in", "White smooth", "1/8 in"],
    ]
    assert found(plan_of([["Who", "Size", "Color"], ["Ana", "M", "navy"]], Designs=designs)) == []


def test_what_lies_on_another_film_is_not_seen_on_the_garment(plan_of: Callable[..., Plan]) -> None:
    designs = [
        ["Design", "Decal", "What", "Film", "Position", "Width", "Height", "Layer"],
        ["Name", "Field", "artwork", "White smooth", "full front", "8 in", "6 in", 1],
        ["Name", "Star", "artwork", "Black smooth", "full front", "3 in", "3 in", 2],
    ]
    assert found(plan_of([["Who", "Size", "Color"], ["Ana", "M", "navy"]], Designs=designs)) == []
