"""Colors that overlap, stacked or side by side."""

import math
from pathlib import Path

import pytest

from tests.drawings import read_artwork
from tests.svg.test_artwork import area, drawing
from xlbatch.svg.artwork import Drawing

RED, BLUE, WHITE = "#ff0000", "#0000ff", "#ffffff"
TARGET = (
    '<rect width="100" height="100" fill="red"/><circle cx="50" cy="50" r="40" fill="blue"/>'
    '<circle cx="50" cy="50" r="10" fill="red"/>'
)


def test_overlapping_colors_are_stacked_or_knocked_out(tmp_path: Path) -> None:
    """A red square, a blue disk of 40 on it, a red dot of 10 on that. Stacked, the red is one square; the blue is left
    open where the red dot is to be seen, for red is pressed first."""
    whole = drawing(tmp_path, TARGET, 'viewBox="0 0 100 100" width="100mm" height="100mm"')
    apart = read_artwork(tmp_path / "logo.svg", apart=True)
    assert isinstance(apart, Drawing)
    disk, dot = math.pi * 40**2, math.pi * 10**2
    assert area(whole, RED) == pytest.approx(10_000, rel=1e-3)
    assert area(whole, BLUE) == pytest.approx(disk - dot, rel=1e-3)
    assert area(apart, RED) == pytest.approx(10_000 - disk + dot, rel=1e-3)
    assert area(apart, BLUE) == pytest.approx(disk - dot, rel=1e-3)
