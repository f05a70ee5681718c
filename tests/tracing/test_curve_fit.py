"""Curves along the points of a border."""

import numpy as np
import pytest

from xlbatch.tracing.curve_fit import fitted


@pytest.mark.parametrize("backward", [False, True])
def test_a_corner_the_dots_have_rounded_is_put_back_near_the_end_of_a_border_too(backward: bool) -> None:
    """Ten dots to the right, then up; the corner itself lies half a dot inside."""
    points = np.array([*np.arange(10), 9.6 + 0.4j, *(10 + 1j * np.arange(1, 25))])
    (fit,) = fitted([(points[::-1] if backward else points, False)])
    ends = [0, 10, 10 + 24j]
    ends = ends[::-1] if backward else ends
    assert fit.straight.all()
    assert fit.curves[0] == pytest.approx(ends[:-1], abs=1e-6)
    assert fit.curves[3] == pytest.approx(ends[1:], abs=1e-6)
