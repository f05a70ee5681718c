"""Damage in a file is told by what the reading libraries raise; a fault in our own readers is never taken for it."""

import shutil
from pathlib import Path

import pytest

from tests.files.test_book import MAIN, sheets, with_sheet
from tests.open_document import write_open_document
from tests.workbooks import write_workbook
from xlbatch.files.book import open_book
from xlbatch.files.package import opened, part, root, size
from xlbatch.files.raw import Raw, UnreadableFile
from xlbatch.problems.refusals import Refusal

OLD = Path(__file__).parents[1] / "data" / "list.xls"


def small(folder: Path, kind: str) -> Path:
    if kind == "xls":
        return Path(shutil.copy(OLD, folder / "list.xls"))
    if kind == "ods":
        return write_open_document(folder / "list.ods", {"Roster": row("<text:p>Who</text:p>")})
    return write_workbook(folder / "list.xlsx", {"Roster": [["Who", "Size"], ["Ana", "M"]]})


def row(text: str, attributes: str = "", cell: str = "") -> str:
    typed = 'office:value-type="string"' if "value-type" not in cell else ""
    return f"<table:table-row {attributes}><table:table-cell {typed} {cell}>{text}</table:table-cell></table:table-row>"


@pytest.mark.parametrize("fault", [ValueError, KeyError, TypeError, AttributeError, IndexError, RuntimeError])
@pytest.mark.parametrize(
    ("kind", "ours"),
    [
        ("xlsx", "xlbatch.files.book._raw_sheet"),
        ("xlsx", "xlbatch.files.book.spread_merged"),
        ("xlsx", "xlbatch.files.xlsx_parts._with_formula"),
        ("xlsx", "xlbatch.files.xlsx_parts._frame"),
        ("ods", "xlbatch.files.ods._cells"),
        ("xls", "xlbatch.files.xls._raw"),
    ],
)
def test_a_fault_of_ours_is_no_damage(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, kind: str, ours: str, fault: type[Exception]
) -> None:
    path = small(tmp_path, kind)
    assert not isinstance(open_book(path), UnreadableFile)

    def broken(*_: object) -> None:
        raise fault("ours")

    monkeypatch.setattr(ours, broken)
    with pytest.raises(fault, match="ours"):
        open_book(path)


@pytest.mark.parametrize(
    "cells",
    [
        row("<text:p>Ana</text:p>", 'table:number-rows-repeated="many"'),
        row("<text:p>Ana</text:p>", cell='table:number-columns-repeated="1.5"'),
        row("<text:p>Ana</text:p>", cell=f'table:number-columns-repeated="{"9" * 5000}"'),
        row("", cell='office:value-type="float" office:value="seven"'),
        row("", cell='office:value-type="date" office:date-value="2026-02-30"'),
        row("<text:p>a<text:s text:c='x'/></text:p>"),
        row("", 'table:number-rows-repeated="99999999"') + row("<text:p>Ana</text:p>"),
        "<table:table-row><table:table-cell table:number-columns-repeated='99999'/><table:table-cell"
        " office:value-type='string'><text:p>Ana</text:p></table:table-cell></table:table-row>",
        "<table:table-row><table:table-cell></table:table-row>",
    ],
)
def test_an_open_document_with_values_that_are_none_is_damaged(tmp_path: Path, cells: str) -> None:
    read = open_book(write_open_document(tmp_path / "list.ods", {"Roster": cells}))
    assert isinstance(read, UnreadableFile)
    assert "damaged" in read.sentence


@pytest.mark.parametrize("times", ["PT09H30M00S", "PT99H00M00S", "P1D", "PT", "9:30", "PT09H77M00S"])
def test_an_odd_time_stays_what_was_typed(tmp_path: Path, times: str) -> None:
    cell = f'office:value-type="time" office:time-value="{times}"'
    read = open_book(write_open_document(tmp_path / "list.ods", {"Roster": row("<text:p>x</text:p>", cell=cell)}))
    assert not isinstance(read, UnreadableFile)
    assert str(read[0].rows[1][1].value) == ("09:30:00" if times == "PT09H30M00S" else times)


def test_parts_that_lack_or_are_none(tmp_path: Path) -> None:
    path = write_workbook(tmp_path / "list.xlsx", {"Roster": [["Who"]]})
    with opened(path.read_bytes()) as archive:
        for reading in (part, size):
            with pytest.raises(Refusal, match="damaged"):
                reading(archive, "xl/nothing.xml")
    for xml in (b"<a>", b'<?xml version="1.0" encoding="no such"?><a/>', b"\xff\xfe\x00"):
        with pytest.raises(Refusal, match="damaged"):
            root(xml)


def test_a_text_that_looks_like_an_empty_cell_is_a_text(tmp_path: Path) -> None:
    cells = '<c r="A1" t="inlineStr"><is><t><![CDATA[<c r="B1"/> <row></row>]]></t></is></c><c r="C1"/>'
    (sheet,) = sheets(
        tmp_path / "list.xlsx",
        with_sheet(f'<worksheet xmlns="{MAIN}"><sheetData><row r="1">{cells}</row></sheetData></worksheet>'),
    )
    assert sheet.rows == {1: {1: Raw('<c r="B1"/> <row></row>')}}
