"""Measures on the pages to print: finer where layers meet; texts in bold fit their cells."""

import pytest

from xlbatch.pages.leaf import COLUMN
from xlbatch.pages.page_looks import FINE, PLAIN
from xlbatch.pages.tag_page import TagLine, _cells
from xlbatch.pages.work import corner_text
from xlbatch.paper.measure import text_width
from xlbatch.paper.widths import PAD
from xlbatch.placement.place import Register
from xlbatch.units import LengthUnit


@pytest.mark.parametrize(
    ("unit", "top", "left", "text"),
    [
        ("mm", 3.4, -11.4, "3↓ 11← mm"),  # whole millimeters
        ("cm", 13.0, 0.4, "1.3↓ cm"),  # whole millimeters too
        ("in", 25.4 * (2 + 5 / 8), 25.4 * 3 / 16, "2 5/8↓ 3/16→ in"),  # sixteenths
        ("in", 0.1, -0.1, "corner on corner"),
    ],
)
def test_a_layer_is_laid_on_to_the_sixteenth_or_the_millimeter(
    unit: LengthUnit, top: float, left: float, text: str
) -> None:
    assert corner_text(Register("D001", top, left), unit) == text


@pytest.mark.parametrize(
    "right", ["XL", "2 of 5", "to pay $14.50", "credit $4.00", "Youth XL", "Ladies 2XL", "12 of 128", "WWWW", "MMMMM"]
)
def test_what_stands_at_the_right_of_a_tag_fits_in_bold(right: str) -> None:
    _, cell = _cells(TagLine("Crew-neck tee, navy", right, PLAIN))
    assert cell.columns * COLUMN > text_width(right, FINE, bold=True) + PAD
