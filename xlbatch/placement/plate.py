"""How many times the plate comes down to cover a decal."""

import math

from xlbatch.roster.job import Press


def plate_placements(width: float, height: float, press: Press) -> int:
    """Plate placements for a decal of width × height (mm), in overlapping sections, either way round."""

    def sections(across: float, down: float) -> int:
        return _along(width, across, press.overlap) * _along(height, down, press.overlap)

    return min(sections(press.width, press.depth), sections(press.depth, press.width))


def _along(length: float, plate: float, overlap: float) -> int:
    """Sections of `plate` that cover `length`, each overlapping the one before."""
    if length <= plate:
        return 1
    return 1 + math.ceil((length - plate) / max(plate - overlap, 1.0) - 1e-9)
