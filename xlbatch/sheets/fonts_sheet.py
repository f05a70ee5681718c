"""Fonts to choose from: each bundled font as it looks, its name for the cell Font, and how small it may be."""

from collections.abc import Iterable, Sequence
from pathlib import Path

from xlbatch.job.job import Settings
from xlbatch.lettering.fonts import find_font
from xlbatch.lettering.typeface import lacking
from xlbatch.paper.page import Column, Page
from xlbatch.pictures.font_picture import HIGH, font_picture
from xlbatch.plan import Plan
from xlbatch.trade.tables import table
from xlbatch.units import length_text

NAME = "Fonts to choose from"
STOCK = "The Quick Foxes 0123"
_NOWHERE = Path()  # bundled fonts need no folder
_COLUMNS = (
    Column("Name for the cell Font", 1.9, ("text", "strong")),
    Column("As it looks", 5.4),
    Column("What it is for", 2.4),
    Column("Weeds from letters this high", 1.1),
)


def write(page: Page, plan: Plan) -> None:
    """The fonts with the list's own longest and oddest names."""
    names = dict.fromkeys(text for decal in plan.decals for text in decal.texts if text)
    write_fonts(page, plan.job.settings, _telling(names))


def write_fonts(page: Page, settings: Settings, texts: Sequence[str]) -> None:
    """The fonts with these texts, or a stock line where there are none or a font lacks their letters."""
    page.lay_columns(_COLUMNS)
    page.title(
        NAME,
        "Write a name of the first column into Font on Job, Designs or Drawing parts. A font file beside the workbook "
        "is named by its file name.",
    )
    page.heading()
    for line in table("fonts"):
        name = line["Font"]
        least = length_text(float(line["Least letter height (mm)"]), settings.length_unit)
        row = page.record((name, None, line["Look"], least), least=HIGH + 4)
        page.picture(row, 1, font_picture(name, _shown(name, texts), page.widths[1] - 8), left=3, top=2)
    page.end_table()


def _shown(name: str, texts: Sequence[str]) -> str:
    """What a font is shown with: the texts that it has all letters of, or its own stock line."""
    face = find_font(name, _NOWHERE)
    assert face  # a bundled one
    line = "   ".join(text for text in texts if not lacking(face, text))
    return line or STOCK


def _telling(names: Iterable[str]) -> tuple[str, ...]:
    """The longest name, and the one with the most letters beyond plain English."""
    names = tuple(names)
    if not names:
        return ()
    longest = max(names, key=len)
    oddest = max(names, key=lambda name: sum(not letter.isascii() for letter in name))
    return tuple(dict.fromkeys((longest, oddest)))
