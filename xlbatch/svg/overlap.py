"""The layers of a drawing → what is cut of each color, where colors lie over one another."""

from collections.abc import Container, Iterable, Mapping, Sequence
from itertools import groupby

import pathops

from xlbatch.geometry.path import Box
from xlbatch.geometry.weld import tidy, without
from xlbatch.svg.effort import Effort
from xlbatch.svg.layer import Layer


def knocked_out(layers: Sequence[Layer], effort: Effort) -> dict[str, pathops.Path]:
    """Of each color only what is seen: films lie side by side. Raises Unreadable."""
    seen: dict[str, list[pathops.Path]] = {layer.color: [] for layer in layers}
    above = _Mass(effort)
    for color, path in reversed(_runs(layers, effort)):
        seen[color].append(above.cut_from(path))
        above.add(path)
    return {color: _union(paths, effort) for color, paths in seen.items()}


def stacked(layers: Sequence[Layer], seen: Mapping[str, pathops.Path], effort: Effort) -> dict[str, pathops.Path]:
    """Of each color the whole shapes, on which the colors drawn first after it lie: films lie over one another.

    Where an earlier color is `seen` again above a later one, the later one is left open. Raises Unreadable."""
    by_color: dict[str, pathops.Path] = {}
    below = _Mass(effort)
    for color, visible in seen.items():
        by_color[color] = below.cut_from(_union([layer.path for layer in layers if layer.color == color], effort))
        below.put(visible)
    return by_color


def opened(layers: Sequence[Layer], cut: Container[str], effort: Effort) -> list[Layer]:
    """The layers of the colors that are cut, left open where a color that is not cut is seen above them."""
    opened_layers: list[Layer] = []
    above, open_ = _Mass(effort), _Mass(effort)
    for layer in reversed(layers):
        if layer.color in cut:
            opened_layers.append(layer._replace(path=open_.cut_from(layer.path)))
            above.add(layer.path)
        else:
            open_.add(above.cut_from(layer.path))
    return opened_layers[::-1]


class _Mass:
    """Outlines that do not overlap, contour by contour. What is done in one place leaves the contours whose boxes do
    not meet it as they are: Skia is slow, and sometimes at a loss, with thousands of contours at once."""

    def __init__(self, effort: Effort) -> None:
        self.effort = effort
        self.contours: list[tuple[Box, pathops.Path]] = []

    def put(self, path: pathops.Path) -> None:
        """Adds what overlaps nothing here."""
        self.contours += [(contour.bounds, contour) for contour in path.contours]

    def add(self, path: pathops.Path) -> None:
        """Welds in a path without overlaps of its own."""
        near = self._near(path)
        if near:
            box = path.bounds
            self.contours = [contour for contour in self.contours if not _meet(contour[0], box)]
            path = _tidied(_together((*near, path)), self.effort)
        self.put(path)

    def cut_from(self, path: pathops.Path) -> pathops.Path:
        """What of the path lies outside."""
        near = self._near(path)
        if not near:
            return path
        around = _together(near)
        self.effort.spend(path, around)
        return without(path, around)

    def _near(self, path: pathops.Path) -> list[pathops.Path]:
        if not len(path):
            return []
        box = path.bounds
        return [contour for bounds, contour in self.contours if _meet(bounds, box)]


def _runs(layers: Sequence[Layer], effort: Effort) -> list[tuple[str, pathops.Path]]:
    """The layers with neighbors of one color made one."""
    return [
        (color, _union([layer.path for layer in them], effort))
        for color, them in groupby(layers, key=lambda layer: layer.color)
    ]


def _union(paths: Sequence[pathops.Path], effort: Effort) -> pathops.Path:
    """Paths without overlaps of their own as one: each half first, so that what is covered soon drops out."""
    if len(paths) == 1:
        return paths[0]
    middle = len(paths) // 2
    return _tidied(_together(_union(half, effort) for half in (paths[:middle], paths[middle:])), effort)


def _tidied(path: pathops.Path, effort: Effort) -> pathops.Path:
    effort.spend(path)
    return tidy(path)


def _together(paths: Iterable[pathops.Path]) -> pathops.Path:
    together = pathops.Path()
    for path in paths:
        together.addPath(path)
    return together


def _meet(box: Box, other: Box) -> bool:
    return box[0] <= other[2] and other[0] <= box[2] and box[1] <= other[3] and other[1] <= box[3]
