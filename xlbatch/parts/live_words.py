"""Words set in place of a live text of a drawing, in its look and on its line."""

from collections.abc import Callable, Iterable
from dataclasses import replace

import numpy as np
import pathops

from xlbatch.geometry.path import Box
from xlbatch.geometry.weld import tidy
from xlbatch.lettering.typeface import Typeface
from xlbatch.parts.frame import Frame, Straight, arc_through, sloped
from xlbatch.parts.outlines import Shape, shapes_of
from xlbatch.parts.stand import Stand
from xlbatch.svg.layer import Layer, Letters, LiveText, Spot
from xlbatch.svg.set_text import line_points, set_text

FaceOf = Callable[[Letters], Typeface]
_UPRIGHT = (1.0, 0.0, 0.0, -1.0, 0.0, 0.0)  # the text's own units, y upward
_ANCHORS = {"start": 0.0, "middle": 0.5, "end": 1.0}


class LiveWords:
    """A text put where the sample stands along its line; see `fitting.Words`. `inks` are its colors."""

    def __init__(self, text: LiveText, face_of: FaceOf, stand: Stand, place: float) -> None:
        """`place` is where along the line, in the text's own units, its ink is put by its anchor."""
        self.base = _flowing(text)
        self.faces = tuple(face_of(span.look) for span in text.spans)
        self.stand = stand
        self.place = place
        self.along, self.across_line = _scales(text)
        left, bottom, right, top = _straight_box(self.base, self._face_of(self.base))
        self.width, self.height = (right - left) * self.along, (top - bottom) * self.across_line
        self.cap = _cap(text, face_of) * self.across_line
        self.text = text.words
        self.small = text.words != text.words.upper()

    def placed(self, across: float, up: float, middle: float | None = None) -> pathops.Path:
        """Their ink in the drawing's units, of all colors."""
        return _together(path for _, path in self.inks(across, up, middle))

    def inks(self, across: float, up: float, middle: float | None = None) -> tuple[tuple[str, pathops.Path], ...]:
        """Their ink by color, lowest first."""
        spans = tuple(replace(span, look=_sized(span.look, up)) for span in self.base.spans)
        text = replace(self.base, spans=spans, stretched=self.base.stretched * across / up)
        face_of = self._face_of(text)
        left, bottom, right, top = _straight_box(text, face_of)
        start = self.place - left - self.stand.anchor * (right - left)
        first = text.spans[0]
        spot = first.spots[0]
        down = 0.0 if middle is None else (bottom + top) / 2 + (spot.y or 0.0) - middle / self.across_line
        moved = replace(first, spots=(spot._replace(x=start, dy=spot.dy + down),))
        return set_text(replace(text, spans=(moved, *text.spans[1:])), face_of)

    def _face_of(self, text: LiveText) -> FaceOf:
        """The fonts chosen, whatever size its letters have now."""
        return dict(zip((span.look for span in text.spans), self.faces, strict=True)).__getitem__


def live_stand(text: LiveText, face_of: FaceOf, *, anchored: bool) -> tuple[Stand, float] | None:
    """Where a text stands, `anchored` where words are put as it is and not in its middle; and where that is along its
    line in its own units. None where it has no ink. Raises Unreadable, PathOpsError."""
    shapes = text_shapes(text, face_of)
    if not shapes:
        return None
    along, across_line = _scales(text)
    left, bottom, right, _ = _straight_box(text, face_of)
    look = text.spans[0].look
    anchor = _ANCHORS.get(look.anchor, 0.0) if anchored else 0.5
    place, cap = left + anchor * (right - left), _cap(text, face_of) * across_line
    spot = text.spans[0].spots[0] if text.spans[0].spots else Spot()
    foot = spot.y or 0.0
    frame: Frame = _line(text, foot)
    span, longest = (left * along, right * along), np.inf
    if text.along is not None:
        frame = _arc(text, left, right)
        reach = np.concatenate([frame.onto(shape.points)[0] for shape in shapes])
        span, longest = (float(reach.min()), float(reach.max())), _longest(text, place, anchor) * along
    words = text.words
    stand = Stand(
        frame,
        span,
        (bottom + foot) * across_line,
        cap,
        shapes,
        capitals=not anchored and words == words.upper() != words.lower(),
        anchor=anchor,
        longest=min(longest, (text.long or np.inf) * along),
    )
    return stand, place


def text_shapes(text: LiveText, face_of: FaceOf) -> list[Shape]:
    """The letters of a text as it stands in the drawing, without their bellies. Raises Unreadable, PathOpsError."""
    path = _together(path for _, path in set_text(text, face_of))
    shapes = shapes_of((Layer("", path),))
    return [Shape(shape.segments, shape.box, shape.area, shape.points) for shape in shapes]


def _together(paths: Iterable[pathops.Path]) -> pathops.Path:
    together = pathops.Path()
    for path in paths:
        together.addPath(path)
    return tidy(together) if len(together) else together


def _flowing(text: LiveText) -> LiveText:
    """The text in one go from its first letter, as its words have changed."""
    spans = tuple(replace(span, look=replace(span.look, anchor="start"), spots=()) for span in text.spans)
    first = spans[0]
    spot = (text.spans[0].spots or (Spot(),))[0]
    flat = spot._replace(x=0.0, y=spot.y if text.along is None else None, dx=0.0)
    return replace(text, spans=(replace(first, spots=(flat,)), *spans[1:]), long=None)


def _sized(look: Letters, part: float) -> Letters:
    return replace(
        look,
        size=look.size * part,
        spacing=look.spacing * part,
        word_spacing=look.word_spacing * part,
        raised=look.raised * part,
    )


def _straight_box(text: LiveText, face_of: FaceOf) -> Box:
    """Around the text's ink set straight, in its own units, y upward; from 0 to 0 where it has none."""
    straight = replace(text, matrix=_UPRIGHT, along=None, clip=None)
    box: Box = _together(path for _, path in set_text(straight, face_of)).bounds
    return box


def _cap(text: LiveText, face_of: FaceOf) -> float:
    look = text.spans[0].look
    face = face_of(look)
    return float(face.cap_height / face.font.face.upem * look.size)


def _scales(text: LiveText) -> tuple[float, float]:
    """The drawing's units a unit of the text, along its line and across it."""
    a, b, c, d, _, _ = text.matrix
    along = float(np.hypot(a, b))
    return along, abs(a * d - b * c) / along


def _onto(text: LiveText, x: float, y: float) -> complex:
    a, b, c, d, e, f = text.matrix
    return complex(a * x + c * y + e, b * x + d * y + f)


def _line(text: LiveText, foot: float) -> Straight:
    a, b, *_ = text.matrix
    return Straight(_onto(text, 0.0, foot), complex(a, b) / abs(complex(a, b)))


def _arc(text: LiveText, left: float, right: float) -> Frame:
    """The arc nearest to the stretch of the line that the text fills, or a straight line."""
    assert text.along is not None
    far, points = line_points(text.along)
    inside = (far >= left) & (far <= right)
    stretch = points[inside] if np.count_nonzero(inside) > 1 else points
    if stretch[0] == stretch[-1]:  # all around a closed line
        stretch = stretch[:-1]
    onto = np.array([_onto(text, point.real, point.imag) for point in stretch])
    first, last = onto[0], onto[-1]
    bulge = ((onto[len(onto) // 2] - first) / (last - first)).imag
    arc = arc_through(onto, heads_out=bulge > 0) if abs(bulge) > 1e-3 else None
    return arc or sloped(first, last)


def _longest(text: LiveText, place: float, anchor: float) -> float:
    """How long words may be, in the text's own units, that none of them runs off the line."""
    assert text.along is not None
    far, _ = line_points(text.along)
    sides = ((place, anchor), (float(far[-1]) - place, 1 - anchor))
    return min(room / part for room, part in sides if part)
