"""Layers laid on the lowest piece by its edges alone give the drawing again."""

from collections.abc import Callable
from pathlib import Path

import pytest
from openpyxl import load_workbook

from xlbatch.plan import Plan
from xlbatch.sheets.write import write_plan

INCH = 25.4
NEAR = 0.5  # mm
# three colors of one drawing (200 x 100 units), each with the lower-left corner of its ink's box, y downward
SHAPES = {"#1f3a93": (0, 90, 200, 60), "#c0392b": (30, 70, 75, 35), "#f0b429": (110, 60, 40, 50)}
PIECES = ("Sea", "Boat", "Sun")


def assembled(plan: Plan, path: Path) -> dict[str, tuple[float, float]]:
    """The top-left corner of each layer from the lowest one's, in mm, from the sheet Placement alone."""
    write_plan(path, plan)
    rows = list(load_workbook(path)["Placement"].iter_rows(values_only=True))
    at = next(at for at, row in enumerate(rows) if "Decal" in row)
    found = {}
    for row in rows[at + 1 :]:
        line = dict(zip(map(str, rows[at]), row, strict=True))
        if line["Piece"] and line["On top of"]:
            assert line["Below collar seam (in)"] is None
            assert line["From center (in)"] is None
            top, left = (float(str(line[f"From its {side} (in)"])) * INCH for side in ("top", "left"))
            found[str(line["Piece"])] = top, left
    return found


@pytest.mark.parametrize("position", ["full front", "full back", "left sleeve", "above the hem"])
def test_three_layers_lie_as_drawn(plan_of: Callable[..., Plan], tmp_path: Path, position: str) -> None:
    shapes = "".join(
        f'<rect x="{x}" y="{bottom - high}" width="{wide}" height="{high}" fill="{color}"/>'
        for color, (x, bottom, wide, high) in SHAPES.items()
    )
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 200 100">{shapes}</svg>'
    (tmp_path / "sea.svg").write_text(svg, encoding="utf-8")
    width = 80.0 if "sleeve" in position else 237.7
    films = ("Navy smooth", "Red smooth", "Gold glitter")
    designs = [
        [
            "Design",
            "Decal",
            "What",
            "Artwork",
            "Artwork color",
            "Film",
            "Layer",
            "Position",
            "Width",
            "Scale with size",
        ],
        *(
            ["Trip", piece, "artwork", "sea.svg", color, film, layer, position, f"{width} mm", "no"]
            for layer, (piece, color, film) in enumerate(zip(PIECES, SHAPES, films, strict=True), 1)
        ),
    ]
    plan = plan_of([["Who", "Size", "Design"], ["Ana", "M", "Trip"]], Designs=designs)
    scale = width / 200
    corners = {piece: (bottom - high, x) for piece, (x, bottom, _, high) in zip(PIECES, SHAPES.values(), strict=True)}
    top, left = corners["Sea"]
    found = assembled(plan, tmp_path / "plan.xlsx")
    assert list(found) == ["Boat", "Sun"]
    for piece, corner in found.items():
        drawn = (corners[piece][0] - top) * scale, (corners[piece][1] - left) * scale
        assert corner == pytest.approx(drawn, abs=NEAR)
