"""What to mind at a step, in a few words."""

from collections.abc import Callable, Iterator, Sequence

from xlbatch.job.job import Settings
from xlbatch.placement.place import Place
from xlbatch.press.step import PressStep
from xlbatch.sheets.banner import IRON
from xlbatch.units import length_text, printed_text


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
    """Where the middle of the plate comes down, from the middle of the decal: the first time, and then how far on."""
    if place.presses == 1:
        return ""
    across = sorted({section.right for section in place.sections})
    down = sorted({-section.up for section in place.sections})
    ways = ((across, "across", "right", "left"), (down, "down", "down", "up"))
    spots = "; ".join(_spots(*way, settings.length_unit) for way in ways if len(way[0]) > 1)
    return f"plate's middle from the decal's: {spots}"


def _spots(offsets: Sequence[float], along: str, toward: str, back: str, unit: str) -> str:
    """`3 across: first 4 in left, then each 4 in right`."""
    first, apart = (length_text(length, unit) for length in (-offsets[0], offsets[1] - offsets[0]))
    return f"{len(offsets)} {along}: first {first} {back}, then {'each ' if len(offsets) > 2 else ''}{apart} {toward}"
