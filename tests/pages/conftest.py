"""The three jobs planned and their pages written, on Letter and on A4."""

import subprocess
from collections.abc import Mapping
from datetime import datetime
from pathlib import Path

import pytest

from tests.page_jobs import JOBS, OFFICE, TO_TEXT, Printed
from xlbatch.pages.write_pages import write_pages
from xlbatch.plan import Plan
from xlbatch.roster.read import Reading, read
from xlbatch.run import make_plan


def planned(path: Path) -> Plan:
    reading = read(path)
    assert isinstance(reading, Reading)
    return make_plan(reading, 0, lambda _: None, datetime(2026, 5, 4, 9, 30))


@pytest.fixture(scope="session")
def plans(tmp_path_factory: pytest.TempPathFactory) -> Mapping[tuple[str, str], Plan]:
    return {
        (name, paper): planned(make(tmp_path_factory.mktemp("job"), paper))
        for name, (make, _) in JOBS.items()
        for paper in ("Letter", "A4")
    }


@pytest.fixture(scope="session", params=[(name, paper) for name in JOBS for paper in ("Letter", "A4")], ids=" ".join)
def printed(
    request: pytest.FixtureRequest,
    plans: Mapping[tuple[str, str], Plan],
    tmp_path_factory: pytest.TempPathFactory,
) -> Printed:
    name, _ = request.param
    folder = tmp_path_factory.mktemp("pages")
    workbook = folder / f"{name} - to print.xlsx"
    write_pages(workbook, plans[request.param], f"{name} - plan.xlsx")
    profile = f"-env:UserInstallation={(tmp_path_factory.getbasetemp() / 'office').as_uri()}"
    arguments = [profile, "--headless", "--convert-to", "pdf", "--outdir", str(folder), str(workbook)]
    subprocess.run([str(OFFICE), *arguments], check=True, capture_output=True)
    text = subprocess.run(
        [str(TO_TEXT), "-layout", str(workbook.with_suffix(".pdf")), "-"], check=True, capture_output=True
    ).stdout.decode("utf-8")
    return Printed(plans[request.param], workbook, JOBS[name][1], tuple(text.rstrip("\f").split("\f")))
