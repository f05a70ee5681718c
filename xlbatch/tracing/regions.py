"""Borders and the curves along them → the closed outlines of each label, y upward."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

import numpy as np

from xlbatch.geometry.flat import Array, Points
from xlbatch.geometry.outline import Segment
from xlbatch.geometry.path import curves
from xlbatch.tracing.borders import Border
from xlbatch.tracing.curve_fit import Bools, Fit


class Ring(NamedTuple):
    """One closed outline with its label to the left: around an area counterclockwise, around a hole clockwise."""

    segments: tuple[Segment, ...]
    corners: Points  # the ends of its curves
    area: float  # negative for a hole

    @property
    def lines(self) -> Iterator[Segment]:
        """The outline as many short lines."""
        yield self.segments[0]
        for curve in curves(self.segments):
            parts = (0.25, 0.5, 0.75, 1.0) if len(curve) > 2 else (1.0,)
            for t in parts:
                point = sum(weight * complex(*p) for weight, p in zip(_weights(t, len(curve)), curve, strict=True))
                yield "L", (point.real, point.imag)
        yield "Z", ()


def _weights(t: float, count: int) -> tuple[float, ...]:
    """Bernstein's polynomials of a line or a cubic curve."""
    s = 1 - t
    return (s, t) if count == 2 else (s**3, 3 * s * s * t, 3 * s * t * t, t**3)


def rings_of(borders: Sequence[Border], fits: Sequence[Fit], high: float) -> dict[int, list[Ring]]:
    """The outlines of each label; `high` is the height of the picture in dots."""
    stretches: dict[int, list[_Stretch]] = defaultdict(list)
    for border, fit in zip(borders, fits, strict=True):
        upward = fit.curves.conj() + 1j * high
        ahead = _Stretch(upward, fit.straight, border.start, border.end, border.leaves, border.arrives)
        stretches[border.left].append(ahead)
        stretches[border.right].append(ahead.back)
    return {label: [_ring(chain) for chain in _closed(them)] for label, them in sorted(stretches.items())}


class _Stretch(NamedTuple):
    """Curves along one border, with the corners of dots it runs between and where it heads there."""

    curves: Points
    straight: Bools
    start: int
    end: int
    leaves: int
    arrives: int

    @property
    def back(self) -> "_Stretch":
        """The same the other way round."""
        leaves, arrives = (self.arrives + 2) % 4, (self.leaves + 2) % 4
        return _Stretch(self.curves[::-1, ::-1], self.straight[::-1], self.end, self.start, leaves, arrives)


def _closed(stretches: Sequence[_Stretch]) -> Iterable[list[_Stretch]]:
    """Stretches put together end to start. Where two areas of a label meet at a node, each is closed by itself: of
    the ways on, the one farthest to the left is taken."""
    begins: dict[int, list[int]] = defaultdict(list)
    for number, stretch in enumerate(stretches):
        begins[stretch.start].append(number)
    unseen = set(range(len(stretches)))
    for first in range(len(stretches)):
        chain, number = [], first
        while number in unseen:
            unseen.remove(number)
            here = stretches[number]
            chain.append(here)
            number = min(begins[here.end], key=lambda way: (stretches[way].leaves - here.arrives + 1) % 4)
        if chain:
            yield chain


def _ring(chain: Sequence[_Stretch]) -> Ring:
    ends = np.concatenate([stretch.curves for stretch in chain], axis=1)
    straight = np.concatenate([stretch.straight for stretch in chain])
    start, handle, two, end = ends
    end = np.append(start[1:], start[0])  # nodes are shared, so that nothing is left between
    segments: list[Segment] = [("M", (start[0].real, start[0].imag))]
    for number in range(len(start)):
        points = (end[number],) if straight[number] else (handle[number], two[number], end[number])
        verb = "L" if straight[number] else "C"
        segments.append((verb, tuple(float(value) for point in points for value in (point.real, point.imag))))
    segments.append(("Z", ()))
    return Ring(tuple(segments), start, _area(start, handle, two, end))


def _area(a: Points, b: Points, c: Points, d: Points) -> float:
    """The area inside cubic curves (Green's theorem, in closed form)."""

    def cross(p: Points, q: Points) -> Array:
        return np.asarray((p.conj() * q).imag)

    total = 6 * cross(a, b) + 3 * cross(a, c) + cross(a, d) + 3 * cross(b, c) + 3 * cross(b, d) + 6 * cross(c, d)
    return float(total.sum() / 20)


def inside(point: complex, polygon: Points) -> bool:
    """Whether a point lies inside a polygon: a ray from it crosses an odd number of sides."""
    start, end = polygon - point, np.roll(polygon, -1) - point
    spans = (start.imag > 0) != (end.imag > 0)
    way = end[spans] - start[spans]
    crossing = start[spans].real - start[spans].imag * way.real / way.imag
    return bool(np.count_nonzero(crossing > 0) % 2)
