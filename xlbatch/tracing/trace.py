"""A picture or the first page of a PDF → its layers: the outlines of each flat color, lowest first."""

from collections.abc import Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np
import pathops
from numpy.typing import NDArray

from xlbatch.geometry.flat import Array
from xlbatch.geometry.path import signed_area
from xlbatch.geometry.weld import path_of, segments_of, tidy
from xlbatch.svg.faults import Fault
from xlbatch.svg.layer import Layer, Layers, Note
from xlbatch.svg.layers import MOST_CONTOURS, MOST_POINTS
from xlbatch.tracing.backdrop import background_of, glow_of, is_see_through
from xlbatch.tracing.borders import Border, Labels, Where, borders_of
from xlbatch.tracing.fit import fitted
from xlbatch.tracing.labeled import labeled
from xlbatch.tracing.palette import GENTLE, Colors, Mask, flat_colors, hex_of, merged, steepness
from xlbatch.tracing.pdf_page import read_pdf
from xlbatch.tracing.picture_faults import PICTURE_FAULTS, Unfit
from xlbatch.tracing.raster import FEWEST_ACROSS, Raster, read_raster
from xlbatch.tracing.regions import Ring, inside, rings_of
from xlbatch.units import mm_per

SUFFIXES = (".png", ".jpg", ".jpeg", ".webp", ".pdf")
MOST_COLORS = 6
COARSEST = 0.4  # mm on the shirt a dot may be: an edge then lies within 0.1 mm (common practice, no source)
_DOT = mm_per("in") / 96  # of a picture taken at its own size, as CSS has it
_SPECK = 12  # sides of dots around the smallest area that is kept
_OPAQUE = 250  # levels: what covers more covers all
_WHITE = 245  # levels: what is lighter is white
_WELDED = 0.003  # of the area: welding changes no more
_HARD = 1.6  # dots over which a hard edge is spread


def trace(path: Path) -> Layers | tuple[Fault, ...]:
    """The layers of a picture or a PDF's first page, or what keeps it from being cut."""
    try:
        raster = read_pdf(path) if path.suffix.lower() == ".pdf" else read_raster(path)
        return _layers(raster)
    except OSError:
        return (PICTURE_FAULTS["broken"],)
    except Unfit as unfit:
        key, *facts = unfit.args
        fault = PICTURE_FAULTS[key]
        return (Fault(fault.reason.format(*facts), fault.remedy),)


@dataclass(frozen=True, eq=False)
class _Flat:
    """A picture brought down to flat colors: `labels` has one more line of background on every side; label 0 is the
    background, and `colors` are those of the labels."""

    labels: Labels
    colors: Colors
    notes: tuple[Note, ...]
    steep: NDArray[np.uint8]


def _layers(raster: Raster) -> Layers:
    flat = _flat(raster)
    high, wide = raster.dots.shape[:2]
    borders, specks = _borders(raster, flat)
    rings = _rings(borders, high)
    layers = [Layer(hex_of(flat.colors[label]), _path(them)) for label, them in _lowest_first(rings)]
    if not layers:
        raise Unfit("nothing")
    notes = [*(Note("picture-changed", {"what": what}) for what in raster.changes), *flat.notes]
    if specks:
        notes.append(Note("picture-left-out", {"what": f"{_counted(specks, 'speck')} of a few dots"}))
    enclosed = _enclosed(rings.get(0, []))
    if enclosed and flat.colors[0][3] > _OPAQUE:
        color = hex_of(flat.colors[0])
        layers.insert(0, Layer(color, _path(enclosed), use=False))
        notes.append(
            Note(
                "picture-enclosed", {"areas": _counted(sum(ring.area > 0 for ring in enclosed), "area"), "color": color}
            )
        )
    across = _ink_across(rings)
    if across * raster.across / wide < FEWEST_ACROSS:
        raise Unfit("too few dots", *(f"{side:,}" for side in (wide, high)))
    scale = raster.across / wide
    widest = None if raster.is_sharp else COARSEST * across * scale / _blur(flat, borders)
    return Layers(tuple(layers), _DOT * scale, (0.0, 0.0, wide, high), tuple(notes), widest)


def _counted(count: int, noun: str) -> str:
    return f"{count} {noun}" if count == 1 else f"{count} {noun}s"


def _flat(raster: Raster) -> _Flat:
    dots = raster.dots
    steep = steepness(dots)
    colors, sizes = flat_colors(dots, steep)
    if not len(colors):
        raise Unfit("photograph")
    background = background_of(dots, colors)
    order = np.argsort(np.arange(len(colors)) != background, kind="stable")
    colors, sizes = colors[order], sizes[order]
    faint = is_see_through(colors)
    faint[0] = False
    group = np.zeros(len(colors), dtype=np.intp)
    group[~faint] = merged(colors[~faint], sizes[~faint], MOST_COLORS)
    found = labeled(dots, steep, colors, group)
    glow = glow_of(found, steep > GENTLE)
    notes = _said(colors, sizes, faint, glow is not None)
    labels = np.where(glow, np.uint8(0), found.labels) if glow is not None else found.labels
    kept = np.array([colors[group == label][0] for label in range(group.max() + 1)])
    return _Flat(np.pad(labels, 1), kept, tuple(notes), steep)


def _said(colors: Colors, sizes: Array, faint: Mask, glows: bool) -> Iterator[Note]:
    """What of its colors was left out, or taken for another."""
    if glows:
        yield Note("picture-left-out", {"what": "a shadow or glow that fades into the background"})
    if faint.any():
        yield Note("picture-left-out", {"what": "what one can see through"})
    apart = int(merged(colors[~faint], sizes[~faint], len(colors)).max())
    if apart > MOST_COLORS:
        yield Note("picture-colors", {"count": apart, "most": MOST_COLORS})
    if colors[0][3] > _OPAQUE and colors[0].min() < _WHITE:
        yield Note("picture-background", {"color": hex_of(colors[0])})


def _borders(raster: Raster, flat: _Flat) -> tuple[list[Border], int]:
    """The borders of the labels' areas in dots, and how many specks were left out."""
    dots = raster.dots
    high, wide = dots.shape[:2]

    def blend(where: Where, one: Labels, other: Labels) -> Array:
        row, column = where
        way = flat.colors[other] - flat.colors[one]
        inside = (row > 0) & (row <= high) & (column > 0) & (column <= wide)
        here = dots[np.clip(row - 1, 0, high - 1), np.clip(column - 1, 0, wide - 1)].astype(float)
        here[~inside] = flat.colors[0]
        part = ((here - flat.colors[one]) * way).sum(axis=1) / np.maximum((way * way).sum(axis=1), 1.0)
        return np.asarray(np.clip(part, 0, 1))

    found = borders_of(flat.labels, blend)
    kept = [border for border in found if not border.closed or len(border.points) >= _SPECK]
    if len(kept) > MOST_CONTOURS:
        raise Unfit("too detailed")
    return _joined(kept), len(found) - len(kept)


def _joined(borders: Sequence[Border]) -> list[Border]:
    """The borders in the picture's own dots, those that meet at a node each with it at its end."""
    around: dict[int, list[complex]] = {}
    for border in borders:
        if not border.closed:
            around.setdefault(border.start, []).append(border.points[0])
            around.setdefault(border.end, []).append(border.points[-1])
    node = {corner: sum(points) / len(points) for corner, points in around.items()}
    return [
        replace(
            border,
            points=(
                border.points
                if border.closed
                else np.concatenate(([node[border.start]], border.points, [node[border.end]]))
            )
            - (1 + 1j),
        )
        for border in borders
    ]


def _rings(borders: Sequence[Border], high: int) -> dict[int, list[Ring]]:
    fits = fitted([(border.points, border.closed) for border in borders])
    if sum(len(fit.straight) for fit in fits) > MOST_POINTS:
        raise Unfit("too detailed")
    return rings_of(borders, fits, high)


def _lowest_first(rings: Mapping[int, Sequence[Ring]]) -> list[tuple[int, Sequence[Ring]]]:
    """The labels but for the background's: those that take up most, with what lies in them, first."""
    sizes = {label: sum(ring.area for ring in them if ring.area > 0) for label, them in rings.items() if label}
    return [(label, rings[label]) for label in sorted(sizes, key=lambda label: -sizes[label])]


def _enclosed(background: Sequence[Ring]) -> list[Ring]:
    """The outlines of areas of background that the drawing encloses, with the holes in them."""
    outer = [ring for ring in background if ring.area > 0]
    holes = (ring for ring in background if ring.area < 0)
    return [*outer, *(hole for hole in holes if any(inside(hole.corners[0], ring.corners) for ring in outer))]


def _ink_across(rings: Mapping[int, Sequence[Ring]]) -> float:
    across = np.concatenate([ring.corners.real for label, them in rings.items() if label for ring in them])
    return float(np.ptp(across))


def _blur(flat: _Flat, borders: Sequence[Border]) -> float:
    """Over how many times as many dots as a hard edge takes the edges of the picture are spread, at least 1."""
    high, wide = flat.steep.shape
    spread = []
    for border in borders:
        row = np.clip(border.points.imag.astype(int), 0, high - 1)
        column = np.clip(border.points.real.astype(int), 0, wide - 1)
        contrast = np.abs(flat.colors[border.left] - flat.colors[border.right]).max()
        spread.append(contrast / np.maximum(flat.steep[row, column], 1))
    return max(1.0, float(np.median(np.concatenate(spread))) / _HARD)


def _path(rings: Sequence[Ring]) -> pathops.Path:
    """The outlines of one color. Where Skia cannot weld their curves, they are welded as many short lines, or left as
    they are: they hardly overlap."""
    rings = [ring for ring in rings if abs(ring.area) >= 1]
    area = sum(ring.area for ring in rings)
    curved = path_of(segment for ring in rings for segment in ring.segments)
    for path in (curved, path_of(segment for ring in rings for segment in ring.lines)):
        with suppress(pathops.PathOpsError):
            welded = tidy(path)
            if abs(signed_area(segments_of(welded)) - area) <= 1 + _WELDED * area:
                return welded
    return curved
