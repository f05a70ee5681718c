"""A workbook as text, a line a row, with what its cells hold beside their value, how it looks and what its pictures and
charts show: whatever changes is seen as a line."""

import html
import re
import string
import zipfile
from collections.abc import Iterable, Iterator
from datetime import date, datetime, time
from io import BytesIO
from itertools import groupby
from pathlib import Path
from xml.etree import ElementTree

from openpyxl.utils import coordinate_to_tuple, get_column_letter, rows_from_range
from PIL import Image
from python_calamine import CalamineWorkbook

LEFT_OUT = ("Garments", "Film", "Positions", "Work times", "Fonts to choose from", "Kept by the program")
_USUAL = ("FF17202A", "none", "1", "64")  # ink, no fill, automatic colors
_GRID = (24, 10)  # fields of a picture whose darkness is told, from 0 (white) to z (black)


def sheets_text(path: Path, blank: str) -> Iterator[str]:
    """The sheets of a workbook; where `blank` is "", cells without anything are left out: pages have sixty a row."""
    book = CalamineWorkbook.from_path(path)
    with zipfile.ZipFile(path) as parts:
        names = re.findall(r'<definedName name="([^"]*)"[^>]*>([^<]*)<', parts.read("xl/workbook.xml").decode())
        yield from (f"~ {name} = {html.unescape(cells)}" for name, cells in names)
        looks, rich = _looks(parts.read("xl/styles.xml")), _rich(parts.read("xl/sharedStrings.xml"))
        for number, name in enumerate(book.sheet_names, 1):
            if name in LEFT_OUT:
                continue
            sheet = parts.read(f"xl/worksheets/sheet{number}.xml").decode()
            beside = _beside(parts, f"xl/worksheets/sheet{number}.xml")
            notes = _notes(sheet, parts.read(beside["comments"]).decode() if "comments" in beside else "")
            yield f"\n== {name}"
            yield from _laid_out(sheet)
            yield from _looked(sheet, looks)
            yield from _pictures(parts, beside.get("drawing", ""))
            for down, row in enumerate(book.get_sheet_by_name(name).to_python(skip_empty_area=False), 1):
                refs = (f"{get_column_letter(across)}{down}" for across in range(1, len(row) + 1))
                cells = [
                    _cell(rich.get(str(value), value)) + notes.get(ref, "")
                    for value, ref in zip(row, refs, strict=True)
                ]
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


def _laid_out(sheet: str) -> Iterator[str]:
    """How wide columns and how high rows are, as many alike together, what stays in sight, and how the sheet prints."""
    widths = re.findall(r'<col min="(\d+)" max="(\d+)" width="([\d.]+)"', sheet)
    yield "~ widths " + " ".join(f"{first}-{last}: {float(width):.1f}" for first, last, width in widths)
    heights = [re.findall(r' ht="([\d.]+)"', row) for row in re.findall(r"<row [^>]*>", sheet)]
    yield "~ heights " + " ".join(f"{len(list(alike))}x{''.join(high) or '-'}" for high, alike in groupby(heights))
    joined = groupby(re.findall(r'<mergeCell ref="([^"]*)"', sheet), lambda ref: re.findall(r"\d+", ref)[0])
    yield from (f"~ joined {row}: {' '.join(map(_columns, refs))}" for row, refs in joined)
    parts = ("pane", "autoFilter", "pageSetup", "brk", "dataValidation", "cfRule", "sheetProtection")
    texts_of = {part: re.findall(rf"<{part} ([^>]*?)/?>", sheet) for part in parts}
    yield from (f"~ {part} {text}" for part, texts in texts_of.items() for text in texts)


def _columns(ref: str) -> str:
    """`A-AF` for A1:AF1; several rows are told."""
    (first, top), (last, bottom) = re.findall(r"([A-Z]+)(\d+)", ref)
    return f"{first}-{last}" + (f" down to {bottom}" if top != bottom else "")


def _looked(sheet: str, looks: list[str]) -> Iterator[str]:
    """Which cells look how, look by look; of joined cells the first."""
    inner = {ref for joined in re.findall(r'<mergeCell ref="([^"]*)"', sheet) for ref in _inner(joined)}
    cells = [(ref, int(look)) for ref, look in re.findall(r'<c r="(\w+)" s="(\d+)"', sheet) if ref not in inner]
    refs_of: dict[str, list[str]] = {}
    for ref, look in cells:
        refs_of.setdefault(looks[look], []).append(ref)
    yield from (f"~ look {look}: {' '.join(_together(refs))}" for look, refs in refs_of.items())


def _inner(joined: str) -> list[str]:
    """The cells of a range but for its first."""
    return [str(ref) for row in rows_from_range(joined) for ref in row][1:]


def _together(refs: Iterable[str]) -> Iterator[str]:
    """Cells beside one another in a row as one range."""
    for row, places in groupby(map(coordinate_to_tuple, refs), lambda place: place[0]):
        for _, alike in groupby(enumerate(column for _, column in places), lambda numbered: numbered[1] - numbered[0]):
            run = [get_column_letter(column) for _, column in alike]
            yield f"{run[0]}{row}" + (f"-{run[-1]}" if len(run) > 1 else "")


def _looks(styles: bytes) -> list[str]:
    """Each look of a cell in words, by its number."""
    root, space = _parsed(styles)
    formats = {one.get("numFmtId", ""): one.get("formatCode", "") for one in root.iterfind("numFmts/numFmt", space)}
    told = {
        kind: [_attributes(one) for one in root.iterfind(f"{kind}s/{kind}", space)]
        for kind in ("font", "fill", "border")
    }
    looks = []
    for one in root.iterfind("cellXfs/xf", space):
        number = one.get("numFmtId", "")
        parts = [texts[int(one.get(f"{kind}Id", 0))] for kind, texts in told.items()] + [formats.get(number, number)]
        parts += [" ".join(f"{name} {value}" for name, value in inside.attrib.items()) for inside in one]
        looks.append("; ".join(filter(None, parts)))
    return looks


def _parsed(xml: bytes) -> tuple[ElementTree.Element, dict[str, str]]:
    root = ElementTree.fromstring(xml)
    return root, {"": root.tag[1:].partition("}")[0]}


def _attributes(part: ElementTree.Element) -> str:
    """What is set in a part of a look: `b sz 11 color 0B5A5E`; what nearly all have is left out."""
    told = []
    for inside in part.iter():
        name = inside.tag.rpartition("}")[2]
        values = [value.removeprefix("FF") for value in inside.attrib.values() if value not in _USUAL]
        if name not in ("name", "rFont", "family", "scheme") and (values or name in ("b", "i", "strike")):
            told.append(" ".join([name, *values]))
    return " ".join(told)


def _rich(strings: bytes) -> dict[str, str]:
    """The texts of which parts look otherwise, with those parts' looks."""
    root, space = _parsed(strings)
    rich = {}
    for item in root:
        runs = [(run.findtext("t", "", space), run.find("rPr", space)) for run in item.iterfind("r", space)]
        marked = (f"<{_attributes(look)}>{text}" if look is not None else text for text, look in runs)
        rich["".join(text for text, _ in runs)] = "".join(marked)
    return rich


def _pictures(parts: zipfile.ZipFile, drawing: str) -> Iterator[str]:
    """Where a sheet's pictures lie, what they say to someone who cannot see them, and how dark each of their fields is;
    charts by all that they are told."""
    if not drawing:
        return
    beside = _beside(parts, drawing)
    for anchor in re.findall(r"<xdr:twoCellAnchor.*?</xdr:twoCellAnchor>", parts.read(drawing).decode(), re.DOTALL):
        column, row = (int(text) for text in re.findall(r"<xdr:(?:col|row)>(\d+)<", anchor)[:2])
        right, down = (int(text) / 12700 for text in re.findall(r"<xdr:(?:colOff|rowOff)>(\d+)<", anchor)[:2])
        size = "x".join(f"{int(side) / 12700:.1f}" for side in re.findall(r'<a:ext cx="(\d+)" cy="(\d+)"', anchor)[0])
        where = f"{get_column_letter(column + 1)}{row + 1}+{right:.1f}+{down:.1f}"
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
