"""Where the labels of drawn pieces stand: on their piece or beside it, so that none hides another. In points."""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

INSIDE = (0.5, 0.25, 0.75)  # of a piece's width and height: where its label may stand on it
LABEL_HIDDEN, BESIDE = 8.0, 0.35  # how bad it is to hide another label, and to stand beside the piece


class Box(NamedTuple):
    """A rectangle by two of its corners."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def area(self) -> float:
        return (self.right - self.left) * (self.bottom - self.top)

    @property
    def middle(self) -> tuple[float, float]:
        return (self.left + self.right) / 2, (self.top + self.bottom) / 2

    def shared(self, other: "Box") -> float:
        """The area that both cover."""
        across = min(self.right, other.right) - max(self.left, other.left)
        down = min(self.bottom, other.bottom) - max(self.top, other.top)
        return max(across, 0.0) * max(down, 0.0)


def label_boxes(pieces: Sequence[Box], sizes: Sequence[tuple[float, float]], frame: Box) -> tuple[Box, ...]:
    """A box of each size for the label of each piece, within the frame; one after the other at its best spot."""
    boxes: list[Box] = []
    for piece, size in zip(pieces, sizes, strict=True):
        others = [other for other in pieces if other is not piece]
        spots = (_within(frame, x, y, size) for x, y in _spots(piece, size))
        boxes.append(min(spots, key=lambda spot: _badness(spot, piece, others, boxes)))
    return tuple(boxes)


def _spots(piece: Box, size: tuple[float, float]) -> Iterator[tuple[float, float]]:
    """Middles to try: on the piece from its middle outward, then at its four sides."""
    wide, high = piece.right - piece.left, piece.bottom - piece.top
    for down in INSIDE:
        for across in INSIDE:
            yield piece.left + across * wide, piece.top + down * high
    x, y = piece.middle
    yield piece.right + size[0] / 2, y
    yield piece.left - size[0] / 2, y
    yield x, piece.bottom + size[1] / 2
    yield x, piece.top - size[1] / 2


def _within(frame: Box, x: float, y: float, size: tuple[float, float]) -> Box:
    left = max(frame.left, min(x - size[0] / 2, frame.right - size[0]))
    top = max(frame.top, min(y - size[1] / 2, frame.bottom - size[1]))
    return Box(left, top, left + size[0], top + size[1])


def _badness(spot: Box, piece: Box, others: Sequence[Box], labels: Sequence[Box]) -> float:
    """The area hidden; of its own piece the more, the smaller that is."""
    own = spot.shared(piece)
    hidden = sum(spot.shared(other) for other in others) + LABEL_HIDDEN * sum(spot.shared(label) for label in labels)
    return hidden + own * min(1.0, spot.area / max(piece.area, 1.0)) + BESIDE * (spot.area - own)
