"""Press: one row a press."""

from xlbatch.sheets.inputs import Input

PRESS = Input(
    name="Press",
    advice="One row a press. The first row is the press used.",
    records=lambda job: job.presses,
    fields={
        "Press": "name",
        "Kind": "kind",
        "Plate width": "width",
        "Plate depth": "depth",
        "Hottest": "hottest",
        "Cover": "cover",
        "Overlap": "overlap",
    },
)
