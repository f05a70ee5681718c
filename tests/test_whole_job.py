"""The whole job on the example workbooks: what goes in comes out, once, everywhere it must."""

import shutil
from collections import Counter
from collections.abc import Mapping
from datetime import datetime
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest
from fontTools.pens.areaPen import AreaPen
from fontTools.pens.boundsPen import BoundsPen
from fontTools.pens.recordingPen import RecordingPen
from fontTools.svgLib.path import parse_path
from openpyxl import load_workbook

from xlbatch.film.verify import faults
from xlbatch.geometry.path import path_data
from xlbatch.plan import Plan
from xlbatch.roster.read import Reading, read
from xlbatch.run import Options, Outcome, make_plan, run
from xlbatch.sheets.all_sheets import JOB_SHEET, SHEETS
from xlbatch.tables.typed_over import PLACES
from xlbatch.units import parse_length

EXAMPLES = Path(__file__).parents[1] / "example_workbooks"
NAMES = [JOB_SHEET, *(sheet.name for sheet in SHEETS if sheet.name not in ("Changes", "What if"))]  # of a first plan
TOLD_ANEW = (JOB_SHEET, "Problems")  # what a run says of itself

Table = list[dict[str, Any]]


def plan_file(path: Path, now: datetime = datetime(2026, 5, 4, 9, 30)) -> Outcome:
    return run(path, Options(effort=0), lambda _: None, now)


def made(path: Path) -> Plan:
    reading = read(path)
    assert isinstance(reading, Reading)
    return make_plan(reading, 0, lambda _: None, datetime(2026, 5, 4))


def cells(path: Path) -> Mapping[str, list[tuple[Any, ...]]]:
    book = load_workbook(path, data_only=True)
    return {sheet.title: list(sheet.iter_rows(values_only=True)) for sheet in book}


def table(sheets: Mapping[str, list[tuple[Any, ...]]], sheet: str, key: str) -> Table:
    """The rows of a sheet below the heading row that holds `key`."""
    rows = sheets[sheet]
    at = next(at for at, row in enumerate(rows) if key in row)
    return [dict(zip(map(str, rows[at]), row, strict=True)) for row in rows[at + 1 :]]


def column(rows: Table, start: str) -> str:
    """The full heading, unit and all, that begins with `start`."""
    return next(heading for heading in rows[0] if heading == start or heading.startswith(f"{start} ("))


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The examples, copied where plans may be written beside them."""
    target = tmp_path_factory.mktemp("whole job") / "examples"
    shutil.copytree(EXAMPLES, target)
    return target


@pytest.fixture(scope="module")
def bare(folder: Path) -> Outcome:
    return plan_file(folder / "pottery class.csv")


@pytest.fixture(scope="module")
def relay(folder: Path) -> Outcome:
    return plan_file(folder / "relay squad.xlsx")


@pytest.fixture(
    scope="module", params=["pottery class.csv", "lantern walk.xlsx", "relay squad.xlsx", "cove weekend.xlsx"]
)
def any_plan(request: pytest.FixtureRequest, folder: Path) -> Outcome:
    return plan_file(folder / request.param)


def test_every_example_is_planned_whole(any_plan: Outcome) -> None:
    assert any_plan.code == 0
    assert any_plan.written is not None
    assert load_workbook(any_plan.written).sheetnames == NAMES


def test_a_bare_list_gets_the_default_design(bare: Outcome, folder: Path) -> None:
    plan = made(folder / "pottery class.csv")
    assert len(plan.garments) == 20
    for garment, decal in zip(plan.garments, plan.decals, strict=True):
        assert decal.text == garment.who
        assert decal.film == "Black smooth"
        assert (garment.blank.garment, garment.color) == ("Crew-neck tee", "white")
        assert decal.width <= 9 * 25.4 * max(1, garment.blank.chest / (20 * 25.4)) + 6.35 / 2 + 0.01
    assert bare.cut_files is not None
    cut = [path.name for path in bare.cut_files.iterdir() if "mirrored" in path.name]
    assert len(cut) == len(plan.layout.runs)


def test_the_printed_sheets_are_few_and_the_workbook_small(folder: Path) -> None:
    """As a person gets it, at the default effort."""
    usual = run(folder / "relay squad.xlsx", Options(), lambda _: None, datetime(2026, 5, 4))
    assert usual.written is not None
    said = next(str(row[0]) for row in cells(usual.written)["Job sheet"] if str(row[0]).startswith("Print these"))
    assert 10 <= int(said.split()[2]) <= 18
    assert usual.written.stat().st_size <= 44 * 15_000  # 1.5 MB for 100 garments


def test_dropping_an_untouched_plan_gives_equal_sheets(any_plan: Outcome) -> None:
    assert any_plan.written is not None
    again = plan_file(any_plan.written, datetime(2027, 1, 1))
    assert again.written is not None
    first, second = cells(any_plan.written), cells(again.written)
    for name in NAMES:
        if name not in TOLD_ANEW:
            assert known_of(second[name]) == known_of(first[name]), name
    assert any_plan.cut_files is not None
    assert again.cut_files is not None
    assert files(again.cut_files) == files(any_plan.cut_files)


def known_of(rows: list[tuple[Any, ...]]) -> list[tuple[Any, ...]]:
    """The rows of a sheet; of the memory without what it keeps of sheets that tell of the run itself."""
    return [row for row in rows if not (row[0] == PLACES and row[1] in TOLD_ANEW)]


def files(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in sorted(folder.iterdir())}


def test_changing_the_length_unit_changes_no_garment_and_no_decal(bare: Outcome, tmp_path: Path) -> None:
    assert bare.written is not None
    path = tmp_path / "metric.xlsx"
    book = load_workbook(bare.written)
    cell = next(row[1] for row in book["Job"].iter_rows() if row[0].value == "Length unit")
    assert cell.value == "in"
    cell.value = "cm"
    book.save(path)
    metric, inches = made(path), made(bare.written)
    assert metric.job.settings.length_unit == "cm"
    assert [(d.id, d.text, d.width, d.height) for d in metric.decals] == [
        (d.id, d.text, d.width, d.height) for d in inches.decals
    ]
    assert [(g.no, g.blank.size, g.blank.chest) for g in metric.garments] == [
        (g.no, g.blank.size, g.blank.chest) for g in inches.garments
    ]
    assert plan_file(path).code == 0


def test_the_same_workbook_gives_the_same_plan(folder: Path) -> None:
    path = folder / "lantern walk.xlsx"
    before = path.read_bytes()
    one, two = plan_file(path), plan_file(path, datetime(2026, 6, 30))  # before any of its days
    assert one.written is not None
    assert two.written is not None
    assert path.read_bytes() == before
    first, second = cells(one.written), cells(two.written)
    differing = [
        (name, a, b)
        for name in NAMES
        for row_a, row_b in zip(first[name], second[name], strict=True)
        for a, b in zip(row_a, row_b, strict=True)
        if a != b
    ]
    assert len(differing) == 1, differing
    assert differing[0][0] == "Job sheet"
    assert one.cut_files is not None
    assert two.cut_files is not None
    assert files(one.cut_files) == files(two.cut_files)


def test_every_decal_is_on_one_run_in_placement_and_in_the_press_log(relay: Outcome, folder: Path) -> None:
    plan = made(folder / "relay squad.xlsx")
    assert len(plan.garments) >= 40
    assert {garment.blank.neckline for garment in plan.garments} >= {"V", "crew"}
    assert {garment.blank.size for garment in plan.garments} >= {"3XL"}
    assert {garment.blank.for_ for garment in plan.garments} >= {"adult", "youth"}
    assert len({decal.film for decal in plan.decals}) == 3
    wanted = {(garment.no, spec.decal) for garment in plan.garments for spec in garment.design}
    assert {(decal.garment_no, decal.spec.decal) for decal in plan.decals} == wanted
    ids = sorted(decal.id for decal in plan.decals)
    assert relay.written is not None
    sheets = cells(relay.written)
    for sheet in ("Decals", "Placement", "Press log"):
        rows = [row for row in table(sheets, sheet, "Decal") if row["Garment no."] is not None and row["Decal"]]
        assert sorted(row["Decal"] for row in rows) == ids, sheet
    listed = [each for row in table(sheets, "Cut list", "Strip") if row["Decals"] for each in row["Decals"].split(", ")]
    assert sorted(listed) == ids
    assert faults(plan.layout, plan.decals, plan.job.settings) == ()


def test_the_sheets_sums_agree(relay: Outcome, folder: Path) -> None:
    assert relay.written is not None
    sheets = cells(relay.written)
    shopping = [row for row in table(sheets, "Shopping list", "Kind") if row["Kind"] in ("blank", "film", "supply")]
    needs = [row for row in table(sheets, "Film requirement", "Film") if row["Decals"] and row["Color"]]
    runs = [row for row in table(sheets, "Runs", "Run") if row["Run"]]
    decals = [row for row in table(sheets, "Decals", "Decal") if row["Decal"]]
    garments = [row for row in table(sheets, "Money", "Garment no.") if isinstance(row["Garment no."], int)]
    assert sum(row["Needed"] for row in shopping if row["Kind"] == "blank") == len(garments)
    assert sum(row["Decals"] for row in needs) == len(decals) == sum(row["Decals"] for row in runs)
    assert sum(row["Runs"] for row in needs) == len(runs)
    for kind, heading in (("blank", "Blank"), ("film", "Film")):
        bought = round(sum(row["Cost"] or 0 for row in shopping if row["Kind"] == kind), 2)
        assert round(sum(row[heading] for row in garments), 2) == bought > 0
    assert round(sum(row["Cost"] for row in needs), 2) == round(sum(row["Film"] for row in garments), 2)
    for row in shopping:
        assert row["Buy"] == max(0, row["Needed"] + row["Spares"] - row["On hand"])
    plan = made(folder / "relay squad.xlsx")
    assert Counter(row["Film"] for row in decals) == Counter(decal.film for decal in plan.decals)


def test_lengths_of_runs_stay_within_the_longest_cut(any_plan: Outcome) -> None:
    assert any_plan.written is not None
    sheets = cells(any_plan.written)
    runs = [row for row in table(sheets, "Runs", "Run") if row["Run"]]
    heading = column(runs, "Length")
    longest = parse_length("6 ft", "in")
    assert longest is not None
    unit = heading.split("(")[1].rstrip(")")
    for row in runs:
        length = parse_length(row[heading], unit)
        assert length is not None
        assert length <= longest + 0.01


def test_no_step_is_hotter_than_its_garment_bears(any_plan: Outcome) -> None:
    from xlbatch.check.heat import heat_limit

    assert any_plan.written is not None
    for step in made(any_plan.written).pressing.steps:
        limit = heat_limit(step.place.garment.blank)
        assert limit is None or step.temperature <= limit.celsius + 0.5


def test_a_cut_file_measures_what_runs_says(any_plan: Outcome) -> None:
    """Measured apart, by fontTools from the file's own path data, to 0.1 mm."""
    assert any_plan.written is not None
    assert any_plan.cut_files is not None
    runs = [row for row in table(cells(any_plan.written), "Runs", "Run") if row["Run"]]
    across, along = column(runs, "Measures across"), column(runs, "Measures along")
    unit = across.split("(")[1].rstrip(")")
    for row in runs:
        svg = ElementTree.parse(any_plan.cut_files / row["Cut file"]).getroot()
        pen = BoundsPen(None)
        for path in svg.iter("{http://www.w3.org/2000/svg}path"):
            assert path.attrib["d"].count("M") == path.attrib["d"].count("Z") > 0  # every contour is closed
            parse_path(path.attrib["d"], pen)
        left, top, right, bottom = pen.bounds
        assert parse_length(row[across], unit) == pytest.approx(right - left, abs=0.1)
        assert parse_length(row[along], unit) == pytest.approx(bottom - top, abs=0.1)
        assert svg.attrib["viewBox"].split()[2:] == [
            svg.attrib[side].removesuffix("mm") for side in ("width", "height")
        ]


def test_each_decal_is_mirrored_exactly_once(relay: Outcome, folder: Path) -> None:
    """A decal's outline in the file, turned back and mirrored about a vertical line, is its upright outline."""
    assert relay.cut_files is not None
    plan = made(folder / "relay squad.xlsx")
    drawn = {
        group.attrib["id"]: group[1].attrib["d"]
        for file in sorted(relay.cut_files.glob("*already mirrored.svg"))
        for group in ElementTree.parse(file).getroot().iter("{http://www.w3.org/2000/svg}g")
        if group.attrib["id"].startswith("D")
    }
    assert set(drawn) == {decal.id for decal in plan.decals}
    for run_ in plan.layout.runs:
        for lying in run_.lying:
            assert lying.decal.outline is not None
            upright, cut = RecordingPen(), RecordingPen()
            parse_path(path_data(lying.decal.outline.segments), upright)
            parse_path(drawn[lying.decal.id], cut)
            signs = signed_area(upright.value) * signed_area(cut.value)
            assert signs > 0  # the file's y runs down and the picture is mirrored: two flips keep the sense of turning


def signed_area(value: list[tuple[str, tuple[tuple[float, float], ...]]]) -> float:
    pen = AreaPen()
    for verb, points in value:
        getattr(pen, verb)(*points)
    return float(pen.value)
