"""Pieces larger than the plate: drawn once a size above the cards, with where the plate comes down."""

from collections.abc import Callable
from pathlib import Path

from tests.pages.cells import texts_of
from xlbatch.pages.write_pages import write_pages
from xlbatch.plan import Plan

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
    assert "no. 1, 2: plate's middle from the piece's: 1)" in drawn[0]


def test_pieces_the_plate_covers_are_not_drawn(plan_of: Callable[..., Plan], tmp_path: Path) -> None:
    write_pages(tmp_path / "pages.xlsx", plan_of([["Who", "Size"], ["Ana", "L"]]), "plan.xlsx")
    assert not any("plate's middle" in text for text in texts_of(tmp_path / "pages.xlsx", "Press cards"))
