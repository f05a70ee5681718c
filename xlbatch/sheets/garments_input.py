"""Garments: one row a garment and size, those of this job and any the person listed."""

from xlbatch.job.job import Blank, Job
from xlbatch.sheets.inputs import Input


def listed(job: Job) -> tuple[Blank, ...]:
    """All sizes of the garments the roster uses (of all garments while it is empty), then every other row the person
    gave; the rows of one garment together."""
    used = _used(job)
    kept = [
        blank for blank in job.blanks if not job.roster or not blank.source.built_in or blank.garment.casefold() in used
    ]
    order = {name: place for place, name in enumerate(dict.fromkeys(blank.garment for blank in kept))}
    return tuple(sorted(kept, key=lambda blank: (blank.garment.casefold() not in used, order[blank.garment])))


def _used(job: Job) -> set[str]:
    usual = job.settings.usual_garment
    return {usual.casefold(), *((row.garment or usual).casefold() for row in job.roster)}


def not_used(job: Job, blank: Blank) -> bool:
    """Whether no one of this job wears it."""
    return bool(job.roster) and blank.garment.casefold() not in _used(job)


GARMENTS = Input(
    name="Garments",
    advice="One row a garment and size, measured flat; those below the heavy line are not used in this job. "
    "Read the care label and fill in Iron dots. "
    "Chest width: armpit to armpit. Body length: shoulder point at the neck to hem. "
    "Keep clear: places not to press on.",
    records=listed,
    not_used=not_used,
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
