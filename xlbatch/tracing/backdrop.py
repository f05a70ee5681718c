"""What of a picture is background, and what makes a picture no drawing of flat colors."""

import numpy as np

from xlbatch.geometry.flat import Index
from xlbatch.tracing.borders import Labels
from xlbatch.tracing.labeled import Labeled, nearest
from xlbatch.tracing.palette import Colors, Dots, Mask
from xlbatch.tracing.picture_faults import Unfit

_SAME = 22.0  # levels
_GRAY = 12.0  # levels between the channels of a gray
_PALE = 110.0  # levels between the two grays of a painted checkerboard at most
_SQUARES, _EVEN = 6, 2  # so many of a size, to so many dots, in a line make one
_SEE_THROUGH = 190  # of 255: what covers less is no film
_STRANGE = 0.10  # of a drawing's dots: more that are no mixture of its colors, and it is none
_FADING = 0.04  # of a drawing's dots: fewer may be the wash of a damaged picture
_ROUGH = 0.25  # of a photograph's dots: at least so many differ from their neighbors
_GENTLY = 0.5  # of a color's edge: so much of it is gentle where the color fades
_GLOWING = 4.0  # times as many dots as are solid: more, and it is no glow
_GLOW = 0.15  # of the background's edge: so much of it is soft where something glows


def background_of(dots: Dots, colors: Colors) -> int:
    """Which of the colors is the background: that of all four corners, or the most frequent along the edges.

    Raises Unfit where a checkerboard is painted there."""
    lines = [nearest(line.astype(float), colors) for line in (dots[0], dots[-1], dots[:, 0], dots[:, -1])]
    known = [np.where(off <= _SAME, color, -1) for color, off in lines]
    if sum(_checkered(line[line >= 0], colors) for line in known) >= 2:
        raise Unfit("checkerboard")
    corners = {int(line[end]) for line in known for end in (0, -1)}
    if len(corners) == 1 and -1 not in corners:
        return corners.pop()
    return int(np.bincount(np.concatenate([color for color, _ in lines])).argmax())


def _checkered(line: Index, colors: Colors) -> bool:
    """Whether two grays take turns along a line in squares of one size."""
    if len(np.unique(line)) != 2:
        return False
    dark, other = colors[np.unique(line)]
    if max(np.ptp(dark[:3]), np.ptp(other[:3])) > _GRAY or np.abs(dark - other).max() > _PALE:
        return False
    changes = np.flatnonzero(np.diff(line))
    runs = np.diff(changes)
    return len(runs) >= _SQUARES and int(np.ptp(runs)) <= _EVEN


def is_see_through(colors: Colors) -> Mask:
    """Which colors cover too little to be film, but more than nothing."""
    return np.asarray(colors[:, 3] < _SEE_THROUGH)


def fading(pure: Labels, rough: Mask, count: int) -> Mask:
    """Which of the colors are but steps of one that fades: they go over into others without an edge between."""
    gentle, hard = np.zeros(count + 1), np.zeros(count + 1)
    number = np.minimum(pure, count)
    for labels, edges in ((number, rough), (number.T, rough.T)):
        for here, other in ((slice(None, -1), slice(1, None)), (slice(1, None), slice(None, -1))):
            flat = ~edges[here]
            gentle += np.bincount(
                labels[here][flat & ~edges[other] & (labels[here] != labels[other])], minlength=count + 1
            )
            hard += np.bincount(labels[here][flat & edges[other]], minlength=count + 1)
    return np.asarray(gentle[:count] > _GENTLY * (gentle + hard)[:count])


def glow_of(labeled_: Labeled, rough: Mask) -> Mask | None:
    """The dots of shadows and glows that fade into the background; None where there are none.

    Raises Unfit where colors fade otherwise, or the picture is a photograph."""
    background = (labeled_.labels == 0) & ~labeled_.soft & ~rough
    inked = background.size - int(background.sum())
    soft = int(labeled_.soft.sum())
    if labeled_.strange > _STRANGE * inked:
        raise Unfit("photograph" if rough.sum() > _ROUGH * inked else "fading")
    if soft <= _FADING / 10 * inked:
        return None
    glows = _touching(background, labeled_.soft) > _GLOW * _touching(background, ~background)
    if glows and soft <= _GLOWING * np.count_nonzero((labeled_.labels != 0) & ~labeled_.soft):
        return labeled_.soft
    if soft > _FADING * inked:
        raise Unfit("fading")
    return None


def _touching(mask: Mask, other: Mask) -> int:
    """How many pairs of neighboring dots are of the two."""
    across = (mask[:, 1:] & other[:, :-1]).sum() + (mask[:, :-1] & other[:, 1:]).sum()
    down = (mask[1:] & other[:-1]).sum() + (mask[:-1] & other[1:]).sum()
    return int(across + down)
