"""The line through the flat feet of letters: round ones go a little below it, and must not lower or bend it."""

from collections.abc import Sequence

import numpy as np

from xlbatch.geometry.flat import Points
from xlbatch.parts.frame import Frame, Round, arc_through
from xlbatch.parts.outlines import Contour
from xlbatch.parts.standing import FEET, standing

# of the cap height
_LONG = 0.08  # a flat foot, at least
_STRAIGHT = 0.0005  # how little it bends, on the line or by itself
_EVEN = 0.006  # how near one another feet are that are at one height
_LEVEL = 0.09  # how much it rises, of its length
_BENT = 3  # letters with flat feet that tell an arc


def on_flat_feet(line: Frame, letters: Sequence[Contour], cap: float) -> Frame:
    """The line that those letters stand on that have flat feet, where they are enough to tell; else the line as it is.
    An arc is drawn anew through them, a straight line raised to the highest that most of them share."""
    feet = [
        foot for mark in letters if abs(standing(line, mark).foot) <= FEET * cap and len(foot := _foot(line, mark, cap))
    ]
    if isinstance(line, Round):
        arc = arc_through(np.concatenate(feet), line.radius > 0) if len(feet) >= _BENT else None
        return arc or line
    heights = [float(line.onto(foot)[1].mean()) for foot in feet]
    higher = [high for high in heights if high > 0]
    if not higher or min(map(abs, heights)) <= _EVEN * cap:
        return line
    return line.raised(max(higher, key=lambda high: (sum(abs(high - other) <= _EVEN * cap for other in higher), high)))


def _foot(line: Frame, mark: Contour, cap: float) -> Points:
    """The points of the longest straight edge an outline stands on; none where it stands on a curve."""
    along, above = line.onto(mark.points)
    flat = along + 1j * above
    edges = np.roll(flat, -1) - flat
    level = (above <= above.min() + FEET * cap) & (np.abs(edges.imag) <= _LEVEL * np.abs(edges.real))
    if not level.any() or level.all():
        return mark.points[:0]
    first = int(np.flatnonzero(~level)[0]) + 1  # runs of edges are looked for from where there is none
    order = np.roll(np.arange(len(level)), -first)
    runs = np.split(order, np.flatnonzero(np.diff(level[order].astype(int))) + 1)
    feet = [np.append(run, (run[-1] + 1) % len(level)) for run in runs if level[run[0]]]
    straight = [foot for foot in feet if _is_straight(flat[foot], cap) or _is_straight(mark.points[foot], cap)]
    longest = max(straight, key=lambda foot: abs(flat[foot[-1]] - flat[foot[0]]), default=order[:0])
    return mark.points[longest]


def _is_straight(run: Points, cap: float) -> bool:
    """Whether points lie along a chord that is long enough for a foot."""
    chord = run[-1] - run[0]
    if abs(chord) < _LONG * cap:
        return False
    beside = ((run - run[0]) / chord).imag * abs(chord)
    return bool(np.abs(beside).max() <= _STRAIGHT * cap)
