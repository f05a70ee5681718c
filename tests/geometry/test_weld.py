"""Operations on paths that Skia cannot do at one scale are done at another."""

from typing import Any

import numpy as np
import pathops
import pytest

from xlbatch.geometry.outline import Segment
from xlbatch.geometry.path import bounds, contours, signed_area
from xlbatch.geometry.weld import _SCALES, _is_real, _tried, closed, common, path_of, segments_in, segments_of, without


def square() -> pathops.Path:
    path = pathops.Path()
    pen = path.getPen()
    for place in ((10, 20), (30, 20), (30, 40), (10, 40)):
        (pen.lineTo if place != (10, 20) else pen.moveTo)(place)
    pen.closePath()
    return path


@pytest.mark.parametrize("works", range(1, len(_SCALES) + 1))
def test_what_is_done_at_any_scale_lies_where_it_lay(works: int) -> None:
    tries = []

    def operation(paths: list[pathops.Path]) -> pathops.Path:
        tries.append(paths[0].bounds)
        if len(tries) < works:
            raise pathops.PathOpsError
        return paths[0]

    assert _tried(operation, square()).bounds == pytest.approx((10, 20, 30, 40), abs=1e-3)
    assert len(tries) == works
    scale = _SCALES[works - 1]
    assert tries[-1] == pytest.approx((10 * scale, 20 * scale, 30 * scale, 40 * scale))


def box(left: float, bottom: float, right: float, top: float) -> tuple[Segment, ...]:
    return (("M", (left, bottom)), ("L", (right, bottom)), ("L", (right, top)), ("L", (left, top)), ("Z", ()))


def test_contours_of_less_than_half_a_square_unit_are_left_out() -> None:
    """However they wind: 0.48, 0.52, 0.48 as a hole and 0.9."""
    drawn = (*box(0, 0, 0.6, 0.8), *box(5, 0, 5.65, 0.8), *box(10.6, 0, 10, 0.8), *box(20, 0, 21, 0.9))
    kept = contours(segments_of(path_of(drawn)))
    assert [round(abs(signed_area(contour)), 2) for contour in kept] == [0.52, 0.9]


@pytest.mark.parametrize(("away", "real"), [(2.9, False), (2.94, False), (2.96, True), (3.1, True)])
def test_a_hole_in_a_border_is_real_where_all_of_it_lies_a_width_from_the_ink(away: float, real: bool) -> None:
    ink = np.array([0j, 30 + 0j, 40 + 40j])
    hole: tuple[Segment, ...] = (("M", (away, 0)), ("L", (9, 5)), ("L", (10, 0)), ("Z", ()))
    assert signed_area(hole) < 0
    assert _is_real(hole, ink, 3.0) is real
    assert _is_real((*hole[:1], hole[2], hole[1], hole[3]), ink, 3.0)  # no hole: always


@pytest.mark.parametrize("fails", [False, True])
def test_what_lies_outside_another_path_is_cut_out(fails: bool, monkeypatch: pytest.MonkeyPatch) -> None:
    """Also where Skia cannot do it at once."""
    if fails:

        def failing(*_: Any, **__: Any) -> pathops.Path:
            raise pathops.PathOpsError

        monkeypatch.setattr(pathops, "op", failing)
    left = segments_of(without(path_of(box(0, 0, 20, 10)), path_of(box(15, -5, 30, 30))))
    assert bounds(left) == pytest.approx((0, 0, 15, 10), abs=1e-3)
    assert signed_area(left) == pytest.approx(150, abs=0.01)
    holed = segments_of(without(path_of(box(0, 0, 20, 10)), path_of(box(5, 2, 10, 6))))
    assert sorted(round(signed_area(contour), 1) for contour in contours(holed)) == [-20, 200]


def test_what_two_paths_have_in_common_and_a_contour_left_open() -> None:
    shared = segments_of(common(path_of(box(0, 0, 20, 10)), path_of(box(15, -5, 30, 30))))
    assert bounds(shared) == pytest.approx((15, 0, 20, 10), abs=1e-3)
    assert signed_area(shared) == pytest.approx(50, abs=0.01)
    bent: tuple[Segment, ...] = (("M", (1, 2)), ("Q", (3, 4, 5, 6)), ("C", (1, 2, 3, 4, 7, 8)), ("L", (9, 9)))
    assert segments_in(closed(path_of(bent))) == (*bent, ("Z", ()))
