"""Sums over outlines that can be done on paper: moments, edges, borders, matrices. Lengths in mm."""

import math

import pytest

from xlbatch.geometry.flat import edges_of, moment
from xlbatch.geometry.ink import InkPart, around, measured, outline, scaled, shifted
from xlbatch.geometry.outline import Segment, contours_of, pack
from xlbatch.geometry.path import (
    Matrix,
    bounds,
    contours,
    curves,
    path_data,
    product,
    signed_area,
    steps,
    transform,
)
from xlbatch.geometry.weld import border, welded

ROUND = 4 / 3 * math.tan(math.pi / 8)  # the usual handle of a quarter circle: its area is 3 parts in 10,000 too large
Outline = tuple[Segment, ...]


def box(left: float, bottom: float, right: float, top: float) -> Outline:
    """Counterclockwise; with right and left changed, a hole."""
    return (("M", (left, bottom)), ("L", (right, bottom)), ("L", (right, top)), ("L", (left, top)), ("Z", ()))


def disk(x: float, y: float, radius: float) -> Outline:
    k = radius * ROUND
    return (
        ("M", (x + radius, y)),
        ("C", (x + radius, y + k, x + k, y + radius, x, y + radius)),
        ("C", (x - k, y + radius, x - radius, y + k, x - radius, y)),
        ("C", (x - radius, y - k, x - k, y - radius, x, y - radius)),
        ("C", (x + k, y - radius, x + radius, y - k, x + radius, y)),
        ("Z", ()),
    )


PARABOLA: Outline = (("M", (6, 0)), ("Q", (3, 8, 0, 0)), ("Z", ()))  # 6 wide, 4 high


@pytest.mark.parametrize(
    ("segments", "area", "middle", "near"),
    [
        (box(0, 0, 10, 10), 100, 5, 1e-9),
        (box(-30, 0, -10, 10), 200, -20, 1e-9),
        ((*box(0, 0, 20, 10), *box(20, 2, 10, 7)), 150, (200 * 10 - 50 * 15) / 150, 1e-9),  # a hole at its right
        ((("M", (0, 0)), ("L", (30, 0)), ("L", (0, 9)), ("Z", ())), 135, 10, 1e-9),  # a triangle: a third of the way
        (PARABOLA, 16, 3, 1e-9),
        (disk(7, 3, 5), 25 * math.pi, 7, 1e-3),
        ((*box(0, 0, 10, 10), *disk(30, 0, 5)), 100 + 25 * math.pi, (500 + 750 * math.pi) / (100 + 25 * math.pi), 1e-3),
    ],
)
def test_area_and_how_far_to_the_right_its_middle_lies(
    segments: Outline, area: float, middle: float, near: float
) -> None:
    assert signed_area(segments) == pytest.approx(area, rel=near)
    assert moment(pack(segments)) / signed_area(segments) == pytest.approx(middle, rel=near)


def test_a_box_is_cut_into_edges_no_longer_than_asked() -> None:
    """30 x 8 at most 12 long: three edges of 10 on the long sides, one on the short ones; then a hole of 4 x 4."""
    edges = edges_of(pack((*box(0, 0, 30, 8), *box(14, 2, 10, 6))), 12.0, 0.01)
    corners = [0, 10, 20, 30, 30 + 8j, 20 + 8j, 10 + 8j, 8j, 14 + 2j, 10 + 2j, 10 + 6j, 14 + 6j]
    assert edges.start.tolist() == pytest.approx(corners)
    assert edges.long.tolist() == pytest.approx([10, 10, 10, 8, 10, 10, 10, 8, 4, 4, 4, 4])
    assert edges.along.tolist() == pytest.approx([0, 10, 20, 30, 38, 48, 58, 68, 0, 4, 8, 12])
    assert edges.contour.tolist() == [0] * 8 + [1] * 4
    assert edges.first.tolist() == [0, 8]
    assert edges.around.tolist() == pytest.approx([76, 16])
    assert edges.areas().tolist() == pytest.approx([240, -16])
    assert edges.left.tolist()[:4] == pytest.approx([1j, 1j, 1j, -1])


@pytest.mark.parametrize("near", [0.5, 0.05, 0.005])
def test_edges_stray_no_further_than_asked_and_are_no_more_than_it_takes(near: float) -> None:
    """A chord over an angle a of a circle lies r (1 - cos a / 2) off it."""
    edges = edges_of(pack(disk(0, 0, 40)), 100.0, near)
    strayed = 40 - min(abs(edges.start + edges.step / 2))
    assert strayed <= near * 1.02
    fewest = math.pi / math.acos(1 - near / 40)
    assert fewest * 0.95 <= len(edges.start) <= 1.5 * fewest + 4


@pytest.mark.parametrize(("near", "pieces"), [(9.1, 1), (4.0, 2), (1.01, 3), (0.99, 4)])
def test_a_curve_is_cut_into_as_many_edges_as_its_bend_takes(near: float, pieces: int) -> None:
    """A second derivative of 6 * 12 at most: a chord over a part of it strays no more than 72 / 8 times its square."""
    curve: Outline = (("M", (0, 0)), ("C", (10, 0, 20, 12, 30, 24)), ("Z", ()))
    assert len(edges_of(pack(curve), 100.0, near).start) == pieces + 1


def test_a_contour_that_is_not_closed_by_hand_is_closed_from_where_it_began() -> None:
    open_box: Outline = (("M", (1, 2)), ("L", (5, 2)), ("L", (5, 6)), ("Z", ()))
    assert list(curves(open_box)) == [((1, 2), (5, 2)), ((5, 2), (5, 6)), ((5, 6), (1, 2))]
    again: Outline = (*open_box, ("L", (0, 0)), ("Z", ()))  # after Z the next line starts where the contour began
    assert list(curves(again))[3:] == [((1, 2), (0, 0)), ((0, 0), (1, 2))]


@pytest.mark.parametrize(
    ("segments", "across", "up"),
    [
        (box(0, 0, 30, 8), [30, 0, -30, 0], [0, 8, 0, -8]),
        ((("M", (0, 0)), ("L", (3, 4)), ("L", (3, 0)), ("Z", ())), [3, 0, -3], [4, -4, 0]),
    ],
)
def test_the_steps_along_an_outline(segments: Outline, across: list[float], up: list[float]) -> None:
    walked = list(steps(segments))
    assert [x for x, _ in walked] == across
    assert [y for _, y in walked] == up


@pytest.mark.parametrize(
    ("curve", "total"),
    [
        (("Q", (3, 8, 6, 0)), (6, 0)),
        (("C", (1, 5, 9, -3, 12, 7)), (12, 7)),
    ],
)
def test_the_steps_along_a_curve_add_up_to_the_way_from_end_to_end(curve: Segment, total: tuple[float, float]) -> None:
    walked = list(steps((("M", (0, 0)), curve)))
    assert len(walked) == 5
    assert tuple(map(sum, zip(*walked, strict=True))) == pytest.approx(total)


MOVE, SKEW, TURN = (1, 0, 0, 1, 5, 7), (1, 2, 3, 1, 0, 0), (0, 1, -1, 0, 4, -2)


@pytest.mark.parametrize(
    ("first", "then", "both"),
    [
        (MOVE, SKEW, (1, 2, 3, 1, 26, 17)),  # (5, 7) goes to 5 + 3 * 7 and 2 * 5 + 7
        (SKEW, MOVE, (1, 2, 3, 1, 5, 7)),
        (SKEW, TURN, (-2, 1, -1, 3, 4, -2)),
        (TURN, SKEW, (3, 1, -1, -2, -2, 6)),
        ((2, 0, 0, 5, 1, 1), (3, 0, 0, 7, 10, 20), (6, 0, 0, 35, 13, 27)),
    ],
)
def test_two_matrices_one_after_the_other(first: Matrix, then: Matrix, both: Matrix) -> None:
    assert product(first, then) == both
    corner: Outline = (("M", (2, 3)),)
    assert transform(transform(corner, first), then) == transform(corner, both)


def test_path_data_of_a_skewed_line() -> None:
    """(2, 3) goes to 2 + 3 * 3 + 5 and 2 * 2 + 3 + 7."""
    line: Outline = (("M", (2, 3)), ("L", (0, 1)))
    assert path_data(line, (1, 2, 3, 1, 5, 7)) == "M16 14 L8 8"


@pytest.mark.parametrize("width", [1.0, 3.0])
def test_a_border_has_round_corners_and_lies_as_wide_on_every_side(width: float) -> None:
    """A box of 30 x 20: its own area, its sides times the width, and a disk in four quarters."""
    grown = border(box(0, 0, 30, 20), width)
    assert bounds(grown) == pytest.approx((-width, -width, 30 + width, 20 + width), abs=0.01)
    assert signed_area(grown) == pytest.approx(600 + 100 * width + math.pi * width**2, rel=1e-3)


@pytest.mark.parametrize(
    ("side", "left_open"),
    [(5.0, 0.0), (5.9, 0.0), (10.0, 16.0), (20.0, 196.0)],
)
def test_a_border_closes_an_opening_no_wider_than_twice_its_width(side: float, left_open: float) -> None:
    """3 mm on every side of an opening: of one of 10 x 10 remain 4 x 4."""
    low, high = 20 - side / 2, 20 + side / 2
    ring = (*box(0, 0, 40, 40), *box(high, low, low, high))
    whole = 40 * 40 + 160 * 3 + 9 * math.pi
    assert signed_area(border(ring, 3.0)) == pytest.approx(whole - left_open, rel=1e-3)


def test_outlines_that_overlap_become_one() -> None:
    made = welded((*box(0, 0, 10, 10), *box(5, 0, 15, 10), *box(30, 0, 31, 1)))
    assert sorted(round(signed_area(contour), 3) for contour in contours(made)) == [1, 150]


def test_an_outline_of_pieces_starts_at_its_lower_left_corner_and_is_stretched() -> None:
    """Boxes of 10 x 10 and 10 x 20, the second 30 to the right and 5 up; twice as wide, three times as high."""
    low, tall = measured(box(0, 0, 10, 10)), measured(box(0, 0, 10, 20))
    assert low
    assert tall
    made = outline((InkPart(low, 100.0, 50.0), InkPart(tall, 130.0, 55.0)), 2.0, 3.0)
    assert (made.width, made.height, made.contours) == (80, 75, 2)
    assert (made.cut_length, made.area) == (100 + 160, 600 + 1200)
    assert made.center == (600 * 10 + 1200 * 70) / 1800
    assert path_data(made.segments) == "M0 0 L20 0 L20 30 L0 30 Z M60 15 L80 15 L80 75 L60 75 Z"
    assert [len(contour.verbs) for contour in contours_of(made.segments)] == [5, 5]


def test_coordinates_are_the_same_on_every_machine() -> None:
    """To a ten thousandth of a millimeter, whatever they were computed from, and never -0 for 0."""
    ink = measured(box(0, 0, 10, 20))
    assert ink
    assert outline((InkPart(ink),), 1 / 3, 2 / 3).segments.points.tolist()[2] == [3.3333, 13.3333]
    bulged = measured((("M", (0, 0)), ("Q", (5, -0.00002, 10, 0)), ("L", (10, 10)), ("L", (0, 10)), ("Z", ())))
    assert bulged
    assert "-" not in str(outline((InkPart(bulged),)).segments.points.tolist())  # of a handle 0.01 µm below the ink


def test_boxes_moved_enlarged_and_put_around() -> None:
    assert around([(0, 5, 10, 6), (-3, 7, 2, 9)]) == (-3, 5, 10, 9)
    assert shifted((0, 5, 10, 6), 2, -1) == (2, 4, 12, 5)
    assert scaled((-3, 5, 10, 9), 2) == (-6, 10, 20, 18)
    assert measured(()) is None
