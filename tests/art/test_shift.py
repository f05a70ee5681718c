"""How far a drawing is moved so that its ink looks centered."""

import pytest

from xlbatch.art.row_cut import _shift


@pytest.mark.parametrize(
    ("center", "width", "shift"),
    [
        (None, 100.0, 0.0),
        (None, 10.0, 0.0),
        (50.0, 100.0, 0.0),
        (40.0, 100.0, 10.0),
        (65.0, 100.0, -15.0),
        (50.4, 100.0, 0.0),
    ],
)
def test_a_drawing_is_moved_where_its_ink_is_plainly_to_one_side(
    center: float | None, width: float, shift: float
) -> None:
    assert _shift(center, width) == pytest.approx(shift)
