"""How sharp the edges of a picture are, by the dots beside them."""

import numpy as np

from xlbatch.tracing.borders import Border
from xlbatch.tracing.flattened import Flat, blur_of


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
