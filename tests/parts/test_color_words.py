"""How different two colors look. CIELAB values of the sRGB primaries as commonly published (D65; from memory)."""

import math

import pytest

from xlbatch.parts.color_words import difference

LAB = {  # L*, a*, b*
    "#ffffff": (100.0, 0.0, 0.0), "#000000": (0.0, 0.0, 0.0), "#ff0000": (53.24, 80.09, 67.20),
    "#00ff00": (87.73, -86.18, 83.18), "#0000ff": (32.30, 79.19, -107.86),
}  # fmt: skip


@pytest.mark.parametrize("color", LAB)
@pytest.mark.parametrize("other", LAB)
def test_the_distance_is_that_of_the_published_values(color: str, other: str) -> None:
    assert difference(color, other) == pytest.approx(math.dist(LAB[color], LAB[other]), abs=0.1)
