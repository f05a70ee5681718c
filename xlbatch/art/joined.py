"""Decals of one film that keep their places to one another → one decal with several parts."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import combinations

import numpy as np

from xlbatch.art.decal import Decal
from xlbatch.geometry.ink import InkPart, measured, outline, shifted
from xlbatch.geometry.outline import Outline, Segments
from xlbatch.geometry.weld import welded

TEXTS = " / "  # between the texts of a piece


def joined(parts: Sequence[Decal]) -> Decal:
    """One decal of `parts`, whose offsets are their places to one another in mm; all have outlines and one film.

    Its spec is the artwork's where it has one, else its first part's."""
    left, bottom = (round(min(part.offset[side] for part in parts), 3) for side in (0, 1))
    moved = tuple(
        replace(part, id="", offset=(round(part.offset[0] - left, 3), round(part.offset[1] - bottom, 3)), whole=None)
        for part in parts
    )
    lead = next((part for part in moved if part.spec.what == "artwork"), moved[0])
    return replace(
        lead,
        text=TEXTS.join(part.text for part in moved if part.text),
        font=", ".join(dict.fromkeys(part.font for part in moved if part.font)),
        width=round(max(part.offset[0] + part.width for part in moved), 3),
        height=round(max(part.offset[1] + part.height for part in moved), 3),
        outline=_outline(moved),
        offset=(0.0, 0.0),
        cap_height=None,
        thin=tuple((x + part.offset[0], y + part.offset[1]) for part in moved for x, y in part.thin),
        rooms=tuple(shifted(room, *part.offset) for part in moved for room in part.rooms),
        base=shifted(lead.base, *lead.offset) if lead.base else None,
        parts=moved,
    )


def _outline(parts: Sequence[Decal]) -> Outline:
    """The parts' outlines in their arrangement, welded where they may overlap."""
    moved = [_moved(part.outline.segments, part.offset) for part in parts if part.outline]
    if any(_overlap(decal, other) for decal, other in combinations(parts, 2)):
        ink = measured(welded(segment for segments in moved for segment in segments))
        assert ink is not None  # what is welded has ink
        return outline((InkPart(ink),))
    outlines = [part.outline for part in parts if part.outline]
    area = sum(outline.area for outline in outlines)
    moment = sum(
        outline.area * ((outline.center or 0.0) + part.offset[0]) for outline, part in zip(outlines, parts, strict=True)
    )
    return Outline(
        Segments("".join(outline.verbs for outline in moved), b"".join(outline.packed for outline in moved)),
        round(max(part.offset[0] + part.width for part in parts), 3),
        round(max(part.offset[1] + part.height for part in parts), 3),
        sum(outline.contours for outline in outlines),
        round(sum(outline.cut_length for outline in outlines), 3),
        round(area, 3),
        round(moment / area, 3) if area else None,
    )


def _moved(segments: Segments, offset: tuple[float, float]) -> Segments:
    return Segments(segments.verbs, ((segments.points + np.array(offset)).round(4) + 0.0).tobytes())


def _overlap(decal: Decal, other: Decal) -> bool:
    """Whether the boxes of two parts meet."""
    (x, y), (u, v) = decal.offset, other.offset
    return x < u + other.width and u < x + decal.width and y < v + other.height and v < y + decal.height
