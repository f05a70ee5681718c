"""Turns a file into raw sheets, or says in a plain sentence why it cannot be read.

The first bytes tell what a file is; its name only decides whether text is taken for a list.
"""

import io
import re
import warnings
from pathlib import Path
from xml.etree.ElementTree import ParseError

from openpyxl import load_workbook
from openpyxl.cell.cell import ERROR_CODES
from openpyxl.utils.cell import coordinate_to_tuple
from xlsxwriter.utility import xl_rowcol_to_cell

from xlbatch.files.csv_text import decoded, delimiter, sheet_from_text
from xlbatch.files.merged import spread_merged
from xlbatch.files.ods import ods_sheets
from xlbatch.files.openpyxl_parts import PlainCell, PlainSheet, Style, plain_sheets
from xlbatch.files.package import opened
from xlbatch.files.printed_of import printed_of
from xlbatch.files.raw import Raw, RawSheet, UnreadableFile
from xlbatch.files.xlsx_parts import SheetPart, slim
from xlbatch.patience import patiently
from xlbatch.problems.refusals import Refusal

MOST_FILE_BYTES = 200_000_000
_TEXT_ENDINGS = (".csv", ".txt", ".tsv")
_OLD_OFFICE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
_LOCKED = "EncryptedPackage".encode("utf-16-le")
_OTHER_KINDS = (
    (b"%PDF", "a PDF document"),
    (b"{\\rtf", "a text document"),
    (b"\x89PNG", "a picture"),
    (b"\xff\xd8\xff", "a picture"),
    (b"GIF8", "a picture"),
    (b"\x1f\x8b", "a compressed file"),
    (b"Rar!", "a compressed file"),
    (b"7z\xbc\xaf", "a compressed file"),
)
_OPENPYXL_FAULTS = (ParseError, LookupError, ValueError, TypeError, AttributeError, ArithmeticError)
_DELIMITED = {",": "comma-separated text", ";": "semicolon-separated text", "\t": "tab-separated text"}


def open_book(path: Path, ignored: frozenset[str] = frozenset()) -> tuple[RawSheet, ...] | UnreadableFile:
    """The sheets of a workbook or .csv in order; those whose lower-case name is `ignored` come empty."""
    try:
        data = _bytes(path)
        if data.startswith(b"PK"):
            return _workbook(data, ignored)
        if data.startswith(_OLD_OFFICE):
            return _old_workbook(data, ignored)
        return (_text_sheet(path, data),)
    except Refusal as refusal:
        return UnreadableFile(f"{path.name}: {refusal}")


def _bytes(path: Path) -> bytes:
    if path.name.startswith(("~$", ".~lock")):
        raise Refusal("lock file")
    if path.is_dir():
        raise Refusal("folder")
    try:
        if path.stat().st_size > MOST_FILE_BYTES:
            raise Refusal("file too large")
        data = patiently(path.read_bytes)
    except FileNotFoundError as error:
        raise Refusal("missing") from error
    except OSError as error:
        raise Refusal("in use") from error
    if not data.strip(b"\0 \t\r\n"):
        raise Refusal("empty")
    return data


def _old_workbook(data: bytes, ignored: frozenset[str]) -> tuple[RawSheet, ...]:
    if _LOCKED in data:
        raise Refusal("password")
    from xlbatch.files.xls import xls_sheets  # few lists are of that kind

    return xls_sheets(data, ignored)


def _text_sheet(path: Path, data: bytes) -> RawSheet:
    for start, kind in _OTHER_KINDS:
        if data.startswith(start):
            raise Refusal("other kind", kind=kind)
    text = decoded(data)
    if text.lstrip().startswith("<"):
        web = re.search(r"<(html|table|!doctype html)", text[:5000], re.IGNORECASE)
        raise Refusal("web page", kind="a web page" if web else "an XML file")
    if not path.name.lower().endswith(_TEXT_ENDINGS):
        raise Refusal("text", kind=_kind_of_text(text), name=path.stem)
    return sheet_from_text(data)


def _kind_of_text(text: str) -> str:
    sign = delimiter(text)
    return _DELIMITED.get(sign, "plain text") if sign in text else "plain text"


def _workbook(data: bytes, ignored: frozenset[str]) -> tuple[RawSheet, ...]:
    if (document := _open_document(data, ignored)) is not None:
        return document
    small = slim(data, ignored)
    return tuple(_raw_sheet(sheet, part) for sheet, part in zip(_loaded(small.package), small.sheets, strict=True))


def _loaded(package: bytes) -> list[PlainSheet]:
    """The small workbook as openpyxl reads it. Raises Refusal for parts that contradict each other."""
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            book = load_workbook(io.BytesIO(package), read_only=True, data_only=True, keep_links=False)
            return plain_sheets(book)
    except _OPENPYXL_FAULTS as error:
        raise Refusal("damaged") from error


def _open_document(data: bytes, ignored: frozenset[str]) -> tuple[RawSheet, ...] | None:
    with opened(data) as archive:
        if plan := printed_of(archive):
            raise Refusal("pages to print", plan=plan)
        return ods_sheets(archive, ignored) if "content.xml" in archive.namelist() else None


def _raw_sheet(sheet: PlainSheet, part: SheetPart) -> RawSheet:
    rows: dict[int, dict[int, Raw]] = {}
    struck: dict[int, bool] = {}  # row → whether all its texts are struck through
    for cell, style in sheet.cells:
        raw = _raw(cell, style, part.unsaved)
        if raw is not None:
            row = cell["row"]
            rows.setdefault(row, {})[cell["column"]] = raw
            struck[row] = style.struck and struck.get(row, True)
    spread_merged(rows, part.merged)
    through = frozenset(row for row, all_of_it in struck.items() if all_of_it)
    formulas = frozenset(coordinate_to_tuple(cell) for cell in part.formulas)
    by_row = dict(sorted(rows.items()))
    return RawSheet(part.name, by_row, sheet.hidden, through, part.out_of_sight, notes=part.notes, formulas=formulas)


def _raw(cell: PlainCell, style: Style, unsaved: frozenset[str]) -> Raw | None:
    value = cell["value"]
    if isinstance(value, str):
        faulty = cell["data_type"] == "e" or value in ERROR_CODES  # also where a plan carries it on as text
        return Raw(value, fault="error" if faulty else "") if value.strip() else None
    if value is not None:
        return Raw(value, style.number_format)
    if unsaved and xl_rowcol_to_cell(cell["row"] - 1, cell["column"] - 1) in unsaved:
        return Raw(None, fault="unsaved")
    return None
