"""The pages as an office program prints them: how many, whole, and enough by their text alone."""

import re
from collections import Counter
from zipfile import ZipFile

import pytest
from openpyxl import load_workbook

from tests.page_jobs import OFFICE, TO_TEXT, Printed
from xlbatch.pages.work import look_up
from xlbatch.units import printed_number, temperature_text

pytestmark = pytest.mark.skipif(
    not OFFICE or not TO_TEXT, reason="printing needs LibreOffice and poppler's pdftotext, which are not installed"
)


def by_sheet(pages: tuple[str, ...]) -> dict[str, str]:
    """The text of each sheet, known by the footer."""
    found: dict[str, str] = {}
    for number, page in enumerate(pages, 1):
        footer = re.search(rf"(\S.*?)\. Results are typed in the plan\.\s+Page {number} of {len(pages)}\s*$", page)
        assert footer, page[-200:]
        sheet = re.split(r"\s{3,}", footer[1])[-1]
        found[sheet] = found.get(sheet, "") + page
    return found


def test_sheets_are_locked_without_a_password(printed: Printed) -> None:
    for sheet in load_workbook(printed.workbook):
        assert sheet.protection.sheet
        assert not sheet.protection.password


def test_a_job_takes_few_pages(printed: Printed) -> None:
    assert len(printed.pages) <= printed.most


def test_the_order_of_the_day_names_the_pages(printed: Printed) -> None:
    sheets = by_sheet(printed.pages)
    assert "Page" in sheets["Order of the day"]
    first = next(at for at, page in enumerate(printed.pages, 1) if "Press cards. Results" in page)
    assert re.search(rf"Press batch by batch\s.*?\b{first}(–\d+)?\b", sheets["Order of the day"], re.S)


def test_the_text_alone_answers_for_every_garment(printed: Printed) -> None:
    """Which strip, which run, where on the garment, at what heat, what is owed."""
    work, sheets = look_up(printed.plan), by_sheet(printed.pages)
    cutting, cards = sheets["Cut and weed"], sheets["Press cards"]
    for run in printed.plan.layout.runs:
        assert re.search(rf"RUN {run.no} +{run.film.name} +load", cutting)
    for no, decals in work.decals.items():
        garment = work.garments[no]
        for decal in decals:
            assert decal.id in cutting
            place = work.places[decal.id]
            if place.register is None and place.below_collar is not None:
                assert printed_number(place.below_collar, work.unit) in cards
        assert re.search(rf"\b{no}\b", cards), no
        line = work.money[no]
        if line.owed:
            assert f"{abs(line.owed):,.2f}" in sheets["Hand-out"]
            assert f"{abs(line.owed):,.2f}" in sheets["Bag tags"]
        assert garment.who.split()[0] in sheets["Bag tags"]
    for step in printed.plan.pressing.steps:
        assert temperature_text(step.temperature, "°F") in cards


def test_every_box_is_there(printed: Printed) -> None:
    sheets = by_sheet(printed.pages)
    pieces = len(printed.plan.decals)
    strips = sum(len(run.strips) for run in printed.plan.layout.runs)
    assert sheets["Cut and weed"].count("☐") == pieces + 2 * strips
    cards = sheets["Press cards"]
    assert cards.count("☐") == len(printed.plan.pressing.steps) + cards.count("STOP")  # the STOP after batch 1


def test_no_number_is_too_wide_for_its_cell(printed: Printed) -> None:
    assert not [page for page in printed.pages if "###" in page]


def test_letters_are_large_enough(printed: Printed) -> None:
    """At the press, the cutter and the weeding table at least 11 points but for small print of 9, nothing under 8."""
    book = load_workbook(printed.workbook)
    for sheet in book:
        sizes = Counter(cell.font.sz for row in sheet.iter_rows() for cell in row if cell.value is not None)
        assert min(sizes) >= 8, sheet.title
        if sheet.title in ("Press cards", "Placement pictures"):
            small = [cell.coordinate for row in sheet.iter_rows() for cell in row if cell.value and cell.font.sz < 11]
            assert small in ([], [small[0]]) if small else True, (sheet.title, small)


def test_the_workbook_is_whole(printed: Printed) -> None:
    with ZipFile(printed.workbook) as archive:
        assert archive.testzip() is None
