"""Words set to stand on the line of a part that is outlines."""

import cmath

import pathops

from xlbatch.geometry.outline import Segment, Segments
from xlbatch.geometry.path import transform
from xlbatch.geometry.weld import path_of, tidy
from xlbatch.lettering.typeface import Typeface, set_line
from xlbatch.parts.frame import Frame, Round, Straight
from xlbatch.parts.stand import Stand


class OutlineWords:
    """A text in a font, in font units, centered on a part along its line; see `fitting.Words`."""

    def __init__(self, face: Typeface, text: str, stand: Stand) -> None:
        line = set_line(face, text)
        assert line.box  # a text without ink is not set
        self.pieces = line.pieces
        self.left, self.bottom, self.right, self.top = line.box
        self.width, self.height = self.right - self.left, self.top - self.bottom
        self.cap = face.cap_height
        self.text = text
        self.small = text != text.upper()
        self.frame = _measured_from(stand.frame, stand.anchored)

    def placed(self, across: float, up: float, middle: float | None = None) -> pathops.Path:
        """Their ink in the drawing's units."""
        raised = 0.0 if middle is None else middle - (self.bottom + self.top) / 2 * up
        start = -(self.left + self.right) / 2 * across
        segments: list[Segment] = []
        for piece in self.pieces:
            matrix = (across, 0.0, 0.0, up, start + piece.x * across, raised + piece.y * up)
            segments += transform(Segments(piece.ink.verbs, piece.ink.points.tobytes()), matrix)
        return tidy(path_of(self.frame.placed(tuple(segments))))


def _measured_from(frame: Frame, along: float) -> Frame:
    """The line, measured from a place along it."""
    if isinstance(frame, Straight):
        return Straight(frame.origin + along * frame.along, frame.along)
    return Round(frame.center, frame.radius, frame.top * cmath.exp(-1j * along / frame.radius))
