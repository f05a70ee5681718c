"""A live text of a drawing → the ink of its letters (SVG 1.1, chapter 10). Lengths in the text's own units."""

import math
import unicodedata
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np
import pathops
from numpy.typing import NDArray

from xlbatch.geometry.flat import edges_of
from xlbatch.geometry.outline import Segments, pack
from xlbatch.geometry.path import Matrix, contours, product, transform
from xlbatch.geometry.weld import common, path_of, segments_in, tidy
from xlbatch.lettering.typeface import Typeface, set_line
from xlbatch.svg.layer import Letters, LiveText, Spot, TextSpan
from xlbatch.svg.shapes import in_reach

FaceOf = Callable[[Letters], Typeface]
_NEAR = 1e-4  # of a line's length: how near the straight pieces come that a line is walked along in
_MITER = 4.0  # SVG's usual limit


@dataclass(frozen=True)
class _Run:
    """Letters set in one go, `advance` long, kerning with the next letter included, and where they stand."""

    text: str
    look: Letters
    face: Typeface
    spot: Spot
    advance: float
    wide: float = 1.0  # how much wider its letters are than the font's

    @property
    def scale(self) -> float:
        return float(self.look.size / self.face.font.face.upem)


@dataclass(frozen=True)
class _Placed:
    run: _Run
    x: float
    y: float
    turned: float  # degrees, clockwise as y points down


def set_text(text: LiveText, face_of: FaceOf) -> tuple[tuple[str, pathops.Path], ...]:
    """The ink of a text, lowest first: `#rrggbb` and path, in the drawing's units. Raises Unreadable, PathOpsError."""
    apart = text.along is not None or text.long is not None
    runs = [run for span in text.spans for run in _runs(span, face_of, apart)]
    runs = [_kerned(run, after) for run, after in pairwise((*runs, None)) if run]
    runs = _made_long(runs, text)
    placed = list(_placed(runs, text))
    inks: list[tuple[str, pathops.Path]] = []
    for look in dict.fromkeys(run.look for run in runs):
        letters = _ink([letter for letter in placed if letter.run.look == look], text.matrix)
        for color, width in look.paints:
            ink = _stroked(letters, width * _scale(text.matrix)) if width else letters
            if text.clip is not None and len(ink):
                ink = common(ink, text.clip)
            if len(ink):
                inks.append((color, ink))
    return tuple(inks)


def _runs(span: TextSpan, face_of: FaceOf, along: bool) -> Iterator[_Run]:
    """The span's letters, in as few pieces as their places allow."""
    face = face_of(span.look)
    apart = along or bool(span.look.spacing or span.look.word_spacing)
    spots = (*span.spots, *(Spot() for _ in span.text[len(span.spots) :]))
    start = 0
    for letter_no in range(1, len(span.text) + 1):
        joined = letter_no < len(span.text) and (
            unicodedata.combining(span.text[letter_no]) or not (apart or spots[letter_no] != Spot())
        )
        if joined and not (spots[start].turned and spots[letter_no].turned):
            continue
        words = span.text[start:letter_no]
        size = span.look.size / face.font.face.upem
        long = set_line(face, words).advance * size
        long += span.look.spacing * apart + span.look.word_spacing * words.count(" ")
        yield _Run(words, span.look, face, spots[start], long)
        start = letter_no


def _kerned(run: _Run, after: _Run | None) -> _Run:
    """The run as long as it is before the next: letters set apart are still kerned."""
    if after is None or after.face is not run.face or after.look is not run.look or after.spot.x is not None:
        return run
    both, alone = set_line(run.face, run.text[-1] + after.text[0]), (run.text[-1], after.text[0])
    kern = both.advance - sum(set_line(run.face, letter).advance for letter in alone)
    return replace(run, advance=run.advance + kern * run.scale)


def _made_long(runs: list[_Run], text: LiveText) -> list[_Run]:
    """The runs as long together as the drawing says (SVG 1.1, 10.5, `textLength`), widened or set apart for it."""
    whole = sum(run.advance for run in runs)
    wide = text.stretched * (text.long / whole if text.long and text.widened and whole else 1.0)
    more = (text.long - whole) / (len(runs) - 1) if text.long and not text.widened and len(runs) > 1 else 0.0
    return [replace(run, advance=run.advance * wide + more, wide=wide) for run in runs]


def _chunks(runs: list[_Run]) -> Iterator[list[_Run]]:
    """The runs that are aligned together: each begins where a letter has a place of its own."""
    chunk: list[_Run] = []
    for run in runs:
        if chunk and (run.spot.x is not None or run.spot.y is not None):
            yield chunk
            chunk = []
        chunk.append(run)
    if chunk:
        yield chunk


def _placed(runs: list[_Run], text: LiveText) -> Iterator[_Placed]:
    line = _Line(text.along) if text.along is not None else None
    x, y = text.offset, 0.0
    for chunk in _chunks(runs):
        first = chunk[0].spot
        whole = sum(run.advance + run.spot.dx for run in chunk)
        x = x if first.x is None else first.x
        y = y if first.y is None or line else first.y
        x -= {"middle": whole / 2, "end": whole}.get(chunk[0].look.anchor, 0.0)
        for run in chunk:
            x, y = x + run.spot.dx, y + run.spot.dy
            if line is None:
                yield _Placed(run, x, y - run.look.raised, run.spot.turned)
            elif place := line.at(x + run.advance / 2):
                px, py, angle = place
                sine, cosine = math.sin(angle), math.cos(angle)
                back, down = run.advance / 2, y - run.look.raised
                turned = math.degrees(angle) + run.spot.turned
                yield _Placed(run, px - back * cosine - down * sine, py - back * sine + down * cosine, turned)
            x += run.advance


class _Line:
    """A line that a text runs along, walked in short straight steps."""

    def __init__(self, path: pathops.Path) -> None:
        points = _points(path)
        self.x, self.y = points[:, 0], points[:, 1]
        steps = np.hypot(np.diff(self.x), np.diff(self.y))
        self.far = np.concatenate(([0.0], np.cumsum(steps)))

    def at(self, far: float) -> tuple[float, float, float] | None:
        """The point so far along the line, and the line's direction there (radians); None beyond its ends."""
        if not 0 <= far <= self.far[-1]:
            return None
        step = min(int(np.searchsorted(self.far, far, side="right")) - 1, len(self.x) - 2)
        dx, dy = self.x[step + 1] - self.x[step], self.y[step + 1] - self.y[step]
        part = (far - self.far[step]) / (self.far[step + 1] - self.far[step])
        return float(self.x[step] + dx * part), float(self.y[step] + dy * part), math.atan2(dy, dx)


def line_length(path: pathops.Path) -> float:
    """How long a line is."""
    return float(_Line(path).far[-1])


def line_points(path: pathops.Path) -> tuple[NDArray[np.float64], NDArray[np.complex128]]:
    """Points close together on a line, and how far along it each is."""
    line = _Line(path)
    return line.far, line.x + 1j * line.y


def _points(path: pathops.Path) -> NDArray[np.float64]:
    """The first contour as points close together, each but once in a row."""
    segments = contours(segments_in(path))[0]
    ended = segments[-1][0] == "Z"
    left, top, right, bottom = path.controlPointBounds
    near = max(right - left, bottom - top) * _NEAR
    edges = edges_of(pack(segments if ended else (*segments, ("Z", ()))), near * 10, near / 10)
    points = np.column_stack((edges.start.real, edges.start.imag))
    if ended:
        return np.concatenate((points, points[:1]))
    end = np.array(segments[-1][1][-2:])
    last = int(np.argmin(np.hypot(*(points - end).T)))  # an open line: without the edge that would close it
    return points[: last + 1]


def _ink(placed: list[_Placed], matrix: Matrix) -> pathops.Path:
    ink = pathops.Path()
    for letter in placed:
        size = letter.run.scale
        angle = math.radians(letter.turned)
        sine, cosine = math.sin(angle), math.cos(angle)
        turn = (cosine, sine, -sine, cosine, letter.x, letter.y)
        for piece in set_line(letter.run.face, letter.run.text).pieces:
            wide = size * letter.run.wide
            onto = product((wide, 0.0, 0.0, -size, piece.x * wide, -piece.y * size), product(turn, matrix))
            segments = Segments(piece.ink.verbs, piece.ink.points.tobytes())
            ink.addPath(path_of(transform(segments, onto)))
    return tidy(in_reach(ink)) if len(ink) else ink


def _stroked(letters: pathops.Path, width: float) -> pathops.Path:
    path = pathops.Path(letters)
    if len(path):
        path.stroke(width, pathops.LineCap.BUTT_CAP, pathops.LineJoin.MITER_JOIN, _MITER)
        path.convertConicsToQuads()
        path = tidy(path)
    return path


def _scale(matrix: Matrix) -> float:
    a, b, c, d, _, _ = matrix
    return math.sqrt(abs(a * d - b * c))
