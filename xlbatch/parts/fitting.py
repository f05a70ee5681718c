"""New words fitted into the room of a drawing's part: as high as the sample, as wide as its neighbors allow."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

import pathops

from xlbatch.geometry.ink import around
from xlbatch.geometry.path import Box
from xlbatch.geometry.weld import common, tidy
from xlbatch.lettering.arch import STEEPEST
from xlbatch.parts.edit import Fit, PartNote, Rules
from xlbatch.parts.frame import Frame, Round
from xlbatch.parts.grow import grown
from xlbatch.parts.outlines import Shape, box_gap, path_of_shapes
from xlbatch.parts.part import Part
from xlbatch.parts.stand import Stand
from xlbatch.problems.phrases import phrase

_SMALLER = 0.96  # a step down where letters would touch what the sample did not
_STEPS = 16
_EDGE = 1.0  # units: a point so little outside the drawing is on its edge
_INSIDE = 1e-5  # and of letters that are to lie within something
_CLEAR = 1.0  # units
_TOUCH = 1e-3  # of the letters' ink: less is no overlap but rounding


class Words(Protocol):
    """Words to be fitted: the width of their ink along their line, its height, and that of capitals, at scale 1; and
    whether they hold small letters."""

    width: float
    height: float
    cap: float
    small: bool
    text: str

    def placed(self, across: float, up: float, middle: float | None = None) -> pathops.Path:
        """Their ink in the drawing's units, at these scales: their feet on the line, or their ink's middle at `middle`
        above it. Raises Unreadable, PathOpsError."""


@dataclass(frozen=True)
class Fitted:
    """The scales at which words fit, and where the middle of their ink stands where that is not by their feet."""

    across: float
    up: float
    middle: float | None = None


@dataclass(frozen=True, eq=False)
class Room:
    """What stays of a drawing around a part."""

    shapes: Sequence[Shape]

    def beside(self, stand: Stand, low: float, high: float) -> tuple[float, float]:
        """Where along a part's line its room ends to the left and right, at heights from `low` to `high` above it: at
        the nearest neighbor, or the edge of the drawing."""
        box = around(shape.box for shape in (*stand.sample, *self.shapes))
        taller = box[0], box[1] - stand.cap, box[2], box[3] + stand.cap  # what matters is how wide it becomes
        left, right = self._ends(taller, stand, high)
        for shape in self.shapes:
            for contour in (shape, *shape.holes):
                along, above = stand.frame.onto(contour.points)
                beside = along[(above > low) & (above < high)]
                if len(before := beside[beside <= stand.span[0]]):
                    left = max(left, float(before.max()))
                if len(after := beside[beside >= stand.span[1]]):
                    right = min(right, float(after.min()))
        return left, right

    def _ends(self, box: Box, stand: Stand, high: float) -> tuple[float, float]:
        """How far a line runs within the drawing's box, its letters' heads too."""
        frame, (start, end) = stand.frame, stand.span
        most = math.radians(STEEPEST) * abs(frame.radius) / 2 if isinstance(frame, Round) else math.inf

        def far(along: float, step: float) -> float:
            while abs(along + step - (start + end) / 2) <= most and _holds(box, frame, along + step, high):
                along += step
            return along

        step = (end - start) / 50
        return far(start, -step), far(end, step)


class Fitting:
    """Fits words into one part."""

    def __init__(self, part: Part, stand: Stand, room: Room, rules: Rules) -> None:
        self.part = part
        self.stand = stand
        self.room = room
        self.rules = rules
        self.notes: list[PartNote] = []

    def fitted(self, words: Words, fit: Fit) -> Fitted | None:
        """How the words fit; None, noted, where they would be too small. Raises Unreadable, PathOpsError."""
        stand = self.stand
        for doubt in self.part.doubts:
            self._note("part-doubtful", doubt=phrase(doubt))
        long, high = stand.span[1] - stand.span[0], stand.cap - stand.low
        if not stand.told:
            self._note("part-no-line", text=words.text)
            scale = min(long / words.width, high / words.height)
            return Fitted(scale, scale, (stand.cap + stand.low) / 2)
        if words.small and stand.capitals:
            self._note("part-capitals")
        if fit == "box":
            across, up = long / words.width, high / words.height
            across, up = min(across, up * self.rules.widest), min(up, across / self.rules.narrowest)
            return Fitted(across, up, (stand.cap + stand.low) / 2)
        return self._at_height(words, max(long, self._widest()))

    def _at_height(self, words: Words, widest: float) -> Fitted | None:
        up = self.stand.cap / words.cap
        for step in range(_STEPS):
            smaller = up * _SMALLER**step
            across = smaller * min(1.0, max(widest / (words.width * smaller), self.rules.narrowest))
            if words.width * across > widest:
                smaller *= widest / (words.width * across)
                across = smaller * self.rules.narrowest
            if smaller * words.cap < min(self.rules.least, self.stand.cap) * (1 - 1e-6):
                break
            if not self._touches(words.placed(across, smaller)):
                if step:
                    self._note("part-made-smaller", text=words.text, size=round(100 * _SMALLER**step))
                return Fitted(across, smaller)
        self._note("part-too-long", text=words.text)
        return None

    def _widest(self) -> float:
        """The room for words: on either side of where they are put as far as the nearer neighbor, less the gap."""
        stand = self.stand
        left, right = self.room.beside(stand, -0.25 * stand.cap, 1.1 * stand.cap)
        beyond = max((copy.grown for copy in self.part.copies), default=0.0) + self.rules.gap
        sides = ((stand.anchored - left, stand.anchor), (right - stand.anchored, 1 - stand.anchor))
        return min(stand.longest, *((room - beyond) / part for room, part in sides if part))

    def _touches(self, letters: pathops.Path) -> bool:
        """Whether letters would lie over what the sample did not, or leave what it lay within."""
        sample = tidy(path_of_shapes(self.stand.sample))
        if any(copy.kind == "holes" for copy in self.part.copies):
            letters = tidy(grown(letters, _CLEAR))  # an opening stays clear of the edge of what it is cut into
        box, ink = letters.bounds, abs(letters.area)
        for shape in self.room.shapes:
            if box_gap(shape.box, box) > 0:
                continue
            theirs = path_of_shapes((shape,))
            over = abs(common(letters, theirs).area) / ink
            was = abs(common(sample, theirs).area) / abs(sample.area)
            if was < _TOUCH < over or (was > 1 - _TOUCH and over < 1 - _INSIDE):
                return True
        return False

    def _note(self, code: str, **facts: object) -> None:
        self.notes.append(PartNote(self.part.label, code, facts))


def _holds(box: Box, frame: Frame, along: float, high: float) -> bool:
    """Whether a letter so far along a line stands within a box."""
    corners = (frame.point(along, above) for above in (0.0, high))
    return all(
        box[0] - _EDGE <= corner.real <= box[2] + _EDGE and box[1] - _EDGE <= corner.imag <= box[3] + _EDGE
        for corner in corners
    )
