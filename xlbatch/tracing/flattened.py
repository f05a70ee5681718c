"""A picture → its flat colors: which of them each dot has, and what had to be left out for that."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from xlbatch.geometry.flat import Array
from xlbatch.problems.phrases import phrase
from xlbatch.svg.layer import Note
from xlbatch.tracing.backdrop import background_of, fading, glow_of, is_see_through
from xlbatch.tracing.borders import Border, Labels
from xlbatch.tracing.labeled import NONE, labeled, looked_up
from xlbatch.tracing.palette import GENTLE, Colors, Steepness, flat_colors, hex_of, merged, steepness
from xlbatch.tracing.picture_faults import Unfit
from xlbatch.tracing.raster import Raster

MOST_COLORS = 6
_COVERED = 250  # levels: what covers more covers all
_WHITE = 245  # levels: what is lighter is white
_HARD, _HARDEST = 1.4, 0.25  # dots over which a hard edge is spread, and the part of the edges that tell
_ALL_EDGES = 0.45  # of all dots: where more differ from their neighbors there are no flat colors


@dataclass(frozen=True, eq=False)
class Flat:
    """A picture brought down to flat colors: `labels` has one more line of background on every side; label 0 is the
    background, and `colors` are those of the labels."""

    labels: Labels
    colors: Colors
    steep: Steepness
    notes: tuple[Note, ...]

    @property
    def is_opaque(self) -> bool:
        """Whether there is a background that can be seen."""
        return bool(self.colors[0][3] > _COVERED)


def flattened(raster: Raster) -> Flat:
    """The flat colors of a picture. Raises Unfit where it has none, or too much besides."""
    dots = raster.dots
    steep = steepness(dots)
    rough = steep > GENTLE
    colors, sizes = flat_colors(dots, steep)
    if not len(colors) or np.count_nonzero(rough) > _ALL_EDGES * rough.size:
        raise Unfit("photograph")
    background = background_of(dots, colors)
    order = np.argsort(np.arange(len(colors)) != background, kind="stable")
    colors, sizes = colors[order], sizes[order]
    pure = looked_up(dots, colors)
    faint, fades = is_see_through(colors), fading(pure, rough, len(colors))
    faint[0] = fades[0] = False
    solid = ~faint & ~fades
    label = np.full(NONE + 1, NONE, dtype=np.uint8)  # of each color
    label[: len(colors)][faint] = 0
    label[: len(colors)][solid] = merged(colors[solid], sizes[solid], MOST_COLORS)
    count = int(label[label != NONE].max()) + 1
    kept = np.array([colors[np.flatnonzero(label == number)[0]] for number in range(count)])
    result = labeled(dots, steep, label[pure], kept)
    glow = glow_of(result, rough)
    labels = result.labels if glow is None else np.where(glow, np.uint8(0), result.labels)
    notes = _notes(colors[solid], sizes[solid], see_through=bool(faint.any()), glows=glow is not None)
    return Flat(np.pad(labels, 1), kept, steep, tuple(notes))


def _notes(colors: Colors, sizes: Array, *, see_through: bool, glows: bool) -> Iterator[Note]:
    """What of its colors was left out, or taken for another."""
    if glows:
        yield Note("picture-left-out", {"what": phrase("glow")})
    if see_through:
        yield Note("picture-left-out", {"what": phrase("see-through")})
    apart = int(merged(colors, sizes, len(colors)).max())
    if apart > MOST_COLORS:
        yield Note("picture-colors", {"count": apart, "most": MOST_COLORS})
    if colors[0][3] > _COVERED and colors[0].min() < _WHITE:
        yield Note("picture-background", {"color": hex_of(colors[0])})


def blur_of(flat: Flat, borders: Sequence[Border]) -> float:
    """Over how many times as many dots as a hard edge takes the edges of the picture are spread, at least 1."""
    high, wide = flat.steep.shape
    spread = []
    for border in borders:
        row = np.clip(border.points.imag.astype(int), 0, high - 1)
        column = np.clip(border.points.real.astype(int), 0, wide - 1)
        contrast = np.abs(flat.colors[border.left] - flat.colors[border.right]).max()
        spread.append(contrast / np.maximum(flat.steep[row, column], 1))
    return max(1.0, float(np.quantile(np.concatenate(spread), _HARDEST)) / _HARD) if spread else 1.0
