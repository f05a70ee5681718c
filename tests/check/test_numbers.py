"""Player numbers: apart, once in a group, and by the published rulebooks of trade/number_rules.csv."""

from collections.abc import Callable

import pytest

from xlbatch.plan import Plan
from xlbatch.trade.number_rules import number_rule

PlanOf = Callable[..., Plan]
IN = 25.4
HEAD = ["Who", "Group", "Color", "Size", "Number"]


def designs(height: str, position: str = "back number", font: str = "Anton") -> list[list[object]]:
    return [
        ["Design", "Decal", "What", "Film", "Position", "Height", "Font", "Scale with size"],
        ["Name", "Number", "number", "Black smooth", position, height, font, "no"],
    ]


def asked(plan: Plan, start: str = "number") -> list[tuple[str, str]]:
    return [(each.code, each.where.cell) for each in plan.problems if each.code.startswith(start)]


@pytest.mark.parametrize(
    ("name", "legal", "illegal"),
    [
        ("NFHS football to 2021", ["1", "99"], ["0", "00", "100", "07", "A"]),
        ("NFHS football", ["0", "1", "99"], ["00", "100", "07", "A"]),
        ("NCAA basketball to 2022-23", ["0", "00", "5", "10", "55"], ["6", "16", "56", "7", "99", "05"]),
        ("NCAA basketball", ["0", "00", "6", "99"], ["100", "07"]),
        ("USA Volleyball", ["1", "99"], ["0", "00", "100"]),
        ("WFDF ultimate", ["0", "99"], ["00", "100"]),
        ("WFTDA roller derby", ["0", "07", "1234"], ["12345", "K1"]),
        ("MLB baseball", ["0", "00", "107"], []),
    ],
)
def test_legal_numbers(name: str, legal: list[str], illegal: list[str]) -> None:
    """Sources: the rulebook and edition each line of trade/number_rules.csv names."""
    rule = number_rule(name)
    assert rule is not None
    assert [number for number in legal if not rule.allows(number)] == []
    assert [number for number in illegal if rule.allows(number)] == []


@pytest.mark.parametrize(
    ("name", "front", "back", "stroke"),
    [
        ("MLB baseball", None, 6 * IN, None),  # MLB Official Baseball Rules 3.03(a)
        ("NFHS football", 8 * IN, 10 * IN, 1.5 * IN),
        ("NFHS softball", None, 6 * IN, None),
        ("NFHS ice hockey", None, 10 * IN, None),
        ("USA Volleyball", 100, 150, None),  # rule 4.3.3
        ("WFDF ultimate", 160, 160, 30),  # 2021-24
        ("WFTDA roller derby", None, 6 * IN, None),
        ("FIFA football", None, 250, None),  # Equipment Regulations 2014
    ],
)
def test_least_measures(name: str, front: float | None, back: float | None, stroke: float | None) -> None:
    rule = number_rule(name)
    assert rule is not None
    assert [rule.front, rule.back, rule.stroke] == [each and pytest.approx(each) for each in (front, back, stroke)]
    assert rule.edition


def test_7_and_07_stay_apart_and_are_asked(plan_of: PlanOf) -> None:
    rows = [HEAD, ["Ana", "A", "white", "M", "07"], ["Ivo", "A", "white", "M", 7], ["Mei", "A", "white", "M", "7"],
            ["Bo", "A", "gray", "M", "7"], ["Cy", "B", "white", "M", "7"], ["Di", "A", "white", "M", "00"],
            ["Ed", "A", "white", "M", "0"]]  # fmt: skip
    plan = plan_of(rows, Designs=designs("6 in"))
    assert asked(plan) == [("number-alike", "E3"), ("number-alike", "E4"), ("number-alike", "E8")]
    assert [decal.text for decal in plan.decals] == ["07", "7", "7", "7", "7", "00", "0"]


def test_the_same_number_twice_in_a_group_and_color(plan_of: PlanOf) -> None:
    rows = [HEAD, ["Ana", "A", "white", "M", "7"], ["Ivo", "A", "white", "M", "7"], ["Ana", "A", "white", "L", "7"]]
    assert asked(plan_of(rows, Designs=designs("6 in"))) == [("number-twice", "E3")]


def test_many_numbers_twice_are_asked_once(plan_of: PlanOf) -> None:
    team = [[who, "A", "white", "M", number] for who, number in zip("ABCDEFGH", "12341234", strict=True)]
    plan = plan_of([HEAD, *team[:7]], Designs=designs("6 in"))
    assert asked(plan) == [("number-twice", cell) for cell in ("E6", "E7", "E8")]
    plan = plan_of([HEAD, *team, ["I", "A", "white", "M", "04"]], Designs=designs("6 in"))
    assert asked(plan) == [("numbers-twice", "E6"), ("number-alike", "E10")]
    told = next(each.wrong for each in plan.problems if each.code == "numbers-twice")
    assert told.startswith("4 numbers")
    assert "1 (A, E); 2 (B, F); 3 (C, G); 4 (D, H)" in told


def job(rule: str) -> list[list[object]]:
    return [["Setting", "Value"], ["Number rule", rule]]


def test_an_illegal_number_is_held_back(plan_of: PlanOf) -> None:
    rows = [
        HEAD,
        ["Ana", "A", "", "M", "6"],
        ["Ivo", "A", "", "M", "0"],
        ["Mei", "A", "", "M", "00"],
        ["Bo", "B", "", "M", "00"],
    ]
    plan = plan_of(rows, Designs=designs("6 in"), Job=job("ncaa basketball to 2022-23"))
    assert [(code, cell) for code, cell in asked(plan) if code == "number-illegal"] == [
        ("number-illegal", "E2"), ("number-illegal", "E4"),
    ]  # fmt: skip
    assert [garment.who for garment in plan.garments] == ["Ivo", "Bo"]
    assert "to 2022-23" in next(each.wrong for each in plan.problems if each.code == "number-illegal")


@pytest.mark.parametrize(
    ("height", "position", "codes"),
    [
        ("10 in", "back number", []),
        ("9 in", "back number", [("number-too-low", "F2")]),
        ("8 in", "full front", []),
        ("7 in", "full front", [("number-too-low", "F2")]),
    ],
)
def test_the_cut_numbers_height_is_measured(
    plan_of: PlanOf, height: str, position: str, codes: list[tuple[str, str]]
) -> None:
    """NFHS football: 8 in front, 10 in back, measured on the outline as cut."""
    plan = plan_of([HEAD, ["Ana", "A", "", "2XL", "1"]], Designs=designs(height, position), Job=job("NFHS football"))
    assert [each for each in asked(plan) if each[0] == "number-too-low"] == codes


def test_the_stroke_of_a_bar_and_of_a_ring() -> None:
    """A bar 10 by 2: area 20, outline 24. A ring of radii 4 and 2: area 12 pi, outline 12 pi."""
    from math import pi
    from types import SimpleNamespace
    from typing import Any, cast

    from xlbatch.art.number_size import stroke

    bar = SimpleNamespace(outline=SimpleNamespace(area=20, cut_length=24, contours=1))
    ring = SimpleNamespace(outline=SimpleNamespace(area=12 * pi, cut_length=12 * pi, contours=2))
    assert stroke(cast(Any, bar)) == pytest.approx(2)
    assert stroke(cast(Any, ring)) == pytest.approx(2)


def test_an_unknown_rule_is_named_with_the_likely_one(plan_of: PlanOf) -> None:
    plan = plan_of([HEAD, ["Ana", "A", "", "M", "1"]], Designs=designs("6 in"), Job=job("NFHS footbal"))
    assert asked(plan) == [("number-rule-unknown", "B2")]
    assert next(each.suggestion for each in plan.problems if each.code == "number-rule-unknown") == "NFHS football"
