"""The plan looked up the way the pages need it: by garment, by decal, by strip."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from xlbatch.art.decal import Decal
from xlbatch.check.garment import Garment
from xlbatch.film.layout import Run, Strip
from xlbatch.placement.group import groups
from xlbatch.placement.place import Place, Register
from xlbatch.plan import Plan
from xlbatch.press.step import Step
from xlbatch.sheets.line_up import NEAR
from xlbatch.shopping.lines import MoneyLine
from xlbatch.units import LengthUnit, length_text, printed_text


@dataclass(frozen=True)
class Work:
    """A plan and its parts by number: garments and money by garment number, places and strips by decal."""

    plan: Plan
    garments: Mapping[int, Garment]
    decals: Mapping[int, tuple[Decal, ...]]
    places: Mapping[str, Place]
    lies: Mapping[str, tuple[Run, Strip]]
    steps: Mapping[int, tuple[Step, ...]]
    money: Mapping[int, MoneyLine]

    @property
    def unit(self) -> LengthUnit:
        return self.plan.job.settings.length_unit

    def garment_text(self, garment: Garment) -> str:
        """The garment, and its color where the job has several."""
        several = len({each.color.casefold() for each in self.plan.garments}) > 1
        return f"{garment.blank.garment}, {garment.color}" if several else garment.blank.garment

    def on_it(self, no: int) -> str:
        """What is on a garment, in the words of whoever ordered it: `Lantern, ANA; back 07`."""
        sides: dict[str, list[str]] = {}
        for group in groups(decal for decal in self.decals[no] if not decal.border):
            parts = (part for decal in group.decals for part in decal.parts or (decal,))
            says = dict.fromkeys(part.text or part.spec.decal for part in parts)
            sides.setdefault(self.places[group.decals[0].id].side, []).extend(says)
        front = ", ".join(sides.pop("front", []))
        return "; ".join(filter(None, [front, *(f"{side} {', '.join(them)}" for side, them in sides.items())]))


def look_up(plan: Plan) -> Work:
    """The plan's parts by number."""
    decals, steps = defaultdict(list), defaultdict(list)
    for decal in plan.decals:
        decals[decal.garment_no].append(decal)
    for step in plan.pressing.steps:
        steps[step.place.garment.no].append(step)
    return Work(
        plan=plan,
        garments={garment.no: garment for garment in plan.garments},
        decals={no: tuple(them) for no, them in decals.items()},
        places={place.decal.id: place for place in plan.places},
        lies={
            lying.decal.id: (run, strip) for run in plan.layout.runs for strip in run.strips for lying in strip.lying
        },
        steps={no: tuple(them) for no, them in steps.items()},
        money={line.no: line for line in plan.money},
    )


def bare(mm: float, unit: LengthUnit) -> str:
    """A printed length without its unit: `3 1/8`."""
    return printed_text(mm, unit).removesuffix(f" {unit}")


def size_text(width: float, height: float, unit: LengthUnit) -> str:
    """`9 × 1 3/4 in`."""
    return f"{bare(width, unit)} × {printed_text(height, unit)}"


def where_text(place: Place, unit: LengthUnit) -> tuple[str, str]:
    """How far a piece lies from the seam it is measured from, and its direction: `3 in`, `below front collar seam`."""
    if place.above_opening is not None:
        return printed_text(place.above_opening, unit), f"above {place.measured_from}"
    if place.above_hem is not None:
        return printed_text(place.above_hem, unit), "above the hem"
    return printed_text(place.below_collar or 0.0, unit), f"below {place.measured_from}"


def corner_text(register: Register, unit: LengthUnit) -> str:
    """How far a layer's top left corner lies from that of the piece under it: `2 5/8 in down, 1/4 in left`."""
    sides = ((register.from_top, "down", "up"), (register.from_left, "right", "left"))
    said = [
        f"{length_text(abs(off), unit)} {more if off > 0 else less}" for off, more, less in sides if abs(off) > NEAR
    ]
    return ", ".join(said) or "corner on corner"


def aside_text(place: Place, unit: LengthUnit) -> str:
    """How far its middle lies from the center crease; nothing where it lies on it."""
    off = place.from_center
    if place.register or printed_text(abs(off), unit) == printed_text(0, unit):
        return ""
    return f"{printed_text(abs(off), unit)} to wearer’s {'right' if off > 0 else 'left'}"


def listed(names: Iterable[object]) -> str:
    """`1, 2, 3`."""
    return ", ".join(map(str, names))
