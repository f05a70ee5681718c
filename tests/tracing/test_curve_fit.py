"""Curves along the points of a border."""

from collections.abc import Sequence

import numpy as np
import pytest

from xlbatch.geometry.flat import Points
from xlbatch.tracing.curve_fit import Fit, fitted


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


def along(fit: Fit, parts: int = 40) -> Points:
    """Points along all curves, a curve a column."""
    t = np.linspace(0, 1, parts + 1)[:, None]
    a, b, c, d = fit.curves
    return np.asarray((1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * b + 3 * (1 - t) * t**2 * c + t**3 * d)


def around(radius: float, count: int) -> Points:
    return np.asarray(50 + 40j + radius * np.exp(2j * np.pi * np.arange(count) / count))


@pytest.mark.parametrize(("radius", "pieces", "near"), [(4, 2, 0.1), (10, 4, 0.07), (30, 4, 0.215), (100, 8, 0.355)])
def test_a_circle_is_a_few_smooth_curves(radius: float, pieces: int, near: float) -> None:
    (fit,) = fitted([(around(radius, int(2 * np.pi * radius)), True)])
    assert len(fit.straight) == pieces
    assert not fit.straight.any()
    assert np.abs(np.abs(along(fit) - (50 + 40j)) - radius).max() < near
    assert fit.curves[3] == pytest.approx(np.roll(fit.curves[0], -1))
    back, ahead = fit.curves[3] - fit.curves[2], np.roll(fit.curves[1] - fit.curves[0], -1)
    assert np.abs(np.angle(ahead * back.conj())).max() < 1e-6


def arch(*handles: complex) -> Points:
    t = np.linspace(0, 1, 60)
    a, b, c, d = handles
    return np.asarray((1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * b + 3 * (1 - t) * t * t * c + t**3 * d)


TURN = 2 * np.pi * np.arange(130) / 130
SHAPES: dict[str, tuple[Points, bool, Sequence[complex], float]] = {  # points, closed, ends of curves, how near
    "arch": (arch(0, 40j, 60 + 40j, 60), False, (0, 29.24 + 29.99j), 0.29),
    "wave": (
        arch(0, 20 + 40j, 60 - 30j, 90 + 10j), False,
        (0, 10.44 + 11.41j, 17.21 + 12.83j, 78.95 + 0.04j), 0.195,
    ),
    "oval": (
        30 * np.cos(TURN) + 12j * np.sin(TURN), True,
        (0.72 - 12j, 27.79 - 4.53j, 29.44 - 2.31j, 29.96 + 0.58j, 28.75 + 3.43j,
         -0.72 + 12j, -27.79 + 4.53j, -29.44 + 2.31j, -29.96 - 0.58j, -28.75 - 3.43j), 0.25,
    ),
    "spiral": (
        np.exp(1j * np.arange(120) / 12) * (5 + np.arange(120) / 5), False,
        (5, 2.52 + 7.59j, -4.08 + 8.91j, -8.81 + 6.58j, 0.62 - 16.39j, 20.17 + 1.01j, -3.52 + 23.94j), 0.187,
    ),
    "half a disk": (
        np.concatenate((20 * np.exp(1j * np.pi * np.arange(63) / 63), np.arange(-20, 20))), True,
        (20.3, 19.9 + 1.99j, 0.5 + 19.99j, -19.9 + 1.99j, -20.3), 0.124,
    ),
    "a few points": (np.array([0, 1, 2 + 0.3j, 3 + 1j, 3.4 + 2j, 3 + 3j, 2 + 3.7j]), False, (0,), 0.075),
    "two points": (np.array([0, 3 + 4j]), False, (0,), 0),
}  # fmt: skip


@pytest.mark.parametrize("name", SHAPES)
def test_few_curves_pass_near_all_points(name: str) -> None:
    """Where each begins, and that they are near, also when many borders are fitted together."""
    points, closed, ends, near = SHAPES[name]
    others = [(them, is_closed) for them, is_closed, *_ in SHAPES.values()]
    for fit in (fitted([(points, closed)])[0], fitted([*others, (points, closed), *others])[len(others)]):
        assert fit.curves[0] == pytest.approx(np.array(ends), abs=0.02)
        away = np.abs(along(fit, 200).ravel()[:, None] - points).min(axis=0)
        assert away.max() <= near
        assert fit.straight.sum() == (name in ("half a disk", "two points"))
    assert fitted([]) == []


@pytest.mark.parametrize(("degrees", "corner"), [(20, False), (27.5, False), (28.5, True), (90, True), (150, True)])
def test_two_lines_meet_in_a_corner_where_they_turn_enough(degrees: float, corner: bool) -> None:
    ahead = np.arange(1, 21) * np.exp(1j * np.radians(degrees))
    (fit,) = fitted([(np.concatenate((np.arange(-20, 1), ahead)), False)])
    assert fit.straight.tolist() == [corner, corner]
    assert fit.curves[0] == pytest.approx(np.array((-20, 0)), abs=1e-6)
    back, on = fit.curves[0, 1] - fit.curves[2, 0], fit.curves[1, 1] - fit.curves[0, 1]
    smooth = 12  # degrees: less is evened out
    assert np.degrees(np.angle(on * back.conjugate())) == pytest.approx(degrees if degrees > smooth else 0, abs=5)


@pytest.mark.parametrize(("radius", "straight"), [(1, 2), (2, 2), (3, 1), (4, 0), (6, 0)])
def test_a_corner_rounded_by_two_dots_is_put_back_a_wider_one_stays_round(radius: int, straight: int) -> None:
    turn = np.linspace(0, np.pi / 2, int(np.ceil(radius * np.pi / 2)) + 1)
    bend = 1j * radius - 1j * radius * np.exp(1j * turn)
    points = np.concatenate((np.arange(-15, 0), bend, radius + 1j * radius + 1j * np.arange(1, 16)))
    (fit,) = fitted([(points, False)])
    assert fit.straight.sum() == straight
    if straight == 2:
        assert fit.curves[0] == pytest.approx(np.array((-15, radius)), abs=1e-6)
    else:
        assert np.abs(along(fit, 200).ravel()[:, None] - points).min(axis=0).max() < 0.6


@pytest.mark.parametrize("backward", [False, True])
@pytest.mark.parametrize(("before", "put_back"), [(7, False), (8, True)])
def test_a_corner_less_than_eight_points_from_an_end_is_left(before: int, put_back: bool, backward: bool) -> None:
    points = np.array([*np.arange(before), before - 0.4 + 0.4j, *(before + 1j * np.arange(1, 25))])
    (fit,) = fitted([(points[::-1] if backward else points, False)])
    assert bool(np.abs(fit.curves - before).min() < 1e-6) is put_back


@pytest.mark.parametrize(("arms", "corner"), [((7, 8), False), ((8, 8), True), ((9, 8), True)])
def test_a_border_of_few_points_has_no_corners(arms: tuple[int, int], corner: bool) -> None:
    (fit,) = fitted([(np.array([*np.arange(-arms[0], 1), *(1j * np.arange(1, arms[1] + 1))]), False)])
    assert fit.straight.all() == fit.straight.any() == corner


@pytest.mark.parametrize(("count", "pieces"), [(5, 1), (6, 1), (7, 2), (8, 2), (9, 3), (13, 5)])
def test_a_zigzag_is_split_down_to_six_points(count: int, pieces: int) -> None:
    (fit,) = fitted([(np.arange(count) + 0.8j * (np.arange(count) % 2), False)])
    assert len(fit.straight) == pieces


@pytest.mark.parametrize(("off", "straight"), [(0.14, True), (-0.14, True), (0.16, False)])
def test_points_hardly_off_a_line_make_it_straight(off: float, straight: bool) -> None:
    points = 3 * np.arange(14) * np.exp(0.5j)
    points[4:9] += 1j * off * np.exp(0.5j)
    (fit,) = fitted([(points, False)])
    assert fit.straight.all() == straight
    assert fitted([(np.array([0, 0.5, 1]), False)])[0].straight.tolist() == [False]  # a dot is too short to tell
    assert fitted([(np.array([0, 0.5, 1.1]), False)])[0].straight.tolist() == [True]
