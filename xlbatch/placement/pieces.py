"""Places of parts that are one piece of film → one place, and the box their drawing's other films line up in."""

from collections.abc import Iterable, Sequence
from dataclasses import replace

from xlbatch.art.joined import joined
from xlbatch.job.job import JOINED, Press
from xlbatch.placement.group import groups
from xlbatch.placement.place import Place, around
from xlbatch.placement.sections import sections


def one_drawing(place: Place, other: Place) -> bool:
    """Whether two decals are films of one drawing."""
    return place.side == other.side and len(groups((place.decal, other.decal))) == 1


def pieces(press: Press, sets: Sequence[Sequence[Place]]) -> tuple[Place, ...]:
    """One garment's places, each set made one; what shares a drawing with a joined piece lines up with it."""
    wholes = [_piece(press, members) if len(members) > 1 else members[0] for members in sets]
    drawings: list[tuple[list[Place], list[Place]]] = []  # the parts and the pieces of each drawing
    for members, piece in zip(sets, wholes, strict=True):
        same = [
            drawing
            for drawing in drawings
            if any(one_drawing(place, other) for place in drawing[0] for other in members)
        ]
        drawings = [drawing for drawing in drawings if drawing not in same]
        parts, whole = ([place for drawing in same for place in drawing[side]] for side in (0, 1))
        drawings.append(([*parts, *members], [*whole, piece]))
    whole_of = {id(old): new for _, them in drawings for old, new in zip(them, _one_whole(them), strict=True)}
    return tuple(whole_of[id(piece)] for piece in wholes)


def _piece(press: Press, members: Sequence[Place]) -> Place:
    """The parts as one piece, measured as its topmost part is."""
    box = around(members)
    decal = joined([replace(it.decal, offset=(it.extent.left, it.extent.bottom)) for it in members])
    middle = (box.left + box.right) / 2
    top = max(members, key=lambda it: it.extent.top)
    return replace(
        top,
        decal=decal,
        above_opening=_least(it.above_opening for it in members),
        above_hem=_least(it.above_hem for it in members),
        from_center=round(middle if top.side == "back" else -middle, 3) + 0.0,
        clear_side=min(it.clear_side for it in members),
        clear_hem=_least(it.clear_hem for it in members),
        sections=sections(decal.width, decal.height, press),
    )


def _least(lengths: Iterable[float | None]) -> float | None:
    return min((length for length in lengths if length is not None), default=None)


def _one_whole(them: Sequence[Place]) -> Sequence[Place]:
    """The pieces of one drawing, each with its place in the box around all; as they are where none is joined."""
    if len(them) == 1 or not any(piece.decal.parts for piece in them):
        return them
    box, drawing = around(them), JOINED.join(piece.decal.piece for piece in them)
    whole = round(box.right - box.left, 3), round(box.top - box.bottom, 3)
    return [
        replace(piece, decal=replace(piece.decal, drawing=drawing, whole=whole, offset=_offset(piece, box)))
        for piece in them
    ]


def _offset(piece: Place, box: tuple[float, float, float, float]) -> tuple[float, float]:
    return round(piece.extent.left - box[0], 3), round(piece.extent.bottom - box[1], 3)
