"""New words fitted into the room of a drawing's part: as high as the sample, as wide as its neighbors allow."""

import cmath
import math
from collections.abc import Sequence
from dataclasses import dataclass

import pathops

from xlbatch.geometry.ink import around
from xlbatch.geometry.outline import Segment, Segments
from xlbatch.geometry.path import Box, transform
from xlbatch.geometry.weld import common, path_of, tidy
from xlbatch.lettering.arch import STEEPEST
from xlbatch.lettering.typeface import Typeface, set_line
from xlbatch.parts.edit import Fit, PartNote, Rules
from xlbatch.parts.frame import Frame, Round, Straight
from xlbatch.parts.outlines import Shape, box_gap, path_of_shapes
from xlbatch.parts.part import Part
from xlbatch.problems.phrases import phrase
from xlbatch.svg.layer import Layers

_SMALLER = 0.96  # a step down where letters would touch what the sample did not
_STEPS = 16
_EDGE = 1.0  # units: a point so little outside the drawing is on its edge
_CAPITAL, _SUNK = 0.93, 0.08  # of the cap height: how high capitals stand at least, and how low they reach
_TOUCH = 1e-3  # of the letters' ink: less is no overlap but rounding


@dataclass(frozen=True, eq=False)
class Room:
    """What stays of a drawing around a part."""

    shapes: Sequence[Shape]
    layers: Layers
    rules: Rules

    def beside(
        self, part: Part, frame: Frame, low: float, high: float, span: tuple[float, float]
    ) -> tuple[float, float]:
        """How far to the left and right of a part there is room along its line, at heights from `low` to `high` above
        it: to the nearest neighbor, or the edge of the drawing."""
        left, right = self._ends(around((part.box, *(shape.box for shape in self.shapes))), frame, high, span)
        for shape in self.shapes:
            for contour in (shape, *shape.holes):
                along, above = frame.onto(contour.points)
                beside = along[(above > low) & (above < high)]
                if len(before := beside[beside <= span[0]]):
                    left = max(left, float(before.max()))
                if len(after := beside[beside >= span[1]]):
                    right = min(right, float(after.min()))
        return left, right

    def _ends(self, box: Box, frame: Frame, high: float, span: tuple[float, float]) -> tuple[float, float]:
        """How far a line runs within the drawing's box, its letters' heads too."""
        step = (span[1] - span[0]) / 50

        def end(start: float, by: float) -> float:
            most = math.radians(STEEPEST) * abs(frame.radius) / 2 if isinstance(frame, Round) else math.inf
            middle, far = (span[0] + span[1]) / 2, start
            while abs(far + by - middle) <= most and all(_in(box, frame.point(far + by, up)) for up in (0.0, high)):
                far += by
            return far

        return end(span[0], -step), end(span[1], step)


class Fitting:
    """Fits words into one part."""

    def __init__(self, part: Part, room: Room, rules: Rules) -> None:
        self.part = part
        self.room = room
        self.rules = rules
        self.notes: list[PartNote] = []
        self.frame, self.span, self.low, self.cap = _line_of(part)

    def letters(self, face: Typeface, text: str, fit: Fit) -> pathops.Path | None:
        """The letters' ink in the drawing's units; None, noted, where they would be too small."""
        line = set_line(face, text)
        if line.box is None:
            return None
        for doubt in self.part.doubts:
            self._note("part-doubtful", doubt=phrase(doubt))
        width, height = line.box[2] - line.box[0], line.box[3] - line.box[1]
        if self.part.row is None:
            self._note("part-no-line", text=text)
            scale = min((self.span[1] - self.span[0]) / width, (self.cap - self.low) / height)
            return self._placed(face, text, scale, scale, middle=(self.cap + self.low) / 2)
        if text != text.upper() and self._all_capitals():
            self._note("part-capitals")
        if fit == "box":
            across, up = self._into_box(width, height)
            return self._placed(face, text, across, up, middle=(self.cap + self.low) / 2)
        return self._at_height(face, text, width)

    def _into_box(self, width: float, height: float) -> tuple[float, float]:
        """The scales that fill the part's box: letters widened or narrowed as far as allowed."""
        across, up = (self.span[1] - self.span[0]) / width, (self.cap - self.low) / height
        return min(across, up * self.rules.widest), min(up, across / self.rules.narrowest)

    def _at_height(self, face: Typeface, text: str, width: float) -> pathops.Path | None:
        up = self.cap / face.cap_height
        sample = self.span[1] - self.span[0]
        widest = max(sample, self._widest())
        for step in range(_STEPS):
            smaller = up * _SMALLER**step
            across = smaller * min(1.0, max(widest / (width * smaller), self.rules.narrowest))
            if width * across > widest:
                smaller *= widest / (width * across)
                across = smaller * self.rules.narrowest
            if smaller * face.cap_height < min(self.rules.least, self.cap) * (1 - 1e-6):
                break
            made = self._placed(face, text, across, smaller)
            if not self._touches(made):
                if step:
                    self._note("part-made-smaller", text=text, size=round(100 * _SMALLER**step))
                return made
        self._note("part-too-long", text=text)
        return None

    def _all_capitals(self) -> bool:
        """Whether the sample's letters are all as high as its tallest, and none reaches below the line."""
        assert self.part.row
        above = [self.frame.onto(mark.points)[1] for mark in self.part.row.letters]
        return all(each.max() > _CAPITAL * self.cap and each.min() > -_SUNK * self.cap for each in above)

    def _widest(self) -> float:
        """The room for words: as far to either side of the sample's middle as the nearer neighbor, less the gap."""
        middle = (self.span[0] + self.span[1]) / 2
        left, right = self.room.beside(self.part, self.frame, -0.25 * self.cap, 1.1 * self.cap, self.span)
        beyond = max((copy.grown for copy in self.part.copies), default=0.0) + self.rules.gap
        return 2 * (min(middle - left, right - middle) - beyond)

    def _placed(self, face: Typeface, text: str, across: float, up: float, middle: float | None = None) -> pathops.Path:
        """The words centered on the part along its line; their feet on it, or their ink's middle at `middle`."""
        line = set_line(face, text)
        assert line.box
        left, bottom, right, top = line.box
        raised = 0.0 if middle is None else middle - (bottom + top) / 2 * up
        onto = (across, 0.0, 0.0, up, -(left + right) / 2 * across, raised)
        segments: list[Segment] = []
        for piece in line.pieces:
            matrix = (across, 0.0, 0.0, up, onto[4] + piece.x * across, raised + piece.y * up)
            segments += transform(Segments(piece.ink.verbs, piece.ink.points.tobytes()), matrix)
        return tidy(path_of(_centered(self.frame, self.span).placed(tuple(segments))))

    def _touches(self, letters: pathops.Path) -> bool:
        """Whether letters would lie over what the sample did not, or leave what it lay within."""
        sample = tidy(path_of_shapes(_filled(self.part)))
        box, ink = letters.bounds, abs(letters.area)
        for shape in self.room.shapes:
            if box_gap(shape.box, box) > 0:
                continue
            theirs = path_of_shapes((shape,))
            over = abs(common(letters, theirs).area) / ink
            was = abs(common(sample, theirs).area) / abs(sample.area)
            if was < _TOUCH < over or (was > 1 - _TOUCH > over):
                return True
        return False

    def _note(self, code: str, **facts: object) -> None:
        self.notes.append(PartNote(self.part.label, code, facts))


def _in(box: Box, point: complex) -> bool:
    return box[0] - _EDGE <= point.real <= box[2] + _EDGE and box[1] - _EDGE <= point.imag <= box[3] + _EDGE


def _filled(part: Part) -> list[Shape]:
    """The sample's letters, as outlines without bellies."""
    marks = part.row.marks if part.row else part.shapes
    return [Shape(mark.segments, mark.box, mark.area, mark.points) for mark in marks]


def _line_of(part: Part) -> tuple[Frame, tuple[float, float], float, float]:
    """The line a part stands on, how far it reaches along it, and its lowest and highest above it."""
    if part.row:
        reach = [part.row.frame.onto(mark.points)[1] for mark in part.row.letters]
        return part.row.frame, part.row.span, min(float(above.min()) for above in reach), part.row.cap
    left, bottom, right, top = around(shape.box for shape in part.shapes)
    if right - left >= top - bottom:
        return Straight(complex(0.0, bottom)), (left, right), 0.0, top - bottom
    return Straight(complex(right, 0.0), 1j), (bottom, top), 0.0, right - left


def _centered(frame: Frame, span: tuple[float, float]) -> Frame:
    """The line, measured from the middle of the span."""
    middle = (span[0] + span[1]) / 2
    if isinstance(frame, Straight):
        return Straight(frame.origin + middle * frame.along, frame.along)
    return Round(frame.center, frame.radius, frame.top * cmath.exp(-1j * middle / frame.radius))
