"""Outlines bent along an arc: where every point of a line or curve goes, and how far a run may be bent."""

import itertools
import math

import numpy as np
import pytest

from tests.lettering.test_text_line import bezier
from xlbatch.geometry.outline import Segment
from xlbatch.geometry.path import contours, curves
from xlbatch.lettering.arch import Arc, arc_of, bent, strongest

UP, DOWN = arc_of(-30.0, 170.0, 20.0, 100.0), arc_of(-30.0, 170.0, 20.0, -100.0)
LINE: tuple[Segment, ...] = (("M", (0, 5)), ("L", (90, 35)))
BEND: tuple[Segment, ...] = (("M", (150, 40)), ("Q", (80, -20, 10, 30)))
WAVE: tuple[Segment, ...] = (("M", (-20, 0)), ("C", (40, 60, 90, -50, 160, 45)))


@pytest.mark.parametrize(
    ("degrees", "radius"), [(90.0, 400 / math.pi), (-90.0, -400 / math.pi), (180.0, 200 / math.pi)]
)
def test_a_run_is_bent_about_a_middle_below_or_above_it(degrees: float, radius: float) -> None:
    """200 long from 50 on, kept as long as it is at height 30: every point is as far from the middle as it is high."""
    arc = arc_of(50.0, 250.0, 30.0, degrees)
    assert (arc.center, arc.middle) == (150.0, 30.0)
    assert arc.radius == pytest.approx(radius)
    for x, y in itertools.product((50.0, 110.0, 150.0, 250.0), (0.0, 30.0, 80.0)):
        across, up = arc.bend(x, y)
        assert math.hypot(across, up + radius) == pytest.approx(abs(radius + y - 30))
        turned = (x - 150) / 200 * abs(math.radians(degrees))
        assert math.atan2(across, (up + radius) * math.copysign(1, radius)) == pytest.approx(turned)


@pytest.mark.parametrize("arc", [UP, DOWN])
def test_a_small_step_goes_where_its_ends_go(arc: Arc) -> None:
    for x, y, across, up in ((0.0, 0.0, 1e-5, 0.0), (150.0, 40.0, 0.0, 1e-5), (90.0, -30.0, -2e-5, 1e-5)):
        here, there = arc.bend(x, y), arc.bend(x + across, y + up)
        assert arc.turn(x, y, across, up) == pytest.approx((there[0] - here[0], there[1] - here[1]), abs=1e-10)


@pytest.mark.parametrize("arc", [UP, DOWN])
@pytest.mark.parametrize("drawn", [LINE, BEND, WAVE])
def test_every_point_of_a_line_or_curve_goes_where_the_arc_takes_it(drawn: tuple[Segment, ...], arc: Arc) -> None:
    """Within 0.002 % of the radius, along each piece, which begins and ends where its part of the whole does."""
    made = bent(drawn, arc)
    assert [verb for verb, _ in made] == ["M", *"C" * (len(made) - 2), "Z"]
    (whole,), pieces = curves(drawn), list(curves(made[:-1]))
    assert made[0][1] == pytest.approx(arc.bend(*whole[0]))
    for no, piece in enumerate(pieces):
        assert len(piece) == 4
        for part in (0.0, 0.1, 0.25, 0.5, 0.8, 1.0):
            straight = bezier(whole, (no + part) / len(pieces))
            assert bezier(piece, part) == pytest.approx(arc.bend(*straight), abs=2e-5 * abs(arc.radius))
    across = [x for x, _ in whole]
    assert len(pieces) < 2 + 10 * (max(across) - min(across)) / abs(arc.radius)


def test_upright_lines_stay_straight_and_contours_stay_closed() -> None:
    box: list[Segment] = [("M", (0, 5)), ("L", (40, 5)), ("L", (40, 35)), ("L", (0, 35)), ("Z", ())]
    moved = [(verb, tuple(np.add(values, (60, 70)[: len(values)]))) for verb, values in box]
    for made, (x, y) in zip(contours(bent([*box, *moved], UP)), ((0, 5), (60, 75)), strict=True):
        verbs = "".join(verb for verb, _ in made)
        assert (verbs[0], verbs[-2:], verbs.count("L")) == ("M", "LZ", 2)
        assert made[0][1] == pytest.approx(UP.bend(x, y))
        assert made[-2][1] == pytest.approx(UP.bend(x, y))
        ends = [values[-2:] for _, values in made if values]
        assert any(end == pytest.approx(UP.bend(x + 40, y + 30)) for end in ends)


def test_a_short_line_is_one_curve() -> None:
    assert [verb for verb, _ in bent((("M", (0, 0)), ("L", (5, 30))), UP)] == ["M", "C", "Z"]


@pytest.mark.parametrize(("width", "height"), [(100.0, 50.0), (300.0, 80.0), (40.0, 400.0)])
def test_bent_as_far_as_it_may_be_the_inner_edge_keeps_two_thirds(width: float, height: float) -> None:
    arc = arc_of(0.0, width, height / 2, strongest(width, height))
    inner = abs(arc.radius - height / 2) * math.radians(strongest(width, height))
    assert inner == pytest.approx(2 / 3 * width)


def test_the_ends_of_a_line_never_meet() -> None:
    assert strongest(780, 100) == pytest.approx(math.degrees(780 / 150))  # not quite yet
    assert strongest(1000, 100) == strongest(1000, 1) == 300
