"""Turns an OpenDocument workbook (.ods) into raw sheets (OASIS OpenDocument 1.3, part 3: tables).

Read here because python-calamine, the library for it, gives 7 for a number shown as 07 and a blank for an error, and
tells neither hidden rows nor formulas without a result. A cell's value is read with the text it shows. Repeated empty
cells and rows, which such files have by the million, are counted, never made.
"""

import io
import zipfile
from collections.abc import Iterator
from datetime import date, datetime, time
from xml.etree.ElementTree import Element, iterparse

from xlbatch.files.raw import Raw, RawSheet
from xlbatch.problems.refusals import Refusal

MOST_BYTES = 100_000_000  # content, unpacked
MOST_ROWS = 50_000  # filled rows of one sheet
MOST_CELLS = 1_000_000  # filled cells of one sheet
MOST_TAGS = 2_000_000
_MOST_ALIKE = 1000  # filled cells or rows that are one element repeated; more is a filled-down format

_TABLE = "{urn:oasis:names:tc:opendocument:xmlns:table:1.0}"
_OFFICE = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}"
_TEXT = "{urn:oasis:names:tc:opendocument:xmlns:text:1.0}"
_CALC = "{urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0}"
_CELLS = (f"{_TABLE}table-cell", f"{_TABLE}covered-table-cell")


def ods_sheets(archive: zipfile.ZipFile, ignored: frozenset[str]) -> tuple[RawSheet, ...]:
    """The sheets of an OpenDocument workbook; those whose lower-case name is `ignored` come empty.

    Raises Refusal for a file too large, hostile, protected or of another kind, ElementTree's ParseError for a damaged
    one, ValueError for values that are none."""
    xml = _content(archive)
    sheets: list[RawSheet] = []
    for _, element in iterparse(io.BytesIO(xml)):
        if element.tag == f"{_TABLE}table":
            name = element.get(f"{_TABLE}name", "")
            sheets.append(_sheet(name, element) if name.strip().casefold() not in ignored else RawSheet(name, {}))
            element.clear()
    if not sheets:
        raise Refusal("open document")
    return tuple(sheets)


def _content(archive: zipfile.ZipFile) -> bytes:
    if "META-INF/manifest.xml" in archive.namelist() and b"encryption-data" in archive.read("META-INF/manifest.xml"):
        raise Refusal("password")
    if archive.getinfo("content.xml").file_size > MOST_BYTES:
        raise Refusal("too large")
    xml = archive.read("content.xml")
    if xml.count(b"<") > MOST_TAGS:
        raise Refusal("too large")
    if b"<!DOCTYPE" in xml or b"<!ENTITY" in xml:
        raise Refusal("entities")
    return xml


def _sheet(name: str, table: Element) -> RawSheet:
    rows: dict[int, dict[int, Raw]] = {}
    hidden: set[int] = set()
    notes: dict[tuple[int, int], str] = {}
    row = cells = 0
    for line in table.iter(f"{_TABLE}table-row"):
        repeated = int(line.get(f"{_TABLE}number-rows-repeated", "1"))
        filled = _cells(line)
        notes |= {(row + 1, at): text for at, text in _notes(line)}
        for no in range(row + 1, row + 1 + min(repeated, _MOST_ALIKE)) if filled else ():
            rows[no] = filled
            cells += len(filled)
        if line.get(f"{_TABLE}visibility", "visible") != "visible":
            hidden |= set(range(row + 1, row + 1 + min(repeated, _MOST_ALIKE)))
        row += repeated
        if len(rows) > MOST_ROWS or cells > MOST_CELLS:
            raise Refusal("sheet too large", sheet=name, most=MOST_ROWS, what="rows", count=len(rows))
    return RawSheet(name, _merged(rows, table), frozenset(hidden), notes=notes)


def _cells(line: Element) -> dict[int, Raw]:
    filled: dict[int, Raw] = {}
    at = 0
    for cell in line:
        if cell.tag not in _CELLS:
            continue
        repeated = int(cell.get(f"{_TABLE}number-columns-repeated", "1"))
        raw = _raw(cell)
        if raw:
            filled |= dict.fromkeys(range(at + 1, at + 1 + min(repeated, _MOST_ALIKE)), raw)
        at += repeated
    return filled


def _notes(line: Element) -> Iterator[tuple[int, str]]:
    """The notes on the cells of a row, by column."""
    at = 0
    for cell in line:
        if cell.tag not in _CELLS:
            continue
        note = cell.find(f"{_OFFICE}annotation")
        if note is not None:
            yield at + 1, "\n".join("".join(_letters(each)) for each in note.iterfind(f"{_TEXT}p"))
        at += int(cell.get(f"{_TABLE}number-columns-repeated", "1"))


def _raw(cell: Element) -> Raw | None:
    kind = cell.get(f"{_OFFICE}value-type", "")
    shown = "\n".join("".join(_letters(each)) for each in cell.iterfind(f"{_TEXT}p"))
    if cell.get(f"{_CALC}value-type") == "error" or (cell.get(f"{_TABLE}formula") and shown.startswith(("#", "Err:"))):
        return Raw(shown, fault="error")
    match kind:
        case "float" | "currency":
            return _number(float(cell.get(f"{_OFFICE}value", "")), shown)
        case "percentage":
            return Raw(float(cell.get(f"{_OFFICE}value", "")), "0%")
        case "boolean":
            return Raw(cell.get(f"{_OFFICE}boolean-value") == "true")
        case "date":
            return Raw(_date(cell.get(f"{_OFFICE}date-value", "")), _date_format(shown))
        case "time":
            return Raw(_time(cell.get(f"{_OFFICE}time-value", "")))
    if not kind and cell.get(f"{_TABLE}formula"):
        return Raw(None, fault="unsaved")
    return Raw(shown, "@") if shown.strip() else None


def _number(value: float, shown: str) -> Raw:
    """A number; one shown with zeros before it is given the format that shows them."""
    zeros = shown.isdecimal() and shown.startswith("0") and len(shown) > 1
    return Raw(int(value) if value.is_integer() else value, "0" * len(shown) if zeros else "General")


def _date(typed: str) -> date | datetime:
    when = datetime.fromisoformat(typed)
    return when if "T" in typed else when.date()


def _date_format(shown: str) -> str:
    """The order in which a date shows its parts, as far as it tells what was typed: `3-May` is d-mmm."""
    return "d-mmm" if any(letter.isalpha() for letter in shown) else "mm-dd-yy"


def _time(typed: str) -> time | str:
    """`PT09H30M00S`; durations of a day and more stay as they are."""
    parts = typed.removeprefix("PT").replace("H", ":").replace("M", ":").removesuffix("S").split(":")
    hours, minutes = int(parts[0]), int(parts[1])
    return time(hours, minutes) if hours < 24 else typed


def _letters(paragraph: Element) -> Iterator[str]:
    """A paragraph's text; spaces and line ends are elements of their own."""
    yield paragraph.text or ""
    for child in paragraph:
        if child.tag == f"{_TEXT}s":
            yield " " * min(int(child.get(f"{_TEXT}c", "1")), _MOST_ALIKE)
        elif child.tag in (f"{_TEXT}tab", f"{_TEXT}line-break"):
            yield " "
        else:
            yield from _letters(child)
        yield child.tail or ""


def _merged(rows: dict[int, dict[int, Raw]], table: Element) -> dict[int, dict[int, Raw]]:
    """The rows with the value of a block of cells merged downward in each of its rows."""
    row = 0
    for line in table.iter(f"{_TABLE}table-row"):
        at = 0
        for cell in line:
            down = int(cell.get(f"{_TABLE}number-rows-spanned", "1"))
            if down > 1 and at + 1 in rows.get(row + 1, {}):
                for below in range(row + 2, row + 1 + min(down, _MOST_ALIKE)):
                    if below in rows:
                        rows[below] = {at + 1: rows[row + 1][at + 1]} | rows[below]
            at += int(cell.get(f"{_TABLE}number-columns-repeated", "1")) if cell.tag in _CELLS else 0
        row += int(line.get(f"{_TABLE}number-rows-repeated", "1"))
    return {no: dict(sorted(cells.items())) for no, cells in sorted(rows.items())}
