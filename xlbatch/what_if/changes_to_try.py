"""Single changes that might save something: each is the same list with one thing set otherwise, as a person could."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Any

from xlbatch.art.size import USUAL_CAP_HEIGHT, shrunk
from xlbatch.job.job import DecalSpec
from xlbatch.placement.sections import sections
from xlbatch.plan import Plan
from xlbatch.roster.read import Reading
from xlbatch.trade.tables import table, words
from xlbatch.trade.usual_sizes import artwork_width
from xlbatch.units import exact_length_text, print_step, printed_text

_STEPS = {line["Tried"]: tuple(map(float, words(line["Steps"]))) for line in table("what_if_steps")}
SMALLER = _STEPS["pieces smaller, of their size"]
LONGER = _STEPS["a longer cut, of the longest cut"]
MORE_SHIRTS = tuple(map(int, _STEPS["more shirts on a strip"]))
MOST_SHIRTS = int(*_STEPS["shirts on a strip at most"])


@dataclass(frozen=True)
class Change:
    """What is changed, and how to set it so; the list with that change."""

    name: str
    how: str
    reading: Reading


def changes(reading: Reading, plan: Plan) -> tuple[Change, ...]:
    """The changes worth planning for this list, in the order of the rules."""
    return tuple(change for rule in RULES for change in rule(reading, plan))


def _set(reading: Reading, **settings: Any) -> Reading:
    job = replace(reading.job, settings=replace(reading.job.settings, **settings))
    return replace(reading, job=job)


def _smaller_artwork(reading: Reading, plan: Plan) -> Iterator[Change]:
    """The largest size at which the plate needs fewer sections, for all that it now presses in several."""
    press = plan.job.presses[0]
    wide = [place for place in plan.places if place.presses > 1]
    specs = dict.fromkeys((spec.design, spec.decal) for place in wide for spec in place.decal.specs)
    now = sum(place.presses for place in wide)
    for part in SMALLER:
        sizes = [(place.decal.width * part, place.decal.height * part) for place in wide]
        if sum(len(sections(width, height, press)) for width, height in sizes) < now:
            unit = plan.job.settings.length_unit
            made = [
                _made_smaller(spec, part, print_step(unit)) if (spec.design, spec.decal) in specs else spec
                for spec in reading.job.designs
            ]
            how = "; ".join(
                f"{spec.design}, {spec.decal}: {_size(spec, unit)}"
                for spec in made
                if (spec.design, spec.decal) in specs
            )
            yield Change("Pieces a little smaller, in fewer sections", f"Designs: {how}", _designs(reading, made))
            return


def _made_smaller(spec: DecalSpec, part: float, step: float) -> DecalSpec:
    """Rounded down to what is printed, so that it is easily typed."""
    if spec.what == "artwork":
        if spec.width is None and spec.height is not None:
            return replace(spec, height=shrunk(spec.height, part, step))
        return replace(spec, width=shrunk(spec.width or artwork_width(spec.position), part, step))
    widest = None if spec.widest is None else shrunk(spec.widest, part, step)
    return replace(spec, height=shrunk(spec.height or USUAL_CAP_HEIGHT, part, step), widest=widest)


def _size(spec: DecalSpec, unit: Any) -> str:
    named = (("Width", spec.width), ("Height", spec.height), ("Widest", spec.widest))
    return ", ".join(f"{name} {exact_length_text(length, unit)}" for name, length in named if length is not None)


def _designs(reading: Reading, designs: list[DecalSpec]) -> Reading:
    return replace(reading, job=replace(reading.job, designs=tuple(designs)))


def _interlocked(reading: Reading, plan: Plan) -> Iterator[Change]:
    if not plan.job.settings.interlock:
        yield Change("Interlock the decals", "Job: Save film by interlocking = yes", _set(reading, interlock=True))


def _one_film_fewer(reading: Reading, plan: Plan) -> Iterator[Change]:
    """The film with the fewest decals left out, for each other film of the job."""
    needs = sorted(plan.layout.needs, key=lambda need: need.decals)
    for other in needs[1:]:
        left_out = needs[0].film.name
        how = f"Designs: {other.film.name} in place of {left_out}"
        yield Change("One film fewer", how, _refilmed(reading, left_out, other.film.name))


def _refilmed(reading: Reading, old: str, new: str) -> Reading:
    def renamed(name: str) -> str:
        return new if name.casefold() == old.casefold() else name

    return _designs(reading, [
        replace(spec, film=renamed(spec.film), outline_film=renamed(spec.outline_film)) for spec in reading.job.designs
    ])  # fmt: skip


def _more_shirts(reading: Reading, plan: Plan) -> Iterator[Change]:
    most = max((len(batch.garments) for batch in plan.layout.batches), default=0)
    for more in MORE_SHIRTS:
        count = most + more
        if most and count <= min(MOST_SHIRTS, len(plan.garments)):
            yield Change(
                "More shirts a strip", f"Job: Shirts per strip = {count}", _set(reading, shirts_per_strip=count)
            )


def _longer_cut(reading: Reading, plan: Plan) -> Iterator[Change]:
    settings = plan.job.settings
    if max((run.length for run in plan.layout.runs), default=0) < settings.longest_cut / 2:
        return
    for times in LONGER:
        length = settings.longest_cut * times
        how = f"Job: Longest cut = {printed_text(length, settings.length_unit)}"
        yield Change("A longer cut", how, _set(reading, longest_cut=length))


def _no_spares(reading: Reading, plan: Plan) -> Iterator[Change]:
    if plan.job.settings.sureness != 0:
        yield Change("No spares", "Job: Enough spares per 100 jobs = 0", _set(reading, sureness=0.0))


def _one_size(reading: Reading, plan: Plan) -> Iterator[Change]:
    if plan.job.settings.sizes != "one size for all":
        yield Change("One size for all", "Job: Sizes = one size for all", _set(reading, sizes="one size for all"))


Rule = Callable[[Reading, Plan], Iterator[Change]]
RULES: tuple[Rule, ...] = (
    _smaller_artwork,
    _interlocked,
    _one_film_fewer,
    _more_shirts,
    _longer_cut,
    _no_spares,
    _one_size,
)
