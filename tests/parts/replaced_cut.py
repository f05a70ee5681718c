"""Words replaced for five families, judged from the files to cut alone: each drawing is cut once as it is and once a
family, both are read with fontTools and shapely, and what was added and taken away is measured. The generator of the
drawing says where its word is; nothing the program thinks of its parts is asked, but the number under which the word is
listed.

Run: -m tests.parts.replaced_cut      prints a line a drawing; exit code 1 where one misses
"""

import io
import sys
import tempfile
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import NamedTuple
from xml.etree import ElementTree

import numpy as np
import openpyxl
import resvg_py
from fontTools.pens.recordingPen import RecordingPen
from fontTools.svgLib.path import parse_path
from PIL import Image
from shapely import Polygon, unary_union
from shapely.affinity import translate
from shapely.geometry.base import BaseGeometry

from tests.parts.drawn_shapes import PAGE, Shape, box, path
from tests.parts.find_score import look
from tests.parts.word_drawings import Made, drawings
from tests.workbooks import heading_at, write_workbook
from xlbatch.geometry.path import contours, path_data
from xlbatch.run import Options, run

NAMES = ("HIL", "TIMM", "NELL", "KIM", "HILLEMANTHEIMLINTELHEIM")  # the last three times as long as most samples
FONT = "Anton"
WIDE = 254.0  # mm: how wide each drawing is made
HEIGHT, FOOT, CENTER = 0.02, 0.3, 0.5  # of the height; mm; mm
SAME, REMNANT = 0.02, 0.05  # mm and square mm: rounding of the cut file, and of what is left of a weld
DOTS = 2000
STEPS = 12  # straight pieces of a curve

Box = tuple[float, float, float, float]
Rings = Sequence[Polygon]


class Judged(NamedTuple):
    """What is wrong with a name in a drawing; nothing where all is right."""

    made: Made
    name: str
    faults: tuple[str, ...]


def judged(some: Sequence[Made], folder: Path) -> Iterator[Judged]:
    """Each drawing with each name. What cannot be judged so (several films over one another) is left out."""
    wanted = [_marked(made) for made in some if made.straight and "open" not in made.word]
    numbers = [_number(made, folder) for made in wanted]
    pairs = [(made, number) for made, number in zip(wanted, numbers, strict=True) if number]
    plan, files = _planned([made for made, _ in pairs], [number for _, number in pairs], folder)
    decals = {key: _read(file, id_) for key, (file, id_) in _listed(plan, files).items()}
    for at, (made, _) in enumerate(pairs):
        plain = decals[6 * at + 1]
        for add, name in enumerate(NAMES, 2):
            if decal := decals.get(6 * at + add):
                yield Judged(made, name, tuple(_faults(made, name, plain, decal)))
            else:
                yield Judged(made, name, ("held back",))


def _marked(made: Made) -> Made:
    """A drawing whose word may be alone in its color with a square in that color in a corner, to measure from."""
    if made.kind not in ("over", "border"):
        return made
    square = path(box(2, 2, 14, 14), next(iter(made.word)))
    return replace(made, svg=made.svg.replace("</svg>", f"{square}</svg>"))


def _number(made: Made, folder: Path) -> str:
    """The number under which the word stands on Drawing parts, where it is listed alone."""
    found = look(made, folder)
    (folder / f"{made.name} plain.svg").write_text(made.svg, encoding="utf-8")
    return found.part.label if found.part and found.exact else ""


def _planned(wanted: Sequence[Made], numbers: Sequence[str], folder: Path) -> tuple[Path, Path]:
    roster: list[list[object]] = [["Garment no.", "Who", "Group", "Size", "Design"]]
    headings: list[object] = ["Design", "Decal", "What", "Artwork", "Artwork color", "Film", "Width", "Scale with size"]
    designs = [headings]
    parts: list[list[object]] = [["Artwork", "Part", "Replace by", "Font"]]
    for made, number in zip(wanted, numbers, strict=True):
        color = next(iter(made.word))
        for name, who in ((f"{made.name} plain", ("Plain",)), (made.name, NAMES)):
            design: list[object] = [name, "Art", "artwork", f"{name}.svg", color, "Black smooth", f"{WIDE} mm", "no"]
            designs.append(design)
            roster += [[len(roster) + at, each, each, "3XL", name] for at, each in enumerate(who)]
        parts.append([f"{made.name}.svg", number, "{Group}", FONT])
    job: list[list[object]] = [["Setting", "Value"], ["Mirror the cut files", "no"], ["Turn decals", "no"]]
    sheets = {"Roster": roster, "Job": job, "Designs": designs, "Drawing parts": parts}
    list_ = write_workbook(folder / "names.xlsx", sheets)
    outcome = run(list_, Options(effort=0), lambda _: None, datetime(2031, 5, 4))
    assert outcome.written
    assert outcome.cut_files
    return outcome.written, outcome.cut_files


def _listed(plan: Path, files: Path) -> dict[int, tuple[Path, str]]:
    """The file and number of each garment's decal."""
    book = openpyxl.load_workbook(plan)
    runs = {row["Run"]: files / str(row["Cut file"]) for row in _rows(book, "Runs")}
    return {int(str(row["Garment no."])): (runs[row["Run"]], str(row["Decal"])) for row in _rows(book, "Decals")}


def _rows(book: openpyxl.Workbook, name: str) -> Iterator[dict[object, object]]:
    down, _ = heading_at(book[name], "Decal" if name == "Decals" else "Run")
    headings = [cell.value for cell in book[name][down]]
    for row in book[name].iter_rows(min_row=down + 1, values_only=True):
        if row[0] is not None:
            yield dict(zip(headings, row, strict=False))


def _read(file: Path, number: str) -> Rings:
    """The contours of a decal in a cut file, in mm, y upward."""
    group = next(element for element in ElementTree.parse(file).iter() if element.get("id") == number)
    data = " ".join(element.get("d", "") for element in group.iter() if element.tag.endswith("path"))
    return [Polygon([(x, -y) for x, y in ring]) for ring in _flat(data)]


def _flat(data: str) -> Iterator[list[tuple[float, float]]]:
    """The contours of path data as points."""
    pen = RecordingPen()
    parse_path(data, pen)
    ring: list[tuple[float, float]] = []
    for verb, points in pen.value:
        if verb == "moveTo":
            ring = [points[0]]
        elif verb in ("lineTo", "qCurveTo", "curveTo"):
            ring += _curve([ring[-1], *points])
        elif len(ring) > 2:
            yield ring
            ring = []


def _curve(points: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    """A Bézier curve by de Casteljau's construction."""
    if len(points) == 2:
        return [points[1]]
    found = []
    for step in range(1, STEPS + 1):
        inner = np.array(points)
        while len(inner) > 1:
            inner = inner[:-1] + (inner[1:] - inner[:-1]) * step / STEPS
        found.append((float(inner[0][0]), float(inner[0][1])))
    return found


def _faults(made: Made, name: str, plain: Rings, decal: Rings) -> Iterator[str]:
    sample = _placed(made, plain, [next(iter(made.word.values()))])
    loose = _placed(made, plain, made.loose)
    rest = [ring for ring in plain if not any(_same(ring, other, 0.2) for other in (*sample, *loose))]
    if len(rest) + len(sample) + len(loose) > len(plain):
        yield "the sample was not cut as drawn"
    moved = _aligned(rest, decal)
    if moved is None:
        yield "what is around the word was not cut as drawn"
        return
    new = [ring for ring in moved if not any(_same(ring, other) for other in rest)]
    if len(new) + len(rest) != len(moved):
        yield "something is cut twice, or lacks"
    if any(_same(ring, letter) for ring in new for letter in (*sample, *loose)):
        yield "a letter of the sample is left"
    outer = _outer(new)
    if len(outer) < len(name):
        yield f"{len(outer)} letters of {len(name)}"
    others = [ring for ring in rest if not any(ring.contains(letter) for letter in sample)]
    if _union(outer).intersection(_union(others)).area > REMNANT:
        yield "it lies over something"
    yield from _measured(name, sample, outer)


def _outer(rings: Rings) -> list[Polygon]:
    """Those that lie in none of the others."""
    return [ring for ring in rings if not any(other is not ring and other.contains(ring) for other in rings)]


def _union(rings: Rings) -> BaseGeometry:
    return unary_union([ring.buffer(0) for ring in rings])


def _measured(name: str, sample: Rings, outer: Rings) -> Iterator[str]:
    tall = _outer(sample)
    foot, top = _line_and_top(tall)
    bounds = np.array([ring.bounds for ring in outer])
    left, low, right, high = bounds[:, 0].min(), bounds[:, 1].min(), bounds[:, 2].max(), bounds[:, 3].max()
    whole = np.array([ring.bounds for ring in tall])
    wide = whole[:, 2].max() - whole[:, 0].min()
    off = (left + right) / 2 - (whole[:, 0].min() + whole[:, 2].max()) / 2
    if abs(low - foot) > FOOT:
        yield f"foot {low - foot:+.2f} mm"
    if abs(off) > CENTER:
        yield f"center {off:+.2f} mm"
    if name != NAMES[-1] and right - left <= wide and abs((high - low) / (top - foot) - 1) > HEIGHT:
        yield f"height {(high - low) / (top - foot):.3f}"


def _line_and_top(letters: Rings) -> tuple[float, float]:
    """The height most feet are at, the highest of equals, and that of the tallest letter that stands there."""
    boxes = [letter.bounds for letter in letters]
    feet = [box[1] for box in boxes]
    line = max(feet, key=lambda foot: (sum(abs(other - foot) < 0.1 for other in feet), foot))
    high = max(box[3] - box[1] for box in boxes)
    return line, max(box[3] for box in boxes if abs(box[1] - line) < 0.05 * high)


def _placed(made: Made, plain: Rings, shapes: Iterable[Shape]) -> Rings:
    """The contours of shapes of the generator where they lie in the cut file."""
    left, top, right, _ = _painted(made.svg, next(iter(made.word)))
    boxes = np.array([ring.bounds for ring in plain])
    scale = (boxes[:, 2].max() - boxes[:, 0].min()) / (right - left)
    x, y = boxes[:, 0].min() - left * scale, boxes[:, 3].max() + top * scale
    rings = [ring for shape in shapes for contour in contours(shape) for ring in _flat(path_data(contour))]
    return [Polygon([(x + a * scale, y - b * scale) for a, b in ring]) for ring in rings]


def _painted(svg: str, color: str) -> Box:
    """The box of a color as resvg paints it, in page units."""
    png = bytes(resvg_py.svg_to_bytes(svg_string=svg, width=DOTS, skip_system_fonts=True))
    dots = np.asarray(Image.open(io.BytesIO(png)).convert("RGBA")).astype(int)
    wanted = [int(color[at : at + 2], 16) for at in (1, 3, 5)]
    seen = (np.abs(dots[:, :, :3] - wanted).max(axis=2) < 40) & (dots[:, :, 3] > 127)
    down, across = np.flatnonzero(seen.any(axis=1)), np.flatnonzero(seen.any(axis=0))
    unit = PAGE / DOTS
    return across[0] * unit, down[0] * unit, (across[-1] + 1) * unit, (down[-1] + 1) * unit


def _aligned(rest: Rings, decal: Rings) -> Rings | None:
    """The decal moved so that what is around its word lies where it lay."""
    if not rest:
        return None
    mark = max(rest, key=lambda ring: ring.area)
    for ring in decal:
        if abs(ring.area / mark.area - 1) > 1e-3 or abs(ring.length / mark.length - 1) > 1e-3:
            continue
        x, y = mark.bounds[0] - ring.bounds[0], mark.bounds[1] - ring.bounds[1]
        moved = [translate(each, x, y) for each in decal]
        if all(any(_same(other, each) for each in moved) for other in rest):
            return moved
    return None


def _same(one: Polygon, other: Polygon, near: float = SAME) -> bool:
    sides = all(abs(a - b) <= near for a, b in zip(one.bounds, other.bounds, strict=True))
    return sides and bool(abs(one.area - other.area) <= near * one.length)


def main() -> int:
    """Judges those of the hundred that can be; prints those that miss."""
    with tempfile.TemporaryDirectory() as folder:
        found = list(judged(drawings(), Path(folder)))
    for each in found:
        if each.faults:
            print(f"{each.made.name}, {each.made.text} as {each.name}: {'; '.join(each.faults)}")
    wrong = sum(bool(each.faults) for each in found)
    print(f"{len(found) - wrong} of {len(found)} names in {len({each.made.name for each in found})} drawings are right")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
