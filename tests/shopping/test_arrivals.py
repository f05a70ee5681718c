"""What to look at on the first blank of each garment."""

from collections.abc import Callable

from xlbatch.plan import Plan
from xlbatch.shopping.arrivals import first_pieces

GARMENTS: list[list[object]] = [
    ["Garment", "Size", "Iron dots", "Chest width"],
    ["Crew-neck tee", "M", 3, "20 in"],
    ["Crew-neck tee", "L", 3, "22 in"],
]
ROSTER: list[list[object]] = [
    ["Who", "Garment", "Size", "Color"], ["Ana", "Crew-neck tee", "L", "navy"], ["Bo", "Crew-neck tee", "M", "white"],
    ["Cy", "V-neck tee", "M", "white"],
]  # fmt: skip


def test_label_color_dots_and_chest(plan_of: Callable[..., Plan]) -> None:
    tee, v_neck = first_pieces(plan_of(ROSTER, Garments=GARMENTS).garments)
    assert tee.text("in") == (
        "Crew-neck tee: size label; navy, white; care label 3 dots; chest from armpit to armpit M 20 in, L 22 in"
    )
    assert "V-neck tee: size label; white; dots on the care label: write how many; chest" in v_neck.text("in")


def test_dots_typed_after_looking_change_the_plan(plan_of: Callable[..., Plan]) -> None:
    """One dot, 110 °C by ISO 3758:2012, stops a film pressed at 330 °F."""
    one = [GARMENTS[0], *([*row[:2], 1, row[3]] for row in GARMENTS[1:])]
    assert "heat-over-limit" in {found.code for found in plan_of(ROSTER, Garments=one).problems}


def test_what_is_too_wide_for_a_chest_measured_otherwise_is_smaller(plan_of: Callable[..., Plan]) -> None:
    slim = [*GARMENTS[:2], ["Crew-neck tee", "L", 3, "15 in"]]
    design = [["Design", "Decal", "What", "Film", "Position", "Height", "Widest"],
              ["Name", "Name", "print name", "Low heat", "full front", "5 in", "20 in"]]  # fmt: skip
    film = [["Film", "Kind", "Press temperature"], ["Low heat", "low-heat", "265 °F"]]
    sizes = [
        {decal.garment_no: decal.height for decal in plan_of(ROSTER, Garments=rows, Designs=design, Film=film).decals}
        for rows in (GARMENTS, slim)
    ]
    assert sizes[0][1] > sizes[1][1]
    assert sizes[0][2] == sizes[1][2]


def test_nothing_to_look_at_where_no_blank_is_needed(plan_of: Callable[..., Plan]) -> None:
    roster = [["Who", "Size", "Status"], ["Ana", "M", "redo film"]]
    assert first_pieces(plan_of(roster).garments) == ()
