"""Borders of areas of dots: closed, shared by both sides, and around all that they should."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays
from numpy.typing import NDArray

from xlbatch.geometry.flat import Array
from xlbatch.tracing.borders import Labels, Where, borders_of
from xlbatch.tracing.curve_fit import fitted
from xlbatch.tracing.regions import Ring, inside, rings_of
from xlbatch.tracing.trace import joined


def halfway(where: Where, one: Labels, other: Labels) -> Array:
    """As if every dot were wholly of its label: borders run midway between centers."""
    here = MAP[0][where]
    return np.asarray(np.where(here == other, 1.0, 0.0) + 0 * one)


MAP: list[NDArray[np.uint8]] = []  # what `halfway` looks at


def rings(labels: NDArray[np.uint8]) -> dict[int, list[Ring]]:
    MAP[:] = [np.pad(labels, 1)]
    borders = joined(borders_of(MAP[0], halfway))
    return rings_of(borders, fitted([(border.points, border.closed) for border in borders]), len(labels))


@settings(max_examples=200, deadline=None)
@given(arrays(np.uint8, (9, 11), elements=st.integers(0, 3)))
def test_every_label_is_surrounded(labels: NDArray[np.uint8]) -> None:
    """Each border counts for one side and against the other; every outline ends where it began; a label with dots has
    an outline around them."""
    found = rings(labels)
    assert sum(ring.area for them in found.values() for ring in them) == pytest.approx(0, abs=1e-6)
    for label, them in found.items():
        for ring in them:
            assert ring.segments[0][1] == ring.segments[-2][1][-2:]
        if label:
            assert any(ring.area > 0 for ring in them)
    assert set(found) - {0} == set(np.unique(labels).tolist()) - {0}


def test_one_block_of_dots_is_one_outline() -> None:
    labels = np.zeros((30, 40), dtype=np.uint8)
    labels[5:25, 10:30] = 1
    (ring,) = rings(labels)[1]
    assert ring.area == pytest.approx(400, abs=3)
    assert inside(20 + 15j, ring.corners)
    assert not inside(5 + 15j, ring.corners)


def test_areas_that_touch_only_at_a_corner_are_apart_where_they_are_background() -> None:
    labels = np.ones((24, 24), dtype=np.uint8)
    labels[4:12, 4:12] = labels[12:20, 12:20] = 0
    found = rings(labels)
    assert len(found[1]) == 3  # the square, and two holes


def test_three_areas_share_their_corners() -> None:
    labels = np.zeros((30, 30), dtype=np.uint8)
    labels[5:25, 5:15], labels[5:25, 15:25] = 1, 2
    found = rings(labels)
    corners = [set(ring.corners.round(6).tolist()) for label in (1, 2) for ring in found[label]]
    for node in (15 + 5j, 15 + 25j):
        assert any(abs(corner - node) < 0.2 for corner in corners[0] & corners[1])
    assert sum(ring.area for label in (1, 2) for ring in found[label]) == pytest.approx(400, abs=3)


@pytest.mark.parametrize("map_", [[[1, 2], [2, 0]], [[2, 1], [0, 2]], [[0, 2], [2, 1]], [[1, 0], [0, 2]]])
def test_squares_of_one_label_that_meet_at_a_corner_of_three_are_apart(map_: list[list[int]]) -> None:
    found = rings(np.pad(np.kron(np.array(map_), np.ones((6, 6))), 3).astype(np.uint8))
    counts = {label: sum(row.count(label) for row in map_) for label in (1, 2)}
    assert {label: len(found[label]) for label in (1, 2)} == counts
