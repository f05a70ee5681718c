"""Shapes of a drawing, their holes and what they look like; areas and distances worked out by hand."""

import math
from xml.etree.ElementTree import Element

import pytest

from xlbatch.geometry.path import Box
from xlbatch.geometry.weld import tidy
from xlbatch.parts.likeness import Likeness, is_one_pattern, is_ornament, is_star
from xlbatch.parts.outlines import Shape, box_gap, inside, path_of_shapes, shapes_of
from xlbatch.svg.layer import Layer
from xlbatch.svg.shapes import shape_path
from xlbatch.svg.viewport import View


def shape_list(data: str) -> tuple[Shape, ...]:
    """The shapes of an SVG path, its y upward."""
    path = shape_path(Element("path", {"d": data}), View(100, 100), (1, 0, 0, 1, 0, 0), even_odd=True)
    return shapes_of((Layer("#000000", tidy(path)),))


def square(x: float, y: float, side: float) -> str:
    return f"M{x} {y}h{side}v{side}h{-side}z"


def star(points: int, x: float = 0.0, y: float = 0.0, size: float = 20.0, inner: float = 0.5) -> str:
    corners = [
        (x + reach * math.sin(math.pi * no / points), y + reach * math.cos(math.pi * no / points))
        for no in range(2 * points)
        for reach in (size * (inner if no % 2 else 1),)
    ]
    return "M" + "L".join(f"{across:.4f} {up:.4f}" for across, up in corners) + "z"


def test_a_hole_belongs_to_the_shape_around_it_and_an_island_in_it_is_its_own() -> None:
    """A box of 60, an opening of 40 in it, in that a box of 20 with an opening of 10."""
    shapes = shape_list(square(0, 0, 60) + square(10, 10, 40) + square(20, 20, 20) + square(25, 25, 10))
    assert sorted((shape.area, shape.ink, len(shape.holes)) for shape in shapes) == [(400, 300, 1), (3600, 2000, 1)]


def test_holes_beside_one_another_and_shapes_of_several_layers() -> None:
    (shape,) = shape_list(square(0, 0, 60) + square(5, 5, 10) + square(30, 5, 20))
    assert sorted(hole.area for hole in shape.holes) == [100, 400]
    path = path_of_shapes([shape])
    layers = (Layer("#000000", path), Layer("#ff0000", path_of_shapes(shape_list(square(0, 0, 7)))))
    assert [(again.layer, again.ink) for again in shapes_of(layers)] == [(0, 3100), (1, 49)]


def test_remnants_of_rounding_are_no_shapes() -> None:
    assert [shape.area for shape in shape_list(square(0, 0, 0.7) + square(10, 10, 0.8))] == pytest.approx([0.64])


def test_a_shape_s_box_size_and_middle() -> None:
    (shape,) = shape_list("M10 20h30v8h-30z")
    assert (shape.width, shape.height, shape.size, shape.center, shape.length) == (30, 8, 30, 25 + 24j, 76)


@pytest.mark.parametrize(
    ("point", "within"),
    [(5 + 5j, True), (25 + 5j, True), (15 + 5j, False), (15 + 25j, True), (-1 + 5j, False), (31 + 25j, False)],
)
def test_a_point_within_a_u(point: complex, within: bool) -> None:
    (letter,) = shape_list("M0 0h10v20h10v-20h10v30h-30z")
    assert inside(point, letter) is within


@pytest.mark.parametrize(
    ("other", "gap"),
    [
        ((20, 0, 30, 10), 10),  # to the right
        ((-15, 0, -5, 10), 5),  # to the left
        ((0, 12, 10, 20), 2),  # above
        ((0, -9, 10, -2), 2),  # below
        ((13, 14, 20, 20), 5),  # corner to corner: 3 across, 4 up
        ((10, 0, 20, 10), 0),
        ((5, 5, 7, 7), 0),
    ],
)
def test_how_far_boxes_are_apart(other: Box, gap: float) -> None:
    box = (0.0, 0.0, 10.0, 10.0)
    assert box_gap(box, other) == box_gap(other, box) == gap


@pytest.mark.parametrize(
    ("data", "solidity"),
    [
        (square(0, 0, 20), 1),
        ("M0 0h10v20h10v-20h10v30h-30z", 700 / 900),  # a U
        ("M0 0h30v10h-20v20h-10z", 500 / 700),  # an L: a band around it leaves a triangle of 20 x 20
    ],
)
def test_solidity_is_the_part_of_what_a_band_encloses(data: str, solidity: float) -> None:
    (shape,) = shape_list(data)
    assert shape.solidity == pytest.approx(solidity)


DISK = "M0 20A20 20 0 0 0 0 -20A20 20 0 0 0 0 20z"
RING = DISK + "M0 12A12 12 0 0 0 0 -12A12 12 0 0 0 0 12z"


@pytest.mark.parametrize(
    ("data", "ornament", "is_a_star"),
    [
        ("M0 0h20l-10 17.3z", True, False),  # a triangle
        (star(4), True, True),
        (star(5), True, True),
        (star(6), True, True),
        (star(7), True, True),
        (star(5, inner=0.9), True, False),  # hardly a star
        ("M-20 -18h40v36h-40z", False, False),  # nearly a square
        ("M-20 -19.5h40v39h-40z", True, False),
        (DISK, True, False),
        (RING, False, False),  # an O: its hole makes it a letter
        ("M0 0h100v200h100v-200h100v300h-300z", False, False),
        ("M0 0h300v100h-200v200h-100z", False, False),
        ("M0 0h400v100h-400z", False, False),  # a bar turned by a third is no longer as it was
    ],
)
def test_stars_and_disks_are_ornaments_and_letters_are_none(data: str, ornament: bool, is_a_star: bool) -> None:
    (shape,) = shape_list(data)
    assert bool(is_ornament(shape)) == ornament
    assert bool(is_star(shape)) == is_a_star


def shapes_in_a_row(*shapes: str) -> tuple[Shape, ...]:
    """Each path drawn by itself: what they look like is asked, not where they stand."""
    return tuple(shape for data in shapes for shape in shape_list(data))


TREE, TALL, BRICK = "M0 0l10 10l10 -10l-10 30z", "M0 0l10 10l10 -10l-10 50z", "M0 0h20v9h-20z"


@pytest.mark.parametrize(
    ("shapes", "pattern"),
    [
        ((TREE, TREE, TREE), True),
        ((TREE, "M0 0l20 20l20 -20l-20 60z", TREE), True),  # one twice as large
        ((TREE, TREE, TREE, TALL), True),  # three of four
        ((TREE, TREE, TALL, TALL), False),
        ((TREE, TREE, TALL), False),  # two of three are less than 7 of 10
        ((BRICK, square(0, 0, 9), "M0 0h9v40h-9z"), True),  # blocks of any shape
        ((BRICK, square(0, 0, 9), TREE), False),
    ],
)
def test_a_row_of_mostly_one_shape_or_of_blocks_is_a_pattern(shapes: tuple[str, ...], pattern: bool) -> None:
    assert is_one_pattern(shapes_in_a_row(*shapes)) is pattern


def test_outlines_are_alike_in_size_and_in_length_and_at_least_three_make_a_kind() -> None:
    """Arrow heads and bars; a larger arrow head is of another kind."""
    trees, bars = shapes_in_a_row(TREE, TREE, TREE), shapes_in_a_row(BRICK, BRICK)
    (larger,) = shapes_in_a_row("M0 0l11 11l11 -11l-11 33z")
    likeness = Likeness((*trees, *bars, larger))
    assert [len(likeness.like[mark]) for mark in (trees[0], bars[0], larger)] == [3, 2, 1]
    assert likeness.is_foreign(trees[0], bars)
    assert not likeness.is_foreign(trees[0], [trees[1]])
    assert not likeness.is_foreign(bars[0], trees)  # two are no kind
    assert likeness.stands_elsewhere(trees[0], [trees[0]])  # one of three is here
    assert not likeness.stands_elsewhere(trees[0], trees[:2])
    four = Likeness(shapes_in_a_row(TREE, TREE, TREE, TREE))
    marks = list(four.like)
    assert four.stands_elsewhere(marks[0], marks[:2])  # half of them are not most of them
    assert not four.stands_elsewhere(marks[0], marks[:3])
