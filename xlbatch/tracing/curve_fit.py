"""Points along borders → few cubic curves near them: corners sharp, the rest smooth. Positions are complex numbers.

Least squares with the way along the chord as parameter, split where the curve strays farthest (after P. J. Schneider,
An Algorithm for Automatically Fitting Digitized Curves, Graphics Gems, 1990); all pieces of a level at once.
"""

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from xlbatch.geometry.flat import Array, Index, Points, dot

NEAR = 0.15  # dots: a curve passes this near to its points
_ARM = 4  # points on either side by which a corner is told
_SHARP = np.radians(28)  # the least turn of a corner
_SUDDEN = 0.72  # the least part of the turn over arms twice as long: else it is a tight curve
_ROUNDED = 2  # points on either side of a corner that the picture's dots have moved
_PUT_BACK = 1.6  # dots: a corner is put back where its sides would meet, at most this far
_EVEN = np.radians(12)  # two curves that meet at less than this go on smoothly
_FEWEST = 6  # points of a piece that may be split
_MENDED = 2  # times the parameters are mended
_PULL = 0.01  # of a point's weight: keeps the curve of few points from swinging out

Bools = NDArray[np.bool_]


class StraightLine(NamedTuple):
    """Points to be fitted; `breaks` are the indices where one curve ends and another begins, first and last included;
    `sharp` says of each whether it is a corner; points of no weight are left out of the fit."""

    points: Points
    weight: Array
    breaks: Index
    sharp: Bools


class Fit(NamedTuple):
    """Cubic curves, four points each, in a row of four arrays, and whether each is straight."""

    curves: Points
    straight: Bools


def fitted(borders: Sequence[tuple[Points, bool]]) -> list[Fit]:
    """The curves along each border, given as its points and whether it is closed."""
    lines = [_line(points, closed) for points, closed in borders]
    return _curves(lines) if lines else []


def _line(points: Points, closed: bool) -> StraightLine:
    """The points broken at corners. A closed border without one is broken where it is straightest."""
    count = len(points)
    if not closed:
        corner = _corners(points, closed) if count > 4 * _ARM else np.zeros(count, dtype=bool)
        corner[[0, -1]] = True
        points, weight = _sharpened(points, corner, closed)
        breaks = np.flatnonzero(corner)
        return StraightLine(points, weight, breaks, np.ones(len(breaks), dtype=bool))
    corner = _corners(points, closed) if count > 4 * _ARM else np.zeros(count, dtype=bool)
    points, weight = _sharpened(points, corner, closed)
    smooth = not corner.any()
    first = int(np.argmin(_turn(points, _ARM, closed))) if smooth else int(np.argmax(corner))
    points, weight, corner = (np.append(np.roll(values, -first), values[first]) for values in (points, weight, corner))
    corner[[0, -1]] = True
    breaks = np.flatnonzero(corner)
    if smooth and count > _FEWEST:
        breaks = np.array((0, count // 2, count))
    return StraightLine(points, weight, breaks, np.full(len(breaks), not smooth))


def _turn(points: Points, arm: int, closed: bool) -> Array:
    """How far the way turns at each point, between chords of `arm` points, in radians; 0 near an open end."""
    back, ahead = points - np.roll(points, arm), np.roll(points, -arm) - points
    turn = np.abs(np.angle(ahead * back.conj()))
    if not closed:
        turn[:arm] = turn[-arm:] = 0
    return np.asarray(turn)


def _corners(points: Points, closed: bool) -> Bools:
    turn = _turn(points, _ARM, closed)
    best = turn.copy()
    for step in range(1, _ARM + 1):
        best = np.maximum(best, np.maximum(np.roll(turn, step) + 1e-9 * step, np.roll(turn, -step)))
    wide = _turn(points, 2 * _ARM, closed)
    return np.asarray((turn > _SHARP) & (turn >= best) & (turn >= _SUDDEN * wide))


def _sharpened(points: Points, corner: Bools, closed: bool) -> tuple[Points, Array]:
    """The points with each corner put where its two sides meet, and their weights: none next to a corner."""
    weight = np.ones(len(points))
    corners = np.flatnonzero(corner)
    if not closed:
        corners = corners[(corners >= 2 * _ARM) & (corners < len(points) - 2 * _ARM)]
    if not len(corners):
        return points, weight
    near, far = _ROUNDED, _ROUNDED + _ARM
    before, after = (
        (points[(corners + side * near) % len(points)], points[(corners + side * far) % len(points)])
        for side in (-1, 1)
    )
    before_way, other = before[0] - before[1], after[0] - after[1]
    cross = (before_way.conj() * other).imag
    safe = np.abs(cross) > 1e-6
    part = ((after[0] - before[0]).conj() * other).imag / np.where(safe, cross, 1)
    meet = before[0] + part * before_way
    good = safe & (np.abs(meet - points[corners]) <= _PUT_BACK)
    points = points.copy()
    points[corners[good]] = meet[good]
    for step in (-1, 1):
        weight[(corners[good] + step) % len(points)] = 0
    return points, weight


class _Pieces(NamedTuple):
    """Stretches of all points, from first to last: where each one's points stand in a row of all of them."""

    first: Index
    last: Index

    def expanded(self) -> tuple[Index, Index, Index]:
        """The point numbers piece after piece, the piece of each, and where each piece begins among them."""
        count = self.last - self.first + 1
        begin = np.cumsum(count) - count
        piece = np.repeat(np.arange(len(count)), count)
        return np.arange(int(count.sum())) - begin[piece] + self.first[piece], piece, begin


def _curves(lines: Sequence[StraightLine]) -> list[Fit]:
    points = np.concatenate([line.points for line in lines])
    weight = np.concatenate([line.weight for line in lines])
    offset = np.cumsum([0, *(len(line.points) for line in lines)])
    pieces = _Pieces(
        np.concatenate([line.breaks[:-1] + start for line, start in zip(lines, offset, strict=False)]),
        np.concatenate([line.breaks[1:] + start for line, start in zip(lines, offset, strict=False)]),
    )
    sharp = np.zeros(len(points), dtype=bool)
    for line, start in zip(lines, offset, strict=False):
        sharp[line.breaks + start] = line.sharp
    straight = _straight(points, weight, pieces) & sharp[pieces.first] & sharp[pieces.last]
    done = [(pieces.first[straight], pieces.last[straight], _chords(points, pieces)[:, straight])]
    pieces = _Pieces(pieces.first[~straight], pieces.last[~straight])
    while len(pieces.first):
        curves, worst, where = _least_squares(points, weight, pieces)
        good = (worst <= NEAR) | (pieces.last - pieces.first < _FEWEST)
        done.append((pieces.first[good], pieces.last[good], curves[:, good]))
        first, last, cut = pieces.first[~good], pieces.last[~good], where[~good]
        cut = np.clip(cut, first + 2, last - 2)
        pieces = _Pieces(np.concatenate((first, cut)), np.concatenate((cut, last)))
    first, last, curves = (np.concatenate(them, axis=-1) for them in zip(*done, strict=True))
    order = np.argsort(first, kind="stable")
    flat = np.arange(len(first)) < int(straight.sum())
    first, last, curves, flat = first[order], last[order], curves[:, order], flat[order]
    curves = _smoothed(curves, ~sharp[first], first, offset)
    edges = np.searchsorted(first, offset)
    return [Fit(curves[:, a:b], flat[a:b]) for a, b in pairwise(edges)]


def _chords(points: Points, pieces: _Pieces) -> Points:
    start, end = points[pieces.first], points[pieces.last]
    return np.stack((start, start + (end - start) / 3, end + (start - end) / 3, end))


def _straight(points: Points, weight: Array, pieces: _Pieces) -> Bools:
    """Whether all points of a piece lie near its chord."""
    number, piece, begin = pieces.expanded()
    start, step = points[pieces.first], points[pieces.last] - points[pieces.first]
    way = step / np.maximum(np.abs(step), 1e-9)
    off = np.abs(((points[number] - start[piece]).conj() * way[piece]).imag) * weight[number]
    return np.asarray((np.maximum.reduceat(off, begin) <= NEAR) & (np.abs(step) > 1))


def _least_squares(points: Points, weight: Array, pieces: _Pieces) -> tuple[Points, Array, Index]:
    """The best curve along each piece, how far it strays at most, and at which point."""
    number, piece, begin = pieces.expanded()
    target, heavy = points[number], weight[number]
    way = np.cumsum(np.abs(np.diff(target, prepend=target[:1])))
    way -= way[begin][piece]
    t = way / np.maximum(np.maximum.reduceat(way, begin), 1e-9)[piece]
    for mending in range(_MENDED + 1):
        curves = _solved(points, pieces, (target, heavy, t, piece, begin))
        if mending < _MENDED:
            t = _mended(curves[:, piece], target, t)
    off = np.abs(_value(curves[:, piece], t) - target) * heavy
    worst = np.maximum.reduceat(off, begin)
    place = np.flatnonzero(off == worst[piece])
    _, once = np.unique(piece[place], return_index=True)
    return curves, worst, number[place[once]]


def _solved(points: Points, pieces: _Pieces, given: tuple[Points, Array, Array, Index, Index]) -> Points:
    """The inner points of each curve that bring it nearest to its points at their parameters."""
    target, heavy, t, piece, begin = given
    chords = _chords(points, pieces)
    s = 1 - t
    rest = target - _value(chords[:, piece], t)
    bend, two = 3 * s * s * t, 3 * s * t * t

    def total(values: Points | Array) -> Points:
        return np.add.reduceat(values * heavy, begin)

    a, b, c = (total(product).real for product in (bend * bend, bend * two, two * two))
    a, c = a + _PULL, c + _PULL
    x, y = total(bend * rest), total(two * rest)
    room = a * c - b * b
    curves = chords.copy()
    curves[1] += (c * x - b * y) / room
    curves[2] += (a * y - b * x) / room
    return curves


def _value(curves: Points, t: Array) -> Points:
    a, b, c, d = curves
    s = 1 - t
    return np.asarray(s * s * s * a + 3 * s * s * t * b + 3 * s * t * t * c + t * t * t * d)


def _mended(curves: Points, target: Points, t: Array) -> Array:
    """Parameters nearer to the feet of the points on their curves: a step of Newton's method."""
    a, b, c, d = curves
    s = 1 - t
    off = _value(curves, t) - target
    slope = 3 * (s * s * (b - a) + 2 * s * t * (c - b) + t * t * (d - c))
    bend = 6 * (s * (c - 2 * b + a) + t * (d - 2 * c + b))
    below = dot(slope, slope) + dot(off, bend)
    step = np.where(below > 1e-9, dot(off, slope) / np.where(below > 1e-9, below, 1), 0)
    return np.asarray(np.clip(t - np.clip(step, -0.2, 0.2), 0, 1))


def _smoothed(curves: Points, smooth: Bools, first: Index, offset: Index) -> Points:
    """The curves with one direction on both sides of each joint that is no corner."""
    start = np.searchsorted(first, offset[:-1])
    before = np.arange(len(first)) - 1
    end = np.append(start[1:], len(first)) - 1
    before[start] = end  # of a closed border
    joint = np.flatnonzero(smooth)
    handle, two = curves[1, joint], curves[2, before[joint]]
    middle = curves[0, joint]
    way = handle - two
    way /= np.maximum(np.abs(way), 1e-9)
    even = np.abs(np.angle((handle - middle) * (middle - two).conj())) < _EVEN
    joint, handle, two, middle, way = (values[even] for values in (joint, handle, two, middle, way))
    curves[1, joint] = middle + way * np.abs(handle - middle)
    curves[2, before[joint]] = middle - way * np.abs(two - middle)
    return curves
