"""Heat on what is pressed already: a film still to come may be too hot for one that lies on the garment."""

from collections.abc import Callable

import pytest

from xlbatch.plan import Plan

COOL, HOT = "Navy low-heat", "Navy smooth"  # pressed at less heat, and at more


@pytest.mark.parametrize(
    ("front", "back", "outline", "done", "asked"),
    [
        (COOL, HOT, None, "Front", True),  # the hot one goes over the cool one
        (COOL, HOT, None, "Back", False),  # what lies there bears more
        (COOL, HOT, None, None, False),  # the order of the plan sees to it
        (COOL, COOL, None, "Front", False),
        (COOL, HOT, None, "Front; Back", False),  # nothing is still to come
        (HOT, COOL, COOL, "Front border", True),  # of the two pieces of a decal the lower one lies there
        (HOT, HOT, COOL, "Front", False),  # its border does not lie there yet
    ],
)
def test_a_hotter_film_on_a_garment_that_carries_a_cooler_one_is_asked_about(
    front: str, back: str, outline: str | None, done: str | None, asked: bool, plan_of: Callable[..., Plan]
) -> None:
    """Common practice, no source: a film is pressed no hotter than its maker says, also later."""
    designs = [
        ["Design", "Decal", "What", "Film", "Position", "Height", "Outline film", "Outline width"],
        ["Name", "Front", "print name", front, "full front", "2 in", outline, "1/8 in" if outline else None],
        ["Name", "Back", "print name", back, "back name", "1 in", None, None],
    ]
    plan = plan_of([["Who", "Size", "Done so far"], ["Ana", "M", done], ["Ivo", "M", None]], Designs=designs)
    told = [problem for problem in plan.problems if problem.code == "heat-over-pressed"]
    assert [(problem.where.sheet, problem.where.cell, problem.rows) for problem in told] == [
        ("Roster", "C2", (2,))
    ] * asked
    assert [problem.found for problem in told] == [COOL] * asked
