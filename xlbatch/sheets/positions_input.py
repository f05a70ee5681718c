"""Positions: one row a position, kind of garment and neckline."""

from xlbatch.sheets.inputs import Input

POSITIONS = Input(
    name="Positions",
    advice="Where each position lies on each kind of garment, from its seam. From center: to the wearer's right, "
    "negative to the left. Under: the positions this one goes below where a garment has one. Add rows for your own.",
    records=lambda job: job.positions,
    fields={
        "Position": "position",
        "For": "for_",
        "Neckline": "neckline",
        "Side": "side",
        "Measured from": "measured_from",
        "Distance": "distance",
        "From center": "across",
        "Under": "under",
        "Gap": "gap",
    },
    widths={"Under": 1.8},
)
