"""Colors of a drawing that get one film: clear of one another, over one another, and with others between them."""

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.parts.drawn_shapes import box, disk, hollow, letters, path, svg
from tests.tracing.pictures import picture_of
from xlbatch.plan import Plan

SVG = '<svg xmlns="http://www.w3.org/2000/svg" width="10in" height="10in" viewBox="0 0 400 400">{}</svg>'
HILL = '<path d="M20 260L200 60L380 260Z" fill="#1f4630"/>'
SUN = '<circle cx="330" cy="60" r="40" fill="#f0b429"/>'
LAKE = '<path d="M60 300H340V380H60Z" fill="#1f4fa3"/>'
TENT = '<path d="M150 240L200 150L250 240Z" fill="#ffffff"/>'
DOOR = '<path d="M190 230L200 200L210 230Z" fill="#17233f"/>'
DESIGNS = [["Design", "Decal", "What", "Artwork", "Film", "Width"]]

PlanOfDrawing = Callable[..., Plan]


@pytest.fixture
def plan_of_drawing(plan_of: Callable[..., Plan], tmp_path: Path) -> PlanOfDrawing:
    """The plan of a drawing for two, from the films named: a film for each named, the first on the design."""

    def make(body: str, *films: str) -> Plan:
        (tmp_path / "camp.svg").write_text(SVG.format(body), encoding="utf-8")
        rows = [["Camp", "Art", "artwork", "camp.svg", films[0] if len(films) == 1 else "", "10 in"]]
        further = [["Tag", "Tag", "text", "", film, "2 in"] for film in films]
        roster = [["Who", "Size", "Design"], ["Ana", "M", "Camp"], ["Tiri", "M", "Camp"]]
        return plan_of(
            roster, Designs=DESIGNS + rows + further, Job=[["Setting", "Value"], ["Mirror the cut files", "no"]]
        )

    return make


def layers(plan: Plan) -> dict[str, int]:
    return {spec.artwork_color: spec.layer for spec in plan.job.designs if spec.artwork}


def asked(plan: Plan) -> list[str]:
    return [problem.wrong for problem in plan.problems if problem.code == "colors-chosen"]


def test_colors_of_one_film_clear_of_one_another_are_one_piece(plan_of_drawing: PlanOfDrawing) -> None:
    plan = plan_of_drawing(HILL + SUN + LAKE, "Black smooth")
    assert set(layers(plan).values()) == {1}
    assert len(plan.decals) == 2  # a piece a garment
    assert {decal.outline.contours for decal in plan.decals if decal.outline} == {3}


def test_a_color_on_another_of_the_same_film_is_left_open_and_asked(plan_of_drawing: PlanOfDrawing) -> None:
    """Pressed on its own film it would not be seen."""
    plan = plan_of_drawing(HILL + SUN + TENT, "Black smooth")
    assert list(layers(plan)) == ["forest", "gold"]
    assert {decal.outline.contours for decal in plan.decals if decal.outline} == {3}  # hill, its opening, sun
    assert "white lies on forest, which is Black smooth too, and is left open there" in asked(plan)[0]
    assert "artwork-color-unused" in {problem.code for problem in plan.problems}


def test_a_color_over_another_film_has_a_layer_of_its_own(plan_of_drawing: PlanOfDrawing) -> None:
    """The door lies on the white tent, and would be covered in the layer of the hill."""
    plan = plan_of_drawing(HILL + TENT + DOOR + LAKE, "Black smooth", "White smooth", "Royal smooth")
    films = {spec.artwork_color: (spec.film, spec.layer) for spec in plan.job.designs if spec.artwork}
    assert films == {
        "forest": ("Black smooth", 1), "white": ("White smooth", 2), "navy": ("Black smooth", 3),
        "royal": ("Royal smooth", 4),
    }  # fmt: skip


def test_sharing_a_layer_leaves_what_lies_over_it_whole(plan_of_drawing: PlanOfDrawing) -> None:
    """The lake shares the hill's layer and lies clear of the tent: the hill is not cut open under the tent for it."""
    lake = LAKE.replace("#1f4fa3", "#1a1a1a")
    plan = plan_of_drawing(HILL + TENT + lake, "Black smooth", "White smooth")
    assert list(layers(plan).values()) == [1, 2, 1]
    black = [decal for decal in plan.decals if decal.film == "Black smooth"]
    assert [decal.outline.contours for decal in black if decal.outline] == [2, 2]


def test_background_seen_through_letters_in_a_ring_is_no_color(plan_of: Callable[..., Plan], tmp_path: Path) -> None:
    """The white in the bellies of O is of the paper around, not ink."""
    word = "".join(path(shape, "#6b1f2e") for shape in letters("Archivo Black", "VOROS", 50, 240, 200, 220))
    ring = path(hollow(disk(200, 200, 170), disk(200, 200, 155)), "#6b1f2e")
    paper = path(box(0, 0, 400, 400), "#ffffff")
    picture_of(svg(paper + ring + word)).convert("RGB").save(tmp_path / "camp.png")
    designs = [["Design", "Decal", "What", "Artwork"], ["Camp", "Art", "artwork", "camp.png"]]
    roster = [["Who", "Size"], ["Ana", "M"]]
    plan = plan_of(roster, Designs=designs)
    assert {decal.film for decal in plan.decals} == {"Maroon smooth"}
    assert {part.color for part in plan.job.drawing_parts if not part.use} == {"#ffffff"}
    (paper_in_ring,) = (part.part for part in plan.job.drawing_parts if not part.use)
    wanted = [["Artwork", "Part", "Use"], ["camp.png", paper_in_ring, "yes"]]
    plan = plan_of(roster, Designs=designs, **{"Drawing parts": wanted})
    assert {decal.film for decal in plan.decals} == {"Maroon smooth", "White smooth"}  # a person may want it
