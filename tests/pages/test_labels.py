"""Labels on drawn pieces: within the frame, and none over another where there is room."""

from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from xlbatch.pictures.labels import Box, label_boxes

FRAME = Box(0, 0, 300, 200)
SIZE = (20.0, 15.0)
BOXES = st.builds(
    lambda x, y, wide, high: Box(x, y, x + wide, y + high),
    st.floats(0, 250), st.floats(0, 150), st.floats(1, 50), st.floats(1, 50),
)  # fmt: skip


@given(st.lists(BOXES, max_size=12))
def test_every_label_is_whole_within_the_frame(pieces: list[Box]) -> None:
    for label in label_boxes(pieces, [SIZE] * len(pieces), FRAME):
        assert 0 <= label.left <= label.right <= FRAME.right
        assert 0 <= label.top <= label.bottom <= FRAME.bottom
        assert label.area == 300 or abs(label.area - 300) < 1e-6


def test_two_small_pieces_beside_one_another_keep_their_labels_apart() -> None:
    pieces = [Box(100, 100, 108, 108), Box(112, 100, 120, 108), Box(106, 112, 114, 120)]
    labels = label_boxes(pieces, [SIZE] * 3, FRAME)
    assert all(one.shared(other) == 0 for one, other in combinations(labels, 2))


def test_a_label_stands_on_a_large_piece_and_beside_a_small_one() -> None:
    large, small = Box(10, 10, 200, 150), Box(230, 100, 238, 108)
    on_large, by_small = label_boxes([large, small], [SIZE] * 2, FRAME)
    assert on_large.shared(large) == on_large.area
    assert by_small.shared(small) == 0
