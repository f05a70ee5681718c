"""Where an outline is too thin for its film: strokes that tear, gaps that do not weed, pieces too small to hold.

Two opposite points of the edges are too near one another where they are closer than the film's thinnest stroke while
the way from one to the other along the edge is long: so tips and notches, which hold and weed, do not count. The film
in a gap is held to the limit of a stroke: narrower, it tears off when pulled and stays between the letters. In mm.
"""

import math
from typing import Literal, NamedTuple

import numpy as np
from numpy.typing import NDArray

from xlbatch.geometry.flat import Array, Edges, Index, Points, dot, edges_of
from xlbatch.geometry.outline import Outline
from xlbatch.geometry.path import Point
from xlbatch.how_far import alive
from xlbatch.trade.tables import practice

Kind = Literal["stroke", "gap", "dot"]

ROUND_PARALLEL = practice("a neck between parallel edges is a tip, where the way round is no longer than the limit")
ROUND_WEDGE = practice("a neck between edges that part is a tip, where the way round is no longer than the limit")
SMALLEST_DOT = practice("a separate piece no larger than a dot this wide does not hold, of the thinnest stroke")
_PARALLEL = -math.cos(math.radians(5))
_FINEST, _CLOSEST = 1.0, 0.01  # of the limit: the longest edge, and how far it may stray from the curve
_MOST_PLACES = 8
_ELSEWHERE = 1e6  # mm: longer than any way along an outline
_NEAR = 1e-4  # coordinates are rounded to 0.0001 mm


class Thin(NamedTuple):
    """Something too thin: how wide at its thinnest, where (the worst places first), and how many times as big the whole
    must be to pass."""

    kind: Kind
    width: float
    grow: float
    places: tuple[Point, ...]


class _Necks(NamedTuple):
    """Pairs of opposite points: their distance, the way round divided by what it must be, where, and of which kind."""

    width: Array
    until: Array  # the pair counts where the limit lies between `width` and this
    at: Points
    ink: NDArray[np.bool_]


def too_thin(outline: Outline, limit: float) -> tuple[Thin, ...]:
    """What of an outline is thinner than `limit` mm: at most one finding of each kind."""
    alive()
    edges = edges_of(outline.segments, limit * _FINEST, limit * _CLOSEST)
    necks = _necks(edges, limit - _NEAR, limit * min(ROUND_PARALLEL, ROUND_WEDGE))
    if (necks.until > limit).any():  # how much bigger would do depends on those that don't count too
        necks = _necks(edges, limit - _NEAR)
    findings = (_neck("stroke", necks, necks.ink, limit), _neck("gap", necks, ~necks.ink, limit), _dot(edges, limit))
    return tuple(thin for thin in findings if thin)


def too_fine(outline: Outline, limit: float) -> bool:
    """Whether nothing of it would hold: its strokes are on average thinner than half the limit (a stroke's area is
    its width times half the length cut around it)."""
    return 2 * outline.area / outline.cut_length < limit / 2


def _neck(kind: Kind, necks: _Necks, chosen: NDArray[np.bool_], limit: float) -> Thin | None:
    width, until, points = necks.width[chosen], necks.until[chosen], necks.at[chosen]
    counts = until > limit
    if not counts.any():
        return None
    worst = float(width[counts].min())
    order = np.argsort(width[counts], kind="stable")
    return Thin(kind, worst, _grow(width, until, worst, limit), _apart(points[counts][order], limit))


def _grow(width: Array, until: Array, passing: float, limit: float) -> float:
    """How many times as big it must be: until no pair is left whose width lies below the limit, seen from its size."""
    while True:
        left = width[(width < passing - _NEAR) & (until > passing)]
        if not len(left):
            return limit / passing
        passing = float(left.min())


def _dot(edges: Edges, limit: float) -> Thin | None:
    """The separate pieces too small to hold; the width is that of a round dot of this area."""
    areas = edges.areas()
    least = math.pi * (SMALLEST_DOT * limit / 2) ** 2
    small = np.flatnonzero((areas > 0) & (areas < least * (1 - _NEAR)))
    if not len(small):
        return None
    small = small[np.argsort(areas[small], kind="stable")]
    area = float(areas[small[0]])
    places = np.array([edges.start[edges.contour == contour].mean() for contour in small[:_MOST_PLACES]])
    return Thin("dot", 2 * math.sqrt(area / math.pi), math.sqrt(least / area), _apart(places, limit))


def _apart(places: Points, limit: float) -> tuple[Point, ...]:
    """The first of the places, leaving out those beside one already there."""
    apart: list[Point] = []
    for place in places[:2000].tolist():
        if all(math.dist((place.real, place.imag), other) > 4 * limit for other in apart):
            apart.append((place.real, place.imag))
            if len(apart) == _MOST_PLACES:
                break
    return tuple(apart)


def _necks(edges: Edges, limit: float, least_way: float = 0.0) -> _Necks:
    """The corners of the outline with an edge opposite, through ink or through a gap, nearer than the limit; all of
    those from one to the other of which the way along the outline is longer than `least_way`."""
    left = edges.left
    bisector = _bisector(edges, left)
    corner, edge = _near_pairs(edges, left, limit, least_way)
    step, off = edges.step[edge], edges.start[corner] - edges.start[edge]
    part = np.clip(dot(off, step) / edges.long[edge] ** 2, 0.0, 1.0)
    across = off - step * part
    width = np.abs(across)
    near = (width < limit) & (width > _NEAR)
    corner, edge, part, across, width = corner[near], edge[near], part[near], across[near], width[near]
    through, facing = dot(across, left[edge]), dot(across, bisector[corner])
    until = _way_round(edges, corner, edge, part) / _least_round(left[edge], bisector[corner])
    real = (through * facing < 0) & (until > width) & _same_piece(edges, corner, edge, through > 0)
    return _Necks(width[real], until[real], edges.start[corner[real]] - across[real] / 2, through[real] > 0)


def _bisector(edges: Edges, left: Points) -> Points:
    """At the start of each edge, between the directions in which ink lies from it and from the edge before."""
    before = np.arange(-1, len(left) - 1)
    before[edges.first] = np.append(edges.first[1:], len(left)) - 1
    return left + left[before]


def _near_pairs(edges: Edges, left: Points, limit: float, least_way: float) -> tuple[Index, Index]:
    """Corners, and edges that lie near but not in line: their starts in the same or a neighboring cell of a grid."""
    longest = float(edges.long.max())
    column, line = (
        np.floor((axis - axis.min()) / (limit + longest)).astype(np.intp)
        for axis in (edges.start.real, edges.start.imag)
    )
    lines = int(line.max()) + 3
    key = (column + 1) * lines + line + 1
    order = np.argsort(key, kind="stable")
    keys = key[order]
    opens = np.diff(keys, prepend=-1) > 0
    of_cell = np.empty_like(order)
    of_cell[order] = np.cumsum(opens) - 1
    beside = keys[opens] + np.array([[-lines], [0], [lines]])
    low = np.searchsorted(keys, beside - 1, "left")[:, of_cell].ravel()
    count = np.searchsorted(keys, beside + 1, "right")[:, of_cell].ravel() - low
    corner = np.repeat(np.tile(np.arange(len(key)), 3), count)
    place = np.arange(len(corner)) + np.repeat(low - np.cumsum(count) + count, count)
    if least_way:
        far = _ways(edges, order, corner, place) > least_way - longest
        corner, place = corner[far], place[far]
    edge = order[place]
    aside = np.abs(dot(edges.start[corner] - edges.start[edge], left[edge]))
    near = (aside < limit) & (aside > _NEAR)
    return corner[near], edge[near]


def _ways(edges: Edges, order: Index, corner: Index, place: Index) -> Array:
    """The shorter way along the outline from corners to the starts of edges, these by their place in `order`; far
    longer than any where they lie on different contours."""
    along = edges.contour * _ELSEWHERE + edges.along
    way = np.abs(along[order][place] - along[corner])
    return np.minimum(way, np.abs(edges.around[edges.contour][corner] - way))


def _way_round(edges: Edges, corner: Index, edge: Index, part: Array) -> Array:
    """The shorter way along the outline; infinite between two outlines."""
    way = np.abs(edges.along[edge] + part * edges.long[edge] - edges.along[corner])
    way = np.minimum(way, edges.around[edges.contour[edge]] - way)
    return np.where(edges.contour[corner] == edges.contour[edge], way, np.inf)


def _same_piece(edges: Edges, corner: Index, edge: Index, ink: NDArray[np.bool_]) -> NDArray[np.bool_]:
    """Leaves out what reaches across a gap to the ink beyond: a stroke lies between a piece and its hole or itself."""
    hole = edges.areas() < 0
    contour, other = edges.contour[corner], edges.contour[edge]
    return np.asarray((contour == other) | np.where(ink, hole[contour] | hole[other], ~(hole[contour] & hole[other])))


def _least_round(left: Points, bisector: Points) -> Array:
    """How long, in limits, the way round a neck must be for it to count."""
    return np.where(dot(bisector, left) <= _PARALLEL * np.abs(bisector), ROUND_PARALLEL, ROUND_WEDGE)
