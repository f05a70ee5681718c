"""Printed through an office program: pages are whole, nothing is cut off, and live formulas come to what is cached."""

import re
import shutil
import subprocess
from collections.abc import Mapping
from pathlib import Path

import pytest
from openpyxl import load_workbook

from xlbatch.plan import Plan
from xlbatch.sheets.all_sheets import JOB_SHEET, SHEETS
from xlbatch.sheets.job_sheet import PRINT_THESE

OFFICE, TO_TEXT = shutil.which("soffice"), shutil.which("pdftotext")
pytestmark = pytest.mark.skipif(
    not OFFICE or not TO_TEXT, reason="printing needs LibreOffice and poppler's pdftotext, which are not installed"
)
# an office program keeps cached values unless told to compute all anew
RECALCULATE = (
    '<?xml version="1.0" encoding="UTF-8"?><oor:items xmlns:oor="http://openoffice.org/2001/registry">'
    '<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse">'
    "<value>0</value></prop></item></oor:items>"
)


@pytest.fixture(scope="module")
def profile(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("office")
    (folder / "user").mkdir()
    (folder / "user" / "registrymodifications.xcu").write_text(RECALCULATE, encoding="utf-8")
    return folder


def convert(source: Path, ending: str, profile: Path, folder: Path) -> Path:
    arguments = ["--headless", "--convert-to", ending, "--outdir", str(folder), str(source)]
    subprocess.run(
        [str(OFFICE), f"-env:UserInstallation={profile.as_uri()}", *arguments], check=True, capture_output=True
    )
    return folder / f"{source.stem}.{ending}"


@pytest.fixture(scope="module", params=["written", "written_metric"])
def pages(request: pytest.FixtureRequest, profile: Path, tmp_path_factory: pytest.TempPathFactory) -> list[str]:
    """The text of each printed page."""
    pdf = convert(request.getfixturevalue(request.param), "pdf", profile, tmp_path_factory.mktemp("pdf"))
    text = subprocess.run([str(TO_TEXT), "-layout", str(pdf), "-"], check=True, capture_output=True).stdout
    return text.decode("utf-8").rstrip("\f").split("\f")


PRINTED = [sheet.name for sheet in SHEETS if not sheet.hidden and sheet.name not in ("Changes", "What if")]


def by_sheet(pages: list[str]) -> Mapping[str, list[str]]:
    """The pages of each sheet, known by the footer: job, sheet, page number."""
    found: dict[str, list[str]] = {name: [] for name in (JOB_SHEET, *PRINTED)}
    for number, page in enumerate(pages, 1):
        footer = re.search(rf"R&D #2 – Sommer\s+(.+?)\s+Page {number} of {len(pages)}\s*$", page)
        assert footer, page[-300:]
        found[footer[1]].append(page)
    return found


def test_every_sheet_prints_and_no_page_is_empty(pages: list[str]) -> None:
    for name, printed in by_sheet(pages).items():
        assert printed, name
        assert all(len(page.split()) > 10 for page in printed), name


def test_the_job_sheet_says_how_many_pages_each_sheet_prints_on(pages: list[str]) -> None:
    sheets = by_sheet(pages)
    said = "\n".join(sheets[JOB_SHEET])
    for name, whom in PRINT_THESE:
        line = re.search(rf"{name}\s+(\d+) pages?, {re.escape(whom[:12])}", said)
        assert line, name
        assert int(line[1]) == len(sheets[name]), name


def test_no_number_is_too_wide_for_its_column(pages: list[str]) -> None:
    assert not [page for page in pages if "###" in page]


def test_tables_repeat_their_headings(pages: list[str]) -> None:
    sheets = by_sheet(pages)
    assert all("Pressed" in page and "Garment" in page for page in sheets["Press log"])
    assert all("Line up by" in page for page in sheets["Placement"])


def test_no_batch_is_split_and_every_box_is_there(pages: list[str], plan: Plan) -> None:
    printed = by_sheet(pages)["Press log"]
    for step in plan.pressing.steps:
        decal = step.place.decal.id
        page = next(page for page in printed if decal in page)
        assert f"Batch {step.batch} " in page, decal
    assert sum(page.count("☐") for page in printed) == 2 * len(plan.pressing.steps)


def test_a_tag_is_on_one_page(pages: list[str], plan: Plan) -> None:
    for page in by_sheet(pages)["Bag tags"]:
        tags = page.count("No. ")
        assert page.count("Received:") == tags
        assert page.count("Wash inside out") == tags
    assert sum(page.count("No. ") for page in by_sheet(pages)["Bag tags"]) == len(plan.garments)


def test_formulas_come_to_their_cached_values(written: Path, profile: Path, tmp_path: Path) -> None:
    again = load_workbook(convert(written, "xlsx", profile, tmp_path), data_only=True)
    cached, live = load_workbook(written, data_only=True), load_workbook(written)
    compared = 0
    for sheet in live:
        for cell in (cell for row in sheet.iter_rows() for cell in row if cell.data_type == "f"):
            now, then = again[sheet.title][cell.coordinate].value, cached[sheet.title][cell.coordinate].value
            if isinstance(then, int | float):
                assert now == pytest.approx(then, abs=1e-6), (sheet.title, cell.coordinate)
            else:
                assert (now or "") == (then or ""), (sheet.title, cell.coordinate)
            compared += 1
    assert compared > 50
