"""A picture or the first page of a PDF → its layers: the outlines of each flat color, lowest first."""

from collections.abc import Mapping, Sequence
from contextlib import suppress
from dataclasses import replace
from functools import lru_cache
from io import BytesIO
from pathlib import Path

import numpy as np
import pathops
from PIL import Image

from xlbatch.geometry.flat import Array
from xlbatch.geometry.path import signed_area
from xlbatch.geometry.weld import path_of, segments_of, tidy
from xlbatch.problems.phrases import phrase
from xlbatch.problems.unreadable_drawings import PICTURE_FAULTS, Fault
from xlbatch.svg.layer import Layer, Layers, Note
from xlbatch.svg.layers import MOST_CONTOURS, MOST_POINTS
from xlbatch.tracing.borders import Border, Labels, Where, borders_of
from xlbatch.tracing.curve_fit import Fit, fitted
from xlbatch.tracing.flattened import Flat, blur_of, flattened
from xlbatch.tracing.palette import hex_of
from xlbatch.tracing.pdf_page import read_pdf
from xlbatch.tracing.picture_faults import Unfit
from xlbatch.tracing.raster import FEWEST_ACROSS, Raster, read_raster, smaller
from xlbatch.tracing.regions import Ring, inside, rings_of
from xlbatch.tracing.underlap import extended, rings_together, under
from xlbatch.trade.tables import practice
from xlbatch.units import mm_per

COARSEST = practice("how large a dot of a picture may lie on the shirt")
_DOT = mm_per("in") / 96  # of a picture taken at its own size, as CSS has it
_MOST_SIDES = 400_000  # of dots along all borders: a drawing of 3,200 dots has a fourth of that
_KEPT = 8  # drawings: as many as a job has
_PALE = 0.3  # of the picture's own color
_SPECK = 12  # sides of dots around the smallest area that is kept
_WELDED = 0.003  # of the area: welding changes no more
_BLURRED = 3.0  # times as soft as a hard edge


def trace(path: Path) -> Layers | tuple[Fault, ...]:
    """The layers of a picture or a PDF's first page, or what keeps it from being cut. Read anew only when changed."""
    try:
        about = path.stat()
    except OSError:
        return (PICTURE_FAULTS["broken"],)
    return _traced(path, about.st_mtime_ns, about.st_size)


@lru_cache(maxsize=_KEPT)
def _traced(path: Path, _changed: int, _size: int) -> Layers | tuple[Fault, ...]:
    try:
        return _layers(read_dots(path))
    except OSError:
        return (PICTURE_FAULTS["broken"],)
    except Unfit as unfit:
        key, *facts = unfit.args
        fault = PICTURE_FAULTS[key]
        return (Fault(fault.reason.format(*facts), fault.remedy),)


def pale_copy(path: Path, across: int) -> bytes:
    """A small, pale PNG of a picture that can be traced, at most `across` dots wide and high."""
    raster = read_dots(path)
    shown = Image.fromarray(raster.dots, "RGBa").convert("RGBA")
    shown.thumbnail((across, across))
    white = Image.new("RGBA", shown.size, "white")
    with BytesIO() as file:
        Image.blend(white, Image.alpha_composite(white, shown), _PALE).convert("RGB").save(file, "PNG")
        return file.getvalue()


def read_dots(path: Path) -> Raster:
    """The dots of a picture or of a PDF's first page. Raises Unfit, OSError."""
    return read_pdf(path) if path.suffix.lower() == ".pdf" else read_raster(path)


def _layers(raster: Raster) -> Layers:
    raster, flat, borders, specks = _sharp(raster)
    high, wide = raster.dots.shape[:2]
    fits = _fits(borders)
    rings = rings_of(borders, fits, high)
    if not any(rings):
        raise Unfit("nothing")
    across = _ink_across(rings)
    if across < FEWEST_ACROSS:
        raise Unfit(*(("blurred",) if wide < raster.across else ("too few dots", f"{wide:,}", f"{high:,}")))
    order = _lowest_first(rings)
    layers = []
    for number, label in enumerate(order):
        path = _path(rings[label])
        if number < len(order) - 1:
            path = extended(path, _path(rings_together(borders, fits, high, order[number:])), under(across))
        layers.append(Layer(hex_of(flat.colors[label]), path))
    notes = [*(Note("picture-changed", {"what": what}) for what in raster.changes), *flat.notes]
    if specks:
        what = phrase("speck" if specks == 1 else "specks", count=specks)
        notes.append(Note("picture-changed", {"what": what}))
    enclosed = _enclosed(rings.get(0, []))
    if enclosed and flat.is_opaque:
        layers.insert(0, Layer(hex_of(flat.colors[0]), _path(enclosed), use=False))
    widest = None if raster.is_sharp else COARSEST * across / blur_of(flat, borders)
    return Layers(tuple(layers), _DOT * raster.across / wide, (0.0, 0.0, wide, high), tuple(notes), widest)


def _sharp(raster: Raster) -> tuple[Raster, Flat, list[Border], int]:
    """The flat colors and borders of a picture, and how many specks were left out; one that is blurred, or was made
    larger than it had dots for, is worked at the size at which its edges are hard."""
    flat = flattened(raster)
    borders, specks = _borders(raster, flat)
    blur = blur_of(flat, borders)
    if blur < _BLURRED or raster.is_sharp:
        return raster, flat, borders, specks
    raster = smaller(raster, 1 / blur)
    flat = flattened(raster)
    return raster, flat, *_borders(raster, flat)


def _borders(raster: Raster, flat: Flat) -> tuple[list[Border], int]:
    """The borders of the labels' areas in dots, and how many specks were left out."""
    dots = raster.dots
    high, wide = dots.shape[:2]

    def blend(where: Where, left: Labels, other: Labels) -> Array:
        row, column = where
        way = flat.colors[other] - flat.colors[left]
        inside = (row > 0) & (row <= high) & (column > 0) & (column <= wide)
        here = dots[np.clip(row - 1, 0, high - 1), np.clip(column - 1, 0, wide - 1)].astype(float)
        here[~inside] = flat.colors[0]
        part = ((here - flat.colors[left]) * way).sum(axis=1) / np.maximum((way * way).sum(axis=1), 1.0)
        return np.asarray(np.clip(part, 0, 1))

    if sum(np.count_nonzero(np.diff(flat.labels, axis=axis)) for axis in (0, 1)) > _MOST_SIDES:
        raise Unfit("too detailed")
    all_borders = borders_of(flat.labels, blend)
    kept = [border for border in all_borders if not border.closed or len(border.points) >= _SPECK]
    if len(kept) > MOST_CONTOURS:
        raise Unfit("too detailed")
    return joined(kept), len(all_borders) - len(kept)


def joined(borders: Sequence[Border]) -> list[Border]:
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


def _fits(borders: Sequence[Border]) -> Sequence[Fit]:
    fits = fitted([(border.points, border.closed) for border in borders])
    if sum(len(fit.straight) for fit in fits) > MOST_POINTS:
        raise Unfit("too detailed")
    return fits


def _lowest_first(rings: Mapping[int, Sequence[Ring]]) -> list[int]:
    """The labels but for the background's: those that take up most, with what lies in them, first."""
    sizes = {label: sum(ring.area for ring in them if ring.area > 0) for label, them in rings.items() if label}
    return sorted(sizes, key=lambda label: -sizes[label])


def _enclosed(background: Sequence[Ring]) -> list[Ring]:
    """The outlines of areas of background that the drawing encloses, with the holes in them."""
    outer = [ring for ring in background if ring.area > 0]
    holes = (ring for ring in background if ring.area < 0)
    return [*outer, *(hole for hole in holes if any(inside(hole.corners[0], ring.corners) for ring in outer))]


def _ink_across(rings: Mapping[int, Sequence[Ring]]) -> float:
    across = np.concatenate([ring.corners.real for label, them in rings.items() if label for ring in them])
    return float(np.ptp(across))


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
