"""The line that letters stand on: straight, sloped, or an arc; and a place measured along it and above it."""

import cmath
import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from xlbatch.geometry.flat import Points
from xlbatch.geometry.outline import Segment
from xlbatch.geometry.path import Matrix, transform
from xlbatch.lettering.arch import Arc, bent

Values = NDArray[np.float64]


@dataclass(frozen=True)
class Straight:
    """A straight line through `origin`, running in the direction `along` (of length 1)."""

    origin: complex
    along: complex = 1 + 0j

    def onto(self, points: Points) -> tuple[Values, Values]:
        """How far along the line and above it points lie."""
        turned = (points - self.origin) / self.along
        return turned.real, turned.imag

    def placed(self, segments: tuple[Segment, ...]) -> tuple[Segment, ...]:
        """Outlines drawn along the x axis, put onto the line."""
        matrix: Matrix = (
            *(self.along.real, self.along.imag, -self.along.imag, self.along.real),
            *(self.origin.real, self.origin.imag),
        )
        return transform(segments, matrix)

    def point(self, along: float, above: float) -> complex:
        """The point so far along the line and above it."""
        return self.origin + complex(along, above) * self.along

    def raised(self, up: float) -> "Straight":
        """The line so much higher."""
        return Straight(self.origin + up * 1j * self.along, self.along)


@dataclass(frozen=True)
class Round:
    """An arc about `center`: letters stand on it with their heads outward (`radius` positive) or inward (negative).
    Lengths along it are measured from `top`, the direction of its middle."""

    center: complex
    radius: float
    top: complex = 1j  # of length 1

    def onto(self, points: Points) -> tuple[Values, Values]:
        """How far along the arc and above it points lie."""
        about = (points - self.center) / self.top
        return -np.angle(about) * self.radius, (np.abs(about) - abs(self.radius)) * math.copysign(1, self.radius)

    def placed(self, segments: tuple[Segment, ...]) -> tuple[Segment, ...]:
        """Outlines drawn along the x axis, bent onto the arc."""
        turn = self.top / 1j if self.radius > 0 else -self.top / 1j
        middle = self.center + self.top * abs(self.radius)
        shape = bent(segments, Arc(0.0, 0.0, self.radius))
        return transform(shape, (turn.real, turn.imag, -turn.imag, turn.real, middle.real, middle.imag))

    def point(self, along: float, above: float) -> complex:
        """The point so far along the arc and above it."""
        reach = abs(self.radius + above)
        return self.center + self.top * cmath.exp(-1j * along / self.radius) * reach

    def raised(self, up: float) -> "Round":
        """The arc that stands so much higher."""
        return Round(self.center, self.radius + up, self.top)


Frame = Straight | Round


def sloped(start: complex, other: complex) -> Straight:
    """The line through two points, from left to right."""
    start, other = sorted((start, other), key=lambda point: (point.real, point.imag))
    step = other - start
    return Straight(start, step / abs(step))


def arc_through(points: Points, heads_out: bool) -> Round | None:
    """The arc nearest to points (least squares, after Kåsa); None where they lie in a line."""
    system = np.column_stack((points.real, points.imag, np.ones(len(points))))
    try:
        a, b, c = np.linalg.lstsq(system, np.abs(points) ** 2, rcond=None)[0]
    except np.linalg.LinAlgError:
        return None
    center = complex(a, b) / 2
    squared = c + abs(center) ** 2
    if not (math.isfinite(squared) and 0 < squared < 1e10):
        return None
    mean = complex(points.mean()) - center
    top = mean / abs(mean) if abs(mean) > 1e-9 else 1j
    radius = math.sqrt(squared)
    return Round(center, radius if heads_out else -radius, top)
