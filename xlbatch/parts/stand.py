"""Where the words of a part stand: their line, how far they reach along it and above it."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from xlbatch.geometry.ink import around
from xlbatch.parts.frame import Frame, Straight
from xlbatch.parts.letter_rows import LetterRow
from xlbatch.parts.outlines import Shape
from xlbatch.parts.part import Part

_CAPITAL, _SUNK = 0.93, 0.08  # of the cap height: how high capitals stand at least, and how low they reach
_SPECK = 0.1  # of the cap height: smaller is dirt


@dataclass(frozen=True, eq=False)
class Stand:
    """The line that a sample stands on (`told`: one it was seen to stand on), the `span` it fills along that line,
    its lowest and highest above it, and its letters without their bellies. Other words are put at the span's start
    (`anchor` 0), middle (0.5) or end (1), and are at most `longest`. In the drawing's units."""

    frame: Frame
    span: tuple[float, float]
    low: float
    cap: float
    sample: Sequence[Shape]
    told: bool = True
    capitals: bool = False  # the sample's letters are all as high as its tallest, and none reaches below the line
    anchor: float = 0.5
    longest: float = math.inf

    @property
    def anchored(self) -> float:
        """Where along the line words are put."""
        return self.span[0] + self.anchor * (self.span[1] - self.span[0])


def stand_of(part: Part) -> Stand:
    """Where a part that is outlines stands; the longer side of its box where its line can't be told."""
    row = part.row
    if row:
        reach = [row.frame.onto(mark.points)[1] for mark in row.letters]
        capitals = all(above.max() > _CAPITAL * row.cap and above.min() > -_SUNK * row.cap for above in reach)
        low = min(float(above.min()) for above in reach)
        return Stand(row.frame, _inked(row), low, row.cap, _filled(part), capitals=capitals)
    left, bottom, right, top = around(shape.box for shape in part.shapes)
    if right - left >= top - bottom:
        return Stand(Straight(complex(0.0, bottom)), (left, right), 0.0, top - bottom, _filled(part), told=False)
    return Stand(Straight(complex(right, 0.0), 1j), (bottom, top), 0.0, right - left, _filled(part), told=False)


def _inked(row: LetterRow) -> tuple[float, float]:
    """How far a row's ink reaches along its line, dots and accents too, but not specks."""
    marks = (*row.letters, *(mark for mark in row.loose if mark.size >= _SPECK * row.cap))
    alongs = [row.frame.onto(mark.points)[0] for mark in marks]
    return min(float(along.min()) for along in alongs), max(float(along.max()) for along in alongs)


def _filled(part: Part) -> list[Shape]:
    marks = part.row.marks if part.row else part.shapes
    return [Shape(mark.segments, mark.box, mark.area, mark.points) for mark in marks]
