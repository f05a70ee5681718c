"""How a drawing's colors lie to one another, and the layer each is pressed in.

Colors of one film that are clear of one another share a layer, and so become one piece of film. A color that lies on
another of its own film would not be seen: it is left open there."""

from collections import Counter
from collections.abc import Container, Iterator, Mapping, Sequence
from functools import lru_cache
from typing import NamedTuple

import pathops

from xlbatch.geometry.path import Box
from xlbatch.geometry.weld import common, path_of, without
from xlbatch.parts.looked import Looked
from xlbatch.parts.outlines import box_gap, path_of_shapes

_LIES_ON = 0.5  # of a color's ink: so much of it on another, and it lies on it
_TOUCH = 1.0  # square units: less is no overlap but rounding
_LARGEST = 40  # shapes of a color that tell what it lies on


class _Inked(NamedTuple):
    """A shape as drawn, or the box of a live text: its place in the drawing order, and its color."""

    place: tuple[int, int]
    color: str
    box: Box
    path: pathops.Path


class ColorLayers(NamedTuple):
    """The layer of each color, from 0; and of each color that is left open, the color it lies on."""

    layer_of: Mapping[str, int]
    open_on: Mapping[str, str]


def color_layers(looked: Looked, used: Container[str], film_of: Mapping[str, str]) -> ColorLayers:
    """The layers of the colors of the parts `used`, the lowest first, where each is cut from its film."""
    inked = tuple(_inked(looked, used))
    films = [film.casefold() for film in film_of.values()]
    layer_of: dict[str, int] = {}
    open_on: dict[str, str] = {}
    for color, film in film_of.items():
        twins = [other for other in layer_of if film_of[other].casefold() == film.casefold()]
        if films.count(film.casefold()) > 1 and (ground := _lies_on(inked, color, twins)):
            open_on[color] = ground
            continue
        shared = max((layer_of[twin] for twin in twins), default=None)
        above = [other for other, layer in layer_of.items() if shared is not None and layer > shared]
        if shared is None or any(colors_meet(inked, color, other) for other in above):
            shared = max(layer_of.values(), default=-1) + 1
        layer_of[color] = shared
    return ColorLayers(layer_of, open_on)


@lru_cache(maxsize=64)
def pressed_as_drawn(looked: Looked, used: frozenset[str], pressed: tuple[tuple[str, tuple[int, int]], ...]) -> bool:
    """Whether colors of the parts `used`, the first drawn first, are pressed in their order (layer, row) wherever they
    meet."""
    late = [
        (color, other)
        for number, (color, place) in enumerate(pressed)
        for other, other_place in pressed[number + 1 :]
        if other_place < place
    ]
    if not late:
        return True
    inked = tuple(_inked(looked, used))
    return not any(colors_meet(inked, color, other) for color, other in late)


def colors_meet(inked: Sequence[_Inked], color: str, other: str) -> bool:
    """Whether ink of two colors lies over one another."""
    mine, theirs = ([shape for shape in inked if shape.color == wanted] for wanted in (color, other))
    return any(
        abs(common(shape.path, under.path).area) > _TOUCH for shape in mine for under in _boxes_meeting(shape, theirs)
    )


def _lies_on(inked: Sequence[_Inked], color: str, grounds: Sequence[str]) -> str | None:
    """The color among `grounds` that most ink of a color lies directly on."""
    mine = sorted((shape for shape in inked if shape.color == color), key=lambda shape: -abs(shape.path.area))
    lying: Counter[str] = Counter()
    for shape in mine[:_LARGEST]:
        rest = shape.path
        below = [under for under in _boxes_meeting(shape, inked) if under.place < shape.place]
        for under in sorted(below, key=lambda under: under.place, reverse=True):
            lying[under.color] += round(abs(common(rest, under.path).area))
            rest = without(rest, under.path)
    whole = sum(abs(shape.path.area) for shape in mine[:_LARGEST])
    return next((ground for ground in grounds if lying[ground] > _LIES_ON * whole), None)


def _boxes_meeting(shape: _Inked, others: Sequence[_Inked]) -> list[_Inked]:
    return [other for other in others if box_gap(shape.box, other.box) == 0]


def _inked(looked: Looked, used: Container[str]) -> Iterator[_Inked]:
    """What is cut of a drawing, in no order."""
    layers = looked.layers.layers
    for part in (part for part in looked.parts if part.label in used):
        for shape in set(part.shapes) - part.unseen(layers):
            yield _Inked((shape.layer, 0), layers[shape.layer].color, shape.box, path_of_shapes((shape,)))
        for paint_no, color in enumerate(part.text.colors if part.text else ()):
            yield _Inked((part.layer, paint_no), color, part.box, _box_path(part.box))


def _box_path(box: Box) -> pathops.Path:
    left, bottom, right, top = box
    corners = (("M", (left, bottom)), ("L", (right, bottom)), ("L", (right, top)), ("L", (left, top)), ("Z", ()))
    return path_of(corners)
