"""Who pays for which blanks: what is on hand or on the way is not paid again, and spares are paid by all."""

from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal

import pytest

from xlbatch.plan import Plan
from xlbatch.shopping.prices import money

ROSTER = [["Who", "Size"], ["Ana", "M"], ["Bo", "M"], ["Cy", "L"]]


@pytest.mark.parametrize(
    ("there", "coming", "shares"),
    [
        # two M at 4.00 and an L at 6.00; a spare M
        (0, 0, ["5.34", "5.33", "7.33"]),  # 12.00 of three M: 4.00 each, the third shared by all
        (0, 1, ["3.34", "3.33", "7.33"]),  # 8.00 of two: the needed one by both who wear M
        (1, 0, ["3.34", "3.33", "7.33"]),
        (1, 1, ["1.34", "1.33", "7.33"]),  # nothing but the spare one
    ],
)
def test_blanks_bought_are_shared_by_those_who_wear_them(
    there: int, coming: int, shares: list[str], plan_of: Callable[..., Plan]
) -> None:
    plan = plan_of(ROSTER, Job=[["Setting", "Value"], ["Price by", "own cost"]])
    blanks = {line.size: line for line in plan.shopping if line.kind == "blank"}
    of_m = replace(blanks["M"], price=Decimal(4), spares=1, on_hand=there, on_the_way=coming)
    of_l = replace(blanks["L"], price=Decimal(6), spares=0, on_hand=0, on_the_way=0)
    lines = money(plan.job, plan.garments, plan.decals, plan.layout, (of_m, of_l), plan.time)
    assert [str(line.blank) for line in lines] == shares
