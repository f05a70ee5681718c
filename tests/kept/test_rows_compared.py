"""Rows of the input against those of the plan before: changes, copies, deleted ones, counts by hand."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

import pytest

from tests.art.conftest import ROW
from tests.kept.test_what_is_remembered import job
from xlbatch.job.job import RosterRow
from xlbatch.job.source import Source
from xlbatch.kept.changes import changes_since
from xlbatch.kept.copied import told_apart
from xlbatch.kept.gone import with_deleted
from xlbatch.kept.input_rows import GivenRow, as_planned, counted_anew, kept_rows
from xlbatch.kept.memory import NO_MEMORY, KeptNote, Memory
from xlbatch.problems import problem
from xlbatch.roster.read import Reading

CELLS = {"": "A5", "Size": "C5", "Value": "B5", "Width": "D5"}


def given(sheet: str, key: str, row: int = 5, **values: str) -> GivenRow:
    cells = {heading: cell.replace("5", str(row)) for heading, cell in CELLS.items()}
    return GivenRow(
        sheet, key, {name.replace("_", " "): text for name, text in values.items()}, Source(sheet, row, cells)
    )


def remembered(*rows: GivenRow, **more: Any) -> Memory:
    headings, kept = kept_rows(rows)
    return replace(NO_MEMORY, plan=3, headings=headings, rows=kept, **more)


def changed(before: tuple[GivenRow, ...], now: tuple[GivenRow, ...], unit: Any = "in") -> list[tuple[str, ...]]:
    settings = replace(job().settings, length_unit=unit, temperature_unit="°C")
    lines = changes_since(remembered(*before), now, settings)
    assert all(line.plan == 4 for line in lines)
    return [(line.sheet, line.cell, line.who, line.what, line.before, line.now) for line in lines]


ANA = given("Roster", "1", Who="Ana", Size="M", Seat="12")


@pytest.mark.parametrize(
    ("before", "now", "lines"),
    [
        (ANA, ANA, []),
        (ANA, given("Roster", "1", Who="Ana", Size="L", Seat="12"), [("Roster", "C5", "No. 1 Ana", "Size", "M", "L")]),
        (ANA, given("Roster", "1", Who="Ana", Size="M", Seat="14"),
         [("Roster", "A5", "No. 1 Ana", "Seat", "12", "14")]),
        (ANA, given("Roster", "1", Who="Ana", Size="M", Seat="12", Pet="cat"),
         [("Roster", "A5", "No. 1 Ana", "Pet", "", "cat")]),  # a column of one's own is new
        (ANA, given("Roster", "1", Who="Ana", Size="M", Seat="12", Color="red"), []),  # one this edition has now
        (given("Job", "Font", Value="Anton"), given("Job", "Font", Value="Bangers"),
         [("Job", "B5", "Font", "Value", "Anton", "Bangers")]),
        (given("Job", "Longest cut", Value="1828.8"), given("Job", "Longest cut", Value="304.8"),
         [("Job", "B5", "Longest cut", "Value", "72 in", "12 in")]),
        (given("Job", "Longest cut", Value="1828.8 mm"), given("Job", "Longest cut", Value="a yard"),
         [("Job", "B5", "Longest cut", "Value", "72 in", "a yard")]),
        (given("Designs", "A · x", Width="25.4"), given("Designs", "A · x", Width=""),
         [("Designs", "D5", "A · x", "Width", "1 in", "")]),
        (given("Film", "Gold", Press_temperature="160"), given("Film", "Gold", Press_temperature="150.4"),
         [("Film", "A5", "Gold", "Press temperature", "160 °C", "150 °C")]),
        (given("Job", "Last garment no.", Value="3"), given("Job", "Last garment no.", Value="9"), []),
    ],
)  # fmt: skip
def test_each_cell_that_is_not_as_it_was_is_a_line(
    before: GivenRow, now: GivenRow, lines: list[tuple[str, ...]]
) -> None:
    assert changed((before,), (now,)) == lines


def test_rows_added_and_deleted() -> None:
    bo = given("Roster", "2", 6, Who="Bo", Size="L", Seat="")
    assert changed((ANA,), (ANA, bo)) == [("Roster", "A6", "No. 2 Bo", "row added", "", "Bo, L")]
    assert changed((ANA, bo), (ANA,)) == [("Roster", "", "No. 2 Bo", "row deleted", "Bo, L", "")]
    assert changed((ANA,), (ANA, given("Film", "Gold"))) == []  # a sheet the plan before did not have
    long = given("Roster", "3", 7, **{f"h{no}": f"v{no}" for no in range(8)})
    assert changed((ANA,), (ANA, long))[0][-1] == "v0, v1, v2, v3, v4, v5"
    assert changes_since(NO_MEMORY, [ANA], job().settings) == ()


def test_what_a_setting_was_called_is_what_it_is_called_now() -> None:
    planned = as_planned(remembered(given("Job", "Sureness of spares", Value="95"), ANA))
    assert planned["Job", "Enough spares per 100 jobs"] == {"Value": "95"}
    assert planned["Roster", "1"] == {"Who": "Ana", "Size": "M", "Seat": "12"}


def test_what_is_counted_by_hand() -> None:
    before = (
        given("Garments", "Tee · M", Garment="Tee", Size="M", On_hand="3"),
        given("Film", "Gold", Film="Gold", On_hand=""),
    )
    same = counted_anew(remembered(*before), before)
    assert same == (set(), set())
    now = (
        given("Garments", "Tee · M", Garment="Tee", Size="M", On_hand="4"),
        given("Film", "Gold", Film="Gold", On_hand="x"),
    )
    assert counted_anew(remembered(*before), now) == ({("tee", "M")}, {"gold"})
    assert counted_anew(remembered(), now) == (set(), set())  # a row that is new


HEAD = {"": "A2", "Garment no.": "A2", "Who": "B2"}


def row(no: int, who: str, at: int, **more: Any) -> RosterRow:
    cells = {heading: cell.replace("2", str(at)) for heading, cell in HEAD.items()}
    return replace(ROW, no=no, who=who, source=Source("Roster", at, cells), **more)


def copied(first: RosterRow, second: RosterRow, values: Mapping[str, Mapping[str, str]], **plan: str) -> Reading:
    asked = problem("garment-no-twice", second.source.at("Garment no."), 1, rows=(second.source.row,), number=second.no)
    reading = Reading(replace(job(), roster=(first, second)), (asked,))
    rows = tuple(GivenRow("Roster", key, cells, Source("Roster", 2)) for key, cells in values.items())
    memory = remembered(GivenRow("Roster", "1", {**plan}, Source("Roster", 2)))
    return told_apart(reading, memory, rows)


def test_of_two_rows_of_one_number_the_one_like_the_plan_keeps_it() -> None:
    plan = {"Who": "Ana", "Size": "M", "Garment no.": "1"}
    like, other = plan | {}, plan | {"Who": "Bo", "Garment no.": "9"}
    kept = copied(row(1, "Ana", 2), row(9, "Bo", 3), {"1": like, "9": other}, **plan)
    assert [(it.who, it.no) for it in kept.job.roster] == [("Ana", 1), ("Bo", 9)]
    assert [(each.code, each.where.cell, each.rows) for each in kept.problems] == [("garment-no-twice", "A3", (3,))]
    turned = copied(row(1, "Bo", 2), row(9, "Ana", 3), {"1": other | {"Garment no.": "1"}, "9": like}, **plan)
    assert [(it.who, it.no) for it in turned.job.roster] == [("Bo", 9), ("Ana", 1)]
    assert [(each.code, each.where.cell, each.rows) for each in turned.problems] == [("garment-no-twice", "A2", (2,))]
    alike = copied(row(1, "Ana", 2), row(9, "Ana", 3), {"1": like, "9": like}, **plan)
    assert [it.no for it in alike.job.roster] == [1, 9]


@pytest.mark.parametrize(
    ("own", "left", "after"),
    [
        ({"Status": "done", "Paid": "5"}, "Status done, Paid 5", ("", ("Front",), None)),
        ({"Status": "cancelled"}, "", ("done", ("Front",), 5)),
        ({"Done so far": "Front"}, "Done so far Front", ("done", (), 5)),
        ({"Paid": "5"}, "Paid 5", ("done", ("Front",), None)),
        ({"Paid": ""}, "", ("done", ("Front",), 5)),
    ],
)
def test_a_copy_begins_anew(own: dict[str, str], left: str, after: tuple[Any, ...]) -> None:
    plan = {"Who": "Ana", "Size": "M"} | own
    copy = row(9, "Bo", 3, status="done", done_so_far=("Front",), paid=5)
    reading = copied(row(1, "Ana", 2), copy, {"1": plan, "9": plan | {"Who": "Bo"}}, **plan)
    (asked,) = reading.problems
    assert (asked.code, asked.found, asked.where.cell) == (
        ("copied-with-it", left, "A3") if left else ("garment-no-twice", "1", "A3")
    )
    now = reading.job.roster[1]
    assert (now.status, now.done_so_far, now.paid) == after


def test_deleted_rows_come_back_in_their_place() -> None:
    rows = [given("Roster", str(no), Who=f"P{no}", Size="M", Paid=paid, Status=status, Seat="3",
                  Done_so_far="Front; Back")
            for no, paid, status in ((1, "", ""), (2, "yes", "done"), (3, "5.50", ""), (4, "", ""))]  # fmt: skip
    memory = remembered(*rows, given("Film", "7", Film="7"), notes=(KeptNote("Roster", "2", "Size", "ask", "yes"),
                                                                   KeptNote("Proof", "3", "Checked", "x")))  # fmt: skip
    now, asked = with_deleted(replace(job(), roster=(row(4, "P4", 2), row(1, "P1", 3))), memory)
    assert [(it.no, it.status, it.paid) for it in now.roster] == [
        (2, "done", "yes"), (3, "cancelled", pytest.approx(5.5)), (4, "", None), (1, "", None),
    ]  # fmt: skip
    second, third = now.roster[:2]
    assert (second.source.notes, third.source.notes) == ({"Size": "ask"}, {})
    assert (second.source.extra, second.done_so_far) == ({"Seat": "3"}, ("Front", "Back"))
    assert [(each.code, each.found) for each in asked] == [("row-deleted", "2"), ("row-deleted", "3")]
    there = replace(job(), roster=tuple(row(no, "P", no + 1) for no in (1, 2, 3, 4)))
    assert with_deleted(there, memory) == (there, ())
