"""What is written on Drawing parts, from the cells to what is cut and asked."""

from collections.abc import Callable
from pathlib import Path

import pytest

from xlbatch.agreement import disagreements
from xlbatch.cutfiles.run_svg import cut_files
from xlbatch.plan import Plan

SVG = '<svg xmlns="http://www.w3.org/2000/svg" width="10in" height="10in" viewBox="{}">{}</svg>'
HILL = '<path d="M20 260L200 60L380 260Z" fill="#1f4630"/>'
SUN = '<circle cx="330" cy="60" r="40" fill="#f0b429"/>'
WORD = '<text x="60" y="340" font-size="70" font-family="Anton" fill="#1f4630">BROMBEL</text>'
YEAR = '<text x="60" y="390" font-size="30" font-family="Anton" fill="#1f4630">CAMP 2031</text>'
CAMP = HILL + SUN + WORD + YEAR
ROSTER = [["Who", "Group", "Size"], ["Ana", "Novak", "M"], ["Tiri", "Abano", "M"]]
DESIGNS = [["Design", "Decal", "What", "Artwork", "Width"], ["Camp", "Art", "artwork", "camp.svg", "10 in"]]
PARTS = ["Artwork", "Part", "Color", "Text", "Width (in)", "Height (in)", "Place", "Use", "Replace by", "Join", "Film"]

PlanWith = Callable[..., Plan]


@pytest.fixture
def plan_with(plan_of: Callable[..., Plan], tmp_path: Path) -> PlanWith:
    """The plan of a job with a drawing, and with cells of Drawing parts by heading."""

    def make(*lines: dict[str, str], body: str = CAMP, box: str = "0 0 400 400") -> Plan:
        (tmp_path / "camp.svg").write_text(SVG.format(box, body), encoding="utf-8")
        rows = [[line.get(heading, "") for heading in PARTS] for line in lines]
        return plan_of(ROSTER, Designs=DESIGNS, **{"Drawing parts": [PARTS, *rows]})

    return make


def line(part: str, artwork: str = "camp.svg", **cells: str) -> dict[str, str]:
    return {"Artwork": artwork, "Part": part} | {name.replace("_", " "): cell for name, cell in cells.items()}


def told(plan: Plan, *but: str) -> list[tuple[str, str, str]]:
    """The code, cell and suggestion of each problem that asks something, but for what every such job has."""
    usual = {"colors-chosen", "stroke-thin", "gap-thin", "dot-small", "design-only", *but}
    asked = [problem for problem in plan.problems if problem.level != "note" and problem.code not in usual]
    return [(each.code, f"{each.where.sheet} {each.where.cell}", each.suggestion) for each in asked]


def texts(plan: Plan) -> list[str]:
    return [decal.text for decal in plan.decals if decal.text]


def test_words_cut_alike_on_several_families_are_asked_once_and_first(plan_with: PlanWith) -> None:
    plan = plan_with()
    assert told(plan) == [("sample-alike", "Designs D2", "")]
    assert plan.problems[0].wrong.startswith(
        "Parts 1 (“BROMBEL”) and 2 (“CAMP 2031”) of camp.svg are cut alike on all 2"
    )
    assert texts(plan) == []


def test_white_paper_under_a_drawing_is_left_out_and_told_as_its_background(plan_with: PlanWith) -> None:
    plan = plan_with(body='<rect width="400" height="400" fill="#ffffff"/>' + HILL + SUN)
    assert told(plan) == [("background-left-out", "Designs D2", "")]
    assert {decal.film for decal in plan.decals} == {"Forest smooth", "Gold smooth"}


def test_each_family_gets_its_own_word_at_the_drawings_size(plan_with: PlanWith) -> None:
    plan = plan_with(line("1", Replace_by="THE {GROUP}S"))
    assert (told(plan), texts(plan)) == ([], ["THE NOVAKS", "THE ABANOS"])
    assert {round(decal.width, 1) for decal in plan.decals if decal.text} == {254.0}  # whatever the name's length


@pytest.mark.parametrize(
    ("cells", "problem"),
    [
        ({"Replace_by": "{Familly}"}, ("braces-unknown", "Drawing parts I2", "{Group}")),
        ({"Film": "Purple smoth"}, ("film-unknown", "Drawing parts K2", "Purple smooth")),
        ({"Join": "99"}, ("part-unknown", "Drawing parts J2", "")),
        ({"Join": "1"}, ("part-unknown", "Drawing parts J2", "")),
        ({"Use": "maybe"}, ("value-unclear", "Drawing parts H2", "")),
    ],
)
def test_what_cannot_be_done_holds_back_who_wears_the_drawing(
    cells: dict[str, str], problem: tuple[str, str, str], plan_with: PlanWith
) -> None:
    plan = plan_with(line("1", **cells))
    assert told(plan, "sample-alike") == [problem]
    assert plan.garments == ()


def test_other_words_for_a_column_are_understood(plan_with: PlanWith) -> None:
    assert texts(plan_with(line("1", Replace_by="{Family}"))) == ["Novak", "Abano"]


def test_a_dash_leaves_the_room_empty(plan_with: PlanWith) -> None:
    plan = plan_with(line("1", Replace_by="-"))
    assert (told(plan), texts(plan)) == ([], [])


def test_a_line_of_a_drawing_that_no_design_has_is_told(plan_with: PlanWith) -> None:
    plan = plan_with(line("1", "cmap.svg", Replace_by="{Group}"))
    assert told(plan, "sample-alike") == [("part-of-none", "Drawing parts A2", "camp.svg")]


def test_a_part_left_out_and_one_with_a_film_of_its_own(plan_with: PlanWith) -> None:
    plan = plan_with(line("4", Use="no"), line("3", Film="Red smooth"))
    assert told(plan) == []
    assert {decal.film for decal in plan.decals} == {"Forest smooth", "Red smooth"}


def test_a_drawing_saved_anew_finds_its_lines(plan_with: PlanWith) -> None:
    """On another page, its shapes in another order, one a little larger, one new."""
    first = plan_with(line("1", Replace_by="THE {GROUP}S"))
    shown = {part.text: part for part in first.job.drawing_parts}["BROMBEL"]
    unit = 1 / 25.4
    seen = line(
        "1", Color=shown.color, Text=shown.text, Place=shown.place, Replace_by="THE {GROUP}S",
        **{"Width (in)": f"{(shown.width or 0) * unit:.2f}", "Height (in)": f"{(shown.height or 0) * unit:.2f}"},
    )  # fmt: skip
    moon = '<circle cx="60" cy="60" r="20" fill="#1f4630"/>'
    body = moon + YEAR.replace("CAMP", "LAKE").replace('y="390"', 'y="50" ') + WORD + SUN + HILL.replace("380", "376")
    second = plan_with(seen, body=body, box="-30 -30 460 460")
    assert texts(second) == ["THE NOVAKS", "THE ABANOS"]
    assert [each.part for each in second.job.drawing_parts if each.replace_by] == ["2"]


def test_a_part_that_is_gone_is_told_where_something_was_typed(plan_with: PlanWith) -> None:
    lost = line("1", Color="#c3202f", Text="WILLOW", Replace_by="{Group}")
    plan = plan_with(lost, body=HILL + SUN)
    assert told(plan) == [("part-lost", "Drawing parts B2", "")]
    assert plan.garments == ()


def test_a_color_of_which_nothing_is_left_is_not_cut(plan_with: PlanWith) -> None:
    """The word alone is gold: a family whose room is left empty has one piece less, and the plan agrees with itself."""
    gold = WORD.replace("#1f4630", "#f0b429").replace("BROMBEL", "{Group}")
    plan = plan_with(line("1", Replace_by="-"), body=HILL + gold)
    assert [decal.film for decal in plan.decals] == ["Forest smooth"] * 2
    assert disagreements(plan, [file.name for file in cut_files(plan.layout, plan.job.settings)]) == ()


def test_a_border_is_made_of_the_lowest_color_alone(plan_of: Callable[..., Plan], tmp_path: Path) -> None:
    """Where a drawing's colors become a piece each, the one border lies under the lowest."""
    (tmp_path / "camp.svg").write_text(SVG.format("0 0 400 400", HILL + SUN), encoding="utf-8")
    designs = [
        ["Design", "Decal", "What", "Artwork", "Width", "Outline film", "Outline width"],
        ["Camp", "Art", "artwork", "camp.svg", "10 in", "White smooth", "1/8 in"],
    ]
    specs = [spec for spec in plan_of(ROSTER, Designs=designs).job.designs if spec.artwork]
    lowest = min(specs, key=lambda spec: spec.layer)
    assert len(specs) == 2
    assert {spec.decal: (spec.outline_film, spec.outline_width) for spec in specs} == {
        spec.decal: ("White smooth", pytest.approx(25.4 / 8)) if spec is lowest else ("", None) for spec in specs
    }
