"""The workbook as a package of XML parts (ECMA-376, part 2): every part typed, every relationship met, ids unique."""

import posixpath
import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any
from xml.etree import ElementTree
from zipfile import ZipFile

import pytest
from openpyxl import load_workbook
from openpyxl.utils import range_boundaries

from xlbatch.pictures.ruler import WIDTH
from xlbatch.roster.read import blank_job
from xlbatch.sheets.write import write_blank

PACKAGE = "{http://schemas.openxmlformats.org/package/2006/"
MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
DRAWING = "{http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing}"
PICTURE = "{http://schemas.openxmlformats.org/drawingml/2006/main}"
EMU = 12_700  # English metric units a point

Parts = Mapping[str, bytes]


def parts_of(path: Path) -> Parts:
    with ZipFile(path) as package:
        assert len(package.namelist()) == len(set(package.namelist()))
        return {name: package.read(name) for name in package.namelist()}


@pytest.fixture(scope="module", params=["plan", "blank"])
def parts(request: pytest.FixtureRequest, written: Path, tmp_path_factory: pytest.TempPathFactory) -> Parts:
    if request.param == "plan":
        return parts_of(written)
    path = tmp_path_factory.mktemp("blank") / "roster.xlsx"
    write_blank(path, blank_job(path))
    return parts_of(path)


def test_every_part_has_a_content_type(parts: Parts) -> None:
    types = ElementTree.fromstring(parts["[Content_Types].xml"])
    endings = {each.attrib["Extension"] for each in types.iter(f"{PACKAGE}content-types}}Default")}
    named = {each.attrib["PartName"] for each in types.iter(f"{PACKAGE}content-types}}Override")}
    for name in parts:
        assert f"/{name}" in named or name.rpartition(".")[2] in endings, name
    assert named <= {f"/{name}" for name in parts}


def test_every_relationship_leads_to_a_part(parts: Parts) -> None:
    for name in (name for name in parts if name.endswith(".rels")):
        folder = posixpath.dirname(posixpath.dirname(name))
        ids = []
        for each in ElementTree.fromstring(parts[name]).iter(f"{PACKAGE}relationships}}Relationship"):
            ids.append(each.attrib["Id"])
            if each.attrib.get("TargetMode") != "External":
                target = posixpath.normpath(posixpath.join("/", folder, each.attrib["Target"]))
                assert target[1:] in parts, (name, target)
        assert len(ids) == len(set(ids))


def test_every_picture_has_an_id_of_its_own_and_says_what_it_shows(parts: Parts) -> None:
    for name in (name for name in parts if name.startswith("xl/drawings/drawing")):
        found = list(ElementTree.fromstring(parts[name]).iter(f"{DRAWING}cNvPr"))
        assert len({each.attrib["id"] for each in found}) == len(found) > 0
        assert all(each.attrib["descr"] for each in found), name


def test_every_chart_says_what_it_shows(written: Path) -> None:
    frames = [
        each
        for name, part in parts_of(written).items()
        if name.startswith("xl/drawings/drawing")
        for each in ElementTree.fromstring(part).iter(f"{DRAWING}graphicFrame")
    ]
    assert frames
    assert all(next(each.iter(f"{DRAWING}cNvPr")).attrib["descr"] for each in frames)


def test_the_chart_of_films_lies_in_the_rows_and_columns_that_are_printed(written: Path) -> None:
    anchors = [
        anchor
        for name, part in parts_of(written).items()
        if name.startswith("xl/drawings/drawing")
        for anchor in ElementTree.fromstring(part)
        if "the least length that is possible" in ElementTree.tostring(anchor, "unicode")
    ]
    ((across, down), (right, bottom)) = (
        [int(corner.findtext(f"{DRAWING}{side}", "")) for side in ("col", "row")] for corner in list(anchors[0])[:2]
    )
    film: Any = load_workbook(written)["Film requirement"]
    printed: Any = range_boundaries(film.print_area.rpartition("!")[2])
    left, top, last, end = printed
    assert across + 1 == left == 1
    assert last / 2 < right + 1 < last
    assert top < down + 1 < bottom + 1 <= end
    assert len(anchors) == 1


def rows_of(reference: str) -> set[int]:
    """The rows of `A3:F9`."""
    first, last = re.findall(r"\d+", reference)
    return set(range(int(first), int(last) + 1))


def test_no_cell_of_a_table_is_merged(parts: Parts) -> None:
    """Merged cells inside a table break sorting, filtering and reading aloud."""
    tables = 0
    for name in (name for name in parts if name.startswith("xl/worksheets/sheet")):
        sheet = ElementTree.fromstring(parts[name])
        filtered = sheet.find(f"{MAIN}autoFilter")
        if filtered is None:
            continue
        tables += 1
        table = rows_of(filtered.attrib["ref"])
        assert not [each for each in sheet.iter(f"{MAIN}mergeCell") if table & rows_of(each.attrib["ref"])], name
    assert tables >= 6


def test_every_formula_carries_a_cached_value(parts: Parts) -> None:
    count = 0
    for name in (name for name in parts if name.startswith("xl/worksheets/sheet")):
        for cell in ElementTree.fromstring(parts[name]).iter(f"{MAIN}c"):
            if cell.find(f"{MAIN}f") is not None:
                count += 1
                assert cell.find(f"{MAIN}v") is not None, (name, cell.attrib["r"])
    assert count > 50


def test_the_ruler_is_of_its_true_size(written: Path) -> None:
    parts = parts_of(written)
    pictures = [
        each
        for name in parts
        if name.startswith("xl/drawings/drawing")
        for each in ElementTree.fromstring(parts[name]).iter(f"{DRAWING}pic")
    ]
    ruler = next(each for each in pictures if "A ruler at its true size" in ElementTree.tostring(each, "unicode"))
    extent = next(ruler.iter(f"{PICTURE}ext"))
    assert int(extent.attrib["cx"]) / EMU == pytest.approx(WIDTH, rel=0.01)
