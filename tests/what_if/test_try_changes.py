"""What if: each line equals a real plan of the list with that change, figure for figure, and saves something."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import datetime
from functools import partial
from pathlib import Path
from typing import Any

import pytest
from openpyxl import load_workbook

from tests.workbooks import Rows
from xlbatch.plan import Plan
from xlbatch.roster.read import Reading
from xlbatch.run import Options, _planned_quietly, run
from xlbatch.sheets import what_if_sheet
from xlbatch.what_if.changes_to_try import MORE_SHIRTS, changes
from xlbatch.what_if.try_changes import figures, saves, tried

NOW = datetime(2026, 5, 4, 9, 30)
ROSTER: Rows = [["Who", "Size", "Print name"], *([f"Guest {at}", size, name] for at, (size, name) in enumerate(
    [("M", "Alexandra"), ("L", "Bo"), ("3XL", "Cy"), ("Youth M", "Dee"), ("S", "Ed"), ("M", "Flo"), ("XL", "Gus")]
))]  # fmt: skip
SHEETS: Mapping[str, Rows] = {
    "Job": [["Setting", "Value"], ["Longest cut", "24 in"], ["Longest strip", "20 in"], ["Sureness of spares", 95]],
    "Designs": [
        ["Design", "Decal", "What", "Text", "Film", "Position", "Height", "Widest"],
        ["Name", "Name", "print name", None, "Black smooth", "full front", "3 in", "11 in"],
        ["Name", "Year", "text", "1999", "White smooth", "back number", "6 in", "11 in"],
    ],
    "Garments": [["Garment", "Size", "Price"], *(["Crew-neck tee", s, "4.20"] for s in ("S", "M", "L", "XL", "3XL"))],
    "Film": [["Film", "Rolls sold"], ["Black smooth", "1 yd = 6; 5 yd = 21"], ["White smooth", "1 yd = 6; 5 yd = 21"]],
    "Press": [["Press", "Kind", "Plate width", "Plate depth"], ["Small plate", "hand-held plate", "10 in", "10 in"]],
}  # fmt: skip


@pytest.fixture
def reading(reading_of: Callable[..., Reading]) -> Reading:
    return reading_of(ROSTER, **SHEETS)


@pytest.fixture
def plan(reading: Reading) -> Plan:
    return _planned_quietly(reading, 0, NOW)


def test_every_kind_of_change_is_tried(reading: Reading, plan: Plan) -> None:
    names = [change.name for change in changes(reading, plan)]
    assert list(dict.fromkeys(names)) == [
        "Pieces a little smaller, in fewer sections", "Interlock the decals", "One film fewer", "More shirts a strip",
        "A longer cut", "No spares", "One size for all",
    ]  # fmt: skip


def test_one_to_three_shirts_more_than_the_longest_strip_has(reading: Reading, plan: Plan) -> None:
    most = max(len(batch.garments) for batch in plan.layout.batches)
    hows = [change.how for change in changes(reading, plan) if change.name == "More shirts a strip"]
    assert hows == [f"Job: Shirts per strip = {most + more}" for more in MORE_SHIRTS if most + more <= 7]  # of 7 people
    assert hows


def test_the_figures_are_what_is_bought_and_worked(reading: Reading, plan: Plan) -> None:
    own = figures(plan)
    assert own.money == sum(line.cost for line in plan.shopping if line.buy and line.cost is not None)
    assert own.film == pytest.approx(sum(run.length for run in plan.layout.runs), abs=0.001)
    assert own.minutes == pytest.approx(sum(work.seconds for work in plan.time.work) / 60, abs=0.001)
    spared = next(change.reading for change in changes(reading, plan) if change.name == "No spares")
    assert spared.job.settings.sureness == 0
    assert "No spares" not in {change.name for change in changes(spared, replace(plan, job=spared.job))}


def test_only_what_saves_something_is_told_with_the_figures_of_a_real_plan(reading: Reading, plan: Plan) -> None:
    found = tried(reading, plan, partial(_planned_quietly, effort=0, now=NOW))
    own = figures(plan)
    assert found
    by_how = {(change.name, change.how): change.reading for change in changes(reading, plan)}
    for line in found:
        again = _planned_quietly(by_how[line.name, line.how], 0, NOW)
        assert line.figures == figures(again)
        assert saves(own, line.figures)
        assert len(again.garments) == len(plan.garments)
    told = {(line.name, line.how) for line in found}
    for key, changed in by_how.items():
        if key not in told:
            other = _planned_quietly(changed, 0, NOW)
            assert not saves(own, figures(other)) or len(other.garments) < len(plan.garments)


def test_each_line_is_what_a_person_gets_who_sets_it_so(
    reading: Reading, plan: Plan, reading_of: Callable[..., Reading]
) -> None:
    """The list typed anew with the setting that the line names."""
    settings = [c for c in changes(reading, plan) if c.how.startswith("Job: ")]
    assert len(settings) >= 5
    for change in settings:
        name, value = change.how.removeprefix("Job: ").split(" = ")
        job = [row for row in SHEETS["Job"] if row[0] != name]
        typed = reading_of(ROSTER, **{**SHEETS, "Job": [*job, [name, value]]})
        by_hand = _planned_quietly(typed, 0, NOW)
        assert figures(by_hand) == figures(_planned_quietly(change.reading, 0, NOW)), change.how
    smaller = next(c for c in changes(reading, plan) if c.name.startswith("Pieces"))
    assert smaller.how == (
        "Designs: Name, Name: Height 2 3/4 in, Widest 10 3/8 in; Name, Year: Height 5 5/8 in, Widest 10 3/8 in"
    )
    head, name_row, year = SHEETS["Designs"]
    designs = [head, [*name_row[:6], "2 3/4 in", "10 3/8 in"], [*year[:6], "5 5/8 in", "10 3/8 in"]]
    typed = reading_of(ROSTER, **{**SHEETS, "Designs": designs})
    assert figures(_planned_quietly(typed, 0, NOW)) == figures(_planned_quietly(smaller.reading, 0, NOW))


def test_the_sheet_is_there_when_asked_and_only_then(reading: Reading, plan: Plan, tmp_path: Path) -> None:
    path = reading.job.path
    plain = run(path, Options(folder=tmp_path / "plain", effort=0), lambda _: None, NOW)
    assert [offer.words for offer in plain.offers] == ["What if"]
    assert plain.written is not None
    assert what_if_sheet.NAME not in load_workbook(plain.written).sheetnames
    asked = run(path, replace(plain.offers[0].options, folder=tmp_path / "asked"), lambda _: None, NOW)
    assert asked.offers == ()
    assert asked.written is not None
    sheet: Any = load_workbook(asked.written)[what_if_sheet.NAME]
    rows = [[cell.value for cell in row] for row in sheet.iter_rows()]
    own = next(row for row in rows if row[0] == what_if_sheet.AS_PLANNED)
    assert own[2] == pytest.approx(float(figures(plan).money or 0))
    for row in rows[rows.index(own) + 1 :]:
        assert row[5] == pytest.approx(own[2] - row[2])
        assert row[6] == pytest.approx(own[3] - row[3], abs=1 / 8)  # each is printed to 1/8 in
        assert row[7] == pytest.approx(own[4] - row[4], abs=1e-5)
    read_again = run(asked.written, Options(folder=tmp_path / "again", effort=0), lambda _: None, NOW)
    assert not [found for found in read_again.problems if found.where.sheet == what_if_sheet.NAME]
