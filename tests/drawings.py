"""Real drawings read and drawn again, against what resvg makes of them."""

import io
import re
from collections.abc import Iterator
from pathlib import Path

import numpy as np
import resvg_py
from numpy.typing import NDArray
from PIL import Image

from xlbatch.geometry.ink import InkPart, outline
from xlbatch.geometry.path import path_data
from xlbatch.problems.unreadable_drawings import Fault
from xlbatch.svg.artwork import Drawing, drawing_of, read_layers
from xlbatch.svg.layer import Layers
from xlbatch.svg.safe_xml import parse_svg
from xlbatch.svg.viewport import DrawingPage, page_of
from xlbatch.units import mm_per

W3C = Path("/usr/libexec/installed-tests/RSVG/fixtures/reftests/svg1.1")  # Debian librsvg2-tests
WIDE = 960  # pixels compared


def read_artwork(path: Path, apart: bool = False) -> Drawing | tuple[Fault, ...]:
    """The drawing in an SVG file, or all that keeps it from being cut; see `read_layers`."""
    layers = read_layers(path)
    return drawing_of(layers, apart) if isinstance(layers, Layers) else layers


def without_text(svg: str) -> str:
    """A drawing without live text and fonts: every W3C file carries its revision as text."""
    svg = re.sub(r"<!--.*?-->", "", svg, flags=re.DOTALL)
    for tag in ("text", "font", "font-face"):
        svg = re.sub(rf"<{tag}(?=[\s/>])(?:[^>]*/>|.*?</{tag}\s*>)", "", svg, flags=re.DOTALL)
    return svg


def agreement(file: Path) -> float | tuple[str, ...]:
    """Over all pixels that either inks, the part where both show the same color; or why the drawing is not read."""
    found = read_artwork(file, apart=True)
    if not isinstance(found, Drawing):
        return tuple(fault.reason for fault in found)
    data = file.read_bytes()
    page = page_of(parse_svg(data))
    plain = re.sub(rb"\bshape-rendering=\"[^\"]*\"", b"", data)
    sharp = re.sub(rb"<svg\b", b'<svg shape-rendering="crispEdges"', plain, count=1)
    theirs = pixels(sharp.decode("utf-8", "replace"))
    ours = pixels(drawn_again(found, page))
    inked, again = theirs[:, :, 3] > 127, ours[:, :, 3] > 127
    alike = (np.abs(theirs[:, :, :3].astype(int) - ours[:, :, :3]) <= 8).all(axis=2)
    return float((inked & again & alike).sum() / max((inked | again).sum(), 1))


def pixels(svg: str) -> NDArray[np.uint8]:
    png = bytes(resvg_py.svg_to_bytes(svg_string=svg, width=WIDE, skip_system_fonts=True))
    return np.asarray(Image.open(io.BytesIO(png)).convert("RGBA"))


def drawn_again(found: Drawing, page: DrawingPage) -> str:
    """What was read, as a drawing on the same page."""
    assert page.clip
    px = page.mm / (mm_per("in") / 96)
    wide, high = page.clip[2] * px, page.clip[3] * px
    shapes = "".join(
        f'<path fill="{color}" d="{path_data(made.segments, (1, 0, 0, -1, ink.box[0] * px, high - ink.box[1] * px))}"/>'
        for color, ink in found.fills.items()
        for made in (outline((InkPart(ink),), px, px),)
    )
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide}" height="{high}" viewBox="0 0 {wide} {high}" '
        f'shape-rendering="crispEdges">{shapes}</svg>'
    )


def w3c_files(scratch: Path) -> Iterator[Path]:
    """The W3C files with their text taken out."""
    for file in sorted(W3C.glob("*.svg")):
        copy = scratch / file.name
        copy.write_text(without_text(file.read_text(encoding="utf-8", errors="replace")), encoding="utf-8")
        yield copy
