"""The dots of a picture → its flat colors: those that many dots next to one another have."""

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageFilter

from xlbatch.geometry.flat import Array, Index

Dots = NDArray[np.uint8]  # rows × columns × (red, green, blue, cover), colors multiplied by how far they cover
Colors = Array  # one a row, as the dots
Mask = NDArray[np.bool_]
Steepness = NDArray[np.uint8]  # rows × columns: how far a dot differs at most from the four next to it, in levels

GENTLE = 10  # levels: neighboring dots of a flat color differ no more (the noise of a JPEG included)
_REACH = 14.0  # levels: dots no farther off than this are of one color
_CORE = 6.0  # levels: of a flat color most dots lie this near its middle
_SAME, _SPIKE = 1.8, 0.8  # levels, part: of a picture packed without loss nearly all dots are just so
_CORE_PART = 0.55  # of a color that fades it is about a third
_FEWEST = 12  # dots: fewer make no color of the drawing
_RIPPLED = 0.01  # of all dots: at least so many differ a little from their neighbors in a picture packed with loss
_APART, _CALM = 5, 6  # dots, levels: there a place is flat where nothing in such a square differs more
_TRIES = 40  # colors looked at
_LOOKED_AT = 1_000_000  # dots
_ALIKE = 4.0  # CIELAB: an eye takes colors nearer to one another than this for one
_D65 = np.array((0.95047, 1.0, 1.08883))  # the white point (IEC 61966-2-1)
_TO_XYZ = np.array(((0.4124, 0.3576, 0.1805), (0.2126, 0.7152, 0.0722), (0.0193, 0.1192, 0.9505)))  # IEC 61966-2-1


def steepness(dots: Dots) -> Steepness:
    """How far each dot differs from its neighbors."""
    steep = np.zeros(dots.shape[:2], dtype=np.uint8)
    for channel in range(dots.shape[2]):
        for level, most in ((dots[:, :, channel], steep), (dots[:, :, channel].T, steep.T)):
            step = np.maximum(level[:-1], level[1:]) - np.minimum(level[:-1], level[1:])
            np.maximum(most[:-1], step, out=most[:-1])
            np.maximum(most[1:], step, out=most[1:])
    return steep


def flat_colors(dots: Dots, steep: Steepness) -> tuple[Colors, Array]:
    """The colors that many dots in flat places have, the most frequent first, and how many dots have each.

    Where the picture was packed with loss, the places are those well away from the ripples that leaves along edges."""
    flat = steep <= GENTLE
    rippled = bool(np.count_nonzero((steep > 0) & flat) > _RIPPLED * steep.size)
    if rippled:
        flat = np.asarray(Image.fromarray(steep).filter(ImageFilter.MaxFilter(_APART))) <= _CALM
    part = flat.size // _LOOKED_AT + 1
    values = dots.reshape(-1, dots.shape[2])[::part][flat.ravel()[::part]]
    packed, counts = np.unique(np.ascontiguousarray(values).view(np.uint32).ravel(), return_counts=True)
    levels = packed.view(np.uint8).reshape(-1, dots.shape[2]).astype(float)
    colors, sizes = [], []
    for _ in range(_TRIES):
        if not len(counts):
            break
        near = _around(levels, counts, spiked=not rippled)
        middle = np.average(levels[near], axis=0, weights=counts[near])
        core = counts[near & _near(levels, middle, _CORE)].sum()
        if core * part >= _FEWEST and core >= _CORE_PART * counts[near].sum():
            colors.append(middle)
            sizes.append(float(counts[near].sum()) * part)
        levels, counts = levels[~near], counts[~near]
    return np.array(colors).reshape(-1, dots.shape[2]), np.array(sizes)


def _around(levels: Colors, counts: Index, *, spiked: bool) -> Mask:
    """Which levels are taken for the most frequent: less far off where nearly all that is like it is just it."""
    peak = levels[np.argmax(counts)]
    close = _near(levels, peak, _CORE)
    if spiked and counts[_near(levels, peak, _SAME)].sum() >= _SPIKE * counts[close].sum():
        return close
    near = _near(levels, peak, _REACH)
    return near | _near(levels, np.average(levels[near], axis=0, weights=counts[near]), _REACH)


def _near(levels: Colors, color: Array, reach: float) -> Mask:
    return np.asarray(((levels - color) ** 2).sum(axis=1) <= reach * reach)


def merged(colors: Colors, sizes: Array, most: int) -> Index:
    """For each color the number of its group: those that no eye tells apart are one, and then the nearest to one
    another until at most `most` are left. The first color, the background, stands alone; its group is 0."""
    lab = cielab(colors)
    group = np.arange(len(colors))
    weight = sizes.astype(float).copy()
    while len(left := np.unique(group)) > 1:
        off = np.linalg.norm(lab[left][:, None] - lab[left][None], axis=2)
        off[np.tril_indices(len(left))] = np.inf
        off[0, off[0] >= _ALIKE] = np.inf  # however many colors there are, none of them becomes background
        color_no, other = np.unravel_index(np.argmin(off), off.shape)
        if not np.isfinite(off[color_no, other]) or (off[color_no, other] >= _ALIKE and len(left) - 1 <= most):
            break
        keep, drop = left[color_no], left[other]
        if keep:
            lab[keep] = np.average(lab[[keep, drop]], axis=0, weights=weight[[keep, drop]])
        weight[keep] += weight[drop]
        group[group == drop] = keep
    return np.unique(group, return_inverse=True)[1]


def cielab(colors: Colors) -> Array:
    """Colors as an eye tells them apart (CIE 15, L*a*b*), what they cover of white."""
    shown = (colors[:, :3] + (255 - colors[:, 3:])) / 255
    light = np.where(shown <= 0.04045, shown / 12.92, ((shown + 0.055) / 1.055) ** 2.4)
    part = light @ _TO_XYZ.T / _D65
    root = np.where(part > (6 / 29) ** 3, np.cbrt(part), part / (3 * (6 / 29) ** 2) + 4 / 29)
    x, y, z = root.T
    cover = colors[:, 3] * (100 / 255)  # white and nothing at all are not one
    return np.stack((116 * y - 16, 500 * (x - y), 200 * (y - z), cover), axis=1)


def hex_of(color: Array) -> str:
    """`#rrggbb`, as it would be if it covered all."""
    levels = np.clip(np.rint(color[:3] * 255 / max(color[3], 1.0)), 0, 255).astype(int)
    return "#" + "".join(f"{level:02x}" for level in levels)
