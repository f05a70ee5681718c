"""A line of text as a font draws it."""

from pathlib import Path
from xml.sax.saxutils import escape

from xlbatch.geometry.ink import outline
from xlbatch.geometry.path import path_data
from xlbatch.lettering.fonts import find_font
from xlbatch.lettering.typeface import set_line
from xlbatch.paper.picture import PLAIN, Picture, drawn

HIGH = 26.0  # points
_MARGIN = 3.0


def font_picture(name: str, text: str, width: float) -> Picture:
    """The text in the bundled font called `name`, as large as a picture `width` points wide allows."""
    face = find_font(name, Path())
    assert face  # a bundled one
    pieces = set_line(face, text).pieces
    ink = outline(pieces) if pieces else None
    shape = ""
    if ink:
        scale = min((width - 2 * _MARGIN) / ink.width, (HIGH - 2 * _MARGIN) / ink.height)
        shape = f'<path d="{path_data(ink.segments, (scale, 0, 0, -scale, _MARGIN, HIGH - _MARGIN))}" fill="#17202a"/>'
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.2f}" height="{HIGH}">{shape}</svg>'
    return drawn(svg, f"{escape(text)} in {name}", PLAIN)
