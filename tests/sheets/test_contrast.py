"""Text and ground differ enough to be read: at least 4.5 : 1 (WCAG 2.2, success criterion 1.4.3)."""

from itertools import product

import pytest
from openpyxl import load_workbook

from xlbatch.paper.style import LOOKS
from xlbatch.pictures.swatch import MARKED

LEAST = 4.5
WHITE = "#ffffff"


def luminance(color: str) -> float:
    """Relative luminance as WCAG 2.2 defines it."""
    parts = [int(color[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def test_contrast_as_the_standard_gives_it() -> None:
    assert contrast("#000000", WHITE) == pytest.approx(21)
    assert contrast("#767676", WHITE) == pytest.approx(4.54, abs=0.01)  # the lightest gray that passes on white


def test_every_text_color_is_readable_on_every_ground() -> None:
    inks = {look["font_color"] for look in LOOKS.values() if "font_color" in look} | {"#17202a"}
    grounds = {look["bg_color"] for look in LOOKS.values() if "bg_color" in look} | {WHITE}
    assert len(inks) > 2
    assert len(grounds) > 5
    for ink, ground in product(inks, grounds):
        assert contrast(ink, ground) >= LEAST, (ink, ground)


def test_the_ring_around_a_thin_place_is_seen_against_itself() -> None:
    (outer, _), (inner, _) = MARKED
    assert contrast(outer, inner) >= LEAST


def test_no_cell_of_the_plan_has_other_colors(written: object) -> None:
    inks = {str(look["font_color"])[1:].upper() for look in LOOKS.values() if "font_color" in look} | {"17202A"}
    found = {
        cell.font.color.rgb[2:]
        for sheet in load_workbook(str(written))
        for row in sheet.iter_rows()
        for cell in row
        if cell.value is not None and cell.font.color is not None and isinstance(cell.font.color.rgb, str)
    }
    assert found <= inks
