"""What is to become of a drawing's parts for one garment, and what came of it."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Literal, NamedTuple

from xlbatch.geometry.path import Box
from xlbatch.svg.layer import Layers

Fit = Literal["height", "box"]


@dataclass(frozen=True)
class Edit:
    """What one part becomes: left out, set in other words (`text`; "" leaves its room empty, None leaves it as it is),
    or cut from a film of its own."""

    part: str  # its label
    use: bool = True
    text: str | None = None
    words: tuple[tuple[str, str], ...] = ()  # of a live text: what its braces stand for
    font: str = ""
    fit: Fit = "height"
    apart: bool = False  # a color of its own, for a film of its own


@dataclass(frozen=True)
class Rules:
    """How words are fitted into a drawing. Lengths in its units."""

    gap: float  # to what is beside them
    least: float  # capitals are never made lower
    narrowest: float  # of their usual width
    widest: float
    font: str  # where none is named
    folder: Path  # where fonts may lie beside the workbook


class PartNote(NamedTuple):
    """Something to tell about a part: a problem's code, and the facts in its texts."""

    part: str
    code: str
    facts: Mapping[str, object]


@dataclass(frozen=True, eq=False)
class Remade:
    """A drawing after its edits. `base` is the box its width is measured by: around its ink without the texts set in
    it, so that a long name changes no size."""

    layers: Layers
    base: Box | None
    notes: tuple[PartNote, ...]
    texts: tuple[str, ...]  # the texts set for this garment, in the parts' order
    rooms: tuple[Box, ...]  # around each of them


def film_color(part: str) -> str:
    """The name of the color that a part with a film of its own stands under."""
    return f"part {part}"
