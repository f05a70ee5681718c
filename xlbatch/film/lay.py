"""Turns decals into strips, runs and film to buy."""

from collections import defaultdict
from collections.abc import Sequence

from xlbatch.art.decal import Decal
from xlbatch.check.garment import Garment
from xlbatch.film.batches import FilmBoxes, choose_batches
from xlbatch.film.box import bed_of, box_of
from xlbatch.film.layout import Batch, FilmNeed, Layout, Run
from xlbatch.film.purchase import film_need
from xlbatch.film.runs import fill_runs
from xlbatch.film.strips import lay_strips
from xlbatch.film.verify import faults
from xlbatch.roster.job import Film, Job, Settings

TRIES = (50, 1500)  # for a strip of a chosen batch: at effort 0, and above; never fewer than it was chosen with

ByGarment = dict[str, dict[int, list[Decal]]]  # by film name, then by garment number


def lay(job: Job, garments: tuple[Garment, ...], decals: tuple[Decal, ...], effort: int) -> Layout:
    """All decals on film, strips numbered alike in every film. Raises RuntimeError if its verifier finds a fault."""
    by_garment = _by_garment(decals)
    films = [film for film in job.films if film.name in by_garment]
    batches = _batches(films, garments, by_garment, job.settings, effort)
    runs: list[Run] = []
    needs: list[FilmNeed] = []
    for film in films:
        laid = _runs(film, batches, by_garment[film.name], job.settings, effort, len(runs) + 1)
        cut, need = film_need(film, laid, job.settings)
        runs += cut
        needs.append(need)
    layout = Layout(batches, tuple(runs), tuple(needs))
    if wrong := faults(layout, decals, job.settings):
        raise RuntimeError(f"the layout is wrong: {wrong[0]}")
    return layout


def _by_garment(decals: Sequence[Decal]) -> ByGarment:
    found: ByGarment = defaultdict(lambda: defaultdict(list))
    for decal in decals:
        found[decal.film][decal.garment_no].append(decal)
    return found


def _batches(
    films: Sequence[Film], garments: Sequence[Garment], by_garment: ByGarment, settings: Settings, effort: int
) -> tuple[Batch, ...]:
    numbers = [garment.no for garment in garments if any(garment.no in by_garment[film.name] for film in films)]
    if not numbers:
        return ()
    beds = [bed_of(film, settings) for film in films]
    boxes = [
        FilmBoxes(bed, tuple(tuple(box_of(d, bed.gap) for d in by_garment[film.name].get(no, ())) for no in numbers))
        for film, bed in zip(films, beds, strict=True)
    ]
    chosen = choose_batches(boxes, settings.shirts_per_strip, effort)
    return tuple(Batch(at, tuple(numbers[each] for each in group)) for at, group in enumerate(chosen, 1))


def _runs(
    film: Film,
    batches: Sequence[Batch],
    by_garment: dict[int, list[Decal]],
    settings: Settings,
    effort: int,
    first_no: int,
) -> tuple[Run, ...]:
    sets = [(batch.no, [decal for no in batch.garments for decal in by_garment.get(no, ())]) for batch in batches]
    strips = lay_strips([each for each in sets if each[1]], bed_of(film, settings), TRIES[min(effort, 1)])
    return fill_runs(film, strips, settings, first_no)
