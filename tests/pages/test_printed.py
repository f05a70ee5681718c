"""The pages as an office program prints them: how many, whole, and enough by their text alone."""

import re
from collections import Counter
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any
from zipfile import ZipFile

import pytest
from openpyxl import load_workbook
from openpyxl.worksheet.worksheet import Worksheet

from tests.page_jobs import OFFICE, TO_TEXT, Printed
from tests.pages.page_reader import answers
from xlbatch.pages.work import corner_text, look_up, where_text
from xlbatch.placement.place import Place
from xlbatch.sheets.write import write_plan
from xlbatch.units import LengthUnit, film_text, temperature_text

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
    """Which strip, which run, where on the garment, at what heat, what is owed: read from the paper, not the cells."""
    work, said = look_up(printed.plan), answers(printed.workbook.with_suffix(".pdf"))
    assert set(said) == set(work.garments)
    for no, answer in said.items():
        lies = [work.lies[decal.id] for decal in work.decals[no]]
        assert answer.strips == {(run.no, strip.batch) for run, strip in lies}, no
        assert answer.pieces == {decal.id for decal in work.decals[no]}, no
        assert answer.heats == {temperature_text(step.temperature, "°F") for step in work.steps[no]}, no
        assert len(answer.steps) == len(work.steps[no]), no
        for step, told in zip(work.steps[no], answer.steps, strict=True):
            assert (step.place.decal.piece if step.place.register else step.place.decal.spec.position) in told
            assert where(step.place, work.unit) in told.replace("\u00a0", " ")


def where(place: Place, unit: LengthUnit) -> str:
    return corner_text(place.register, unit) if place.register else where_text(place, unit)[0]


def test_the_hand_out_says_what_each_garment_costs_whom(printed: Printed) -> None:
    work, said = look_up(printed.plan), answers(printed.workbook.with_suffix(".pdf"))
    for no, line in work.money.items():
        if line.owed is None:
            assert said[no].owed == ""
        else:
            amount = f"{abs(line.owed):,.2f}"
            assert said[no].owed == (amount if line.owed > 0 else f"credit {amount}" if line.owed < 0 else "paid")
            assert line.owed <= 0 or f"to pay {amount}" in tag_texts(printed)


def tag_texts(printed: Printed) -> str:
    return by_sheet(printed.pages)["Bag tags"].replace("$", "")


def inches(text: str) -> Fraction:
    """`67 1/2` as a number."""
    return sum(map(Fraction, text.split()), Fraction(0))


def test_people_film_and_money_agree_between_sheets(printed: Printed, tmp_path: Path) -> None:
    """Two of one name in two groups are two people; film is the sum of the printed runs; sums are those of the rows."""
    write_plan(tmp_path / "plan.xlsx", printed.plan)
    book = load_workbook(tmp_path / "plan.xlsx", data_only=True)
    job = {row[0]: row[1] for row in book["Job sheet"].iter_rows(values_only=True) if row[0]}
    needs = rows_of(book["Film requirement"], "Film")
    sheets = by_sheet(printed.pages)
    day = re.sub(r"\s+", " ", sheets["Order of the day"])

    assert len({(garment.who, garment.group) for garment in printed.plan.garments}) == job["People"]
    assert f"{job['People']} people" in day

    loads: dict[str, Fraction] = {}
    for film, load in re.findall(r"RUN \d+ +(\S.*?) +load ([\d /]+) in", sheets["Cut and weed"]):
        loads[film] = loads.get(film, Fraction(0)) + inches(load)
    assert {need["Film"]: need["Length (in)"] for need in needs if need["Runs"]} == loads
    for film, load in loads.items():
        assert f"{film}: {film_text(float(load) * 25.4, 'in')}" in day

    lines = [line["Owed"] for line in rows_of(book["Money"], "Garment no.") if isinstance(line["Garment no."], int)]
    if all(isinstance(owed, int | float) for owed in lines):
        everyone = f"{sum(Decimal(str(owed)) for owed in lines):,.2f}"
        assert f"{job['Owed']:,.2f}" == everyone
        assert f"${everyone}" in day
        assert "still owed" in day
        assert re.search(rf"Everyone: {len(lines)} .*{re.escape(everyone)}", sheets["Hand-out"])


def rows_of(sheet: Worksheet, first: str) -> list[dict[str, Any]]:
    """The rows of a table below the heading row that begins so."""
    rows = list(sheet.iter_rows(values_only=True))
    head = next(at for at, row in enumerate(rows) if row[0] == first)
    return [dict(zip(map(str, rows[head]), row, strict=True)) for row in rows[head + 1 :] if row[0] is not None]


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
    """At the press, the cutter and the weeding table at least 11 points, nothing under 8."""
    book = load_workbook(printed.workbook)
    for sheet in book:
        sizes = Counter(cell.font.sz for row in sheet.iter_rows() for cell in row if cell.value is not None)
        assert min(sizes) >= 8, sheet.title
        if sheet.title in ("Cut and weed", "Press cards", "Placement pictures"):
            assert [size for size in sizes if size < 11] in ([], [9]), sheet.title
            assert sizes[9] <= 1, sheet.title  # the job's name beside the title


def test_the_workbook_is_whole(printed: Printed) -> None:
    with ZipFile(printed.workbook) as archive:
        assert archive.testzip() is None
