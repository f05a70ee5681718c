"""How exactly pictures are traced, how fast, and in how much memory.

Files: `npm pack @twemoji/svg`, unpacked (drawings by the Twemoji authors, CC-BY 4.0; none is kept here). resvg draws
them as pictures; the drawings themselves, as the program reads SVG, are the truth.
Run: -m tests.benchmarks.tracing_benchmark FOLDER OF @twemoji/svg      exit code 1 where a goal is missed
"""

import re
import resource
import sys
import tempfile
import time
from collections.abc import Iterator, Mapping
from pathlib import Path

import numpy as np

from tests.drawings import read_artwork
from tests.tracing.pictures import SIDE, by_color, off, picture_of
from xlbatch.art.thin import Kind, too_thin
from xlbatch.geometry.ink import InkPart, measured, outline
from xlbatch.geometry.outline import Segment, Segments
from xlbatch.geometry.path import path_data, signed_area, transform
from xlbatch.lettering.fonts import find_font, font_names
from xlbatch.lettering.text_line import Scale, letter
from xlbatch.lettering.typeface import set_line
from xlbatch.svg.artwork import Drawing, drawing_of
from xlbatch.svg.layer import Layers
from xlbatch.tracing.trace import trace

MEAN, WORST, AREA, DOUBTS = 0.15, 0.3, 0.01, 0.95
SECONDS, MEGABYTES = 3.0, 300
WIDE, THINNEST = 254.0, 1.0  # mm on the shirt, and the film's thinnest stroke there
SMALLEST_INK = 3_000  # square dots: a black drawing of less is passed over
ROOM = 'viewBox="-1 -1 38 38"'  # a drawing's page with room around it; the package's pages are 36 units
SCALE = SIDE / 2000  # a drawing is read at 2,000 units across

Outlines = Mapping[str, tuple[Segment, ...]]


class Figures:
    """The slowest picture, and whether all goals are met."""

    def __init__(self) -> None:
        self.slowest = 0.0
        self.met = True

    def traced(self, path: Path) -> Layers | None:
        began = time.process_time()
        found = trace(path)
        self.slowest = max(self.slowest, time.process_time() - began)
        return found if isinstance(found, Layers) else None

    def goal(self, name: str, met: bool, figures: str) -> None:
        print(f"{'met' if met else 'MISSED'}: {name}: {figures}")
        self.met = self.met and met


def truth_of(svg: str, scratch: Path) -> Outlines:
    """The outlines of each color that is seen, in dots; none where the drawing is not read."""
    file = scratch / "truth.svg"
    file.write_text(svg, encoding="utf-8")
    drawing = read_artwork(file, apart=True)
    if not isinstance(drawing, Drawing):
        return {}
    return {
        color: transform(tuple(Segments(ink.verbs, ink.points.tobytes())), (SCALE, 0, 0, SCALE, 0, 0))
        for color, ink in drawing.fills.items()
    }


def black(svg: str) -> str:
    """Dark colors black, light ones white."""

    def tone(found: re.Match[str]) -> str:
        code = found[2].lstrip("#")
        code = "".join(letter * 2 for letter in code) if len(code) == 3 else code
        levels = [int(code[place : place + 2], 16) for place in (0, 2, 4)]
        dark = levels[0] * 0.3 + levels[1] * 0.59 + levels[2] * 0.11 < 150
        return f'{found[1]}="{"#000000" if dark else "#ffffff"}"'

    return re.sub(r'(fill|stroke)="(#[0-9A-Fa-f]{3}|#[0-9A-Fa-f]{6})"', tone, svg)


def drawings(folder: Path, start: int, step: int) -> Iterator[str]:
    for file in sorted(folder.glob("**/*.svg"))[start::step]:
        yield file.read_text(encoding="utf-8").replace('viewBox="0 0 36 36"', ROOM)


def black_outlines(folder: Path, scratch: Path, figures: Figures) -> None:
    means = []
    for svg in map(black, drawings(folder, 7, 37)):
        wanted = truth_of(svg, scratch).get("#000000")
        if wanted is None or signed_area(wanted) < SMALLEST_INK:
            continue
        path = scratch / "black.png"
        picture_of(svg).save(path)
        found = figures.traced(path)
        ours = by_color(found).get("#000000") if found else None
        means.append(float(off(ours, wanted).mean()) if ours else np.inf)
        if len(means) == 60:
            break
    mean, worst = float(np.mean(means)), max(means)
    goal = len(means) == 60 and mean <= MEAN and worst <= WORST
    figures.goal("black outlines", goal, f"{len(means)} drawings, {mean:.3f} dots off on average, {worst:.3f} at worst")


def color_areas(folder: Path, scratch: Path, figures: Figures) -> None:
    errors = []
    for svg in drawings(folder, 3, 41):
        wanted = truth_of(svg, scratch)
        if not 1 < len(wanted) <= 6:
            continue
        path = scratch / "colors.png"
        picture_of(svg, None).save(path)
        found = figures.traced(path)
        drawing = drawing_of(found, apart=True) if found else None
        ours = drawing.fills if isinstance(drawing, Drawing) else {}
        errors.append(
            max(
                abs(ours[color].area / signed_area(theirs) - 1) if color in ours else np.inf
                for color, theirs in wanted.items()
            )
        )
        if len(errors) == 20:
            break
    within = sum(error <= AREA for error in errors)
    goal = within == len(errors) == 20
    figures.goal("areas of colors", goal, f"{within} of {len(errors)} within 1 %, {max(errors):.4f} at worst")


def doubts(segments: tuple[Segment, ...]) -> set[Kind]:
    """What of outlines in dots would be hard to weed on the shirt."""
    ink = measured(segments)
    if ink is None:
        return set()
    scale = WIDE / SIDE
    return {thin.kind for thin in too_thin(outline((InkPart(ink),), scale, scale), THINNEST)}


def lettering() -> Iterator[str]:
    """Twenty names, each in another font or size."""
    names = ("Ines", "Marlow", "Ágnes", "Q. Bright", "Team 7", "Lantern", "Zoë", "WILLA", "Jun & Mei", "Østby")
    fonts = font_names()
    for number in range(20):
        face = find_font(fonts[number % len(fonts)], Path())
        assert face is not None
        text = names[number % len(names)]
        if set_line(face, text).lacks:
            text = "Ines 12"
        made = letter(face, text, Scale(0.1, 0.1))
        scale = min(700 / made.width, 500 / made.height)
        shape = path_data(made.segments, (scale, 0, 0, -scale, 50, 400 + made.height * scale / 2))
        yield (f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {SIDE} {SIDE}"><path d="{shape}"/></svg>')


def weeding_doubts(folder: Path, scratch: Path, figures: Figures) -> None:
    same, count, unlike = 0, 0, []
    tried = [svg for svg in map(black, drawings(folder, 11, 61)) if "#000000" in truth_of(svg, scratch)][:20]
    jpegs, letters = (("jpeg", svg, "jpg") for svg in tried), (("lettering", svg, "png") for svg in lettering())
    for name, svg, suffix in (*jpegs, *letters):
        wanted = doubts(truth_of(svg, scratch)["#000000"])
        path = scratch / f"doubts.{suffix}"
        picture_of(svg).save(path, quality=70)
        found = figures.traced(path)
        ours = list(by_color(found).values()) if found else []
        got = doubts(max(ours, key=signed_area)) if ours else None
        count += 1
        same += got == wanted
        if got != wanted:
            unlike.append(f"{name} {count}: {wanted} became {got}")
    figures.goal("weeding doubts", same >= DOUBTS * count, f"{same} of {count} the same; {'; '.join(unlike)}")


def main(folder: Path) -> int:
    figures = Figures()
    with tempfile.TemporaryDirectory() as scratch:
        before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
        for part in (color_areas, black_outlines, weeding_doubts):
            part(folder, Path(scratch), figures)
        used = (resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before) / 1024
    figures.goal("time", figures.slowest <= SECONDS, f"{figures.slowest:.2f} s of one core for the slowest")
    figures.goal("memory", used <= MEGABYTES, f"{used:.0f} MB more than before, the comparison's own included")
    return 0 if figures.met else 1


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1])))
