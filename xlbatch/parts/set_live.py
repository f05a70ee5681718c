"""A live text of a drawing set in its words for one garment."""

from dataclasses import dataclass, replace
from pathlib import Path

import pathops

from xlbatch.geometry.ink import around
from xlbatch.geometry.path import Box
from xlbatch.lettering.named_font import named_font
from xlbatch.lettering.typeface import Typeface
from xlbatch.parts.edit import Edit, PartNote
from xlbatch.parts.faces import Faces
from xlbatch.parts.fitting import Fitting, Room
from xlbatch.parts.live_words import LiveWords, live_stand
from xlbatch.parts.part import Part
from xlbatch.svg.layer import Letters, LiveText, Spot
from xlbatch.svg.live_text import reworded
from xlbatch.svg.set_text import set_text


@dataclass(frozen=True, eq=False)
class SetText:
    """The ink of a text by color, lowest first; its words; and what to tell."""

    inks: tuple[tuple[str, pathops.Path], ...]
    words: str
    notes: tuple[PartNote, ...] = ()


_NOTHING = SetText((), "")


def set_live(part: Part, edit: Edit, faces: Faces, room: Room) -> SetText:
    """The text set: its own words as they stand in the drawing, or others fitted into their room, in the look of its
    first letters. Raises Unreadable, PathOpsError."""
    assert part.text
    text = _worded(part.text, edit)
    looks = faces.of_text(part.label, text, edit.font) if text.words else None
    if looks is None:
        return _NOTHING
    if text is part.text and not edit.font:
        return SetText(set_text(text, looks.__getitem__), text.words)
    stood = live_stand(part.text, faces.usual, anchored=edit.text is None)
    if stood is None:
        return _NOTHING
    stand, place = stood
    words = LiveWords(text, looks.__getitem__, stand, place)
    fitting = Fitting(part, stand, room, faces.rules)
    fitted = fitting.fitted(words, edit.fit) if words.width else None
    inks = words.inks(fitted.across, fitted.up, fitted.middle) if fitted else ()
    return SetText(inks, text.words if fitted else "", tuple(fitting.notes))


def text_box(text: LiveText, folder: Path) -> Box:
    """Around the ink of a text as it stands in the drawing; with none, its first letter's place. Raises Unreadable."""

    def face(look: Letters) -> Typeface:
        return named_font(look.fonts, look.bold, look.italic, folder, "").face

    inks = set_text(text, face)
    if inks:
        return around(path.bounds for _, path in inks)
    spot = next((spot for span in text.spans for spot in span.spots), Spot())
    a, b, c, d, e, f = text.matrix
    x, y = spot.x or 0.0, spot.y or 0.0
    return (a * x + c * y + e, b * x + d * y + f) * 2


def _worded(text: LiveText, edit: Edit) -> LiveText:
    """The text in the words of an edit."""
    if edit.text is not None:
        first = text.spans[0]
        return replace(text, spans=(replace(first, text=edit.text),) if edit.text else ())
    return reworded(text, dict(edit.words).__getitem__) if edit.words else text
