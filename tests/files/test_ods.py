"""OpenDocument workbooks (OASIS OpenDocument 1.3): values, repeats, merges, hidden rows and refusals."""

import zipfile
from datetime import date
from pathlib import Path

import pytest

from tests.open_document import rows_xml, write_open_document
from xlbatch.files.book import open_book
from xlbatch.files.raw import Raw, RawSheet, UnreadableFile

ZERO_SEVEN = '<table:table-cell office:value-type="float" office:value="7"><text:p>07</text:p></table:table-cell>'
ERROR = (
    '<table:table-cell table:formula="of:=[.Z9]" office:value-type="string" office:string-value=""'
    ' calcext:value-type="error"><text:p>#REF!</text:p></table:table-cell>'
)
UNSAVED = '<table:table-cell table:formula="of:=[.A1]"/>'
EMPTY = '<table:table-cell table:number-columns-repeated="16000"/>'


def sheet(path: Path, xml: str) -> RawSheet:
    found = open_book(write_open_document(path / "list.ods", {"Roster": xml}))
    assert not isinstance(found, UnreadableFile), found
    return found[0]


def test_values_as_they_are_shown(tmp_path: Path) -> None:
    xml = rows_xml([["Ana", 7, 7.5, date(2026, 5, 3), ZERO_SEVEN, ERROR, UNSAVED, EMPTY]])
    assert dict(sheet(tmp_path, xml).rows[1]) == {
        1: Raw("Ana", "@"), 2: Raw(7), 3: Raw(7.5), 4: Raw(date(2026, 5, 3), "d-mmm"), 5: Raw(7, "00"),
        6: Raw("#REF!", fault="error"), 7: Raw(None, fault="unsaved"),
    }  # fmt: skip


def test_spaces_in_a_text_are_elements(tmp_path: Path) -> None:
    text = "<text:p>Ana<text:s/><text:span>Novak</text:span></text:p>"
    xml = rows_xml([[f'<table:table-cell office:value-type="string">{text}</table:table-cell>']])
    assert sheet(tmp_path, xml).rows[1][1].value == "Ana Novak"


def test_a_million_empty_rows_are_counted_not_made(tmp_path: Path) -> None:
    gap = f'<table:table-row table:number-rows-repeated="1000000">{EMPTY}</table:table-row>'
    found = sheet(tmp_path, rows_xml([["Who", "Size"]]) + gap + rows_xml([["Ana", "M"]]))
    assert list(found.rows) == [1, 1_000_002]


def test_merged_downward_and_filtered_out(tmp_path: Path) -> None:
    merged = (
        '<table:table-cell office:value-type="string" table:number-rows-spanned="2">'
        "<text:p>Novak</text:p></table:table-cell>"
    )
    found = sheet(tmp_path, rows_xml([[merged, "Ana"], ["<table:covered-table-cell/>", "Ivo"]], hidden=[2]))
    assert found.rows[2][1].value == "Novak"
    assert found.hidden == {2}


@pytest.mark.parametrize(
    ("parts", "words"),
    [
        ({"content.xml": "<!DOCTYPE x [<!ENTITY a 'b'>]><x/>"}, "XML entities"),
        ({"content.xml": "x", "META-INF/manifest.xml": "<m:encryption-data/>"}, "protected with a password"),
        ({"content.xml": "<x><"}, "damaged"),
        ({"content.xml": "<" * 2_000_001}, "too large"),
        ({"content.xml": " " * 100_000_001}, "too large"),
        ({"content.xml": "<x/>"}, "not a workbook"),
    ],
)
def test_refusals(tmp_path: Path, parts: dict[str, str], words: str) -> None:
    path = tmp_path / "list.ods"
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, part in parts.items():
            archive.writestr(name, part)
    found = open_book(path)
    assert isinstance(found, UnreadableFile)
    assert words in found.sentence
