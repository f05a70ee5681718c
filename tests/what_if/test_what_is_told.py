"""Which of the changes that were tried are told."""

from collections.abc import Callable, Iterable
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from xlbatch.paper.workbook import Book
from xlbatch.plan import Figures, Plan, Tried
from xlbatch.roster.read import Reading
from xlbatch.sheets.what_if_sheet import write
from xlbatch.what_if import try_changes
from xlbatch.what_if.changes_to_try import changes
from xlbatch.what_if.try_changes import figures, saves, tried

ROSTER = [["Who", "Size"], ["Ana", "M"], ["Ivo", "L"], ["Mei", "S"]]


@pytest.fixture
def reading(reading_of: Callable[..., Reading]) -> Reading:
    return reading_of(ROSTER)


def in_turn(task: Callable[[Reading], object], readings: Iterable[Reading], *, pays: bool) -> list[object]:
    assert pays
    return [task(reading) for reading in readings]


def shorter(plan: Plan, mm: float) -> Plan:
    needs = tuple(replace(need, length=need.length - mm) for need in plan.layout.needs)
    return replace(plan, layout=replace(plan.layout, needs=needs))


def test_what_saves_nothing_and_what_makes_fewer_garments_is_left_out(
    reading: Reading, plan_of: Callable[..., Plan], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(try_changes, "spread", in_turn)
    plan = plan_of(ROSTER)
    names = [change.name for change in changes(reading, plan)]
    plans = iter(
        [plan, shorter(plan, 25.0), replace(shorter(plan, 25.0), garments=plan.garments[:2])] + [plan] * len(names)
    )
    (told,) = tried(reading, plan, lambda _reading: next(plans))
    assert told.name == names[1]
    assert told.figures.film == pytest.approx(figures(plan).film - 25.0)


def test_a_change_is_tried_on_the_list_and_not_on_the_plan(reading: Reading, plan_of: Callable[..., Plan]) -> None:
    for change in changes(reading, plan_of(ROSTER)):
        assert change.reading.job.roster == reading.job.roster
        assert change.reading.job != reading.job


@pytest.mark.parametrize(("length", "tries"), [("24 in", True), ("60 in", False)])
def test_a_longer_cut_is_tried_where_a_run_fills_half_of_it(
    length: str, tries: bool, plan_of: Callable[..., Plan], reading_of: Callable[..., Reading]
) -> None:
    job = [["Setting", "Value"], ["Longest cut", length], ["Longest strip", "20 in"]]
    roster = [["Who", "Size"], *([f"Guest {number}", "L"] for number in range(9))]
    designs = [
        ["Design", "Decal", "What", "Film", "Position", "Height", "Widest"],
        ["Name", "Name", "print name", "Black smooth", "full front", "3 in", "11 in"],
    ]
    reading = reading_of(roster, Job=job, Designs=designs)
    plan = plan_of(roster, Job=job, Designs=designs)
    longest = max(run.length for run in plan.layout.runs)
    assert (longest >= float(length.split()[0]) * 25.4 / 2) is tries
    assert ("A longer cut" in {change.name for change in changes(reading, plan)}) is tries


def test_less_of_one_thing_is_a_saving() -> None:
    own = Figures(Decimal(20), 1000.0, 60.0)
    assert saves(own, replace(own, money=Decimal("19.99")))
    assert saves(own, replace(own, film=999.0))
    assert saves(own, replace(own, minutes=59.0))
    assert not saves(own, own)
    assert not saves(own, Figures(Decimal("20.01"), 1000.3, 60.4))
    assert not saves(replace(own, money=None), own)


def test_nothing_is_tried_of_strips_where_all_is_cut(reading: Reading, plan_of: Callable[..., Plan]) -> None:
    plan = plan_of(ROSTER)
    cut = replace(plan, layout=replace(plan.layout, batches=(), runs=()))
    assert {"More shirts a strip", "A longer cut"} & {change.name for change in changes(reading, cut)} == set()


def test_savings_have_as_much_room_as_what_they_are_saved_of(plan_of: Callable[..., Plan], tmp_path: Path) -> None:
    """The rest of the page is left to the words."""
    plan = plan_of(ROSTER)
    own = Figures(Decimal("120.50"), 1000.0, 60.0)
    less = (Tried("A longer cut", "Job: " + "set so " * 12, replace(own, money=Decimal(100))),)
    with Book(tmp_path / "book.xlsx", plan.job) as book:
        page = book.page("What if")
        write(page, replace(plan, as_planned=own, what_if=less))
    room = dict(zip((column.heading for column in page.columns), page.widths, strict=True))
    assert room["Saves"] == pytest.approx(room["To buy"])
    assert room["Film saved (in)"] == pytest.approx(room["Film (in)"])
