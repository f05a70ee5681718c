"""Whole workbooks: sheets found, settings read, files that are none."""

from datetime import datetime
from decimal import Decimal
from pathlib import Path

import pytest

from tests.roster.test_read import LIST, Read, Rows, found, read_sheets, row, rows
from xlbatch.files.raw import Raw, RawSheet
from xlbatch.job.marks import Result
from xlbatch.roster.read import Reading, UnreadableFile, blank_job, read
from xlbatch.tables.input_tables import MEMORY_TITLE, find_tables


def test_sheets_are_found_by_any_case_or_by_their_headings(tmp_path: Path) -> None:
    reading = read_sheets(
        tmp_path,
        {
            "My film": [["Film", "Color", "Press time"], ["Teal", "teal", 12]],
            "Sheet1": LIST,
            "JOB ": [["Setting", "Value"], ["Job name", "Fair"]],
        },
    )
    assert rows(reading) == [(1, "Ana", "M")]
    assert row(reading).source.sheet == "Sheet1"
    assert reading.job.settings.job_name == "Fair"
    assert reading.job.films[0].name == "Teal"
    assert reading.problems == ()


@pytest.mark.parametrize("name", ["Sheet1", "Film"])
def test_a_lone_sheet_that_is_plainly_no_list_is_not_taken_for_one(tmp_path: Path, name: str) -> None:
    reading = read_sheets(tmp_path, {name: [["Film", "Color", "Press time"], ["Teal", "teal", 12]]})
    assert reading.job.films[0].name == "Teal"
    assert rows(reading) == []
    assert found(reading) == [("no-rows", "Roster", "")]


def test_of_a_plan_the_sheets_it_made_are_looked_at_again() -> None:
    """Each under its own name, or its title where a person has renamed it; without the memory it is no plan."""

    def raw(name: str, *rows: tuple[str, ...]) -> RawSheet:
        return RawSheet(name, {no: {at: Raw(text) for at, text in enumerate(row, 1)} for no, row in enumerate(rows, 1)})

    own, people = raw("PROOF ", ("Proof",)), raw("Roster", ("Who", "Size"), ("Ana", "M"))
    renamed, other = raw("Runs of May", ("Runs",), ("Run", "Film")), raw("Notes", ("Money to get",))
    kept = raw("Kept", (MEMORY_TITLE,))
    assert find_tables([people, own, renamed, other, kept]).watched == {"Proof": own, "Runs": renamed}
    assert find_tables([people, own, renamed, other]).watched == {}


def test_unknown_and_second_sheets_are_named(tmp_path: Path) -> None:
    reading = read_sheets(
        tmp_path, {"Roster": LIST, "Budget": [["Item", "Sum"]], "Team B": [["Who", "Size"], ["Ben", "L"]]}
    )
    assert rows(reading) == [(1, "Ana", "M")]
    assert found(reading) == [("sheet-unknown", "Budget", ""), ("sheet-second", "Team B", "")]


def test_the_plans_own_sheets_are_left_alone_and_its_log_is_read(tmp_path: Path) -> None:
    log: Rows = [
        ["Press log"],
        ["Step", "Garment no.", "Who", "Decal", "Result", "By"],
        ["Batch 1: 330 °F"],
        [1, 4, "Ana", "Name", "ok", "M"],
        [2, 4, "Ana", "Back", "Redo film", None],
        [3, 5, "Ben", "Name", None, None],
        [4, 5, "Ben", "Back", "fine", None],
    ]
    reading = read_sheets(
        tmp_path,
        {"Job sheet": [["x"]], "Problems": [["Level", "Sheet"]], "Roster": LIST, "Press log": log, "Decals": LIST},
    )
    assert reading.job.results == (Result(4, "Name", "ok"), Result(4, "Back", "redo film"))
    assert found(reading) == [("result-unknown", "Press log", "E7")]


def test_a_csv_is_a_roster(tmp_path: Path) -> None:
    path = tmp_path / "class - plan 2.csv"
    path.write_text("name;size\nAgnès;Youth M\n", encoding="cp1252")
    reading = read(path)
    assert isinstance(reading, Reading)
    assert rows(reading) == [(1, "Agnès", "Youth M")]
    assert reading.job.settings.job_name == "class"


def test_what_cannot_be_read_is_said(tmp_path: Path) -> None:
    assert isinstance(read(tmp_path / "none.xlsx"), UnreadableFile)


def test_a_fresh_job_has_every_default() -> None:
    job = blank_job(Path("fair.xlsx"))
    assert (job.roster, job.settings.job_name, job.settings.last_no) == ((), "fair", 0)
    assert [spec.decal for spec in job.designs] == ["Shared line", "Name"]
    assert job.presses[0].name == "Plate press"
    assert len(job.blanks) > 100
    assert len(job.films) > 30


# settings


def test_settings_and_their_cells(reading_of: Read) -> None:
    reading = reading_of(
        LIST,
        Job=[
            ["The job"],
            ["Setting", "Value", "Meaning"],
            ["Job name", "Fair", ""],
            ["needed by", datetime(2026, 6, 14)],
            ["Length unit", "centimeters"],
            ["Gap between decals", 0.5],
            ["Longest cut (ft)", 5],
            ["Film end margin", '1/2"'],
            ["Turn decals", "no"],
            ["Start", "8:30"],
            ["Margin or fixed price", "30 %"],
            ["Labor per hour", "$12.50"],
            ["Paper", "a4"],
            ["Shared line", None],
        ],
    )
    used = reading.job.settings
    assert reading.problems == ()
    assert (used.job_name, used.needed_by, used.length_unit, used.paper) == ("Fair", "14-Jun-2026", "cm", "A4")
    assert (used.gap, used.longest_cut, used.end_margin) == (5.0, 1524.0, 12.7)
    assert (used.turn, used.mirror, used.start) == (False, True, 510)
    assert (used.margin, used.fixed_price, used.labor_per_hour) == (Decimal("0.3"), None, Decimal("12.50"))
    assert used.longest_strip == 609.6  # a default keeps its own unit
    assert reading.job.setting_cells["Gap between decals"] == ("Job", "B6")
    assert "Shared line" not in reading.job.setting_cells


def test_unclear_and_unknown_settings(reading_of: Read) -> None:
    reading = reading_of(
        LIST, Job=[["Setting", "Value"], ["Gap betwen decals", 1], ["Longest cut", "far"], ["Shirts per strip", 40],
                   ["Price rounding", "#N/A"]],
    )  # fmt: skip
    assert found(reading) == [
        ("setting-unknown", "Job", "A2"),
        ("setting-unclear", "Job", "B3"),
        ("setting-unclear", "Job", "B4"),
        ("setting-unclear", "Job", "B5"),
    ]
    assert reading.problems[0].suggestion == "Gap between decals"
    assert "6 ft was used" in reading.problems[1].sentence
    assert "a number from 1 to 12, or “by itself”" in reading.problems[2].sentence
    assert (reading.job.settings.longest_cut, reading.job.settings.shirts_per_strip) == (1828.8, None)


# garments, film, press, designs
