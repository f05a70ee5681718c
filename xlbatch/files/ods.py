"""Turns an OpenDocument workbook (.ods) into raw sheets (OASIS OpenDocument 1.3, part 3: tables).

Read here because python-calamine, the library for it, gives 7 for a number shown as 07 and a blank for an error, and
tells neither hidden rows nor formulas without a result. A cell's value is read with the text it shows. Repeated empty
cells and rows, which such files have by the million, are counted, never made.
"""

import re
import zipfile
from collections.abc import Iterator
from dataclasses import replace
from datetime import date, datetime, time
from xml.etree.ElementTree import Element

from xlbatch.files.package import elements, part, size, value
from xlbatch.files.raw import Raw, RawSheet
from xlbatch.problems.refusals import Refusal

MOST_BYTES = 100_000_000  # content, unpacked
MOST_ROWS = 50_000  # filled rows of one sheet
MOST_CELLS = 1_000_000  # filled cells of one sheet
MOST_TAGS = 2_000_000
_MANIFEST = "META-INF/manifest.xml"
_FARTHEST_ROW, _FARTHEST_COLUMN = 1_048_576, 16_384  # the largest sheet of any spreadsheet program
_MOST_ALIKE = 1000  # filled cells or rows that are one element repeated; more is a filled-down format

_TABLE = "{urn:oasis:names:tc:opendocument:xmlns:table:1.0}"
_OFFICE = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}"
_STYLE = "{urn:oasis:names:tc:opendocument:xmlns:style:1.0}"
_TEXT = "{urn:oasis:names:tc:opendocument:xmlns:text:1.0}"
_CALC = "{urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0}"
_TIME = re.compile(r"PT([01]?\d|2[0-3])H([0-5]?\d)M([0-5]?\d(?:\.\d+)?)?")
_CELLS = (f"{_TABLE}table-cell", f"{_TABLE}covered-table-cell")


def ods_sheets(archive: zipfile.ZipFile, ignored: frozenset[str]) -> tuple[RawSheet, ...]:
    """The sheets of an OpenDocument workbook; those whose lower-case name is `ignored` come empty.

    Raises Refusal for a file too large, hostile, protected, damaged or of another kind."""
    sheets: list[RawSheet] = []
    content = _content(archive)
    unseen = _hidden_styles(content)
    for table in elements(content, f"{_TABLE}table"):
        name = table.get(f"{_TABLE}name", "")
        sheet = _sheet(name, table) if name.strip().casefold() not in ignored else RawSheet(name, {})
        sheets.append(replace(sheet, out_of_sight=table.get(f"{_TABLE}style-name") in unseen))
    if not sheets:
        raise Refusal("open document")
    return tuple(sheets)


def _hidden_styles(content: bytes) -> frozenset[str]:
    """The styles of hidden sheets."""
    if b'display="false"' not in content:
        return frozenset()
    return frozenset(
        style.get(f"{_STYLE}name", "")
        for style in elements(content, f"{_STYLE}style")
        if any(look.get(f"{_TABLE}display") == "false" for look in style.iter(f"{_STYLE}table-properties"))
    )


def _content(archive: zipfile.ZipFile) -> bytes:
    if _MANIFEST in archive.namelist() and b"encryption-data" in part(archive, _MANIFEST):
        raise Refusal("password")
    if size(archive, "content.xml") > MOST_BYTES:
        raise Refusal("too large")
    xml = part(archive, "content.xml")
    if xml.count(b"<") > MOST_TAGS:
        raise Refusal("too large")
    if b"<!DOCTYPE" in xml or b"<!ENTITY" in xml:
        raise Refusal("entities")
    return xml


def _sheet(name: str, table: Element) -> RawSheet:
    rows: dict[int, dict[int, Raw]] = {}
    hidden: set[int] = set()
    notes: dict[tuple[int, int], str] = {}
    formulas = set[tuple[int, int]]()
    row = cells = 0
    for line in table.iter(f"{_TABLE}table-row"):
        repeated = _count(line, "number-rows-repeated")
        filled = _cells(line)
        if filled and row >= _FARTHEST_ROW:
            raise Refusal("damaged")
        notes |= {(row + 1, column): text for column, text in _notes(line)}
        formulas |= {(row + 1, column) for column, cell in _by_column(line) if cell.get(f"{_TABLE}formula")}
        for no in range(row + 1, row + 1 + min(repeated, _MOST_ALIKE)) if filled else ():
            rows[no] = filled
            cells += len(filled)
        if line.get(f"{_TABLE}visibility", "visible") != "visible":
            hidden |= set(range(row + 1, row + 1 + min(repeated, _MOST_ALIKE)))
        row += repeated
        if len(rows) > MOST_ROWS or cells > MOST_CELLS:
            raise Refusal("sheet too large", sheet=name, most=MOST_ROWS, what="rows", count=len(rows))
    return RawSheet(name, _merged(rows, table), frozenset(hidden), notes=notes, formulas=frozenset(formulas))


def _by_column(line: Element) -> Iterator[tuple[int, Element]]:
    """The cells of a row, each with its first column from 1."""
    column = 1
    for cell in line:
        if cell.tag in _CELLS:
            yield column, cell
            column += _count(cell, "number-columns-repeated")


def _cells(line: Element) -> dict[int, Raw]:
    filled: dict[int, Raw] = {}
    for column, cell in _by_column(line):
        raw = _raw(cell)
        if raw and column > _FARTHEST_COLUMN:
            raise Refusal("damaged")
        if raw:
            repeated = _count(cell, "number-columns-repeated")
            filled |= dict.fromkeys(range(column, column + min(repeated, _MOST_ALIKE)), raw)
    return filled


def _notes(line: Element) -> Iterator[tuple[int, str]]:
    """The notes on the cells of a row, by column."""
    for column, cell in _by_column(line):
        note = cell.find(f"{_OFFICE}annotation")
        if note is not None:
            yield column, "\n".join("".join(_letters(paragraph)) for paragraph in note.iterfind(f"{_TEXT}p"))


def _raw(cell: Element) -> Raw | None:
    kind = cell.get(f"{_OFFICE}value-type", "")
    shown = "\n".join("".join(_letters(paragraph)) for paragraph in cell.iterfind(f"{_TEXT}p"))
    if cell.get(f"{_CALC}value-type") == "error" or (cell.get(f"{_TABLE}formula") and shown.startswith(("#", "Err:"))):
        return Raw(shown, fault="error")
    match kind:
        case "float" | "currency":
            return _number(value(float, cell.get(f"{_OFFICE}value", "")), shown)
        case "percentage":
            return Raw(value(float, cell.get(f"{_OFFICE}value", "")), "0%")
        case "boolean":
            return Raw(cell.get(f"{_OFFICE}boolean-value") == "true")
        case "date":
            return Raw(_date(cell.get(f"{_OFFICE}date-value", "")), _date_format(shown))
        case "time":
            return Raw(_time(cell.get(f"{_OFFICE}time-value", "")))
    if not kind and cell.get(f"{_TABLE}formula"):
        return Raw(None, fault="unsaved")
    return Raw(shown, "@") if shown.strip() else None


def _count(element: Element, name: str) -> int:
    """A number of rows or columns that an element stands for."""
    return max(1, value(int, element.get(f"{_TABLE}{name}", "1")))


def _number(number: float, shown: str) -> Raw:
    """A number; one shown with zeros before it is given the format that shows them."""
    zeros = shown.isdecimal() and shown.startswith("0") and len(shown) > 1
    return Raw(int(number) if number.is_integer() else number, "0" * len(shown) if zeros else "General")


def _date(typed: str) -> date | datetime:
    when = value(datetime.fromisoformat, typed)
    return when if "T" in typed else when.date()


def _date_format(shown: str) -> str:
    """The order in which a date shows its parts, as far as it tells what was typed: `3-May` is d-mmm."""
    return "d-mmm" if any(letter.isalpha() for letter in shown) else "mm-dd-yy"


def _time(typed: str) -> time | str:
    """`PT09H30M00S`, and `PT09H29M59.9999712S` as LibreOffice saves it, to the minute; durations of a day and more stay
    as they are."""
    parts = _TIME.match(typed)
    if not parts:
        return typed
    minutes = int(parts[1]) * 60 + int(parts[2]) + round(float(parts[3] or 0) / 60)
    return time(minutes // 60 % 24, minutes % 60)


def _letters(paragraph: Element) -> Iterator[str]:
    """A paragraph's text; spaces and line ends are elements of their own."""
    yield paragraph.text or ""
    for child in paragraph:
        if child.tag == f"{_TEXT}s":
            yield " " * min(value(int, child.get(f"{_TEXT}c", "1")), _MOST_ALIKE)
        elif child.tag in (f"{_TEXT}tab", f"{_TEXT}line-break"):
            yield " "
        else:
            yield from _letters(child)
        yield child.tail or ""


def _merged(rows: dict[int, dict[int, Raw]], table: Element) -> dict[int, dict[int, Raw]]:
    """The rows with the value of a block of cells merged downward in each of its rows."""
    row = 0
    for line in table.iter(f"{_TABLE}table-row"):
        column = 0
        for cell in line:
            down = _count(cell, "number-rows-spanned")
            if down > 1 and column + 1 in rows.get(row + 1, {}):
                for below in range(row + 2, row + 1 + min(down, _MOST_ALIKE)):
                    if below in rows:
                        rows[below] = {column + 1: rows[row + 1][column + 1]} | rows[below]
            column += _count(cell, "number-columns-repeated") if cell.tag in _CELLS else 0
        row += _count(line, "number-rows-repeated")
    return {no: dict(sorted(cells.items())) for no, cells in sorted(rows.items())}
