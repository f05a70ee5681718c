"""Garments: one row a garment and size, those of this job and any the person listed."""

from xlbatch.job.job import Blank, Job
from xlbatch.sheets.inputs import Input


def listed(job: Job) -> tuple[Blank, ...]:
    """All sizes of the garments the roster uses (of all garments while it is empty), and every row the person gave;
    the rows of one garment together."""
    used = {(row.garment or job.settings.usual_garment).casefold() for row in job.roster}
    used.add(job.settings.usual_garment.casefold())
    kept = [blank for blank in job.blanks if not job.roster or blank.source.row or blank.garment.casefold() in used]
    order = {name: at for at, name in enumerate(dict.fromkeys(blank.garment for blank in kept))}
    return tuple(sorted(kept, key=lambda blank: order[blank.garment]))


GARMENTS = Input(
    name="Garments",
    advice="One row a garment and size, measured flat. Read the care label and fill in Iron dots. "
    "Chest width: armpit to armpit. Body length: shoulder point at the neck to hem. "
    "Keep clear: places not to press on.",
    records=listed,
    fields={
        "Garment": "garment",
        "For": "for_",
        "Neckline": "neckline",
        "Fabric": "fabric",
        "Iron dots": "dots",
        "Heat limit": "heat_limit",
        "Size": "size",
        "Chest width": "chest",
        "Body length": "length",
        "Collar drop front": "drop_front",
        "Collar drop back": "drop_back",
        "Sleeve length": "sleeve_length",
        "Sleeve opening": "sleeve_opening",
        "Keep clear": "keep_clear",
        "Between armholes": "between_armholes",
        "Colors": "colors",
        "Price": "prices",
        "On hand": "on_hand",
    },
)
