"""Whatever program opens the workbook sees the same values, and text stays text."""

import math
from collections.abc import Mapping
from datetime import datetime, time, timedelta
from pathlib import Path
from typing import Any

import pandas as pd
import pytest
from openpyxl import load_workbook
from python_calamine import CalamineWorkbook

from xlbatch.plan import Plan
from xlbatch.sheets.write import write_plan

Cells = Mapping[tuple[int, int], object]


def same(value: Any) -> object:
    """One spelling for what readers give differently: blanks, whole numbers, times, numbers as text."""
    if isinstance(value, time):
        value = (value.hour * 60 + value.minute) / 1440
    elif isinstance(value, timedelta):
        value = value.total_seconds() / 86400
    elif isinstance(value, datetime):
        value = (value - datetime(1899, 12, 30)).total_seconds() / 86400
    if isinstance(value, float | int):
        return f"{value:.6g}"
    text = str(value if value is not None else "")
    try:
        number = float(text)
    except ValueError:
        pass
    else:
        if math.isfinite(number) and text.replace(".", "").replace("-", "").isdigit() and "0" != text[:1] != "":
            return f"{number:.6g}"
    clock = text.split(":")
    if len(clock) == 3 and all(part.isdigit() for part in clock):
        return same((int(clock[0]) * 60 + int(clock[1])) / 1440)
    return text


def filled(rows: list[list[Any]]) -> Cells:
    return {(row, at): same(v) for row, cells in enumerate(rows) for at, v in enumerate(cells) if same(v) != ""}


def with_openpyxl(path: Path) -> Mapping[str, Cells]:
    book = load_workbook(path, data_only=True)
    return {sheet.title: filled([[cell.value for cell in row] for row in sheet.iter_rows()]) for sheet in book}


def with_pandas(path: Path) -> Mapping[str, Cells]:
    frames = pd.read_excel(path, sheet_name=None, header=None, dtype=str, keep_default_na=False, engine="openpyxl")
    return {str(name): filled(frame.to_numpy().tolist()) for name, frame in frames.items()}


def with_calamine(path: Path) -> Mapping[str, Cells]:
    book = CalamineWorkbook.from_path(path)
    return {name: filled(book.get_sheet_by_name(name).to_python(skip_empty_area=False)) for name in book.sheet_names}


@pytest.mark.parametrize("fixture", ["written", "written_metric"])
def test_three_readers_agree_on_every_cell(fixture: str, request: pytest.FixtureRequest) -> None:
    path = request.getfixturevalue(fixture)
    first = with_openpyxl(path)
    assert sum(map(len, first.values())) > 1500
    for other in (with_pandas(path), with_calamine(path)):
        for name, cells in first.items():
            assert other[name] == cells, name


def test_every_formula_carries_a_value(formulas: Mapping[str, Any], book: Mapping[str, Any]) -> None:
    live = [cell for sheet in formulas.values() for row in sheet.iter_rows() for cell in row if cell.data_type == "f"]
    assert len(live) > 50
    for cell in live:
        value = book[cell.parent.title][cell.coordinate].value
        assert isinstance(value, int | float | str | None), cell.coordinate  # None: a blank text


def test_the_same_plan_gives_the_same_bytes(plan: Plan, written: Path, tmp_path: Path) -> None:
    write_plan(tmp_path / "again.xlsx", plan)
    assert (tmp_path / "again.xlsx").read_bytes() == written.read_bytes()


def test_the_time_of_the_run_stands_in_one_cell(book: Mapping[str, Any]) -> None:
    cells = [cell for sheet in book.values() for row in sheet.iter_rows() for cell in row]
    assert [cell.parent.title for cell in cells if "2026-05-04" in str(cell.value)] == ["Job sheet"]


@pytest.mark.parametrize("name", ["=1+1", "+Plus", "-Minus", "@At", "TRUE", "NA", "1E5", "Null"])
@pytest.mark.parametrize("sheet", ["Roster", "Proof", "Placement", "Press log", "Money", "Decals", "Bag tags"])
def test_names_stay_text(formulas: Mapping[str, Any], sheet: str, name: str) -> None:
    found = [cell for row in formulas[sheet].iter_rows() for cell in row if cell.value == name]
    assert found
    assert {cell.data_type for cell in found} == {"s"}


def test_a_number_keeps_its_zero(book: Mapping[str, Any]) -> None:
    values = {cell.value for row in book["Roster"].iter_rows() for cell in row}
    assert {"07", "00", "3"} <= values


def test_the_limits_of_a_spreadsheet(book: Mapping[str, Any]) -> None:
    """1–31 characters without * / ? [ ] : \\ in a sheet's name, 32,767 in a cell: the file format's own limits."""
    for name, sheet in book.items():
        assert 1 <= len(name) <= 31
        assert not set(name) & set("*/?[]:\\")
        assert all(len(str(cell.value)) <= 32_767 for row in sheet.iter_rows() for cell in row)
