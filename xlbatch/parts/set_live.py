"""A live text of a drawing set in its words for one garment."""

from dataclasses import dataclass, replace

import pathops

from xlbatch.parts.edit import Edit, PartNote
from xlbatch.parts.faces import Faces
from xlbatch.parts.part import Part
from xlbatch.svg.layer import LiveText
from xlbatch.svg.live_text import reworded
from xlbatch.svg.set_text import set_text


@dataclass(frozen=True, eq=False)
class SetText:
    """The ink of a text by color, lowest first; its words; and what to tell."""

    inks: tuple[tuple[str, pathops.Path], ...]
    words: str
    notes: tuple[PartNote, ...] = ()


def set_live(part: Part, edit: Edit, faces: Faces) -> SetText:
    """The text set: its own words, or those of the edit in the look of its first letters. Raises Unreadable."""
    assert part.text
    text = reworded(part.text, dict(edit.words).__getitem__) if edit.words else part.text
    if edit.text is not None:
        text = _replaced(part.text, edit.text)
    if not text.words:
        return SetText((), "")
    looks = faces.of_text(part.label, text, edit.font)
    if looks is None:
        return SetText((), "")
    return SetText(set_text(text, looks.__getitem__), text.words)


def _replaced(text: LiveText, words: str) -> LiveText:
    first = text.spans[0]
    return replace(text, spans=(replace(first, text=words, spots=first.spots[:1]),) if words else ())
