"""What holds a row back, and what is only asked."""

from collections.abc import Callable

from xlbatch.plan import Plan

HEAD = ["Who", "Garment", "Size", "Color", "Design", "Number"]


def found(plan: Plan, code: str) -> list[tuple[str, str, str]]:
    return [(each.where.cell, each.found, each.suggestion) for each in plan.problems if each.code == code]


def test_an_unknown_garment_is_held_back_with_the_likely_one(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of([HEAD, ["Ana", "Crew nek tee", "M"], ["Ivo", "V-neck tee", "L"]])
    assert found(plan, "garment-unknown") == [("B2", "Crew nek tee", "Crew-neck tee")]
    assert [garment.who for garment in plan.garments] == ["Ivo"]
    assert [row.who for row in plan.held] == ["Ana"]


def test_a_size_the_garment_is_not_made_in_gets_the_nearest(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of([HEAD, ["Ana", "Sweatshirt", "2T"], ["Ivo", "Sweatshirt", "L"]])
    assert found(plan, "size-not-made") == [("C2", "2T", "Youth XS")]


def test_an_unknown_design_color_and_a_missing_number(plan_of: Callable[..., Plan]) -> None:
    designs = [
        ["Design", "Decal", "What", "Film", "Position", "Height"],
        ["Squad", "Number", "number", "Black smooth", "back number", "6 in"],
    ]
    plan = plan_of(
        [HEAD, ["Ana", "", "M", "wite", "Name"], ["Ivo", "", "M", "", "Squud"], ["Mei", "", "M", "", "Squad", None]],
        Designs=designs,
    )
    assert found(plan, "color-not-made") == [("D2", "wite", "white")]
    assert found(plan, "design-unknown") == [("E3", "Squud", "Squad")]
    assert found(plan, "number-missing") == [("F4", "", "")]
    assert [garment.who for garment in plan.garments] == ["Ana"]


def test_an_unknown_film_holds_back_every_row_of_its_design(plan_of: Callable[..., Plan]) -> None:
    designs = [["Design", "Decal", "What", "Film"], ["Name", "Name", "print name", "Blak smooth"]]
    plan = plan_of([HEAD, ["Ana", "", "M"], ["Ivo", "", "L"]], Designs=designs)
    assert found(plan, "film-unknown") == [("D2", "Blak smooth", "Black smooth")]
    assert plan.garments == ()


def test_a_design_of_ones_own_that_nobody_wears_is_asked(plan_of: Callable[..., Plan]) -> None:
    """Somebody added a drawing below the built-in rows of a blank workbook, and wrote it on nobody."""
    designs = [
        ["Design", "Decal", "What", "Film"],
        ["Name", "Name", "print name", "Black smooth"],
        ["Camp", "Line", "text", "Black smooth"],
    ]
    plan = plan_of([HEAD, ["Ana", "", "M"], ["Ivo", "", "L"]], Designs=designs)
    assert found(plan, "design-unused") == [("A3", "Camp", "")]
    assert [each.level for each in plan.problems][:1] == ["check"]


def test_the_same_row_twice_and_the_same_person_twice_are_asked(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of([HEAD, ["Ana", "", "M"], ["Ana", "", "M"], ["Ivo", "", "M"], ["Ivo", "", "L"]])
    assert found(plan, "duplicate-row") == [("A3", "Ana", "")]
    assert found(plan, "who-twice") == [("A5", "Ivo", "")]
    assert len(plan.garments) == 4


def test_one_note_names_every_default_in_use(plan_of: Callable[..., Plan]) -> None:
    plan = plan_of([["Who", "Size"], ["Ana", "M"], ["Ivo", "L"]])
    (note,) = (each for each in plan.problems if each.code == "assumed")
    assert "garment Crew-neck tee; color white; design Name" in note.wrong
    assert len(plan.problems) == 3  # with the care labels and the prices; a clean list has nothing else
