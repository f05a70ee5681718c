"""What a flattened picture shows: how sharp its edges are, and which of its colors is a background."""

from pathlib import Path

import numpy as np
import pytest

from tests.tracing.pictures import drawn, saved
from xlbatch.svg.layer import Layers
from xlbatch.tracing.borders import Border
from xlbatch.tracing.flattened import Flat, blur_of
from xlbatch.tracing.trace import trace


def test_an_edge_in_the_first_column_of_dots_is_judged_by_that_column() -> None:
    """There it is hard: from one dot to the next; in the columns beside it, it takes ten."""
    steep = np.full((8, 3), 20, dtype=np.uint8)
    steep[:, 0] = 200
    colors = np.array([(255, 255, 255, 255), (55, 55, 55, 255)], dtype=float)
    flat = Flat(np.zeros((10, 5), dtype=np.uint8), colors, steep, ())
    down = np.arange(0.5, 8)
    first, second = (Border(0, 1, np.array(across + 1j * down, complex), True, 0, 0, 0, 0) for across in (0.5, 1.5))
    assert blur_of(flat, [first]) == 1
    assert 5 < blur_of(flat, [second]) <= 10


@pytest.mark.parametrize(("background", "enclosed"), [("white", ["#ffffff"]), (None, [])])
def test_what_a_ring_encloses_is_a_layer_where_it_can_be_seen(
    background: str | None, enclosed: list[str], tmp_path: Path
) -> None:
    """It may be meant as a color; the hole of a picture without a background is none."""
    ring = '<path d="M400 60a340 340 0 1 1 -.1 0zm0 60a280 280 0 1 0 .1 0z" fill="#1144aa"/>'
    found = trace(saved(drawn(ring, background), tmp_path / "ring.png"))
    assert isinstance(found, Layers)
    assert [layer.color for layer in found.layers] == [*enclosed, "#1144aa"]
