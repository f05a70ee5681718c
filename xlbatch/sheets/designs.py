"""Designs: one row a decal."""

from xlbatch.sheets.inputs import Input

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
    choices=lambda job, _headings: {"Film": [film.name for film in job.films]},
)
