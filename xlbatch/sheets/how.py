"""What to mind at a step, in a few words."""

from collections.abc import Iterator

from xlbatch.job.job import Settings
from xlbatch.placement.place import Place
from xlbatch.placement.sections import Section
from xlbatch.press.step import Step
from xlbatch.units import printed_text


def how(step: Step, settings: Settings, *, film: bool, piece: bool) -> str:
    """`film`: films of the same heat differ in their times, `piece`: the position holds several pieces."""
    return "; ".join(filter(None, _said(step, settings, film, piece)))


def _said(step: Step, settings: Settings, film: bool, piece: bool) -> Iterator[str]:
    numbers = (spec.what == "number" for spec in step.place.decal.specs)
    yield step.place.decal.text if any(numbers) else ""  # not to be told by its size
    yield step.film.name if film else ""
    yield step.place.decal.piece if piece else ""
    yield from_below(step.place, settings)
    yield step.how
    yield sections_text(step.place, settings)


def from_below(place: Place, settings: Settings) -> str:
    """Where the bottom edge comes, for a position that is measured from below."""
    unit = settings.length_unit
    if place.register:
        return ""
    if place.above_opening is not None:
        return f"bottom edge {printed_text(place.above_opening, unit)} above the sleeve opening"
    if place.above_hem is not None:
        return f"bottom edge {printed_text(place.above_hem, unit)} above the hem"
    return ""


def sections_text(place: Place, settings: Settings) -> str:
    """Where the middle of the plate comes down, section by section, from the middle of the decal."""
    if place.presses == 1:
        return ""
    spots = (f"{at}) {_spot(section, settings)}" for at, section in enumerate(place.sections, 1))
    return f"plate's middle from the decal's: {', '.join(spots)}"


def _spot(section: Section, settings: Settings) -> str:
    sides = ((section.right, "right", "left"), (section.up, "up", "down"))
    said = [
        f"{printed_text(abs(off), settings.length_unit)} {one if off > 0 else other}"
        for off, one, other in sides
        if abs(off) > 1
    ]
    return " and ".join(said) or "on it"
