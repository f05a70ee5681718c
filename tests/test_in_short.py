"""What a plan comes to, in three lines."""

from collections.abc import Callable
from dataclasses import replace

from xlbatch.in_short import in_short
from xlbatch.plan import Plan


def test_what_was_assumed_is_one_line_and_nothing_else_stands_in_it(plan_of: Callable[..., Plan]) -> None:
    roster = [["Who", "Size", "Garment", "Color", "Design"], ["Ana", "M", "Crew-neck tee", "white", "Name"]]
    plan = plan_of(roster)
    assert {each.code for each in plan.problems} > {"assumed", "price-missing"}
    assert in_short(plan, "")[1] == (
        "Assumed, each in a cell you can change: font Archivo Black; design of Name; measures of Crew-neck tee; "
        "press settings of Black smooth; press of Plate press."
    )
    given = replace(plan, problems=tuple(each for each in plan.problems if each.code != "assumed"))
    assert in_short(given, "")[1] == "Nothing was assumed: everything used was given."
