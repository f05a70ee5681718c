"""Says where slightly smaller artwork would halve how often the plate is set down."""

from collections import defaultdict
from collections.abc import Iterable, Iterator

from xlbatch.job.job import Job, Press
from xlbatch.placement.place import Place
from xlbatch.placement.sections import sections
from xlbatch.problems import Problem, problem
from xlbatch.trade.tables import practice
from xlbatch.units import length_text, print_step, printed_text

MOST_TOLD = 3  # sizes of a decal


def fewer_sections(job: Job, places: Iterable[Place]) -> tuple[Problem, ...]:
    """One note for each piece with artwork of which a size is just too large for the plate."""
    several: dict[tuple[str, int, str], list[Place]] = defaultdict(list)
    for place in places:
        if place.presses > 1 and any(spec.what == "artwork" for spec in place.decal.specs):
            source = place.decal.spec.source
            several[source.sheet, source.row, place.decal.piece].append(place)
    return tuple(noted for them in several.values() for noted in _noted(job, them))


def _noted(job: Job, places: Iterable[Place]) -> Iterator[Problem]:
    """The largest of its sizes that would do with half the placements, and what others would do so too."""
    unit = job.settings.length_unit
    smaller = [(place, width) for place in places if (width := less_wide(place, job.presses[0], print_step(unit)))]
    if not smaller:
        return
    place, width = smaller[0]
    told = dict.fromkeys(
        f"{length_text(less, unit)} wide on {it.garment.blank.size}, now {printed_text(it.decal.width, unit)}"
        for it, less in smaller
    )
    spec = place.decal.spec
    yield problem(
        "sections-fewer",
        spec.source.at("Width") if spec.source.row else place.garment.row.source.at("Size"),
        printed_text(place.decal.width, unit),
        rows=tuple(dict.fromkeys(small.garment.row.source.row for small, _ in smaller)),
        decal=place.decal.piece,
        count=place.presses,
        fewer=_count(place, width, job.presses[0]),
        sizes="; ".join(list(told)[:MOST_TOLD]),
    )


def less_wide(place: Place, press: Press, step: float) -> float | None:
    """The greatest width in whole `step`s (mm), not much less than its own, at which half the placements or fewer cover
    it; its shape kept. None where there is none."""
    width = place.decal.width
    least = width * practice("how much smaller artwork may be made for half the placements of the plate")
    whole = int(width / step + 1e-6) * step
    while whole >= least:
        if 2 * _count(place, whole, press) <= place.presses:
            return round(whole, 3)
        whole -= step
    return None


def _count(place: Place, width: float, press: Press) -> int:
    """How many placements cover it, made so wide."""
    return len(sections(width, place.decal.height * width / place.decal.width, press))
