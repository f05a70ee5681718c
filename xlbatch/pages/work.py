"""The plan looked up the way the pages need it: by garment, by decal, by strip."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from pathlib import PurePath

from xlbatch.art.decal import Decal
from xlbatch.check.garment import Garment
from xlbatch.film.layout import Run, Strip
from xlbatch.job.job import DecalSpec
from xlbatch.kept.memory import KeptDecal
from xlbatch.placement.place import Place, Register
from xlbatch.plan import Plan
from xlbatch.press.step import PressStep
from xlbatch.sheets.cut_list import ready_strips
from xlbatch.shopping.lines import MoneyLine
from xlbatch.units import LengthUnit, length_text, printed_text

FINE_STEP = {"in": 25.4 / 16, "cm": 1.0, "mm": 1.0}  # mm: layers are laid on to this


@dataclass(frozen=True)
class Work:
    """A plan and its parts by number: garments and money by garment number, places and strips by decal; `ready`: what
    is cut and still to press, by film, run and strip."""

    plan: Plan
    garments: Mapping[int, Garment]
    decals: Mapping[int, tuple[Decal, ...]]
    places: Mapping[str, Place]
    lies: Mapping[str, tuple[Run, Strip]]
    ready: Mapping[tuple[str, int, int], Sequence[KeptDecal]]
    steps: Mapping[int, tuple[PressStep, ...]]
    money: Mapping[int, MoneyLine]

    @property
    def unit(self) -> LengthUnit:
        return self.plan.job.settings.length_unit

    @cached_property
    def to_weed(self) -> Mapping[tuple[str, int, int], Sequence[KeptDecal]]:
        """The strips that were cut before and are not weeded."""
        return {place: decals for place, decals in self.ready.items() if any(decal.state == "cut" for decal in decals)}

    @cached_property
    def strip_of(self) -> Mapping[str, int]:
        """The strip of each piece to press, by decal: to be cut, or cut before."""
        before = {decal.id: strip for (_, _, strip), decals in self.ready.items() for decal in decals}
        return before | {decal: strip.batch for decal, (_, strip) in self.lies.items()}

    @cached_property
    def same(self) -> frozenset[tuple[str, str]]:
        """What is on every garment alike."""
        return (
            frozenset.intersection(*(frozenset(self._says(no)) for no in self.garments))
            if self.garments
            else frozenset()
        )

    def what_differs(self, no: int) -> str:
        """What is on a garment and not on all of them; all of it where nothing differs."""
        return _told(text for text in self._says(no) if text not in self.same) or self.on_it(no)

    def garment_text(self, garment: Garment) -> str:
        """The garment, and its color where the job has several."""
        return f"{garment.blank.garment}, {garment.color}" if self._many_colored else garment.blank.garment

    @cached_property
    def _many_colored(self) -> bool:
        return len({garment.color.casefold() for garment in self.plan.garments}) > 1

    @cached_property
    def one_kind(self) -> bool:
        """Whether all garments are called alike."""
        return len({self.garment_text(garment) for garment in self.plan.garments}) == 1

    @cached_property
    def only_names(self) -> bool:
        """Whether every piece says just the name of whoever it is for."""
        return all(decal.text == self.garments[decal.garment_no].who for decal in self.plan.decals)

    def on_it(self, no: int) -> str:
        """What is on a garment, in the words of whoever ordered it: `Lantern, Ana; back Marsh, 07`."""
        return _told(self._says(no))

    def _says(self, no: int) -> tuple[tuple[str, str], ...]:
        """Every text and drawing: its side, and what it says."""
        texts: dict[tuple[str, str], None] = {}
        for decal in (decal for decal in self.decals.get(no, ()) if not decal.border):
            side = self.places[decal.id].side
            for part in decal.parts or (decal,):
                text = part.text or drawing_name(part.spec)
                texts[side, text] = None
        return tuple(texts)


def _told(says: Iterable[tuple[str, str]]) -> str:
    """Side by side, the front without its name."""
    of: dict[str, list[str]] = {}
    for side, text in says:
        of.setdefault(side, []).append(text)
    return "; ".join(f"{side} {', '.join(texts)}".removeprefix("front ") for side, texts in of.items())


def drawing_name(spec: DecalSpec) -> str:
    """What a drawing is called: by its file, since its films are all one to whoever wears it."""
    return PurePath(spec.artwork).stem.replace("_", " ").capitalize() if spec.artwork else spec.decal


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
        ready=ready_strips(plan),
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
    """How far a layer's top left corner lies from that of the piece under it: `2 5/8↓ 3/16→ in`."""
    sides = ((register.from_top, "↓", "↑"), (register.from_left, "→", "←"))
    step = FINE_STEP[unit]
    steps = ((round(abs(off) / step) * step, more if off > 0 else less) for off, more, less in sides)
    far = [f"{length_text(mm, unit).removesuffix(f' {unit}')}{way}" for mm, way in steps if mm]
    return f"{' '.join(far)} {unit}" if far else "corner on corner"


def aside_text(place: Place, unit: LengthUnit) -> str:
    """How far its middle lies from the center crease; nothing where it lies on it."""
    off = place.from_center
    if place.register or printed_text(abs(off), unit) == printed_text(0, unit):
        return ""
    return f"{printed_text(abs(off), unit)} to wearer’s {'right' if off > 0 else 'left'}"


def listed(names: Iterable[object]) -> str:
    """`1, 2, 3`."""
    return ", ".join(map(str, names))
