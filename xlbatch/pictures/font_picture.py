"""A line of text as a font draws it."""

from html import escape
from pathlib import Path

from xlbatch.geometry.path import path_data
from xlbatch.geometry.weld import segments_in
from xlbatch.lettering.fonts import find_font
from xlbatch.lettering.typeface import unwelded
from xlbatch.paper.picture import PLAIN, Picture, drawn

HIGH = 26.0  # points
_MARGIN = 3.0


def font_picture(name: str, text: str, width: float) -> Picture:
    """The text in the bundled font called `name`, as large as a picture `width` points wide allows."""
    face = find_font(name, Path())
    assert face  # a bundled one
    path = unwelded(face, text)
    left, bottom, right, top = path.bounds
    shape = ""
    if right > left and top > bottom:
        scale = min((width - 2 * _MARGIN) / (right - left), (HIGH - 2 * _MARGIN) / (top - bottom))
        onto = (scale, 0, 0, -scale, _MARGIN - left * scale, HIGH - _MARGIN + bottom * scale)
        shape = f'<path d="{path_data(segments_in(path), onto)}" fill="#17202a"/>'
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.2f}" height="{HIGH}">{shape}</svg>'
    return drawn(svg, f"{escape(text, quote=False)} in {name}", PLAIN)
