"""The returned sheets' names, order and headings: the contract that saved workbooks depend on."""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest
from openpyxl import load_workbook

# heading → its unit where it carries one; columns of our own may stand between these
CONTRACT: Mapping[str, tuple[str, ...]] = {
    "Job sheet": (),
    "Problems": (
        "Level", "Sheet", "Cell", "Found", "What is wrong", "What to do", "Suggestion", "Answer",
        "Code",
    ),
    "Roster": (
        "Garment no.", "Who", "Group", "Garment", "Size", "Color", "Design", "Print name", "Number", "How many",
        "Note", "Paid", "Status", "Done so far", "Bus seat",
    ),
    "Proof": ("Garment no.", "Who", "Group", "Garment", "Size", "Color", "Exact text", "As cut", "Checked"),
    "Shopping list": (
        "Kind", "Item", "Garment", "Size", "Color", "Needed", "Spares", "On hand", "On the way", "Buy", "Price", "Cost",
        "Ordered", "Arrived", "Note",
    ),
    "Film requirement": (
        "Film", "Color", "Usable width (in)", "Decals", "Runs", "Length (in)", "Least possible (in)", "Film used",
        "On hand (in)", "Buy (in)", "Rolls", "Cost",
    ),
    "Roll layout": (),
    "Cut list": (
        "Run", "Strip", "Film", "Starts at (in)", "Length (in)", "Garments", "Decals", "Cut", "Weeded",
        "Spoiled",
    ),
    "Placement": (
        "Garment no.", "Who", "Garment", "Size", "Color", "Position", "Decal", "Piece", "Width (in)", "Height (in)",
        "Below collar seam (in)", "From center (in)", "Clear at side (in)", "Clear at hem (in)", "Presses",
        "Line up by",
    ),
    "Placement pictures": (),
    "Press log": (
        "Step", "Garment no.", "Who", "Garment", "Size", "Color", "Position", "Decal", "Below collar seam (in)",
        "From center (in)", "How", "Pressed", "Peeled", "Result", "By", "Note", "Piece", "Film", "Temperature (°F)",
        "Warm-up (s)", "Press (s)", "Back (s)", "Pressure", "Peel", "Cover", "Presses",
    ),
    "Time plan": (),
    "Money": ("Garment no.", "Who", "Group", "Blank", "Film", "Supplies", "Labor", "Price", "Paid", "Owed"),
    "Bag tags": (),
    "Job": ("Setting", "Value", "Meaning"),
    "Designs": (
        "Design", "Decal", "What", "Artwork", "Artwork color", "Text", "Font", "Film", "Layer", "Position",
        "Width (in)", "Height (in)", "Widest (in)", "Sized for", "Scale with size", "Arch", "Outline film",
        "Outline width (in)",
    ),
    "Drawing parts": (
        "Artwork", "Part", "Color", "Text", "Width (in)", "Height (in)", "Place", "Use", "Replace by", "Font", "Fit",
        "Join", "Film",
    ),
    "Garments": (
        "Garment", "For", "Neckline", "Fabric", "Iron dots", "Heat limit (°F)", "Size", "Chest width (in)",
        "Body length (in)", "Collar drop front (in)", "Collar drop back (in)", "Sleeve length (in)",
        "Sleeve opening (in)", "Colors", "Price", "On hand",
    ),
    "Film": (
        "Film", "Kind", "Color", "Roll width (in)", "Usable width (in)", "Rolls sold", "On hand",
        "Press temperature (°F)", "Warm-up (s)", "Press time (s)", "Back press (s)", "Peel", "Pressure",
        "One direction", "Thinnest stroke (in)",
    ),
    "Press": ("Press", "Kind", "Plate width (in)", "Plate depth (in)", "Hottest (°F)", "Cover", "Overlap (in)"),
    "Fonts to choose from": (),
    "Runs": (
        "Run", "Film", "Length (in)", "Strips", "Decals", "Cut from", "Cut file", "Measures across (in)",
        "Measures along (in)", "Cut length (ft)", "Travel (ft)",
    ),
    "Decals": (
        "Decal", "Garment no.", "Who", "What", "Text", "Film", "Now", "Run", "Strip", "Across (in)", "Along (in)",
        "Width (in)", "Height (in)", "Turned",
    ),
    "Positions": (
        "Position", "For", "Neckline", "Side", "Measured from", "Distance (in)", "From center (in)", "Under",
        "Gap (in)",
    ),
    "Work times": ("Stage", "Work", "Value", "Unit"),
    "Kept by the program": (),
}  # fmt: skip
TABLES = [name for name, headings in CONTRACT.items() if headings]


def heading_row(sheet: Any, headings: tuple[str, ...]) -> int:
    """The one row that holds all the headings, in this order."""
    rows = []
    for row in sheet.iter_rows():
        values = [cell.value for cell in row]
        if [value for value in values if value in headings] == list(headings):
            rows.append(row[0].row)
    assert len(rows) == 1
    return int(rows[0])


def test_the_sheets_in_order(book: Mapping[str, Any]) -> None:
    assert list(book) == list(CONTRACT)


@pytest.mark.parametrize("name", TABLES)
def test_headings(book: Mapping[str, Any], name: str) -> None:
    assert heading_row(book[name], CONTRACT[name]) > 1  # below its title lines


@pytest.mark.parametrize("name", TABLES)
def test_a_table_is_filterable_repeats_its_headings_and_fits_the_paper(book: Mapping[str, Any], name: str) -> None:
    sheet = book[name]
    row = heading_row(sheet, CONTRACT[name])
    assert sheet.auto_filter.ref.startswith(f"A{row}:")
    assert sheet.print_title_rows == f"${row}:${row}"
    assert sheet.freeze_panes == f"A{row + 1}"
    assert sheet.sheet_properties.pageSetUpPr.fitToPage
    assert (sheet.page_setup.fitToWidth, sheet.page_setup.fitToHeight) in ((1, 0), (None, 0))
    assert not [merged for merged in sheet.merged_cells.ranges if merged.max_row >= row]
    assert "R&&D #2 – Sommer" in str(sheet.oddFooter.left.text) + str(sheet.HeaderFooter.oddFooter)


def _metric(heading: str) -> str:
    return heading.replace("(in)", "(cm)").replace("(ft)", "(m)").replace("(°F)", "(°C)")


def test_the_units_follow_the_job(written_metric: Path) -> None:
    metric = load_workbook(written_metric, data_only=True)
    for name in TABLES:
        wanted = tuple(_metric(heading) for heading in CONTRACT[name])
        assert heading_row(metric[name], wanted) > 1
    assert {sheet.page_setup.paperSize for sheet in metric} == {9}
