"""Operations on paths that Skia cannot do at one scale are done at another."""

import pathops
import pytest

from xlbatch.geometry.weld import _SCALES, _tried


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
