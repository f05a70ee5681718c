"""Files: what can be opened, and the sentence for each that cannot."""

import io
import re
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest
from openpyxl import Workbook
from openpyxl.styles import PatternFill

from tests.kept.history import through_office
from xlbatch.files.book import open_book
from xlbatch.files.raw import Raw, RawSheet, UnreadableFile
from xlbatch.files.xlsx_parts import MOST_ROWS

Rewrite = Callable[[str, bytes], bytes | None]
MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"


def workbook(sheet: str = "Roster") -> Workbook:
    """A small list."""
    book = Workbook()
    del book["Sheet"]
    rows = book.create_sheet(sheet)
    rows.append(["Who", "Size", "Number"])
    rows.append(["Ana", "M", 7])
    rows["C2"].number_format = "00"
    return book


def saved(book: Workbook) -> bytes:
    file = io.BytesIO()
    book.save(file)
    return file.getvalue()


def rewritten(data: bytes, change: Rewrite) -> bytes:
    """The workbook with its parts changed; None leaves a part out."""
    file = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED) as new:
        for name in old.namelist():
            part = change(name, old.read(name))
            if part is not None:
                new.writestr(name, part)
    return file.getvalue()


def with_sheet(xml: str) -> bytes:
    """The small list with other XML for its one sheet."""
    return rewritten(saved(workbook()), lambda name, part: xml.encode() if name.endswith("sheet1.xml") else part)


def sheets(path: Path, data: bytes) -> tuple[RawSheet, ...]:
    path.write_bytes(data)
    found = open_book(path)
    assert not isinstance(found, UnreadableFile), found
    return found


def refusal(path: Path, data: bytes) -> str:
    path.write_bytes(data)
    found = open_book(path)
    assert isinstance(found, UnreadableFile)
    return found.sentence


def test_a_workbook(tmp_path: Path) -> None:
    (sheet,) = sheets(tmp_path / "list.xlsx", saved(workbook()))
    assert sheet.name == "Roster"
    assert {at: cell.value for at, cell in sheet.rows[2].items()} == {1: "Ana", 2: "M", 3: 7}
    assert sheet.rows[2][3].format == "00"


def test_the_first_bytes_decide(tmp_path: Path) -> None:
    assert sheets(tmp_path / "list.csv", saved(workbook()))[0].name == "Roster"
    assert sheets(tmp_path / "list.TXT", b"Who,Size\nAna,M\n")[0].rows[2][2].value == "M"


OLD = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"


@pytest.mark.parametrize(
    ("name", "data", "words"),
    [
        ("list.xlsx", b"", "is empty"),
        ("list.csv", b" \n", "is empty"),
        ("~$list.xlsx", b"x", "lock file"),
        (".~lock.list.xlsx#", b"x", "lock file"),
        ("list.xlsx", b"Who,Size\nAna,M\n", "comma-separated text. Rename it to list.csv"),
        ("list.xlsx", b"Who;Size\nAna;M\n", "semicolon-separated text"),
        ("list.xlsx", b"Who\tSize\nAna\tM\n", "tab-separated text"),
        ("list.xlsx", b"hello", "plain text"),
        ("list.xls", OLD + bytes(600), "damaged or not a workbook"),
        ("list.xlsx", OLD + bytes(600) + "EncryptedPackage".encode("utf-16-le"), "password"),
        ("list.xlsx", b"PK\x03\x04 and nothing more", "damaged"),
        ("list.xlsx", saved(workbook())[:-900], "damaged"),
        ("list.xlsx", b"%PDF-1.7", "PDF"),
        ("list.xls", b"<html><table><tr><td>Who", "web page"),
        ("list.xml", b'<?xml version="1.0"?><Workbook/>', "XML file"),
        ("list.csv", b"\x89PNG\r\n\x1a\n", "picture"),
        ("list.bin", b"\x7fELF\x00\x00\x00\x00", "neither a workbook nor a text"),
    ],
)
def test_refusals(tmp_path: Path, name: str, data: bytes, words: str) -> None:
    sentence = refusal(tmp_path / name, data)
    assert words in sentence
    assert sentence.startswith(f"{name}")
    assert "\n" not in sentence


def test_a_file_locked_for_a_moment_is_tried_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path, read = tmp_path / "list.csv", Path.read_bytes
    waits: list[float] = []
    path.write_text("Who,Size\nAna,M\n")

    def locked(file: Path) -> bytes:
        if len(waits) < refused:
            raise PermissionError(13, "The file is in use")
        return read(file)

    monkeypatch.setattr("time.sleep", waits.append)
    monkeypatch.setattr(Path, "read_bytes", locked)
    refused = 2
    assert not isinstance(open_book(path), UnreadableFile)
    refused = 100
    assert "Close it in other programs" in getattr(open_book(path), "sentence", "")


def test_no_such_file_and_a_folder(tmp_path: Path) -> None:
    missing, folder = open_book(tmp_path / "none.xlsx"), open_book(tmp_path)
    assert isinstance(missing, UnreadableFile)
    assert "no such file" in missing.sentence
    assert isinstance(folder, UnreadableFile)
    assert "folder" in folder.sentence


@pytest.mark.parametrize(
    ("parts", "words"),
    [
        ({"hello.txt": b"hello"}, "zip archive"),
        ({"content.xml": b"<x/>", "mimetype": b"opendocument"}, "OpenDocument file, but not a workbook"),
        ({"xl/workbook.bin": b"x"}, ".xlsb"),
        ({"_rels/.rels": b"<Relationships/>", "word/document.xml": b"<x/>"}, "not a workbook"),
    ],
)
def test_other_archives(tmp_path: Path, parts: dict[str, bytes], words: str) -> None:
    file = io.BytesIO()
    with zipfile.ZipFile(file, "w") as archive:
        for name, part in parts.items():
            archive.writestr(name, part)
    assert words in refusal(tmp_path / "list.xlsx", file.getvalue())


def test_xml_entities_are_refused(tmp_path: Path) -> None:
    bomb = '<!DOCTYPE x [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;">]><worksheet><sheetData/></worksheet>'
    assert "XML entities" in refusal(tmp_path / "list.xlsx", with_sheet(bomb))


def test_a_zip_bomb_is_refused(tmp_path: Path) -> None:
    data = rewritten(saved(workbook()), lambda name, part: bytes(160_000_000) if name.endswith("sheet1.xml") else part)
    assert len(data) < 1_000_000
    assert "too large" in refusal(tmp_path / "list.xlsx", data)


def test_too_many_rows_are_refused(tmp_path: Path) -> None:
    rows = "".join(f'<row r="{row}"><c r="A{row}"><v>1</v></c></row>' for row in range(1, MOST_ROWS + 2))
    sentence = refusal(
        tmp_path / "list.xlsx", with_sheet(f'<worksheet xmlns="{MAIN}"><sheetData>{rows}</sheetData></worksheet>')
    )
    assert "“Roster” has 50,001 filled rows" in sentence


def test_formatted_empty_rows_cost_nothing(tmp_path: Path) -> None:
    empty = "".join(f'<row r="{row}"><c r="A{row}" s="0"/><c r="B{row}" s="0"/></row>' for row in range(3, 200_000))
    filled = '<row r="1"><c r="A1" t="inlineStr"><is><t>Size</t></is></c></row>'
    last = '<row r="1048576"><c r="XFD1048576"><v>1</v></c></row>'
    data = with_sheet(f'<worksheet xmlns="{MAIN}"><sheetData>{filled}{empty}{last}</sheetData></worksheet>')
    (sheet,) = sheets(tmp_path / "list.xlsx", data)
    assert list(sheet.rows) == [1, 1048576]
    assert sheet.rows[1048576] == {16384: Raw(1, "General")}


def test_errors_and_formulas(tmp_path: Path) -> None:
    cells = (
        '<c r="A1" t="e"><v>#N/A</v></c><c r="B1"><f>1+1</f></c><c r="C1"><f>1+1</f><v>2</v></c>'
        '<c r="D1" t="str"><f>""</f><v></v></c><c r="E1"><f>1+1</f><v/></c><c r="F1" t="b"><v>1</v></c>'
    )
    data = with_sheet(f'<worksheet xmlns="{MAIN}"><sheetData><row r="1">{cells}</row></sheetData></worksheet>')
    (sheet,) = sheets(tmp_path / "list.xlsx", data)
    assert sheet.rows[1] == {
        1: Raw("#N/A", fault="error"),
        2: Raw(None, fault="unsaved"),
        3: Raw(2),
        5: Raw(None, fault="unsaved"),
        6: Raw(True),
    }


def test_another_namespace_prefix_and_the_strict_kind(tmp_path: Path) -> None:
    row = '<x:row r="1"><x:c r="A1"><x:v>1</x:v></x:c><x:c r="B1" s="0"/></x:row>'
    strict = "http://purl.oclc.org/ooxml/spreadsheetml/main"
    for space in (MAIN, strict):
        xml = f'<x:worksheet xmlns:x="{space}"><x:sheetData>{row}</x:sheetData></x:worksheet>'
        assert sheets(tmp_path / "list.xlsx", with_sheet(xml))[0].rows == {1: {1: Raw(1)}}


def test_damaged_styles_pictures_and_properties_do_not_matter(tmp_path: Path) -> None:
    def damage(name: str, part: bytes) -> bytes | None:
        if name.endswith("styles.xml"):
            return re.sub(b"<fills.*</fills>", b"<fills><fill/></fills>", part)
        return b"<broken" if name.startswith(("docProps", "xl/theme")) else part

    assert sheets(tmp_path / "list.xlsx", rewritten(saved(workbook()), damage))[0].rows[2][3] == Raw(7, "00")


def test_hidden_rows_and_merged_cells(tmp_path: Path) -> None:
    book = workbook()
    rows = book["Roster"]
    rows.append(["Ben", None, 8])
    rows.append(["Cid", "L", 9])
    rows.row_dimensions[3].hidden = True
    rows.merge_cells("B2:B3")
    (sheet,) = sheets(tmp_path / "list.xlsx", saved(book))
    assert sheet.hidden == {3}
    assert [sheet.rows[row][2].value for row in (2, 3, 4)] == ["M", "M", "L"]


def test_a_merged_block_over_the_whole_sheet_costs_nothing(tmp_path: Path) -> None:
    row = '<row r="1"><c r="A1"><v>1</v></c></row>'
    merged = '<mergeCells><mergeCell ref="A1:XFD1048576"/></mergeCells>'
    xml = f'<worksheet xmlns="{MAIN}"><sheetData>{row}</sheetData>{merged}</worksheet>'
    assert sheets(tmp_path / "list.xlsx", with_sheet(xml))[0].rows == {1: {1: Raw(1)}}


def test_links_to_other_files_are_not_followed(tmp_path: Path) -> None:
    def outward(name: str, part: bytes) -> bytes:
        return part.replace(b'Id="rId1"', b'Id="rId1" TargetMode="External"') if "workbook.xml.rels" in name else part

    assert sheets(tmp_path / "list.xlsx", rewritten(saved(workbook()), outward)) == ()


def test_a_locked_archive_and_an_unknown_compression(tmp_path: Path) -> None:
    data = saved(workbook())
    entry = data.index(b"PK\x01\x02")  # the archive's directory; flags stand 8 bytes on, the method 10
    locked, packed = bytearray(data), bytearray(data)
    locked[entry + 8] |= 1
    packed[data.rindex(b"xl/workbook.xml") - 36] = 99
    assert "password" in refusal(tmp_path / "list.xlsx", bytes(locked))
    assert "damaged" in refusal(tmp_path / "list.xlsx", bytes(packed))


def test_a_number_format_that_is_not_there_is_no_format(tmp_path: Path) -> None:
    def change(name: str, part: bytes) -> bytes:
        return part.replace(b'numFmtId="164"', b'numFmtId="200"', 1) if name.endswith("styles.xml") else part

    assert sheets(tmp_path / "list.xlsx", rewritten(saved(workbook()), change))[0].rows[2][3].value == 7


def test_ignored_sheets_come_empty(tmp_path: Path) -> None:
    path = tmp_path / "list.xlsx"
    path.write_bytes(saved(workbook("Proof")))
    assert open_book(path, frozenset(["proof"])) == (RawSheet("Proof", {}),)


@pytest.mark.parametrize("name", ["A", "x" * 31, "Müller & Söhne", "'quoted' ok", "<tags>"])
def test_sheet_names(tmp_path: Path, name: str) -> None:
    """A sheet name has 1 to 31 characters without * / ? [ ] : \\ (published spreadsheet limits)."""
    assert sheets(tmp_path / "list.xlsx", saved(workbook(name)))[0].name == name


def test_a_text_that_is_not_there_is_damage(tmp_path: Path) -> None:
    row = '<row r="1"><c r="A1" t="s"><v>5</v></c></row>'
    data = with_sheet(f'<worksheet xmlns="{MAIN}"><sheetData>{row}</sheetData></worksheet>')
    assert "damaged" in refusal(tmp_path / "list.xlsx", data)


def test_the_file_is_left_as_it_was(tmp_path: Path) -> None:
    book = workbook()
    book["Roster"]["A1"].fill = PatternFill("solid", fgColor="FFFF00")
    data = saved(book)
    sheets(tmp_path / "list.xlsx", data)
    assert (tmp_path / "list.xlsx").read_bytes() == data
    assert [each.name for each in tmp_path.iterdir()] == ["list.xlsx"]


@pytest.mark.parametrize("kind", ["xlsx", "ods", "xls"])
def test_a_hidden_sheet_is_known_as_one(kind: str, tmp_path: Path) -> None:
    made = workbook()
    made.create_sheet("Last time").append(["Who", "Size"])
    made.worksheets[1].sheet_state = "hidden"
    made.save(tmp_path / "list.xlsx")
    path = tmp_path / "list.xlsx" if kind == "xlsx" else through_office(tmp_path / "list.xlsx", kind)
    sheets = open_book(path)
    assert not isinstance(sheets, UnreadableFile)
    assert [sheet.out_of_sight for sheet in sheets] == [False, True]
