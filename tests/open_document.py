"""OpenDocument workbooks made from rows, as spreadsheet programs write them."""

import zipfile
from collections.abc import Sequence
from datetime import date
from pathlib import Path
from xml.sax.saxutils import escape, quoteattr

_HEAD = (
    '<office:document-content xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0"'
    ' xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0"'
    ' xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0"'
    ' xmlns:calcext="urn:org:documentfoundation:names:experimental:calc:xmlns:calcext:1.0"'
    ' office:version="1.3"><office:body><office:spreadsheet>'
)
_FOOT = "</office:spreadsheet></office:body></office:document-content>"


def cell(value: object) -> str:
    """One cell: text, a number, a date; what is `<…>` already stands as it is."""
    match value:
        case None | "":
            return "<table:table-cell/>"
        case str() if value.startswith("<table:"):
            return value
        case date():
            shown = f"{value.day}-{value:%b}"
            return _cell(f'"date" office:date-value="{value}"', shown)
        case int() | float():
            return _cell(f'"float" office:value="{value}"', str(value))
        case _:
            return _cell('"string"', escape(str(value)))


def _cell(kind: str, shown: str) -> str:
    return f"<table:table-cell office:value-type={kind}><text:p>{shown}</text:p></table:table-cell>"


def rows_xml(rows: Sequence[Sequence[object]], hidden: Sequence[int] = ()) -> str:
    """Table rows; those numbered in `hidden` are filtered out."""
    filtered = ' table:visibility="filter"'
    return "".join(
        f"<table:table-row{filtered if no in hidden else ''}>{''.join(map(cell, row))}</table:table-row>"
        for no, row in enumerate(rows, 1)
    )


def write_open_document(path: Path, sheets: dict[str, str]) -> Path:
    """An .ods file with the sheets given as the XML of their rows."""
    tables = "".join(f"<table:table table:name={quoteattr(name)}>{rows}</table:table>" for name, rows in sheets.items())
    with zipfile.ZipFile(path, "w") as archive:
        archive.writestr("mimetype", "application/vnd.oasis.opendocument.spreadsheet")
        archive.writestr("content.xml", f"{_HEAD}{tables}{_FOOT}")
    return path
