"""Builders: a workbook from lists of rows, and its plan."""

import os
from collections.abc import Callable, Generator
from datetime import datetime
from pathlib import Path

import pytest
from hypothesis import settings

from tests.workbooks import Rows, write_workbook
from xlbatch.plan import Plan
from xlbatch.roster.read import Reading, read
from xlbatch.run import make_plan

settings.register_profile("the same on every machine", derandomize=True, deadline=None)
settings.load_profile("the same on every machine")
RUN_AT = datetime(2026, 5, 4, 9, 30)


@pytest.fixture
def reading_of(tmp_path: Path) -> Callable[..., Reading]:
    """Reads a workbook made from rows: reading_of([["Who", "Size"], ["Ana", "M"]], Job=[…])."""

    def make(roster: Rows, **sheets: Rows) -> Reading:
        path = write_workbook(tmp_path / "roster.xlsx", {"Roster": roster, **sheets})
        reading = read(path)
        assert isinstance(reading, Reading)
        return reading

    return make


@pytest.fixture
def plan_of(reading_of: Callable[..., Reading]) -> Callable[..., Plan]:
    """The plan of a workbook made from rows."""

    def make(roster: Rows, **sheets: Rows) -> Plan:
        return make_plan(reading_of(roster, **sheets), 0, lambda _stage: None, RUN_AT)

    return make


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport() -> Generator[None, pytest.TestReport, pytest.TestReport]:
    """Where nothing may be skipped, as in .ci/run, a test that would be fails and says what it needs."""
    report = yield
    if report.skipped and os.environ.get("XLBATCH_SKIP_NOTHING") and not hasattr(report, "wasxfail"):
        report.outcome = "failed"
    return report
