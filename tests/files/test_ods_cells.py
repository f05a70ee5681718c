"""One cell of an OpenDocument workbook (OASIS OpenDocument 1.3, 19.385): its value by its type, repeats and limits."""

from datetime import date, datetime, time
from pathlib import Path

import pytest

from tests.open_document import rows_xml, write_open_document
from xlbatch.files.book import open_book
from xlbatch.files.raw import Raw, RawSheet, UnreadableFile


def opened(path: Path, xml: str) -> RawSheet | UnreadableFile:
    read = open_book(write_open_document(path / "list.ods", {"Roster": xml}))
    return read if isinstance(read, UnreadableFile) else read[0]


def first_row(path: Path, *cells: object) -> dict[int, Raw]:
    read = opened(path, rows_xml([cells]))
    assert isinstance(read, RawSheet), read
    return dict(read.rows[1])


@pytest.mark.parametrize(
    ("attributes", "shown", "raw"),
    [
        ('office:value-type="float" office:value="7"', "7", Raw(7)),
        ('office:value-type="float" office:value="7"', "007", Raw(7, "000")),
        ('office:value-type="float" office:value="0"', "0", Raw(0)),  # one zero is no zero before it
        ('office:value-type="currency" office:value="12.5"', "12.50 €", Raw(12.5)),
        ('office:value-type="percentage" office:value="0.95"', "95%", Raw(0.95, "0%")),
        ('office:value-type="boolean" office:boolean-value="true"', "TRUE", Raw(True)),
        ('office:value-type="boolean" office:boolean-value="false"', "FALSE", Raw(False)),
        ('office:value-type="date" office:date-value="2026-05-03"', "05/03/26", Raw(date(2026, 5, 3), "mm-dd-yy")),
        (
            'office:value-type="date" office:date-value="2026-05-03T09:30:00"',
            "3 May 9:30",
            Raw(datetime(2026, 5, 3, 9, 30), "d-mmm"),
        ),
        ('office:value-type="time" office:time-value="PT09H30M15S"', "9:30", Raw(time(9, 30))),
        ('office:value-type="time" office:time-value="PT09H29M59.9999712S"', "9:30", Raw(time(9, 30))),
        ('office:value-type="time" office:time-value="PT23H59M59.99S"', "0:00", Raw(time(0, 0))),
        ('office:value-type="time" office:time-value="PT30H00M00S"', "30:00", Raw("PT30H00M00S")),  # no time of day
        ('table:formula="of:=1/0" office:value-type="string"', "#DIV/0!", Raw("#DIV/0!", fault="error")),
        ('table:formula="of:=1/0" office:value-type="string"', "Err:502", Raw("Err:502", fault="error")),
        ('office:value-type="string"', "#7", Raw("#7", "@")),  # typed, and no formula's
    ],
)
def test_a_cell_is_what_its_type_says(tmp_path: Path, attributes: str, shown: str, raw: Raw) -> None:
    cell = f"<table:table-cell {attributes}><text:p>{shown}</text:p></table:table-cell>"
    assert first_row(tmp_path, cell) == {1: raw}


def test_repeated_cells_stand_side_by_side_and_empty_ones_are_counted(tmp_path: Path) -> None:
    text = 'office:value-type="string"'
    twice = f'<table:table-cell {text} table:number-columns-repeated="2"><text:p>M</text:p></table:table-cell>'
    gap = '<table:table-cell table:number-columns-repeated="3"/>'
    row = first_row(tmp_path, "Ana", twice, gap, "late")
    assert {column: raw.value for column, raw in row.items()} == {1: "Ana", 2: "M", 3: "M", 7: "late"}


def test_the_farthest_column_of_a_sheet_is_read_and_the_next_is_damage(tmp_path: Path) -> None:
    """ECMA-376: a sheet has 16,384 columns."""
    gap = '<table:table-cell table:number-columns-repeated="{}"/>'
    assert list(first_row(tmp_path, gap.format(16_383), "Ana")) == [16_384]
    refused = opened(tmp_path, rows_xml([[gap.format(16_384), "Ana"]]))
    assert isinstance(refused, UnreadableFile)
    assert "damaged" in refused.sentence


def test_a_note_goes_with_its_cell(tmp_path: Path) -> None:
    gap = '<table:table-cell table:number-columns-repeated="2"/>'
    noted = (
        '<table:table-cell office:value-type="string"><office:annotation><text:p>grows fast</text:p>'
        "<text:p>ask</text:p></office:annotation><text:p>M</text:p></table:table-cell>"
    )
    read = opened(tmp_path, rows_xml([["Who", "Size"], ["Ana", gap, noted]]))
    assert isinstance(read, RawSheet)
    assert read.rows[2][4].value == "M"
    assert dict(read.notes) == {(2, 4): "grows fast\nask"}
