"""The layers of a drawing → what is cut of each color, where colors lie over one another."""

from collections.abc import Sequence
from typing import NamedTuple

import pathops

from xlbatch.art.weld import tidy, without


class Layer(NamedTuple):
    """A shape and the `#rrggbb` it is filled with; later layers lie over earlier ones."""

    color: str
    path: pathops.Path


def knocked_out(layers: Sequence[Layer]) -> dict[str, pathops.Path]:
    """Of each color only what is seen: films lie side by side."""
    seen: dict[str, pathops.Path] = {layer.color: pathops.Path() for layer in layers}
    above = pathops.Path()
    for layer in reversed(_runs(layers)):
        seen[layer.color].addPath(_without(layer.path, above))
        above.addPath(layer.path)
        above = tidy(above)
    return seen


def stacked(layers: Sequence[Layer]) -> dict[str, pathops.Path]:
    """Of each color the whole shapes, on which the colors drawn first after it lie: films lie over one another.

    Where an earlier color shows through again above a later one, the later one is left open."""
    found: dict[str, pathops.Path] = {}
    below = pathops.Path()
    seen = knocked_out(layers)
    for color, visible in seen.items():
        whole = pathops.Path()
        for layer in layers:
            if layer.color == color:
                whole.addPath(layer.path)
        found[color] = _without(tidy(whole), below)
        below.addPath(visible)
    return found


def _runs(layers: Sequence[Layer]) -> list[Layer]:
    """The layers with neighbors of one color made one."""
    found: list[Layer] = []
    for layer in layers:
        if found and found[-1].color == layer.color:
            found[-1].path.addPath(layer.path)
        else:
            found.append(Layer(layer.color, pathops.Path(layer.path)))
    return [Layer(layer.color, tidy(layer.path)) for layer in found]


def _without(path: pathops.Path, other: pathops.Path) -> pathops.Path:
    if not len(path) or not len(other) or not _meet(path.bounds, other.bounds):
        return path
    return without(path, other)


def _meet(one: tuple[float, ...], other: tuple[float, ...]) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]
