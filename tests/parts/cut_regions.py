"""Drawings planned as they are and with their word replaced, and the cut files read back as regions of the drawing's
page: with ElementTree, fontTools and shapely, and nothing of the program. Two triangles in each color, in the corners
of the page, tell where a cut piece lay in the drawing."""

import re
from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime
from itertools import pairwise
from pathlib import Path
from typing import NamedTuple
from xml.etree import ElementTree

import numpy as np
import openpyxl
import shapely
from fontTools.pens.recordingPen import RecordingPen
from fontTools.svgLib.path import parse_path
from shapely.geometry.base import BaseGeometry

from tests.parts.drawn_shapes import PAGE, Points, path, polygon
from tests.workbooks import heading_at, write_workbook
from xlbatch.run import Options, run

WIDE = 254.0  # mm: how wide each drawing is made
FILMS = ("Black smooth", "White smooth", "Red smooth", "Gold smooth", "Royal smooth", "Forest smooth")
STEPS = 12  # straight pieces of a curve
_SIDE, _STEP, _MARGIN = 8.0, 12.0, 1.0  # of the triangles, from one to the next, and from the page's edge


class ToPlan(NamedTuple):
    """A drawing with its triangles, and the number of its word on Drawing parts."""

    name: str
    svg: str
    part: str


class Cut(NamedTuple):
    """What is cut of each color of a drawing, on its page (y downward, 400 units across), and the mm of a unit.

    `whole`: no outline crosses or repeats another; `smaller`: that the name had to be made smaller was told."""

    regions: Mapping[str, BaseGeometry]
    mm: float
    whole: bool
    smaller: bool  # it was asked about as made smaller


def colors_of(svg: str) -> list[str]:
    """The colors of a drawing in the order in which they are drawn: lines under what they go around, those of its style
    sheet last."""
    style, _, body = svg.rpartition("</style>")
    lines = re.findall('stroke="(#[0-9a-f]{6})"', body)
    return list(dict.fromkeys(lines + re.findall("#[0-9a-f]{6}", body) + re.findall("#[0-9a-f]{6}", style)))


def marked(svg: str) -> str:
    """A drawing with two triangles in each of its colors, near the lower left and the upper right corner."""
    marks = ""
    for number, color in enumerate(colors_of(svg)):
        for x, y in _corners(number):
            marks += path(polygon([(x, y), (x + _SIDE, y), (x, y + _SIDE)]), color)
    return svg.replace("</svg>", f"{marks}</svg>")


def _corners(number: int) -> tuple[tuple[float, float], tuple[float, float]]:
    """The upper left corners of the triangles of the color so numbered."""
    far = PAGE - _MARGIN - _SIDE
    return (_MARGIN, far - _STEP * number), (far, _MARGIN + _STEP * number)


def planned(drawings: Sequence[ToPlan], names: Sequence[str], font: str, folder: Path) -> Iterator[list[Cut | None]]:
    """Of each drawing what is cut of it as it is, and with each name in place of its word (None: held back)."""
    roster: list[list[object]] = [["Garment no.", "Who", "Group", "Size", "Design"]]
    designs: list[list[object]] = [
        ["Design", "Decal", "What", "Artwork", "Artwork color", "Film", "Layer", "Width", "Scale with size"]
    ]
    parts: list[list[object]] = [["Artwork", "Part", "Replace by", "Font"]]
    for drawing in drawings:
        for design, who in ((f"{drawing.name} plain", ("Plain",)), (drawing.name, names)):
            (folder / f"{design}.svg").write_text(drawing.svg, encoding="utf-8")
            for layer, (color, film) in enumerate(zip(colors_of(drawing.svg), FILMS, strict=False), 1):
                row = [design, f"Art {layer}", "artwork", f"{design}.svg", color, film, layer, f"{WIDE} mm", "no"]
                designs.append(row)
            roster += [[len(roster) + number, name, name, "3XL", design] for number, name in enumerate(who)]
        parts.append([f"{drawing.name}.svg", drawing.part, "{Group}", font])
    job: list[list[object]] = [["Setting", "Value"], ["Mirror the cut files", "no"], ["Turn decals", "no"]]
    sheets = {"Roster": roster, "Job": job, "Designs": designs, "Drawing parts": parts}
    outcome = run(
        write_workbook(folder / "names.xlsx", sheets), Options(effort=0), lambda _: None, datetime(2031, 5, 4)
    )
    assert outcome.written
    assert outcome.cut_files
    pieces = _pieces(outcome.written, outcome.cut_files)
    told = _made_smaller(outcome.written)
    for number, drawing in enumerate(drawings):
        first = number * (1 + len(names)) + 1
        yield [
            _cut(drawing, pieces[no], (number, name) in told) if (no := first + place) in pieces else None
            for place, name in enumerate(("Plain", *names))
        ]


def _made_smaller(plan: Path) -> set[tuple[int, str]]:
    """The drawings, by number, and names that Problems says were made smaller."""
    sheet = openpyxl.load_workbook(plan)["Problems"]
    down, _ = heading_at(sheet, "Level")
    headings = [cell.value for cell in sheet[down]]
    rows = [dict(zip(headings, row, strict=False)) for row in sheet.iter_rows(min_row=down + 1, values_only=True)]
    told = [row for row in rows if row["Code"] == "part-made-smaller"]
    return {(int(re.sub(r"\D", "", str(row["Cell"]))) - 2, str(row["Found"])) for row in told}


def _pieces(plan: Path, files: Path) -> dict[int, dict[str, list[Points]]]:
    """The outlines cut for each garment, by film."""
    book = openpyxl.load_workbook(plan, read_only=False)
    file_of = {row["Run"]: files / str(row["Cut file"]) for row in _rows(book, "Runs")}
    groups = {name: {group.get("id"): group for group in ElementTree.parse(name).iter()} for name in file_of.values()}
    pieces: dict[int, dict[str, list[Points]]] = {}
    for row in _rows(book, "Decals"):
        group = groups[file_of[row["Run"]]][str(row["Decal"])]
        data = " ".join(element.get("d", "") for element in group.iter() if element.tag.endswith("path"))
        films = pieces.setdefault(int(str(row["Garment no."])), {})
        assert row["Film"] not in films  # one piece a film
        films[str(row["Film"])] = list(outlines(data))
    return pieces


def _rows(book: openpyxl.Workbook, name: str) -> Iterator[dict[object, object]]:
    down, _ = heading_at(book[name], "Decal" if name == "Decals" else "Run")
    headings = [cell.value for cell in book[name][down]]
    for row in book[name].iter_rows(min_row=down + 1, values_only=True):
        if row[0] is not None:
            yield dict(zip(headings, row, strict=False))


def outlines(data: str) -> Iterator[Points]:
    """The contours of path data as points, curves cut small."""
    pen = RecordingPen()
    parse_path(data, pen)
    yield from drawn_outlines(pen.value)


def drawn_outlines(segments: Sequence[tuple[str, Sequence[tuple[float, float]]]]) -> Iterator[Points]:
    """The contours a pen was told of as points, curves cut small."""
    ring: list[complex] = []
    for verb, points in segments:
        if verb == "moveTo":
            ring = [complex(*points[0])]
        elif verb == "qCurveTo":
            between = [((a + c) / 2, (b + d) / 2) for (a, b), (c, d) in pairwise(points[:-1])]
            for control, end in zip(points[:-1], [*between, points[-1]], strict=True):
                ring += _curve([ring[-1], complex(*control), complex(*end)])
        elif verb in ("lineTo", "curveTo"):
            ring += _curve([ring[-1], *(complex(*point) for point in points)])
        elif len(ring) > 2:
            yield np.array(ring)
            ring = []


def _curve(points: Sequence[complex]) -> list[complex]:
    """A line or Bézier curve by de Casteljau's construction, without its start."""
    steps: list[complex] = []
    for step in range(1, STEPS + 1):
        inner = np.array(points)
        while len(inner) > 1:
            inner = inner[:-1] + (inner[1:] - inner[:-1]) * step / STEPS
        steps.append(complex(inner[0]))
    return steps


def region(rings: Sequence[Points]) -> BaseGeometry:
    """What contours enclose, holes in them left open (even-odd)."""
    enclosed: BaseGeometry = shapely.Polygon()
    for ring in rings:
        polygon = shapely.make_valid(shapely.Polygon(np.column_stack((ring.real, ring.imag))))
        enclosed = enclosed.symmetric_difference(polygon)
    return enclosed


def _cut(drawing: ToPlan, films: Mapping[str, Sequence[Points]], smaller: bool) -> Cut:
    regions: dict[str, BaseGeometry] = {}
    mm, whole = 0.0, True
    for number, (color, film) in enumerate(zip(colors_of(drawing.svg), FILMS, strict=False)):
        if film not in films:  # a color of which nothing is left
            regions[color] = shapely.Polygon()
            continue
        (left, right), rings = _triangles(films[film]), films[film]
        first, last = (complex(x + _SIDE / 2, y + _SIDE / 2) for x, y in _corners(number))
        mm = abs(right - left) / abs(last - first)
        onto = [first + (ring - left) / mm for ring in rings]
        regions[color] = region(onto)
        whole = whole and _crosses_nothing(onto, regions[color])
    return Cut(regions, mm, whole, smaller)


def _triangles(rings: Sequence[Points]) -> tuple[complex, complex]:
    """The middles of the boxes of the two triangles that are farthest apart, the left one first."""
    middles = []
    for ring in rings:
        wide, high = np.ptp(ring.real), np.ptp(ring.imag)
        area = shapely.Polygon(np.column_stack((ring.real, ring.imag))).area
        if abs(wide - high) < 0.01 and abs(area - wide * high / 2) < 0.05:
            middles.append(complex(ring.real.min() + wide / 2, ring.imag.min() + high / 2))
    pairs = [(left, right) for left in middles for right in middles if left.real < right.real]
    return max(pairs, key=lambda pair: abs(pair[1] - pair[0]))


def _crosses_nothing(rings: Sequence[Points], enclosed: BaseGeometry) -> bool:
    """Whether no contour repeats or crosses another: all their lengths are edges of what they enclose."""
    length = sum(float(np.abs(np.diff(np.append(ring, ring[0]))).sum()) for ring in rings)
    return abs(length - enclosed.length) < 1e-4 * length
