"""The true shapes of decals, to judge interlocked ones by and to prove how little film they can take. Lengths in mm."""

from functools import lru_cache

import numpy as np
import shapely
from shapely.affinity import affine_transform
from shapely.geometry.base import BaseGeometry

from xlbatch.art.decal import Decal
from xlbatch.film.layout import Lying
from xlbatch.geometry.flat import edges_of
from xlbatch.geometry.outline import Outline

NEAR = 0.005  # how far a shape strays from its outline at most


def distance(one: Lying, other: Lying, *, mirrored: bool) -> float:
    """How far two decals of a run lie apart, 0 where they touch or overlap; right to twice `NEAR`."""
    return float(shapely.distance(_lying(one, mirrored), _lying(other, mirrored)))


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
    edges = edges_of(outline.segments, np.inf, NEAR)
    rings = np.split(np.column_stack((edges.start.real, edges.start.imag)), edges.first[1:])
    return shapely.build_area(shapely.MultiLineString([shapely.LinearRing(ring) for ring in rings]))
