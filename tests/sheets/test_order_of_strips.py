"""Strips that lie ready at the table, and tags that are cut apart."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from openpyxl import load_workbook

from xlbatch.kept.memory import KeptDecal, State
from xlbatch.paper.workbook import Book
from xlbatch.plan import Plan
from xlbatch.sheets import bag_tags, cut_list


def kept(id_: str, film: str, run: int, strip: int, state: State = "cut") -> KeptDecal:
    return KeptDecal(id_, 1, "Name", "Ana", film, 100, 40, 0, run, strip, strip, state)


@pytest.fixture
def plan(plan_of: Callable[..., Plan]) -> Plan:
    return plan_of([["Who", "Size"], *([f"Guest {number}", "M"] for number in range(40))])


def with_decals(plan: Plan, *decals: KeptDecal) -> Plan:
    return replace(plan, memory=replace(plan.memory, decals=decals))


def test_strips_that_are_ready_come_run_by_run(plan: Plan) -> None:
    ready = cut_list.ready_strips(
        with_decals(
            plan,
            kept("D1", "White smooth", 2, 1),
            kept("D2", "Black smooth", 10, 1),
            kept("D3", "White smooth", 1, 2),
            kept("D4", "WHITE smooth", 1, 2, "weeded"),  # the same strip, however its film is written
            kept("D5", "Black smooth", 1, 3, "pressed"),
            kept("D6", "Black smooth", 1, 4, "to cut"),
        )
    )
    told = {(run, strip): [decal.id for decal in decals] for (_, run, strip), decals in ready.items()}
    assert list(told.items()) == [((1, 2), ["D3", "D4"]), ((2, 1), ["D1"]), ((10, 1), ["D2"])]


def test_a_decal_that_nobody_needs_is_not_ready_to_press(plan: Plan) -> None:
    planned = with_decals(plan, kept("D1", "White smooth", 1, 1), kept("D2", "White smooth", 2, 2))
    ready = cut_list.ready_strips(replace(planned, unused=frozenset({"D2"})))
    assert [run for _, run, _ in ready] == [1]


def test_no_tag_is_cut_by_the_end_of_a_page(plan: Plan, tmp_path: Path) -> None:
    """Every further page begins with the first lines of tags: a name and its garment's number."""
    with Book(tmp_path / "tags.xlsx", plan.job) as book:
        page = book.page("Bag tags")
        bag_tags.write(page, plan)
    assert len(page.starts) >= 2
    written = load_workbook(tmp_path / "tags.xlsx")["Bag tags"]
    assert written.print_area == f"'Bag tags'!$A$1:$F${page.row}"
    for row in page.starts:
        assert str(page.placed[row + 1, 1]).startswith("Guest ")
        assert page.placed[row + 1, 2] in range(1, 41)
