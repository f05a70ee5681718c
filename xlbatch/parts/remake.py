"""A drawing with its parts as they are to be for one garment: left out, set in other words, or replaced."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import replace

import pathops

from xlbatch.geometry.ink import around
from xlbatch.geometry.path import Box
from xlbatch.geometry.weld import common, tidy, without
from xlbatch.parts.edit import Edit, PartNote, Remade, Rules, film_color
from xlbatch.parts.faces import Faces
from xlbatch.parts.fitting import Fitting, Room
from xlbatch.parts.grow import grown, lined
from xlbatch.parts.live_words import text_shapes
from xlbatch.parts.outline_words import OutlineWords
from xlbatch.parts.outlines import Shape, box_gap, path_of_shapes
from xlbatch.parts.part import BROKEN, OPEN, Copy, Part
from xlbatch.parts.set_live import set_live
from xlbatch.parts.stand import stand_of
from xlbatch.svg.layer import Layer, Layers

_LIES_ON = 0.5  # of the letters: so much of them on a shape, and they lie on it


def remade(layers: Layers, parts: Sequence[Part], edits: Iterable[Edit], rules: Rules) -> Remade:
    """The drawing after the edits. Raises Unreadable, PathOpsError."""
    work = _Remaking(layers, parts, tuple(edits), rules)
    work.do()
    return Remade(work.made(), work.base, tuple(work.notes), tuple(work.texts), tuple(work.rooms))


class _Remaking:
    def __init__(self, layers: Layers, parts: Sequence[Part], edits: tuple[Edit, ...], rules: Rules) -> None:
        self.layers = layers
        self.parts = {part.label: part for part in parts}
        self.edits = {edit.part: edit for edit in edits}
        self.rules = rules
        self.faces = Faces(rules)
        self.notes: list[PartNote] = []
        self.texts: list[str] = []
        self.rooms: list[Box] = []
        self.gone: set[int] = set()  # shapes and holes taken out, by the identity of their outlines
        self.added: dict[int, list[Layer]] = defaultdict(list)
        self.cut: dict[int, list[pathops.Path]] = defaultdict(list)
        self.apart: dict[int, str] = {}  # the color of shapes that have one of their own

    def do(self) -> None:
        edits = {part.label: self.edits.get(part.label, Edit(part.label, use=part.use)) for part in self.parts.values()}
        for part in self.parts.values():
            edit = edits[part.label]
            if part.text is None and (not edit.use or edit.text is not None):
                self.gone.update(id(contour.segments) for contour in (*part.shapes, *part.holes))
            self.gone.update(id(shape.segments) for shape in part.unseen(self.layers.layers))
            if edit.apart:
                mine = (shape for shape in part.shapes if self.layers.layers[shape.layer].color == part.color)
                self.apart |= {id(shape.segments): film_color(part.label) for shape in mine}
        kept = self._kept()
        for part in self.parts.values():
            edit = edits[part.label]
            if not edit.use:
                continue
            if part.text is not None:
                self._set(part, edit, kept)
            elif edit.text:
                self._replace(part, edit, kept)
        self.notes += self.faces.notes

    @property
    def base(self) -> Box | None:
        """Around the drawing's ink as drawn, without live texts and what is left out; the page where there is none."""
        out = {
            id(shape.segments)
            for part in self.parts.values()
            if not self.edits.get(part.label, Edit(part.label, use=part.use)).use
            for shape in part.shapes
        }
        boxes = [shape.box for shape in self._shapes() if id(shape.segments) not in out]
        return around(boxes) if boxes else self.layers.page

    def made(self) -> Layers:
        made: list[Layer] = []
        shapes: dict[int, list[Shape]] = defaultdict(list)
        for shape in self._kept():
            shapes[shape.layer].append(shape)
        for layer_no, layer in enumerate(self.layers.layers):
            if layer.text is None:
                for color, them in self._by_color(layer, shapes[layer_no]).items():
                    path = path_of_shapes(them)
                    for hole in self.cut[layer_no]:
                        path = without(path, hole)
                    made.append(layer._replace(color=color, path=path, use=True))
            made += self.added[layer_no]
        return replace(self.layers, layers=tuple(layer for layer in made if len(layer.path)))

    def _by_color(self, layer: Layer, shapes: Iterable[Shape]) -> dict[str, list[Shape]]:
        by_color: dict[str, list[Shape]] = {}
        for shape in shapes:
            by_color.setdefault(self.apart.get(id(shape.segments), layer.color), []).append(shape)
        return by_color

    def _shapes(self) -> Sequence[Shape]:
        known = {id(shape.segments): shape for part in self.parts.values() for shape in part.shapes}
        return tuple(known.values())

    def _kept(self) -> list[Shape]:
        """The shapes that stay, with the holes that stay."""
        return [
            replace(shape, holes=tuple(hole for hole in shape.holes if id(hole.segments) not in self.gone))
            for shape in self._shapes()
            if id(shape.segments) not in self.gone
        ]

    def _set(self, part: Part, edit: Edit, kept: Sequence[Shape]) -> None:
        assert part.text
        made = set_live(part, edit, self.faces, self._room(part, kept))
        self.notes += made.notes
        if edit.text and len(made.inks) == 1 and self._on_own_film(part, made.inks[0][1], kept):
            self.notes.append(PartNote(part.label, "part-same-film", {}))
            return
        if made.words and made.inks and (edit.words or edit.text):
            self.texts.append(made.words)
            self.rooms.append(around(path.bounds for _, path in made.inks))
        for color, path in made.inks:
            color = film_color(part.label) if edit.apart else color
            self.added[part.layer].append(Layer(color, path, self.layers.layers[part.layer].element))

    def _replace(self, part: Part, edit: Edit, kept: Sequence[Shape]) -> None:
        assert edit.text
        if BROKEN in part.doubts:
            self.notes.append(PartNote(part.label, "part-broken", {}))
            return
        face = self.faces.named(part.label, edit.font, edit.text)
        if face is None:
            return
        stand = stand_of(part)
        words = OutlineWords(face, edit.text, stand)
        fitting = Fitting(part, stand, self._room(part, kept), self.rules)
        fitted = fitting.fitted(words, edit.fit)
        self.notes += fitting.notes
        if fitted is None:
            return
        letters = words.placed(fitted.across, fitted.up, fitted.middle)
        if self._on_own_film(part, letters, kept):
            self.notes.append(PartNote(part.label, "part-same-film", {}))
            return
        self.texts.append(edit.text)
        self.rooms.append(letters.bounds)
        for copy in part.copies or (Copy(part.shapes[-1].layer, part.color, "letters"),):
            path = letters.transform(1, 0, 0, 1, copy.moved.real, copy.moved.imag) if copy.moved else letters
            if copy.kind == "holes":
                self.cut[copy.layer].append(path)
                continue
            ink = tidy(grown(path, copy.grown)) if copy.kind == "border" else path
            ink = lined(path, copy.grown) if copy.kind == "stroke" else ink
            own = edit.apart and copy.color == part.color
            self.added[copy.layer].append(Layer(film_color(part.label) if own else copy.color, ink))

    def _room(self, part: Part, kept: Sequence[Shape]) -> Room:
        """What stays around a part, live texts as they are in the drawing."""
        others = [other for other in self.parts.values() if other is not part]
        used = [other for other in others if self.edits.get(other.label, Edit(other.label, use=other.use)).use]
        texts = [text_shapes(other.text, self.faces.usual) for other in used if other.text]
        return Room((*kept, *(shape for shapes in texts for shape in shapes)))

    def _on_own_film(self, part: Part, letters: pathops.Path, kept: Sequence[Shape]) -> bool:
        """Whether letters without a border would lie on a shape of their own color, and so not be seen."""
        if part.color == OPEN or any(copy.kind in ("border", "stroke") for copy in part.copies):
            return False
        top = part.copies[0].layer if part.copies else part.layer if part.text else len(self.layers.layers)
        under = [shape for shape in kept if shape.layer < top and box_gap(shape.box, letters.bounds) == 0]
        on = [s for s in under if abs(common(letters, path_of_shapes((s,))).area) > _LIES_ON * abs(letters.area)]
        return bool(on) and self.layers.layers[max(on, key=lambda shape: shape.layer).layer].color == part.color
