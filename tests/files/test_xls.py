"""Workbooks of the old .xls kind, by one that LibreOffice 7.4 saved (tests/data/list.xls)."""

import random
from datetime import datetime, time
from pathlib import Path

import pytest

from xlbatch.files.book import open_book
from xlbatch.files.raw import Raw, RawSheet, UnreadableFile
from xlbatch.roster.read import Reading, read

LIST = Path(__file__).resolve().parents[1] / "data" / "list.xls"
FIRST_RECORD = b"\x09\x08\x10\x00"  # BOF of BIFF8, 16 bytes long: Microsoft's [MS-XLS] 2.4.21
PROTECTED = b"\x2f\x00"  # FilePass: [MS-XLS] 2.4.117


def sheet() -> RawSheet:
    sheets = open_book(LIST, frozenset({"proof"}))
    assert not isinstance(sheets, UnreadableFile)
    assert [each.name for each in sheets] == ["Sheet1", "Proof"]
    assert sheets[1].rows == {}
    return sheets[0]


def test_values_formats_errors_hidden_rows_and_merged_cells() -> None:
    rows = sheet().rows
    assert rows[5] == {
        1: Raw("Ana"), 2: Raw("Novák"), 3: Raw("M"), 4: Raw(7, "00"), 5: Raw(datetime(2025, 3, 5), "yyyy\\-mm\\-dd"),
    }  # fmt: skip
    assert rows[6][3] == Raw("#DIV/0!", fault="error")
    assert rows[6][5] == Raw(True)
    assert rows[7][5].value == time(9, 30)
    assert rows[8][3] == Raw("XL")  # a formula's saved result
    assert rows[4][5] == Raw("Since")  # merged with the cell above
    assert sheet().hidden == frozenset({6})


def test_it_is_read_as_any_list_is() -> None:
    reading = read(LIST)
    assert isinstance(reading, Reading)
    assert [(row.who, row.size, row.number) for row in reading.job.roster] == [
        ("Ana Novák", "M", "07"), ("Ivo Berg", "", "12"), ("Mei Lin", "5-Mar-2026", "09"), ("Bo Lin", "XL", "4"),
    ]  # fmt: skip
    found = [(each.code, each.where.cell) for each in reading.problems]
    assert {("sheet-hidden-rows", ""), ("cell-error", "C6"), ("date-for-size", "C7")} <= set(found)


def test_one_with_a_password_says_so(tmp_path: Path) -> None:
    data = LIST.read_bytes()
    at = data.index(FIRST_RECORD) + len(FIRST_RECORD) + 16
    path = tmp_path / "list.xls"
    path.write_bytes(data[:at] + PROTECTED + data[at + 2 :])
    refused = open_book(path)
    assert isinstance(refused, UnreadableFile)
    assert "protected with a password" in refused.sentence


@pytest.mark.parametrize("cut", [False, True])
def test_a_damaged_one_is_read_or_refused(tmp_path: Path, cut: bool) -> None:
    dice, data, path = random.Random(1), LIST.read_bytes(), tmp_path / "list.xls"
    for _ in range(150):
        spoiled = bytearray(data)
        for _ in range(dice.randint(1, 20)):
            spoiled[dice.randrange(512, len(data))] = dice.randrange(256)
        path.write_bytes(bytes(spoiled[: dice.randrange(600, len(data))] if cut else spoiled))
        assert isinstance(read(path), Reading | UnreadableFile)
