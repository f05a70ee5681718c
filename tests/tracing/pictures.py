"""Pictures for the tests, of drawings of our own: drawn by resvg, and spoiled as people's pictures are."""

import io
from itertools import pairwise
from pathlib import Path

import numpy as np
import resvg_py
from numpy.typing import NDArray
from PIL import Image
from shapely import LineString, MultiLineString, Point, STRtree

from xlbatch.geometry.outline import Segment
from xlbatch.geometry.path import curves
from xlbatch.geometry.weld import segments_of
from xlbatch.svg.layer import Layers

SIDE = 800
STAR = "M400 60L489 278L724 295L543 447L600 675L400 550L200 675L257 447L76 295L311 278Z"
PLAIN = f'<path d="{STAR}"/><circle cx="120" cy="660" r="70"/><circle cx="680" cy="660" r="40"/>'
BADGE = (  # a yellow disk with a blue ring, a red star that touches it, and white eyes
    '<circle cx="400" cy="400" r="340" fill="#ffcc33"/>'
    '<path d="M400 60a340 340 0 1 1 -.1 0zm0 60a280 280 0 1 0 .1 0z" fill="#1144aa"/>'
    '<path d="M400 200L450 350H600L480 440L520 590L400 500L280 590L320 440L200 350H350Z" fill="#cc1122"/>'
    '<circle cx="370" cy="400" r="22" fill="#ffffff"/><circle cx="430" cy="400" r="22" fill="#ffffff"/>'
)
TWO = '<path d="M120 120H300V560H560V680H120Z" fill="#dd0000"/><circle cx="560" cy="250" r="130" fill="#0000aa"/>'
FADES = (
    '<defs><linearGradient id="g"><stop stop-color="#dd0000"/><stop offset="1" stop-color="#ffbb00"/></linearGradient>'
    '</defs><path d="M80 80H720V720H80Z" fill="url(#g)"/>'
)


def svg(shapes: str) -> str:
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{SIDE}" height="{SIDE}" viewBox="0 0 {SIDE} {SIDE}">'
        f"{shapes}</svg>"
    )


def drawn(shapes: str, background: str | None = "white", width: int = SIDE) -> Image.Image:
    """A picture of the shapes."""
    return picture_of(svg(shapes), background, width)


def picture_of(drawing: str, background: str | None = "white", width: int = SIDE) -> Image.Image:
    """A picture of an SVG drawing."""
    png = resvg_py.svg_to_bytes(svg_string=drawing, width=width, background=background, skip_system_fonts=True)
    return Image.open(io.BytesIO(bytes(png))).convert("RGBA" if background is None else "RGB")


def saved(image: Image.Image, path: Path, **how: object) -> Path:
    image.save(path, **how)  # type: ignore[arg-type]
    return path


def points(segments: tuple[Segment, ...], step: float = 0.5) -> NDArray[np.float64]:
    """Points along outlines, about `step` apart."""
    found = []
    for curve in curves(segments):
        ends = np.array(curve)
        long = float(np.hypot(*np.diff(ends, axis=0).T).sum())
        t = np.arange(max(2, int(long / step)))[:, None] / max(2, int(long / step))
        while len(ends) > 1:  # de Casteljau
            ends = [(1 - t) * one + t * other for one, other in pairwise(ends)]  # type: ignore[assignment]
        found.append(np.broadcast_to(ends[0], (len(t), 2)))
    return np.concatenate(found)


def outlines(segments: tuple[Segment, ...]) -> MultiLineString:
    """Outlines as many short lines."""
    lines = []
    for contour in _contours(segments):
        line = points(contour)
        lines.append(LineString(np.concatenate((line, line[:1]))))
    return MultiLineString(lines)


def _contours(segments: tuple[Segment, ...]) -> list[tuple[Segment, ...]]:
    starts = [number for number, (verb, _) in enumerate(segments) if verb == "M"]
    return [segments[a:b] for a, b in zip(starts, [*starts[1:], len(segments)], strict=True)]


def off(one: tuple[Segment, ...], other: tuple[Segment, ...]) -> NDArray[np.float64]:
    """How far points along the one outlines lie from the other."""
    sides = [
        LineString(pair)
        for line in outlines(other).geoms
        for pair in zip(line.coords[:-1], line.coords[1:], strict=True)
    ]
    tree = STRtree(sides)
    spots = [Point(*spot) for spot in points(one)]
    return np.array([spot.distance(sides[near]) for spot, near in zip(spots, tree.nearest(spots), strict=True)])


def by_color(found: Layers) -> dict[str, tuple[Segment, ...]]:
    """The outlines of each color that is used, in dots."""
    return {layer.color: segments_of(layer.path) for layer in found.layers if layer.use}
