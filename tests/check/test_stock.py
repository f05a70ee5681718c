"""Blanks that came and blanks that were pressed decide what the next plan still has to buy."""

from collections.abc import Callable
from datetime import datetime
from pathlib import Path

import pytest
from openpyxl import load_workbook

from tests.plan_book import PlanBook
from tests.workbooks import heading_at
from xlbatch.plan import Plan
from xlbatch.run import Options, run

PlanOf = Callable[..., Plan]
ROSTER = [["Garment no.", "Who", "Size", "Color", "Status"]]
PEOPLE = [[1, "Ana", "M", "white", None], [2, "Ivo", "M", "white", None], [3, "Mei", "M", "navy", None]]
JOB = [["Setting", "Value"], ["Sureness of spares", 50]]  # so few blanks then need no spares
LIST = [["Kind", "Garment", "Size", "Color", "Needed", "Spares", "On hand", "Arrived"]]
LOG = [["Garment no.", "Piece", "Result"]]
BOX = "☐"


@pytest.fixture
def next_plan(plan_of: PlanOf) -> PlanOf:
    """The plan made from a plan of which two white blanks and a navy one were to be bought."""

    def make(white: object = BOX, navy: object = BOX, *, first: str = "", status: str = "", stock: str = "") -> Plan:
        """`white`, `navy`: what is written into Arrived; `first`, `status`: the first garment's Result and Status."""
        had = int(stock[-1]) if stock else 0
        return plan_of(
            [*ROSTER, [*PEOPLE[0][:4], status], *PEOPLE[1:]],
            **{
                "Job": JOB,
                "Garments": [["Garment", "Size", "Colors", "On hand"], ["Crew-neck tee", "M", "white; navy", stock]],
                "Shopping list": [
                    *LIST,
                    ["blank", "Crew-neck tee", "M", "navy", 1, 0, 0, navy],
                    ["blank", "Crew-neck tee", "M", "white", 2, 0, had, white],
                ],
                "Press log": [*LOG, [1, "Name", first], [2, "Name", ""], [3, "Name", ""]],
            },
        )

    return make


def blanks(plan: Plan) -> dict[str, tuple[int, int, int]]:
    """Needed, on hand and to buy, by color."""
    return {line.color: (line.needed, line.on_hand, line.buy) for line in plan.shopping if line.kind == "blank"}


def asked(plan: Plan) -> list[tuple[str, str]]:
    return [(found.code, found.where.cell) for found in plan.problems if found.code.startswith("arrived-")]


def test_what_came_is_not_bought_again(next_plan: PlanOf) -> None:
    plan = next_plan("yes", "x")
    assert blanks(plan) == {"white": (2, 2, 0), "navy": (1, 1, 0)}
    assert asked(plan) == []


@pytest.mark.parametrize(
    ("result", "white"),
    [
        ("ok", (1, 1, 0)),
        ("redo garment", (2, 1, 1)),  # a new blank is needed
        ("redo film", (1, 1, 0)),  # the blank is in hand, and no longer on the shelf
    ],
)
def test_what_was_pressed_is_gone_from_the_shelf(next_plan: PlanOf, result: str, white: tuple[int, int, int]) -> None:
    assert blanks(next_plan("yes", first=result))["white"] == white


@pytest.mark.parametrize(("status", "white"), [("done", (1, 1, 0)), ("cancelled", (1, 2, 0))])
def test_a_status_set_by_hand_counts_too(next_plan: PlanOf, status: str, white: tuple[int, int, int]) -> None:
    assert blanks(next_plan("yes", status=status))["white"] == white


@pytest.mark.parametrize(("arrived", "have"), [(1, 1), ("no", 0), (0, 0), ("☑", 2), (True, 2)])
def test_as_many_as_were_written_have_come(next_plan: PlanOf, arrived: object, have: int) -> None:
    assert blanks(next_plan(arrived))["white"] == (2, have, 2 - have)


@pytest.mark.parametrize("stock", ["white = 5", "5"])
def test_blanks_that_were_on_the_shelf_are_used_up(next_plan: PlanOf, stock: str) -> None:
    plan = next_plan(first="ok", stock=stock)
    assert sum(plan.job.blanks[0].on_hand.values()) == 4
    assert asked(plan) == []


def test_what_came_is_added_to_the_shelf(next_plan: PlanOf) -> None:
    assert next_plan("yes", first="ok", stock="white = 1").job.blanks[0].on_hand == {"white": 1}


def test_blanks_pressed_that_never_came_are_asked_for(next_plan: PlanOf) -> None:
    plan = next_plan(first="ok")
    assert asked(plan) == [("arrived-unmarked", "H3")]
    assert blanks(plan)["white"] == (1, 0, 1)


def test_what_cannot_be_read_is_asked_and_not_counted(next_plan: PlanOf) -> None:
    plan = next_plan("most of them")
    assert asked(plan) == [("arrived-unclear", "H3")]
    assert blanks(plan)["white"] == (2, 0, 2)


def test_in_a_real_plan_a_blank_is_taken_off_once(tmp_path: Path, plan_of: PlanOf) -> None:
    """What came and was pressed counts in the next plan, and not again in the one after it."""

    def plan_again(path: Path, **marks: str) -> tuple[Path, list[str]]:
        """The next plan, after the first cell under each heading was filled in, and its Garments' On hand."""
        book = PlanBook(path)
        book.mark("Shopping list", "Arrived", marks.get("Arrived"), lambda row: row["Color"] == "navy")
        book.result(marks.get("Result"), lambda row: row["Garment no."] == 1)
        book.book.save(path)
        written = run(path, Options(folder=tmp_path, effort=0), lambda _: None, datetime(2026, 5, 4)).written
        assert written is not None
        sheet = load_workbook(written)["Garments"]
        top, column = heading_at(sheet, "On hand")
        cells = (sheet.cell(row, column).value for row in range(top + 1, sheet.max_row + 1))
        return written, [str(cell) for cell in cells if cell is not None]

    first = run(plan_of(ROSTER + PEOPLE, Job=JOB).job.path, Options(effort=0), lambda _: None, datetime(2026, 5, 4))
    assert first.written is not None
    second, shelf = plan_again(first.written, Arrived="yes", Result="ok")
    assert shelf == ["navy = 1"]
    assert plan_again(second)[1] == shelf


@pytest.mark.parametrize(
    ("arrived", "on_hand", "result", "asked_for"),
    [
        ("yes", None, "", True),
        ("one of them", None, "", True),
        (BOX, "12 in x 40 in; 12 in x 9 ft", "redo film", True),  # they may be gone
        (BOX, "12 in x 40 in", "", False),
        (BOX, None, "redo film", False),
        (0, None, "", False),
    ],
)
def test_film_is_left_to_be_measured_and_that_is_said(
    plan_of: PlanOf, arrived: object, on_hand: object, result: str, asked_for: bool
) -> None:
    item = "Black smooth, 12 in × 5 yd roll"
    plan = plan_of(
        ROSTER + PEOPLE[:1],
        **{
            "Film": [["Film", "On hand"], ["Red flock", "12 in x 1 yd"], ["Black smooth", on_hand]],
            "Shopping list": [["Kind", "Item", *LIST[0][1:]], ["film", item, "", "", "black", 1, 0, 0, arrived]],
            "Press log": [*LOG, [1, "Name", result]],
        },
    )
    found = [(each.where.sheet, each.where.cell) for each in plan.problems if each.code == "film-not-counted"]
    assert found == [("Film", "B3")] * asked_for


def test_the_last_blank_of_a_color_leaves_none(next_plan: PlanOf) -> None:
    assert next_plan(first="ok", stock="white = 1").job.blanks[0].on_hand == {"white": 0}


def test_a_number_without_a_color_is_counted_in_once(plan_of: PlanOf) -> None:
    """Three were there and two came of the only color wanted: five, of which none is kept beside."""
    plan = plan_of(
        [*ROSTER, *([no, f"Ana {no}", "M", "white", None] for no in range(1, 6))],
        **{
            "Job": JOB,
            "Garments": [["Garment", "Size", "Colors", "On hand"], ["Crew-neck tee", "M", "white; navy", "3"]],
            "Shopping list": [*LIST, ["blank", "Crew-neck tee", "M", "white", 5, 0, 3, 2]],
            "Press log": LOG,
        },
    )
    assert plan.job.blanks[0].on_hand == {"white": 5}
