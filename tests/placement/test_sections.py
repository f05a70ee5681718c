"""Plate placements: each decal covered, with the overlap, by as few as a grid allows."""

import math
import random
from itertools import pairwise

import pytest
from shapely import box, unary_union

from xlbatch.job.job import Press
from xlbatch.job.source import Source
from xlbatch.placement.sections import moves_of, sections

INCH = 25.4


def plate(width: float, depth: float, overlap: float) -> Press:
    return Press(Source("Press"), "Plate", "plate press", width, depth, 200, "", overlap)


@pytest.mark.parametrize(
    ("width", "height", "count"),
    [
        (10, 10, 1),
        (15, 15, 1),
        (16, 10, 2),
        (29, 15, 2),  # 15 + 15 - 1 overlap
        (30, 10, 3),
        (16, 16, 4),
    ],
)
def test_plate_placements_on_a_15_inch_plate(width: float, height: float, count: int) -> None:
    press = plate(15 * INCH, 15 * INCH, 1 * INCH)
    assert len(sections(width * INCH, height * INCH, press)) == count


def test_turning_the_garment_can_save_a_placement() -> None:
    press = plate(10 * INCH, 20 * INCH, 1 * INCH)
    assert len(sections(18 * INCH, 9 * INCH, press)) == 1


def least(length: float, side: float, overlap: float) -> int:
    """The fewest intervals of `side` that cover `length` with the overlap, by trying 1, 2, 3 …"""
    return next(n for n in range(1, 1000) if n * side - (n - 1) * overlap >= length - 1e-6)


def test_sections_cover_every_decal_with_the_overlap_and_are_the_fewest() -> None:
    """1,000 random plates and decals; coverage judged by shapely."""
    draw = random.Random(7)
    for _ in range(1000):
        width, height = draw.uniform(20, 600), draw.uniform(20, 600)
        across, down = draw.uniform(100, 400), draw.uniform(100, 400)
        press = plate(across, down, overlap := draw.uniform(0, 45))
        placed = sections(width, height, press)
        counts = (
            least(width, across, overlap) * least(height, down, overlap),
            least(width, down, overlap) * least(height, across, overlap),
        )
        assert len(placed) == min(counts)
        if counts[0] > counts[1]:
            across, down = down, across
        plates = [box(x - across / 2, y - down / 2, x + across / 2, y + down / 2) for x, y in placed]
        uncovered = box(-width / 2, -height / 2, width / 2, height / 2).difference(unary_union(plates))
        assert uncovered.area < 1
        columns = sorted({x for x, _ in placed})
        assert all(across - (b - a) >= overlap - 0.01 for a, b in pairwise(columns))


def test_sections_go_row_by_row_from_the_top_left() -> None:
    placed = sections(25 * INCH, 25 * INCH, plate(15 * INCH, 15 * INCH, 1 * INCH))
    assert placed == (
        (-5 * INCH, 5 * INCH),
        (5 * INCH, 5 * INCH),
        (-5 * INCH, -5 * INCH),
        (5 * INCH, -5 * INCH),
    )
    assert math.isclose(placed[0].right, -127)


@pytest.mark.parametrize(("unit", "step"), [("in", 12.7), ("cm", 10.0)])
def test_the_plate_moves_by_whole_steps_where_the_overlap_allows_it(unit: str, step: float) -> None:
    """A decal of 12 3/4 in under a plate of 9 in: 3 3/4 in apart would do, 4 in (10 cm) overlaps by 5."""
    press = plate(9 * INCH, 9 * INCH, 1 * INCH)
    spots = [section.right for section in sections(12.75 * INCH, 5 * INCH, press, moves_of(unit))]
    assert len(spots) == 2
    assert (spots[1] - spots[0]) / step == pytest.approx(round((spots[1] - spots[0]) / step), abs=1e-6)
    assert spots[1] - spots[0] <= 8 * INCH
    assert spots[1] + 4.5 * INCH >= 12.75 / 2 * INCH - 1e-6


def test_a_plate_that_just_reaches_moves_by_steps_that_can_be_measured() -> None:
    """15 in under 7.9 in that overlap by 4 1/4 in: 3.55 in apart would do, 3.65 in is the most: 3 5/8 in."""
    press = plate(7.9 * INCH, 8 * INCH, 4.25 * INCH)
    spots = [section.right / INCH for section in sections(15 * INCH, 5 * INCH, press, moves_of("in"))]
    assert [spots[1] - spots[0], spots[2] - spots[1]] == pytest.approx([3.625, 3.625])
