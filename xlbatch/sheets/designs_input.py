"""Designs: one row a decal."""

from collections.abc import Iterable, Mapping, Sequence

from xlbatch.job.job import Job
from xlbatch.sheets.inputs import Input, below
from xlbatch.trade.tables import table


def choices(_job: Job, _headings: Sequence[str]) -> Mapping[str, Iterable[str] | str]:
    """Drop-downs: the films of this workbook, the positions and fonts known."""
    films = below("Film")
    return {
        "Film": films,
        "Outline film": films,
        "Position": [line["Position"] for line in table("placements")],
        "Font": [line["Font"] for line in table("fonts")],
    }


DESIGNS = Input(
    name="Designs",
    advice="One row a decal; the rows of one design make it up. Layer 1 is pressed first.",
    records=lambda job: job.designs,
    fields={
        "Design": "design",
        "Decal": "decal",
        "What": "what",
        "Artwork": "artwork",
        "Artwork color": "artwork_color",
        "Text": "text",
        "Font": "font",
        "Film": "film",
        "Layer": "layer",
        "Position": "position",
        "Width": "width",
        "Height": "height",
        "Widest": "widest",
        "Sized for": "sized_for",
        "Scale with size": "scale",
        "Arch": "arch",
        "Outline film": "outline_film",
        "Outline width": "outline_width",
    },
    choices=choices,
)
