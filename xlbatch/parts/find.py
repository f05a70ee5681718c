"""The layers of a drawing → its parts: live texts, words in letters that are outlines or holes, and everything else."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from xlbatch.geometry.ink import around
from xlbatch.geometry.path import Box
from xlbatch.parts.bouncing import bouncing
from xlbatch.parts.copies import Copies
from xlbatch.parts.doubts import doubts_of
from xlbatch.parts.letter_rows import LEAST, LetterRow, rows_of
from xlbatch.parts.outlines import Contour, Shape, box_gap, shapes_of
from xlbatch.parts.part import MOST, OPEN, Copy, Part
from xlbatch.svg.layer import Layers, LiveText

_LETTERLIKE = 0.8  # solidity: the bellies of letters are rounder, most letters are not
_DOT = 0.35  # of a shape's height: how large a dot or accent above it may be
_ABOVE = 0.35  # of a shape's height: how far above it
_BESIDE = 0.15  # of the height of welded letters: how near another is
_WHITE = 0xF4  # each part of a color that counts as white, at least
_NEARLY = 4.0  # units: layers of a picture lie under one another a little
_WHOLE = 0.985  # of the page: a shape that fills it is its background


def parts_of(layers: Layers, text_box: Callable[[LiveText], Box]) -> tuple[Part, ...]:
    """The parts of a drawing, numbered: texts and words from the top down, then the others, the largest first.
    `text_box` gives the box of a live text."""
    return _numbered(_PartFinder(layers, text_box).parts())


@dataclass(frozen=True, eq=False)
class _ColoredRow:
    """A row of letters, and the color and layers they are on."""

    row: LetterRow
    color: str


class _PartFinder:
    def __init__(self, layers: Layers, text_box: Callable[[LiveText], Box]) -> None:
        self.layers = layers.layers
        self.text_box = text_box
        self.page = _page(layers)
        self.shapes = shapes_of(self.layers)
        self.free = dict.fromkeys(self.shapes)
        self.closed: set[Contour] = set()  # holes that go with a part
        self.bouncing: dict[Shape, list[Shape]] = {}  # of letters on no line: those of their word

    def parts(self) -> list[Part]:
        parts = [self._text(layer_no, layer.text) for layer_no, layer in enumerate(self.layers) if layer.text]
        words = sorted(self._words(), key=lambda word: -max(mark.layer for mark in _shapes_in(word.row)))
        for word in words:
            if all(mark in self.free for mark in word.row.letters):
                parts.append(self._word(word))
        parts += list(self._open_words())
        return parts + list(self._others())

    def _text(self, layer_no: int, text: LiveText) -> Part:
        return Part(0, "text", next(iter(text.colors), ""), self.text_box(text), text=text, layer=layer_no)

    # words

    def _words(self) -> Iterator[_ColoredRow]:
        for color in dict.fromkeys(layer.color for layer in self.layers if layer.text is None):
            mine = [shape for shape in self.shapes if self.layers[shape.layer].color == color]
            rows = rows_of(mine, self.page, self._held_together(mine))
            chains = {letter: letters for letters in bouncing(mine, rows) for letter in letters}
            self.bouncing |= chains
            yield from (_ColoredRow(row, color) for row in rows if chains.keys().isdisjoint(row.letters))

    def _held_together(self, mine: Sequence[Shape]) -> list[list[Shape]]:
        """The shapes of each element and group of the file, the smallest first; one that holds all says nothing."""
        groups: dict[tuple[int, ...], list[Shape]] = {}
        for shape in mine:
            element = self.layers[shape.layer].element
            for depth in range(1, len(element) + 1):
                groups.setdefault(element[:depth], []).append(shape)
        telling = [group for group in groups.values() if len(group) < len(mine)]
        return sorted(telling, key=len)

    def _word(self, word: _ColoredRow) -> Part:
        mine = _shapes_in(word.row)
        copies = Copies(self.layers, self.shapes, word.row, mine)
        shapes = tuple(dict.fromkeys((*mine, *copies.shapes)))
        self._take((*shapes, *self._unused_in(shapes)))
        self.closed.update(copies.holes)
        doubts = doubts_of(self.layers, self.shapes, self.free, word.row, shapes)
        return Part(
            number=0,
            kind="word",
            color=word.color,
            box=around(shape.box for shape in mine),
            shapes=shapes,
            holes=copies.holes,
            copies=copies.found,
            row=word.row,
            doubts=doubts,
        )

    def _unused_in(self, shapes: Iterable[Shape]) -> list[Shape]:
        """What is left out anyway and lies in the bellies of letters: background that is seen through them."""
        bellies = [hole for shape in shapes for hole in shape.holes]
        out = [shape for shape in self.free if not self.layers[shape.layer].use]
        return [shape for shape in out if any(_within(shape.box, hole.box, _NEARLY) for hole in bellies)]

    def _open_words(self) -> Iterator[Part]:
        for shape in self.shapes:
            if shape not in self.free or len(shape.holes) < LEAST or _is_script(shape):
                continue  # the bellies of welded letters stand in a line too
            free = [self._as_letter(hole, shape.layer) for hole in shape.holes if hole not in self.closed]
            for row in rows_of(free, self.page):
                islands = self._islands(shape.layer, row.marks)
                copies = Copies(self.layers, self.shapes, row, (shape, *islands))
                shapes = tuple(dict.fromkeys((*islands, *copies.shapes)))
                self._take(shapes)
                self.closed.update((*row.marks, *copies.holes))
                doubts = ("near",) if row.near else ()
                yield Part(
                    number=0,
                    kind="word",
                    color=OPEN,
                    box=around(hole.box for hole in row.letters),
                    shapes=shapes,
                    holes=tuple(dict.fromkeys((*row.marks, *copies.holes))),
                    copies=copies.as_holes(shape.layer),
                    row=row,
                    doubts=doubts,
                )

    def _as_letter(self, hole: Contour, layer: int) -> Shape:
        """A hole as the letter it may be, the bellies left standing in it being its holes."""
        return Shape(hole.segments, hole.box, hole.area, hole.points, layer, self._islands(layer, (hole,)))

    def _islands(self, layer: int, holes: Iterable[Contour]) -> tuple[Shape, ...]:
        """The bellies left standing in open letters."""
        holes = tuple(holes)
        return tuple(
            shape
            for shape in self.shapes
            if shape.layer == layer and any(_within(shape.box, hole.box) and shape.area < hole.area for hole in holes)
        )

    # everything else

    def _others(self) -> Iterator[Part]:
        left = list(self.free)
        while left:
            first = max(left, key=lambda shape: shape.area)
            group = self._one_part(first, left)
            left = [shape for shape in left if shape not in group]
            color = self.layers[first.layer].color
            background = self._is_background(first) and len(group) == 1
            use = all(self.layers[shape.layer].use for shape in group) and not background
            kept = tuple(shape for shape in self.shapes if shape in group)
            written = first in self.bouncing or _is_script(first)
            if written:
                unseen = self._unused_in(kept)
                left = [shape for shape in left if shape not in unseen]
            doubts = ("background",) if background else ()  # what else is left out, its reader has told
            box = around(shape.box for shape in group)
            if written:
                copies = tuple(
                    Copy(layer_no, color, "letters") for layer_no in sorted({shape.layer for shape in group})[-1:]
                )
                yield Part(0, "word", color, box, shapes=kept, copies=copies)
            else:
                yield Part(0, "shape", color, box, shapes=kept, use=use, doubts=doubts)

    def _one_part(self, first: Shape, left: Sequence[Shape]) -> set[Shape]:
        """The shapes that make one part with the largest left: of its group or element, its like, its dots."""
        color = self.layers[first.layer].color
        same = [shape for shape in left if self.layers[shape.layer].color == color]
        if bouncing := self.bouncing.get(first):
            return {*bouncing, *(shape for shape in same if any(_is_dot_of(shape, letter) for letter in bouncing))}
        element = self.layers[first.layer].element
        for depth in range(len(element) - 1, 0, -1):
            held = [shape for shape in same if self.layers[shape.layer].element[:depth] == element[:depth]]
            whole = [s for s in self.shapes if self.layers[s.layer].element[:depth] == element[:depth]]
            if 1 < len(held) == len(whole) <= len(self.shapes) / 2:
                return set(held)
        alike = [shape for shape in same if _alike(first, shape)]
        if len(alike) > 2:
            return set(alike)
        if not _is_script(first):
            wide = first.width >= first.height  # what is small above something high is no dot of it
            return {first, *(shape for shape in same if wide and _is_dot_of(shape, first))}
        pieces = [first, *(shape for shape in same if shape is not first and _continues(shape, first))]
        return {*pieces, *(shape for shape in same if any(_is_dot_of(shape, piece) for piece in pieces))}

    def _is_background(self, shape: Shape) -> bool:
        """Whether a white shape fills the page and lies under everything."""
        paper = _is_white(self.layers[shape.layer].color)
        if not paper or shape.layer or len(self.shapes) < 2 or shape.solidity < _WHOLE:
            return False
        left, bottom, right, top = around(other.box for other in self.shapes)
        fills = shape.width >= _WHOLE * (right - left) and shape.height >= _WHOLE * (top - bottom)
        return fills and shape.size >= _WHOLE * self.page

    def _take(self, shapes: Iterable[Shape]) -> None:
        for shape in shapes:
            self.free.pop(shape, None)


def _numbered(parts: list[Part]) -> tuple[Part, ...]:
    worded = [part for part in parts if part.kind in ("text", "word")]
    others = [part for part in parts if part.kind == "shape"]
    worded.sort(key=lambda part: (part.row is None and part.text is None, -round(part.box[3]), round(part.box[0])))
    others.sort(key=lambda part: -sum(shape.area for shape in part.shapes))
    ordered = worded + others
    if len(ordered) > MOST:
        rest = ordered[MOST - 1 :]
        shapes = tuple(shape for part in rest for shape in part.shapes)
        box = around(part.box for part in rest)
        ordered = [*ordered[: MOST - 1], Part(0, "rest", rest[0].color, box, shapes=shapes)]
    return tuple(replace(part, number=number) for number, part in enumerate(ordered, 1))


def _page(layers: Layers) -> float:
    if layers.page:
        left, bottom, right, top = layers.page
        return max(right - left, top - bottom)
    boxes = [layer.path.bounds for layer in layers.layers if len(layer.path)]
    return max(max(box[2] - box[0], box[3] - box[1]) for box in boxes) if boxes else 2000.0


def _shapes_in(row: LetterRow) -> tuple[Shape, ...]:
    return tuple(mark for mark in row.marks if isinstance(mark, Shape))


def _meet(box: Box, other: Box) -> bool:
    return box_gap(box, other) == 0


def _within(inner: Box, other: Box, nearly: float = 0.0) -> bool:
    left, bottom, right, top = other
    return all(
        (inner[0] >= left - nearly, inner[1] >= bottom - nearly, inner[2] <= right + nearly, inner[3] <= top + nearly)
    )


def _alike(shape: Shape, other: Shape) -> bool:
    return abs(other.area / shape.area - 1) < 0.03 and abs(other.length / shape.length - 1) < 0.02


def _is_white(color: str) -> bool:
    return all(int(color[digit : digit + 2], 16) >= _WHITE for digit in (1, 3, 5))


def _is_script(shape: Shape) -> bool:
    """Whether a shape is wide, open between its strokes and has bellies, as letters welded together do."""
    return shape.width > 1.3 * shape.height and bool(shape.holes) and shape.solidity < _LETTERLIKE


def _continues(other: Shape, script: Shape) -> bool:
    """Whether a shape stands beside welded letters as one more of them: as high, near, and no star."""
    common = min(other.box[3], script.box[3]) - max(other.box[1], script.box[1])
    beside = max(other.box[0] - script.box[2], script.box[0] - other.box[2])
    like = 0.4 * script.height <= other.height <= 1.5 * script.height
    return like and not other.turns_alike and common > 0.55 * other.height and beside < _BESIDE * script.height


def _is_dot_of(dot: Shape, shape: Shape) -> bool:
    """Whether a small shape stands right above ink of another, as the dots and accents of welded letters do."""
    if dot.turns_alike and dot.solidity < 0.9:
        return False
    if dot.size > _DOT * shape.height:
        return False
    near = shape.points[
        (shape.points.real > dot.box[0] - dot.width / 2) & (shape.points.real < dot.box[2] + dot.width / 2)
    ]
    below = near.imag[near.imag < dot.box[1] + 0.2 * dot.height]
    return len(below) > 0 and float(dot.box[1] - below.max()) <= _ABOVE * shape.height * 0.6
