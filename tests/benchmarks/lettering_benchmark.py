"""Lettering against HarfBuzz with fontTools and shapely, and how long it takes.

Run: -m tests.benchmarks.lettering_benchmark [FONT…]

First 300 names in each bundled font: the greatest difference of the ink box (mm, letters 2 in high) and of the welded
area.
Then 10,000 different names in each font: shaped, fitted to 9 in and welded; and checked for what is too thin.
Ends with 1 where a font misses a goal: 0.05 mm, 0.1 %, 1.5 ms a name, 3 ms a name.
"""

import random
import sys
import time
from pathlib import Path

import numpy as np
from fontTools.misc.transform import Offset
from fontTools.pens.boundsPen import BoundsPen
from fontTools.pens.transformPen import TransformPen

from tests.lettering.test_typeface import Flattened, filled_area, placed, reference
from xlbatch.art.thin import too_thin
from xlbatch.geometry.ink import outline
from xlbatch.lettering.fonts import find_font, font_names
from xlbatch.lettering.text_line import TooLong, fit, letter
from xlbatch.lettering.typeface import Typeface, set_line

CAP, WIDEST, LEAST, THINNEST = 50.8, 228.6, 9.525, 1.0
GOALS = (0.05, 0.001, 1.5, 3.0)  # mm, part of the area, ms outlined, ms checked
STARTS = (
    "A",
    "Be",
    "Ca",
    "Do",
    "E",
    "Fa",
    "Gi",
    "Ha",
    "I",
    "Jo",
    "Ka",
    "Lu",
    "Ma",
    "Ni",
    "O",
    "Pe",
    "Ra",
    "Sa",
    "To",
    "Zo",
)
MIDDLES = ("", "na", "li", "ro", "se", "ta", "ví", "mo", "dé", "lla")
ENDS = ("", "n", "ra", "s", "ña", "ö", "t", "ck", "le", "r")


def names(count: int) -> list[str]:
    """Different invented names: a first one and a last one."""
    dice = random.Random(4)
    found: dict[str, None] = {}
    while len(found) < count:
        first, last = ("".join(map(dice.choice, (STARTS, MIDDLES, ENDS))) for _ in range(2))
        found[f"{first} {last}"] = None
    return list(found)


def compare(face: Typeface, texts: list[str]) -> tuple[float, float]:
    """The greatest difference of an ink box's side in mm, and of an area over itself."""
    side = area = 0.0
    for text in texts:
        box, flat = BoundsPen(reference(face.name)[2]), Flattened(reference(face.name)[2])
        for glyph, x, y in placed(face.name, text):
            for pen in (box, flat):
                glyph.draw(TransformPen(pen, Offset(x, y)))
        line = set_line(face, text)
        side = max(side, float(np.abs(np.subtract(line.box or (), box.bounds)).max()) * CAP / face.cap_height)
        expected = filled_area([np.array(ring) for ring in flat.rings])
        area = max(area, abs(outline(line.pieces).area / expected - 1))
    return side, area


def timed(face: Typeface, texts: list[str]) -> tuple[float, float, int]:
    """Milliseconds a name for the outline and for the check, and how many have something too thin."""
    began = time.process_time()
    fitted = [(text, fit(face, text, CAP, WIDEST, LEAST)) for text in texts]
    drawn = [letter(face, text, scale) for text, scale in fitted if not isinstance(scale, TooLong)]
    shaped = time.process_time()
    thin = sum(bool(too_thin(each, THINNEST)) for each in drawn)
    return (shaped - began) * 1000 / len(texts), (time.process_time() - shaped) * 1000 / len(texts), thin


if __name__ == "__main__":
    missed = False
    for font in sys.argv[1:] or font_names():
        found = find_font(font, Path())
        assert found
        side, area = compare(found, names(300))
        outlined, checked, thin = timed(found, names(10_000))
        missed |= any(np.array((side, area, outlined, checked)) > GOALS)
        print(
            f"{font:22} box ±{side:.4f} mm, area ±{area:.4%}; {outlined:.2f} ms outlined, {checked:.2f} ms checked, "
            f"{thin} of 10,000 with something too thin",
            flush=True,
        )
    sys.exit(missed)
