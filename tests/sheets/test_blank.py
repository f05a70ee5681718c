"""The blank workbook: filled in as it stands, with nothing but the sheet itself to go by."""

from pathlib import Path
from typing import Any

import pytest
from openpyxl import load_workbook

from xlbatch.paper.measure import text_width
from xlbatch.paper.style import BODY
from xlbatch.paper.widths import PAD
from xlbatch.roster.people import EXAMPLE_ROW
from xlbatch.roster.read import Reading, blank_job, read
from xlbatch.sheets.blank import COMPLETE
from xlbatch.sheets.inputs import FIRST
from xlbatch.sheets.write import write_blank


@pytest.fixture(scope="module")
def blank(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("blank") / "roster.xlsx"
    write_blank(path, blank_job(path))
    return path


def reading(path: Path) -> Reading:
    found = read(path)
    assert isinstance(found, Reading)
    return found


def filled(blank: Path, path: Path, **changed: str) -> Path:
    """The blank with cells of its example row changed, as a person would write over it."""
    book = load_workbook(blank)
    sheet = book["Roster"]
    for cell in sheet[FIRST]:
        if str(cell.value).replace(" ", "_") in changed:
            sheet[f"{cell.coordinate.rstrip('0123456789')}{FIRST + 1}"].value = changed[
                str(cell.value).replace(" ", "_")
            ]
    book.save(path)
    return path


def test_the_example_row_left_as_it_is_is_no_one(blank: Path) -> None:
    found = reading(blank)
    assert found.job.roster == ()
    assert [problem.code for problem in found.problems] == ["no-rows"]


def test_an_example_row_written_over_is_read(blank: Path, tmp_path: Path) -> None:
    found = reading(filled(blank, tmp_path / "filled.xlsx", Who="Bo Lindahl"))
    assert [(row.who, row.size, row.source.extra) for row in found.job.roster] == [("Bo Lindahl", "M", {})]
    assert found.job.roster[0].note == EXAMPLE_ROW["Note"]
    assert found.problems == ()


def test_the_live_marks_are_no_column_of_the_list(blank: Path) -> None:
    assert COMPLETE not in {heading.found for heading in reading(blank).job.headings}


def test_each_row_is_marked_and_the_title_counts(blank: Path) -> None:
    live, cached = (load_workbook(blank, data_only=only)["Roster"] for only in (False, True))
    at = next(cell.column for cell in live[FIRST] if cell.value == COMPLETE)
    marks = [live.cell(row, at).value for row in range(FIRST + 1, FIRST + 111)]
    assert all(str(mark).startswith("=IF(COUNTA(") for mark in marks)
    assert cached.cell(FIRST + 1, at).value == "example"
    assert str(live["A1"].value).startswith('="Roster: "&COUNTA($D$4:$D$1003)')
    assert cached["A1"].value == "Roster: 0 with a size, 0 without"


def test_every_cell_to_fill_in_says_what_belongs_there(blank: Path) -> None:
    sheet = load_workbook(blank)["Roster"]
    told = {str(each.sqref).partition(":")[0]: each.prompt for each in sheet.data_validations.dataValidation}
    headings = [cell for cell in sheet[FIRST] if cell.value and cell.value != COMPLETE]
    assert len(headings) == 13
    assert all(told[f"{cell.column_letter}{FIRST + 1}"] for cell in headings)


def test_a_heading_refuses_another_text_and_nothing_is_locked(blank: Path) -> None:
    """A locked sheet would take a pasted list's cells and then let no one edit them."""
    sheet: Any = load_workbook(blank)["Roster"]
    assert not sheet.protection.sheet
    rule = next(each for each in sheet.data_validations.dataValidation if f"A{FIRST}" in each.sqref)
    assert (rule.type, rule.formula1, rule.showErrorMessage) == ("custom", "FALSE", True)
    assert all(cell.coordinate in rule.sqref for cell in sheet[FIRST] if cell.value)


def test_rows_grow_with_what_is_typed_and_a_size_is_not_cut_off(blank: Path) -> None:
    sheet = load_workbook(blank)["Roster"]
    assert not any(sheet.row_dimensions[row].height for row in range(FIRST + 1, FIRST + 111))
    size = next(cell.column_letter for cell in sheet[FIRST] if cell.value == "Size")
    assert sheet.column_dimensions[size].width * 7 * 72 / 96 > text_width("Ladies 2XL", BODY) + PAD  # in digits of 7 px


def test_metric(tmp_path: Path) -> None:
    path = tmp_path / "roster.xlsx"
    write_blank(path, blank_job(path, metric=True))
    settings = reading(path).job.settings
    assert (settings.length_unit, settings.temperature_unit, settings.paper) == ("cm", "°C", "A4")
    assert settings.gap == 6  # 1/4 in is 6.35 mm
    sheet = load_workbook(path)["Film"]
    assert {"Roll width (cm)", "Press temperature (°C)"} <= {cell.value for cell in sheet[FIRST]}
