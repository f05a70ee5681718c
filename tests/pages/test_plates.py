"""Pieces larger than the plate: drawn once a size above the cards, with where the plate comes down."""

import math
import re
from collections.abc import Callable
from fractions import Fraction
from itertools import combinations
from pathlib import Path

import pytest

from tests.pages.cells import texts_of
from xlbatch.pages import press_settings
from xlbatch.pages.write_pages import write_pages
from xlbatch.pictures import plate_picture
from xlbatch.plan import Plan
from xlbatch.sheets.how import sections_text

DESIGNS = [
    ["Design", "Decal", "What", "Text", "Film", "Position", "Width", "Height", "Widest", "Scale with size"],
    ["Wide", "Banner", "text", "MARSHLAND RUN", "Black smooth", "full front", None, "1 in", "11 in", "no"],
]
PRESS = [
    ["Press", "Kind", "Plate width (in)", "Plate depth (in)", "Overlap (in)"],
    ["Mini", "hand-held plate", 6, 6, 1],
]


def test_a_large_piece_is_drawn_once_a_size(plan_of: Callable[..., Plan], tmp_path: Path) -> None:
    roster = [["Who", "Size", "Design"], ["Ana", "L", "Wide"], ["Ivo", "L", "Wide"]]
    plan = plan_of(roster, Designs=DESIGNS, Press=PRESS)
    assert all(step.place.presses == 2 for step in plan.pressing.steps)
    write_pages(tmp_path / "pages.xlsx", plan, "plan.xlsx")
    drawn = [text for text in texts_of(tmp_path / "pages.xlsx", "Press cards") if "plate's middle" in text]
    assert len(drawn) == 1
    assert "no. 1, 2: plate's middle from the piece's: 2 across: first " in drawn[0]
    assert "in left, then " in drawn[0]


def test_many_sections_are_said_as_a_grid(plan_of: Callable[..., Plan]) -> None:
    """11 in by 8 in under a plate of 3 in: every place of it is told from the first one and the steps."""
    designs = [DESIGNS[0], ["Wide", "Block", "text", "H", "Black smooth", "full front", None, "8 in", "11 in", "no"]]
    press = [PRESS[0], ["Mini", "hand-held plate", 3, 3, 1]]
    plan = plan_of([["Who", "Size", "Design"], ["Ana", "L", "Wide"]], Designs=designs, Press=press)
    place = plan.pressing.steps[0].place
    assert place.presses > 9
    text = sections_text(place, plan.job.settings)
    counts = [int(count) for count in re.findall(r"(\d+) (?:across|down):", text)]
    assert math.prod(counts) == place.presses
    steps = re.findall(r"first (\S+(?: \S+)?) in (?:left|up), then each (\S+(?: \S+)?) in (?:right|down)", text)
    assert len(steps) == 2
    for count, (first, step) in zip(counts, steps, strict=True):
        assert sum(map(Fraction, first.split())) * 2 == (count - 1) * sum(map(Fraction, step.split()))


def test_numbers_of_plates_that_lie_almost_on_one_another_can_be_read(
    plan_of: Callable[..., Plan], monkeypatch: pytest.MonkeyPatch
) -> None:
    """9 1/2 in by 9 1/2 in under a plate of 9 in: four times, 1/2 in apart; no number may cover another."""
    designs = [DESIGNS[0], ["Wide", "Block", "artwork", None, "Black smooth", "full front", "9 1/2 in", "9 1/2 in"]]
    press = [PRESS[0], ["Small", "hand-held plate", 9, 9, 1]]
    plan = plan_of([["Who", "Size", "Design"], ["Ana", "M", "Wide"]], Designs=designs, Press=press)
    monkeypatch.setattr(plate_picture, "drawn", lambda svg, _: svg)
    svg = str(plate_picture.plate_picture(plan.places[0], plan.job.presses[0], 150, 78))
    rings = [tuple(map(float, ring)) for ring in re.findall(r'cx="(\S+)" cy="(\S+)" r="(\S+)"', svg)]
    assert len(rings) == plan.places[0].presses == 4
    for (x, y, radius), (u, v, other) in combinations(rings, 2):
        assert math.dist((x, y), (u, v)) >= radius + other - 0.02
        assert radius > 5  # points


def test_no_size_is_dropped_without_a_word(
    plan_of: Callable[..., Plan], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(press_settings, "MOST_PLATES", 2)
    names = [f"{'W' * count} {'M' * count}" for count in range(1, 6)]
    press = [PRESS[0], ["Mini", "hand-held plate", 1.5, 3, 0.25]]
    plan = plan_of([["Who", "Size"], *([name, "L"] for name in names)], Press=press)
    write_pages(tmp_path / "pages.xlsx", plan, "plan.xlsx")
    texts = texts_of(tmp_path / "pages.xlsx", "Press cards")
    sizes = {sections_text(step.place, plan.job.settings) for step in plan.pressing.steps if step.place.presses > 1}
    drawn = [text for text in texts if "plate's middle" in text]
    assert len(sizes) > len(drawn) > 0
    assert any(f"{len(sizes) - 2} more sizes: How in the plan's Press log" in text for text in texts)


def test_pieces_the_plate_covers_are_not_drawn(plan_of: Callable[..., Plan], tmp_path: Path) -> None:
    write_pages(tmp_path / "pages.xlsx", plan_of([["Who", "Size"], ["Ana", "L"]]), "plan.xlsx")
    assert not any("plate's middle" in text for text in texts_of(tmp_path / "pages.xlsx", "Press cards"))
