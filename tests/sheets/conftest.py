"""One job with everything that can go wrong in a cell, planned once and written once."""

from collections.abc import Mapping, Sequence
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest
from openpyxl import Workbook, load_workbook

from xlbatch.plan import Plan
from xlbatch.roster.read import Reading, read
from xlbatch.run import make_plan
from xlbatch.sheets.write import write_plan

RUN_AT = datetime(2026, 5, 4, 9, 30)
Rows = Sequence[Sequence[object]]

ROSTER: Rows = (
    ("Who", "Group", "Size", "Color", "Design", "Print name", "Number", "How many", "Paid", "Status", "Bus seat"),
    ("=1+1", "@home", "M", "navy", "Team", "EQUALS", "07", None, "15.00", None, "4A"),
    ("+Plus", "@home", "L", "navy", "Team", "PLUS", "00", None, None, None, None),
    ("-Minus", "*", "Youth M", "navy", "Team", "MINUS", "3", None, "yes", None, None),
    ("@At", "?", "2XL", "white", "Team", "AT", "12", None, None, None, None),
    ("TRUE", "na", "S", None, None, None, None, None, None, None, None),
    ("NA", "NA", "Ladies L", None, None, None, None, None, None, None, None),
    ("1E5", None, "3XL", None, None, None, None, 2, None, None, None),
    ("Null", None, "2T", None, None, None, None, None, None, None, None),
    ("Žofie & <Ann>", "a group's \"own\" name", "XL", None, None, None, None, None, None, None, None),
    ("Held Back", "@home", "Enormous", None, None, None, None, None, None, None, None),
    ("Gone", "@home", "M", None, None, None, None, None, None, "cancelled", None),
    ("María de los Ángeles Fernández-Villanueva", "@home", "M", None, None, "María", None, None, None, None, None),
)  # fmt: skip
DESIGNS: Rows = (
    ("Design", "Decal", "What", "Film", "Layer", "Position", "Height", "Widest", "Outline film", "Outline width"),
    ("Team", "Back name", "print name", "White smooth", 1, "back name", "2 in", "11 in", "Black smooth", "1/8 in"),
    ("Team", "Back number", "number", "Gold glitter", 1, "back number", "8 in", "11 in"),
    ("Name", "Name", "print name", "Black smooth", 1, "full front", "2 in", "9 in"),
)
GARMENTS: Rows = (
    ("Garment", "Size", "Price", "On hand"),
    ("Crew-neck tee", "M", "1 = 4.20; 12 = 3.6", "navy = 3; white = 1"),
    ("Crew-neck tee", "L", 4.1, 2),
)
FILM: Rows = (
    ("Film", "Rolls sold", "On hand"),
    ("White smooth", "1 yd = 5.25; 5 yd = 21.00", "12 in x 40 in"),
    ("Black smooth", "5 yd = 20", None),
)
JOB: Rows = (
    ("Setting", "Value"),
    ("Job name", "R&D #2 – Sommer"),
    ("Margin or fixed price", "12.5 %"),
    ("Price by", "own cost"),
)


def make_workbook(path: Path, job: Rows = JOB) -> Path:
    """The job as a person would save it."""
    book = Workbook()
    del book["Sheet"]
    sheets = {"Roster": ROSTER, "Designs": DESIGNS, "Garments": GARMENTS, "Film": FILM, "Job": job}
    for name, rows in sheets.items():
        sheet = book.create_sheet(name)
        for at, row in enumerate(rows, 1):
            for column, value in enumerate(row, 1):
                sheet.cell(at, column, value).data_type = "s" if isinstance(value, str) else "n"
    book.save(path)
    return path


def plan_at(path: Path) -> Plan:
    reading = read(path)
    assert isinstance(reading, Reading)
    return make_plan(reading, 0, lambda _stage: None, RUN_AT)


@pytest.fixture(scope="session")
def job_path(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return make_workbook(tmp_path_factory.mktemp("job") / "list.xlsx")


@pytest.fixture(scope="session")
def plan(job_path: Path) -> Plan:
    return plan_at(job_path)


@pytest.fixture(scope="session")
def metric(tmp_path_factory: pytest.TempPathFactory) -> Plan:
    """The same job in cm and °C on A4, in a currency of letters."""
    settings = (("Length unit", "cm"), ("Temperature unit", "°C"), ("Paper", "A4"), ("Currency", "CHF"))
    return plan_at(make_workbook(tmp_path_factory.mktemp("metric") / "list.xlsx", (*JOB, *settings)))


@pytest.fixture(scope="session")
def written(plan: Plan, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("plan") / "list - plan.xlsx"
    write_plan(path, plan)
    return path


@pytest.fixture(scope="session")
def written_metric(metric: Plan, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("metric plan") / "list - plan.xlsx"
    write_plan(path, metric)
    return path


@pytest.fixture(scope="session")
def book(written: Path) -> Mapping[str, Any]:
    """The returned sheets by name, with values in place of formulas."""
    return {sheet.title: sheet for sheet in load_workbook(written, data_only=True)}


@pytest.fixture(scope="session")
def formulas(written: Path) -> Mapping[str, Any]:
    """The returned sheets by name, with formulas."""
    return {sheet.title: sheet for sheet in load_workbook(written)}
