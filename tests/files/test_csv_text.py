"""Text files: their encodings and delimiters."""

from encodings.aliases import aliases
from pathlib import Path

import pytest

from xlbatch.files.csv_text import decoded, delimiter, sheet_from_text
from xlbatch.files.encodings import called
from xlbatch.problems.refusals import Refusal
from xlbatch.roster.read import Reading, read

LIST = "Who,Size\nZoë Łucz,M\n"
WESTERN = "Who,Size\nZoë,M\n"


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be"])
def test_unicode_encodings(encoding: str) -> None:
    data = LIST.encode(encoding)
    assert decoded(data) == LIST


def test_utf_16_with_the_other_mark() -> None:
    assert decoded(b"\xfe\xff" + LIST.encode("utf-16-be")) == LIST


def test_windows_1252() -> None:
    assert decoded(WESTERN.encode("cp1252")) == WESTERN
    assert decoded("“Zoë” €".encode("cp1252")) == "“Zoë” €"


@pytest.mark.parametrize(
    "encoding",
    sorted(
        {*aliases.values()}
        - {"rot_13", "hex_codec", "base64_codec", "bz2_codec", "zlib_codec", "uu_codec", "quopri_codec"}
    ),
)
def test_a_list_in_any_encoding_that_python_knows_is_read_or_refused(encoding: str) -> None:
    """The judged encoding may be any the library finds; the names of one it can write are asked about."""
    try:
        data = "Nazwisko;Rozmiar\nŚwięta Żółć;L\nJózef Źdźbło;S\nZoë Ωμέγα;M\n".encode(encoding, "ignore")
    except LookupError:  # of another system only
        return
    try:
        sheet = sheet_from_text(data)
    except Refusal:
        return
    assert sheet.rows


def test_an_encoding_without_a_common_name_is_called_by_its_own() -> None:
    assert called("iso8859_2") == "ISO8859-2"


def test_what_is_no_text_is_refused() -> None:
    with pytest.raises(Refusal):
        decoded(b"\x7fELF\x02\x01\x01\x00\x00\x00\x00\x00\x00")


@pytest.mark.parametrize("sign", [",", ";", "\t", "|"])
def test_delimiters(sign: str) -> None:
    text = f"Who{sign}Size\nNovak Ana{sign}M\n"
    assert delimiter(text) == sign


def test_a_comma_in_every_name_is_no_delimiter() -> None:
    assert delimiter("Who;Size\nNovak, Ana;M\nVrba, Jan;L\n") == ";"


def test_a_declared_delimiter_keeps_row_numbers() -> None:
    sheet = sheet_from_text(b"sep=;\nWho;Size\nAna;M\n")
    assert list(sheet.rows) == [2, 3]
    assert sheet.rows[3][2].value == "M"


def test_text_stays_as_typed() -> None:
    sheet = sheet_from_text(b'Who,Number\n"NA",01\n=1+1,1E5\n"two\nlines",7.0\n')
    values = [[cell.value for cell in cells.values()] for cells in sheet.rows.values()]
    assert values == [["Who", "Number"], ["NA", "01"], ["=1+1", "1E5"], ["two\nlines", "7.0"]]


def test_rows_of_delimiters_alone_are_blank() -> None:
    assert list(sheet_from_text(b"Who,Size\n,,\n ,\nAna,M\n").rows) == [1, 4]


def test_more_columns_than_a_spreadsheet_has(tmp_path: Path) -> None:
    """16,384 columns: ECMA-376, the limits of a sheet."""
    path = tmp_path / "wide.csv"
    path.write_text(f"Who,Size{',x' * 20_000}\nAna,M{',y' * 20_000}\n", encoding="utf-8")
    reading = read(path)
    assert isinstance(reading, Reading)
    assert [(row.who, row.size) for row in reading.job.roster] == [("Ana", "M")]
