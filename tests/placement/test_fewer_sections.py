"""Slightly smaller artwork that halves how often the plate is set down is told, and true."""

from collections.abc import Callable, Sequence

import pytest

from xlbatch.plan import Plan
from xlbatch.problems import Problem

DESIGN = ["Design", "Decal", "What", "Film", "Position", "Width", "Height"]
SMALL: Sequence[Sequence[object]] = [
    ["Press", "Kind", "Plate width", "Plate depth", "Overlap"],
    ["Small", "hand-held plate", "9 in", "9 in", "1 in"],
]


def noted(plan_of: Callable[..., Plan], width: str, height: str, *sizes: str) -> list[Problem]:
    designs = [DESIGN, ["Trip", "Badge", "artwork", "Black smooth", "full front", width, height]]
    roster = [["Who", "Size"], *([f"Ana {size}", size] for size in sizes or ("M",))]
    plan = plan_of(roster, Designs=designs, Press=SMALL)
    return [found for found in plan.problems if found.code == "sections-fewer"]


def test_9_1_2_in_on_a_9_in_plate_takes_four_and_9_in_two(plan_of: Callable[..., Plan]) -> None:
    (found,) = noted(plan_of, "9 1/2 in", "12 in")
    assert found.level == "note"
    assert "set down 4 times; a little smaller, 2: 9 in wide on M, now 9 1/2 in" in found.wrong
    assert noted(plan_of, "9 in", "12 in") == []


def test_what_would_have_to_be_much_smaller_is_not_told(plan_of: Callable[..., Plan]) -> None:
    assert noted(plan_of, "10 1/2 in", "12 in") == []


@pytest.mark.parametrize("width", ["9 1/4 in", "9 3/4 in"])
def test_one_note_for_all_sizes(plan_of: Callable[..., Plan], width: str) -> None:
    (found,) = noted(plan_of, width, "8 in", "M", "S", "M", "M")
    assert len(found.rows) >= 3
