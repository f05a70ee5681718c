"""A workbook as text, a line a row, with what its cells hold beside their value, how it looks and what its pictures and
charts show: whatever changes is seen as a line."""

import html
import re
import string
import zipfile
from collections.abc import Iterator
from datetime import date, datetime, time
from io import BytesIO
from itertools import groupby
from pathlib import Path

from openpyxl.utils import get_column_letter
from PIL import Image
from python_calamine import CalamineWorkbook

LEFT_OUT = ("Garments", "Film", "Positions", "Work times", "Fonts to choose from", "Kept by the program")
_GRID = (12, 5)  # fields of a picture whose darkness is told, from 0 (white) to z (black)


def sheets_text(path: Path, blank: str) -> Iterator[str]:
    """The sheets of a workbook; where `blank` is "", cells without anything are left out: pages have sixty a row."""
    book = CalamineWorkbook.from_path(path)
    with zipfile.ZipFile(path) as parts:
        names = re.findall(r'<definedName name="([^_"][^"]*)"[^>]*>([^<]*)<', parts.read("xl/workbook.xml").decode())
        yield from (f"~ {name} = {html.unescape(cells)}" for name, cells in names)
        for number, name in enumerate(book.sheet_names, 1):
            if name in LEFT_OUT:
                continue
            sheet = parts.read(f"xl/worksheets/sheet{number}.xml").decode()
            beside = _beside(parts, f"xl/worksheets/sheet{number}.xml")
            notes = _notes(sheet, parts.read(beside["comments"]).decode() if "comments" in beside else "")
            yield f"\n== {name}"
            yield from _look(sheet)
            yield from _pictures(parts, beside.get("drawing", ""))
            for down, row in enumerate(book.get_sheet_by_name(name).to_python(skip_empty_area=False), 1):
                refs = (f"{get_column_letter(across)}{down}" for across in range(1, len(row) + 1))
                cells = [_cell(value) + notes.get(ref, "") for value, ref in zip(row, refs, strict=True)]
                if any(cells):
                    yield " | ".join(cell for cell in cells if cell or blank).rstrip(" |")


def _beside(parts: zipfile.ZipFile, part: str) -> dict[str, str]:
    """The parts that belong to a part of the package, by their kind; pictures by their id."""
    folder, _, name = part.rpartition("/")
    known = f"{folder}/_rels/{name}.rels"
    rels = parts.read(known).decode() if known in parts.namelist() else ""
    beside = {}
    for rel in re.findall(r"<Relationship ([^>]*)/>", rels):
        attributes = dict(re.findall(r'(\w+)="([^"]*)"', rel))
        path = attributes["Target"].replace("../", "xl/")
        beside[attributes["Type"].rpartition("/")[2]] = beside[attributes["Id"]] = path
    return beside


def _look(sheet: str) -> Iterator[str]:
    """How wide columns and how high rows are, as many alike together, what stays in sight, and how the sheet prints."""
    widths = re.findall(r'<col min="(\d+)" max="(\d+)" width="([\d.]+)"', sheet)
    yield "~ widths " + " ".join(f"{first}-{last}: {float(width):.1f}" for first, last, width in widths)
    heights = [re.findall(r' ht="([\d.]+)"', row) for row in re.findall(r"<row [^>]*>", sheet)]
    yield "~ heights " + " ".join(f"{len(list(alike))}x{''.join(high) or '-'}" for high, alike in groupby(heights))
    parts = ("pane", "mergeCell", "autoFilter", "pageSetup", "brk", "dataValidation", "cfRule", "sheetProtection")
    texts_of = {part: re.findall(rf"<{part} ([^>]*?)/?>", sheet) for part in parts}
    yield from (f"~ {part} {'; '.join(texts)}"[:600] for part, texts in texts_of.items() if texts)


def _pictures(parts: zipfile.ZipFile, drawing: str) -> Iterator[str]:
    """Where a sheet's pictures lie, what they say to someone who cannot see them, and how dark each of their fields is;
    charts by all that they are told."""
    if not drawing:
        return
    beside = _beside(parts, drawing)
    for anchor in re.findall(r"<xdr:twoCellAnchor.*?</xdr:twoCellAnchor>", parts.read(drawing).decode(), re.DOTALL):
        column, row = (int(text) for text in re.findall(r"<xdr:(?:col|row)>(\d+)<", anchor)[:2])
        size = "x".join(f"{int(side) / 12700:.1f}" for side in re.findall(r'<a:ext cx="(\d+)" cy="(\d+)"', anchor)[0])
        where = f"{get_column_letter(column + 1)}{row + 1}"
        if chart := re.search(r'<c:chart [^>]*r:id="(\w+)"', anchor):
            told = re.findall(r' val="([^"]*)"|>([^<\s][^<]*)<', parts.read(beside[chart[1]]).decode())
            yield f"~ chart {where} " + " ".join(value or text for value, text in told)
        elif image := re.search(r'r:embed="(\w+)"', anchor):
            says = re.findall(r' descr="([^"]*)"', anchor)
            yield f"~ picture {where} {size} {html.unescape(''.join(says))} {darkness(parts.read(beside[image[1]]))}"


def darkness(png: bytes) -> str:
    """How dark each field of a picture is, row by row."""
    with Image.open(BytesIO(png)) as picture:
        fields = picture.convert("L").resize(_GRID, Image.Resampling.BOX).tobytes()
    digits = "".join((string.digits + string.ascii_lowercase)[(255 - shade) * 35 // 255] for shade in fields)
    return " ".join(digits[start : start + _GRID[0]] for start in range(0, len(digits), _GRID[0]))


def _notes(sheet: str, comments: str) -> dict[str, str]:
    """What a cell holds beside its value: where its link leads, its formula, its comment. The writer's own XML."""
    notes = {
        ref: f" -> {html.unescape(to)}" for ref, to in re.findall(r'<hyperlink ref="(\w+)" location="([^"]*)"', sheet)
    }
    for ref, formula in re.findall(r'<c r="(\w+)"[^>]*><f>(.*?)</f>', sheet):
        notes[ref] = f"{notes.get(ref, '')}  [={html.unescape(formula)}]"
    for ref, comment in re.findall(r'<comment ref="(\w+)".*?<t(?: [^>]*)?>(.*?)</t>', comments, re.DOTALL):
        notes[ref] = f"{notes.get(ref, '')}  {{{html.unescape(comment)}}}".replace("\n", " / ")
    return notes


def _cell(value: object) -> str:
    """A value, shortened to what a person could read."""
    if isinstance(value, datetime | date | time):
        return value.isoformat()
    if isinstance(value, float):
        return f"{value:.7g}"
    return str(value).replace("\n", " / ")
