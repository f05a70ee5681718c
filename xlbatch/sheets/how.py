"""What to mind at a step, in a few words."""

from collections.abc import Callable, Iterator

from xlbatch.job.job import Settings
from xlbatch.placement.place import Place
from xlbatch.placement.sections import Section
from xlbatch.press.step import PressStep
from xlbatch.sheets.banner import IRON
from xlbatch.units import printed_text


def how(step: PressStep, settings: Settings, *, film: bool, piece: bool) -> str:
    """`film`: films of the same heat differ in their times, `piece`: the position holds several pieces."""
    return "; ".join(filter(None, _said(step, settings, film, piece)))


def _said(step: PressStep, settings: Settings, film: bool, piece: bool) -> Iterator[str]:
    numbers = (spec.what == "number" for spec in step.place.decal.specs)
    yield step.place.decal.text if any(numbers) else ""  # not to be told by its size
    yield step.film.name if film else ""
    yield step.place.decal.piece if piece else ""
    yield from_below(step.place, settings)
    yield from minded(step)
    yield sections_text(step.place, settings)


def minded(step: PressStep, called: Callable[[str], str] = str, together: str = "with step {no}") -> Iterator[str]:
    """What to mind when this step is pressed, wherever it goes; "" where there is nothing of a kind. `called` gives a
    decal's name for its number, `together` says that it shares a closing of the plate."""
    yield "trial" if step.trial else ""
    yield "cover sheet" if step.press.kind == IRON else ""
    yield together.format(no=step.with_step) if step.with_step else ""
    yield f"cover {', '.join(map(called, step.cover))}" if step.cover else ""
    yield f"tack {step.front:g} s" if step.tack else ""
    yield _grid(step) if step.place.presses > 1 else ""


def _grid(step: PressStep) -> str:
    """The sections in words: `2 sections, left to right`."""
    across = len({section.right for section in step.place.sections})
    down = len({section.up for section in step.place.sections})
    ways = ", ".join(way for way, count in (("left to right", across), ("top to bottom", down)) if count > 1)
    return f"{step.place.presses} sections, {ways}"


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
    spots = (f"{number}) {_spot(section, settings)}" for number, section in enumerate(place.sections, 1))
    return f"plate's middle from the decal's: {', '.join(spots)}"


def _spot(section: Section, settings: Settings) -> str:
    sides = ((section.right, "right", "left"), (section.up, "up", "down"))
    offsets = [
        f"{printed_text(abs(off), settings.length_unit)} {toward if off > 0 else other}"
        for off, toward, other in sides
        if abs(off) > 1
    ]
    return " and ".join(offsets) or "on it"
