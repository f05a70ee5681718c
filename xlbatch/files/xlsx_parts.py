"""Turns an .xlsx as a person saved it into a small one with only what is read from it.

Kept: values, number formats, hidden rows. Left out: empty formatted cells (a formatted sheet may have millions),
pictures, links to other files, and everything else that costs time or trips a reader. What the small file cannot
say is kept beside it: merged cells, and formulas whose result was never saved.
"""

import io
import posixpath
import re
import zipfile
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from html import escape
from xml.etree.ElementTree import Element

from xlbatch.files.package import opened, part, root, size
from xlbatch.files.xlsx_notes import Notes, cell_notes
from xlbatch.problems.refusals import Refusal

MOST_BYTES = 100_000_000  # one part, unpacked
MOST_ROWS = 50_000  # filled rows of one sheet
MOST_CELLS = 1_000_000  # filled cells of one sheet

_MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
_LINK = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml"
_PACKAGE = "http://schemas.openxmlformats.org/package/2006"
_BLANKS = {ord(blank): f"&#{ord(blank)};" for blank in "\t\n\r"}  # else read as spaces
_HEAD = '<?xml version="1.0" encoding="UTF-8"?>'
# ISO/IEC 29500 strict files differ from the usual ones in the names of their namespaces only, as far as read here.
_STRICT = {
    b"http://purl.oclc.org/ooxml/spreadsheetml/main": _MAIN.encode(),
    b"http://purl.oclc.org/ooxml/officeDocument/relationships": _LINK.encode(),
}

_LOCKED = 1  # the flag of an encrypted part: PKWARE APPNOTE 4.4.4
_FIRST_OWN_FORMAT = 164  # number formats below it are built in: ECMA-376 part 1, 18.8.30
_ROOT = re.compile(rb"<(\w+:)?worksheet\b[^>]*>")
_DATA = re.compile(rb"<(?:\w+:)?sheetData>.*?</(?:\w+:)?sheetData>", re.DOTALL)
_FORMULA = re.compile(
    rb"<(?:\w+:)?c\s([^>]*)>\s*<(?:\w+:)?f\b(?:[^>]*/>|[^>]*>[^<]*</(?:\w+:)?f>)"
    rb"\s*(<(?:\w+:)?v\s*/>|<(?:\w+:)?v>\s*</(?:\w+:)?v>)?\s*</(?:\w+:)?c>"
)
_WITH_FORMULA = re.compile(rb"<(?:\w+:)?c\s([^>]*)>\s*<(?:\w+:)?f\b")
_REFERENCE = re.compile(rb'\br="([A-Z]+[0-9]+)"')
_PLAIN_TEXT = re.compile(rb't="inlineStr"([^>]*)><is><t(?:\s[^>]*)?>([^<]*)</t></is>')
_IN_LINE, _TEXT_ENDS = b't="inlineStr"', b"</t></is></c>"
_TEXT_BEGINS = (b"<is><t>", b'<is><t xml:space="preserve">')
_MERGED = re.compile(rb'<(?:\w+:)?mergeCell\s[^>]*ref="([A-Z]+[0-9]+):([A-Z]+[0-9]+)"')


@dataclass(frozen=True)
class SheetPart:
    """One worksheet, its XML slimmed."""

    name: str
    xml: bytes
    unsaved: frozenset[str]  # the cells whose formula has no result
    merged: tuple[tuple[str, str], ...]  # first and last cell of each block
    notes: Notes = field(default_factory=dict)
    out_of_sight: bool = False  # hidden
    formulas: frozenset[str] = frozenset()  # the cells that hold one


@dataclass(frozen=True)
class Slim:
    """The small workbook, and what could not be said in it."""

    package: bytes
    sheets: tuple[SheetPart, ...]


def slim(data: bytes, ignored: frozenset[str]) -> Slim:
    """The small workbook of a large one; sheets whose lower-case name is `ignored` come out empty.

    Raises Refusal for a file too large, hostile, damaged or of another kind."""
    with opened(data) as archive:
        if any(entry.flag_bits & _LOCKED for entry in archive.infolist()):
            raise Refusal("password")
        place = _book_part(archive)
        book = root(_part(archive, place))
        links = _links(archive, place)
        sheets = tuple(
            _empty_part(name)
            if name.strip().casefold() in ignored
            else replace(_with_notes(name, archive, where), out_of_sight=hidden)
            for name, where, hidden in _sheet_places(book, links)
            if where in archive.namelist()
        )
        texts = _optional(archive, links, "/sharedStrings")
        styles = _styles(_optional(archive, links, "/styles"))
    properties = book.find("{*}workbookPr")
    since_1904 = properties is not None and properties.get("date1904") in ("1", "true")
    return Slim(_package(sheets, texts, styles, since_1904), sheets)


def _book_part(archive: zipfile.ZipFile) -> str:
    names = archive.namelist()
    if "xl/workbook.bin" in names:
        raise Refusal("binary")
    if "_rels/.rels" not in names:
        raise Refusal("zip")
    targets = [target for kind, target in _links(archive, "").values() if kind.endswith("/officeDocument")]
    if not targets or targets[0] not in names or not targets[0].startswith("xl/"):
        raise Refusal("office")
    return targets[0]


def _part(archive: zipfile.ZipFile, name: str) -> bytes:
    if size(archive, name) > MOST_BYTES:
        raise Refusal("part too large")
    xml = part(archive, name)
    if b"<!DOCTYPE" in xml or b"<!ENTITY" in xml:
        raise Refusal("entities")
    if xml[:2] in (b"\xff\xfe", b"\xfe\xff"):
        raise Refusal("odd")
    for strict, usual in _STRICT.items():
        xml = xml.replace(strict, usual)
    return xml


def _links(archive: zipfile.ZipFile, place: str) -> dict[str, tuple[str, str]]:
    """The links of a part inside the package: from id to (type, part). Links to other files are not followed."""
    folder, name = posixpath.split(place)
    xml = _part(archive, posixpath.join(folder, "_rels", f"{name}.rels"))
    return {
        link.get("Id", ""): (
            link.get("Type", ""),
            posixpath.normpath(posixpath.join("/", folder, link.get("Target", ""))).lstrip("/"),
        )
        for link in root(xml)
        if link.get("TargetMode") != "External"
    }


def _sheet_places(book: Element, links: dict[str, tuple[str, str]]) -> list[tuple[str, str, bool]]:
    """Of each sheet its name, its part and whether it is hidden."""
    places = []
    for sheet in book.iterfind("{*}sheets/{*}sheet"):
        kind, where = links.get(sheet.get(f"{{{_LINK}}}id", ""), ("", ""))
        if kind.endswith("/worksheet"):
            places.append((sheet.get("name", ""), where, sheet.get("state", "visible") != "visible"))
    return places


def _optional(archive: zipfile.ZipFile, links: dict[str, tuple[str, str]], ending: str) -> bytes | None:
    for kind, where in links.values():
        if kind.endswith(ending) and where in archive.namelist():
            return _part(archive, where)
    return None


def _empty_part(name: str) -> SheetPart:
    return SheetPart(name, f'{_HEAD}<worksheet xmlns="{_MAIN}"><sheetData/></worksheet>'.encode(), frozenset(), ())


def _sheet_part(name: str, xml: bytes) -> SheetPart:
    head, data = _ROOT.search(xml), _DATA.search(xml)
    if head is None or data is None:
        return _empty_part(name)
    _refuse_if_large(name, data[0].count(b"</v>") + data[0].count(b":v>") // 2, "cells", MOST_CELLS)
    prefix = head[1] or b""
    # An escaped section could hold what looks like an empty cell.
    filled = data[0] if b"<![CDATA[" in xml else _without_empty(data[0], prefix)
    _refuse_if_large(name, filled.count(b"</row>") + filled.count(b":row>") // 2, "rows", MOST_ROWS)
    merged = tuple((match[1].decode(), match[2].decode()) for match in _MERGED.finditer(xml, data.end()))
    size_first = b"<" + prefix + b'dimension ref="A1"/>'  # else the reader looks for it in the whole sheet
    small = xml[: head.end()] + size_first + _quick(filled) + b"</" + prefix + b"worksheet>"
    formulas, unsaved = _with_formula(filled)
    return SheetPart(name, small, unsaved, merged, formulas=formulas)


def _without_empty(xml: bytes, prefix: bytes) -> bytes:
    """The rows without empty cells, and without empty rows."""
    cell, row = (re.escape(prefix + tag) for tag in (b"c", b"row"))
    for empty in (
        rb"<%b(?:\s[^>/]*+)?(?:/>|></%b>)" % (cell, cell),
        rb"<%b(?:\s[^>/]*+)?(?:/>|>\s*+</%b>)" % (row, row),
    ):
        xml = re.sub(empty, b"", xml)
    return xml


def _quick(xml: bytes) -> bytes:
    """The rows with plain texts kept where numbers are: read in a third of the time."""
    if not (count := xml.count(_IN_LINE)):
        return xml
    if count == xml.count(_TEXT_ENDS) == sum(map(xml.count, _TEXT_BEGINS)):  # no text has parts
        for begins in _TEXT_BEGINS:
            xml = xml.replace(begins, b"<v>")
        return xml.replace(_IN_LINE, b't="str"').replace(_TEXT_ENDS, b"</v></c>")
    return _PLAIN_TEXT.sub(rb't="str"\1><v>\2</v>', xml)


def _with_notes(name: str, archive: zipfile.ZipFile, where: str) -> SheetPart:
    folder, file = posixpath.split(where)
    made = _sheet_part(name, _part(archive, where))
    if posixpath.join(folder, "_rels", f"{file}.rels") not in archive.namelist():
        return made
    links = [(kind, target) for kind, target in _links(archive, where).values() if target in archive.namelist()]
    return replace(made, notes=cell_notes(links, lambda target: _part(archive, target)))


def _refuse_if_large(name: str, count: int, what: str, most: int) -> None:
    if count > most:
        raise Refusal("sheet too large", sheet=name, count=count, most=most, what=what)


def _with_formula(xml: bytes) -> tuple[frozenset[str], frozenset[str]]:
    """The cells with a formula, and those of them without a result. An empty text is a result: it is typed `str`."""
    if b"<f" not in xml and b":f" not in xml:
        return frozenset(), frozenset()
    formulas = (match[1] for match in _WITH_FORMULA.finditer(xml))
    unsaved = (match[1] for match in _FORMULA.finditer(xml) if not (match[2] and b't="str"' in match[1]))
    cells = (map(_REFERENCE.search, attributes) for attributes in (formulas, unsaved))
    with_formula, without_result = (frozenset(match[1].decode() for match in named if match) for named in cells)
    return with_formula, without_result


def _styles(xml: bytes | None) -> str:
    """A style sheet of number formats and of text struck through alone."""
    sheet = root(xml) if xml else Element("none")
    codes = {
        number_format.get("numFmtId", ""): number_format.get("formatCode", "")
        for number_format in sheet.iterfind("{*}numFmts/{*}numFmt")
    }
    formats = "".join(
        f"<numFmt numFmtId={_quoted(no)} formatCode={_quoted(code)}/>" for no, code in codes.items() if no.isdecimal()
    )
    struck = {str(no) for no, font in enumerate(sheet.iterfind("{*}fonts/{*}font")) if _strikes(font)}
    used = (
        (cell_format.get("numFmtId", "0"), cell_format.get("fontId", "0") in struck)
        for cell_format in sheet.iterfind("{*}cellXfs/{*}xf")
    )
    cells = "".join(f'<xf numFmtId="{no if _has_format(no, codes) else 0}" fontId="{int(line)}"/>' for no, line in used)
    return (
        f'{_HEAD}<styleSheet xmlns="{_MAIN}"><numFmts>{formats}</numFmts><fonts><font/><font><strike/></font></fonts>'
        "<fills><fill><patternFill/></fill></fills><borders><border/></borders>"
        f"<cellStyleXfs><xf/></cellStyleXfs><cellXfs>{cells or '<xf/>'}</cellXfs>"
        '<cellStyles><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>'
    )


def _strikes(font: Element) -> bool:
    line = font.find("{*}strike")
    return line is not None and line.get("val", "1") not in ("0", "false")


def _has_format(no: str, codes: Mapping[str, str]) -> bool:
    return no.isdecimal() and (no in codes or int(no) < _FIRST_OWN_FORMAT)


def _package(sheets: tuple[SheetPart, ...], texts: bytes | None, styles: str, since_1904: bool) -> bytes:
    parts: dict[str, bytes | str] = {f"xl/worksheets/sheet{no}.xml": sheet.xml for no, sheet in enumerate(sheets, 1)}
    kinds = dict.fromkeys(parts, "worksheet") | {"xl/styles.xml": "styles"}
    parts["xl/styles.xml"] = styles
    if texts is not None:
        parts["xl/sharedStrings.xml"] = texts
        kinds["xl/sharedStrings.xml"] = "sharedStrings"
    parts |= _frame(sheets, kinds, since_1904)
    file = io.BytesIO()
    with zipfile.ZipFile(file, "w") as archive:
        for name, content in parts.items():
            archive.writestr(name, content)
    return file.getvalue()


def _frame(sheets: tuple[SheetPart, ...], kinds: dict[str, str], since_1904: bool) -> dict[str, bytes | str]:
    """The parts that hold the others together: workbook, links and content types."""
    types = "".join(f'<Override PartName="/{name}" ContentType="{_TYPE}.{kind}+xml"/>' for name, kind in kinds.items())
    links = "".join(
        f'<Relationship Id="r{no}" Type="{_LINK}/{kind}" Target="/{name}"/>'
        for no, (name, kind) in enumerate(kinds.items(), 1)
    )
    listed = "".join(
        f"<sheet name={_quoted(sheet.name)} sheetId='{no}' r:id='r{no}'/>" for no, sheet in enumerate(sheets, 1)
    )
    link_root = f'{_HEAD}<Relationships xmlns="{_PACKAGE}/relationships">'
    return {
        "[Content_Types].xml": (
            f'{_HEAD}<Types xmlns="{_PACKAGE}/content-types"><Default Extension="xml" ContentType="application/xml"/>'
            '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
            f'<Override PartName="/xl/workbook.xml" ContentType="{_TYPE}.sheet.main+xml"/>{types}</Types>'
        ),
        "_rels/.rels": (
            f'{link_root}<Relationship Id="r1" Type="{_LINK}/officeDocument" Target="/xl/workbook.xml"/>'
            "</Relationships>"
        ),
        "xl/workbook.xml": (
            f'{_HEAD}<workbook xmlns="{_MAIN}" xmlns:r="{_LINK}"><workbookPr date1904="{int(since_1904)}"/>'
            f"<sheets>{listed}</sheets></workbook>"
        ),
        "xl/_rels/workbook.xml.rels": f"{link_root}{links}</Relationships>",
    }


def _quoted(text: str) -> str:
    """A text as the value of an attribute, in quotes."""
    return f'"{escape(text).translate(_BLANKS)}"'
