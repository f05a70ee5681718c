"""How much work one drawing may be, so that none takes minutes: counted, never timed."""

import numpy as np
import pathops
from numpy.typing import NDArray

from xlbatch.svg.faults import Unreadable

_MOST, _AT_ONCE = 6e10, 1e10  # about ten seconds, and five
_SAMPLE = 64  # edges looked at closely
_FEW = 64  # points: too few to matter
_POINTS = np.zeros(8, dtype=np.intp)  # of each verb
_POINTS[[pathops.PathVerb.MOVE, pathops.PathVerb.LINE, pathops.PathVerb.QUAD, pathops.PathVerb.CUBIC]] = 1, 1, 2, 3


class Effort:
    """What is left of the work that may be done on a drawing."""

    def __init__(self) -> None:
        self.left = _MOST

    def spend(self, *paths: pathops.Path) -> None:
        """Counts welding the paths: Skia's time grows about as the square of their points and of the pairs of edges
        that may cross. Raises Unreadable where none is left."""
        points = [point for path in paths for point in path.points]
        if len(points) > _FEW:
            verbs = np.array([verb for path in paths for verb in path.verbs])
            work = float(len(points) + _pairs(np.array(points).T, verbs)) ** 2
            self.left -= work
            if self.left < 0 or work > _AT_ONCE:
                raise Unreadable("too detailed")


def _pairs(points: NDArray[np.float64], verbs: NDArray[np.intp]) -> int:
    """About how many pairs of edges have boxes that meet, from an even sample of the edges."""
    drawn = np.delete(np.repeat(verbs, _POINTS[verbs]) != pathops.PathVerb.MOVE, 0)
    starts, other = points[:, :-1][:, drawn], points[:, 1:][:, drawn]
    (left, low), (right, high) = np.minimum(starts, other), np.maximum(starts, other)
    step = len(left) // _SAMPLE + 1
    x, y, x_end, y_end = (side[::step, None] for side in (left, low, right, high))
    return int(np.count_nonzero((x <= right) & (left <= x_end) & (y <= high) & (low <= y_end))) * step
