"""The true shapes of decals, to judge interlocked ones by and to prove how little film they can take. Lengths in mm.

Shapely has the geometry, and curves are flattened here: what lays decals out has no part in judging them."""

import math
from functools import lru_cache
from itertools import pairwise

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.affinity import affine_transform
from shapely.geometry.base import BaseGeometry

from xlbatch.art.decal import Decal
from xlbatch.film.layout import Lying
from xlbatch.geometry.outline import Outline, Segments, contours_of
from xlbatch.geometry.path import curves

NEAR = 0.005  # how far a shape strays from its outline at most


def distance(lying: Lying, other: Lying, *, mirrored: bool) -> float:
    """How far two decals of a run lie apart, 0 where they touch or overlap; right to twice `NEAR`."""
    return float(shapely.distance(_lying(lying, mirrored), _lying(other, mirrored)))


def least_area(decal: Decal, gap: float) -> float:
    """The film (mm²) that no other decal can take: all that is less than half a gap away."""
    if decal.outline is None:
        return (decal.width + gap) * (decal.height + gap)
    return _taken(decal.outline, max(0.0, gap / 2 - NEAR))


@lru_cache(maxsize=4096)
def _taken(outline: Outline, around: float) -> float:
    return float(upright(outline).buffer(around).area)


def _lying(lying: Lying, mirrored: bool) -> BaseGeometry:
    if lying.decal.outline is None:
        return shapely.box(lying.across, lying.along, lying.across + lying.width, lying.along + lying.length)
    a, b, c, d, e, f = lying.matrix(mirrored=mirrored)
    return affine_transform(upright(lying.decal.outline), (a, c, b, d, e, f))


@lru_cache(maxsize=4096)
def upright(outline: Outline) -> BaseGeometry:
    """The outline as polygons: inside what an odd number of contours hold."""
    rings = [shapely.LinearRing(_points(contour)) for contour in contours_of(outline.segments)]
    return shapely.build_area(shapely.MultiLineString(rings))


def _points(contour: Segments) -> NDArray[np.float64]:
    return np.concatenate([_starts(np.array(curve)) for curve in curves(contour)])


def _starts(control: NDArray[np.float64]) -> NDArray[np.float64]:
    """The starts of the straight edges a curve is divided into evenly, within `NEAR` of it (de Casteljau; how many:
    Wang's bound by the second differences of the control points, as in Goldman, Pyramid Algorithms, 2003, from
    memory)."""
    degree = len(control) - 1
    bend = max(map(math.hypot, *np.diff(control, 2, axis=0).T), default=0.0) if degree > 1 else 0.0
    count = max(1, math.ceil(math.sqrt(degree * (degree - 1) / 8 * bend / NEAR)))
    t = (np.arange(count) / count)[:, None]
    level = [np.broadcast_to(point, (count, 2)) for point in control]
    while len(level) > 1:
        level = [start + (other - start) * t for start, other in pairwise(level)]
    return level[0]
