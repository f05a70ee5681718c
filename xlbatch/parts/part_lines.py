"""The lines of Drawing parts and a drawing's parts: which line is which part's; the parts as the lines join them."""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from xlbatch.geometry.ink import around
from xlbatch.job.part_line import PartLine
from xlbatch.parts.part import Part

_SAME_SIZE = 0.12  # how much larger or smaller a part may have become
_SAME_PLACE = 12.0  # percent of the drawing that it may have moved
_SAME_WORDS = 0.9  # live text of the same words is the same, wherever it has gone


@dataclass(frozen=True)
class PartLooks:
    """What a part looks like on the sheet: its color, text, size in mm and place in percent."""

    color: str
    text: str
    width: float
    height: float
    across: float
    down: float


@dataclass(frozen=True, eq=False)
class Matched:
    """Each part's line by its label, and the lines that found no part."""

    lines: Mapping[str, PartLine]
    lost: tuple[PartLine, ...]


def looks_of(part: Part, box: tuple[float, float, float, float], unit: float) -> PartLooks:
    """What a part looks like in a drawing of this box, `unit` mm a unit on the shirt."""
    wide, high = max(box[2] - box[0], 1e-9), max(box[3] - box[1], 1e-9)
    return PartLooks(
        part.color,
        part.text.words if part.text else "",
        round((part.box[2] - part.box[0]) * unit, 1),
        round((part.box[3] - part.box[1]) * unit, 1),
        round(((part.box[0] + part.box[2]) / 2 - box[0]) / wide * 100, 1),
        round((box[3] - (part.box[1] + part.box[3]) / 2) / high * 100, 1),
    )


def place_text(looks: PartLooks) -> str:
    """A place as the sheet has it: 50 % across, 20.5 % down."""
    return f"{looks.across:g} % across, {looks.down:g} % down"


def matched(lines: Iterable[PartLine], looks: Mapping[str, PartLooks]) -> Matched:
    """Finds the line of each part: by its number where the part looks as the line says, else by what it looks like.
    A line that says nothing of looks goes by its number."""
    lines_by_label: dict[str, PartLine] = {}
    left: list[PartLine] = []
    for line in lines:
        label = line.part.strip().casefold()
        if label in looks and label not in lines_by_label and (_says_nothing(line) or _unlike(line, looks[label]) < 1):
            lines_by_label[label] = line
        else:
            left.append(line)
    lost = []
    for line in left:
        free = {
            label: _unlike(line, part_looks)
            for label, part_looks in looks.items()
            if label not in lines_by_label and line.part[-1:].isalpha() == label[-1:].isalpha()
        }
        best = min(free, key=lambda label: free[label], default=None)
        if best is not None and free[best] < 1 and not _says_nothing(line):
            lines_by_label[best] = replace(line, part=best)
        else:
            lost.append(line)
    return Matched(lines_by_label, tuple(lost))


def joined(parts: Sequence[Part], lines: Mapping[str, PartLine]) -> tuple[Part, ...]:
    """The parts, single shapes taken out where a line wants something of them, and joined where the lines say so."""
    apart: dict[str, Part] = {part.label: part for part in parts}
    for part in parts:
        for single in part.single:
            line = lines.get(single.label)
            if line and (line.typed or line.use != part.use):
                whole = apart[part.label]
                mine = single.shapes[0]
                apart[part.label] = replace(whole, shapes=tuple(s for s in whole.shapes if s is not mine), row=None)
                apart[single.label] = single
    for label, line in lines.items():
        target = line.join.strip().casefold()
        if label in apart and target in apart and target != label:
            apart[target] = _one(apart[target], apart.pop(label))
    return tuple(apart.values())


def _one(part: Part, other: Part) -> Part:
    """Two parts as one; its letters stand where the first one's do, or on no line that can be told."""
    shapes, holes = part.shapes + other.shapes, part.holes + other.holes
    box = around((part.box, other.box))
    apart = part.row is None or other.kind == "word"
    copies = part.copies or other.copies
    return replace(
        part, shapes=shapes, holes=holes, box=box, copies=copies, row=None if apart else part.row, kind="word"
    )


def _says_nothing(line: PartLine) -> bool:
    return not (line.color or line.width or line.height or line.place)


def _unlike(line: PartLine, looks: PartLooks) -> float:
    """How unlike a line and a part are: from 1 on they are not the same."""
    if (line.color and line.color.casefold() != looks.color) or (line.text and line.text != looks.text):
        return math.inf
    unlike = 0.0
    if line.width and line.height and not looks.text:
        shape = (line.width / line.height) / max(looks.width / max(looks.height, 1e-9), 1e-9)
        unlike = max(unlike, abs(shape - 1) / _SAME_SIZE)
    place = _place(line.place)
    if place:
        unlike = max(unlike, abs(place[0] - looks.across) / _SAME_PLACE, abs(place[1] - looks.down) / _SAME_PLACE)
    return min(unlike, _SAME_WORDS) if looks.text else unlike


def _place(text: str) -> tuple[float, float] | None:
    parts = text.replace("%", " ").replace(",", " ").split()
    values = [float(part) for part in parts if part.replace(".", "", 1).replace("-", "", 1).isdigit()]
    return (values[0], values[1]) if len(values) == 2 else None
