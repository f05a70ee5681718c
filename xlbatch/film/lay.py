"""Turns decals into strips, runs and film to buy."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from xlbatch.art.decal import Decal
from xlbatch.check.garment import Garment
from xlbatch.fault import Disagreement
from xlbatch.film.batch_costs import FilmBoxes, Larger
from xlbatch.film.batches import choose_batches
from xlbatch.film.box import Bed, bed_of, box_of, um
from xlbatch.film.interlock import interlock
from xlbatch.film.layout import Batch, FilmNeed, Layout, Lever, Run, Strip
from xlbatch.film.levers import WORTH, best_lever
from xlbatch.film.purchase import film_need
from xlbatch.film.strips import lay_strips
from xlbatch.film.verify import faults
from xlbatch.film.work_order import in_work_order, likeness
from xlbatch.how_far import percent, tell
from xlbatch.job.job import Film, Job, Settings
from xlbatch.trade.tables import practice

TRIES = (50, 1500)  # for a strip of a chosen batch: at effort 0, and above; never fewer than it was chosen with
ROOM = (1.2, 1.0)  # how much longer than allowed boxes are tried that interlocking may shorten enough

MOST_TRIED = 1000  # garments: with more, no other settings are tried
USUAL = round(practice("shirts that share a strip, where their number is not fixed"))
MOST = round(practice("most shirts that share a strip while it stays handy"))

Group = tuple[int, ...]  # the numbers of a batch's garments
Strips = dict[str, Strip]  # a batch's strips by their films' names


def lay(job: Job, garments: tuple[Garment, ...], decals: tuple[Decal, ...], effort: int) -> Layout:
    """All decals on film, strips numbered alike in every film. Raises Disagreement if its verifier finds a fault."""
    used = {decal.garment_no for decal in decals}
    places = likeness(job, (garment for garment in garments if garment.no in used), decals)
    work = _work(job, decals, effort, places)
    with percent(0, 70):
        strips = work.strips([garment.no for garment in garments if garment.no in used])
    batches = tuple(Batch(no, group) for no, group in enumerate(strips, 1))
    runs: list[Run] = []
    needs: list[FilmNeed] = []
    for film_no, film in enumerate(work.films):
        tell(70 + 30 * film_no / len(work.films), 100)
        own = [(batch.no, strips[batch.garments].get(film.name)) for batch in batches]
        numbered = [replace(strip, batch=no) for no, strip in own if strip]
        cut, need = film_need(film, numbered, job.settings, len(runs) + 1)
        runs += cut
        needs.append(need)
    layout = Layout(*in_work_order(batches, runs, places, job.settings), tuple(needs))
    if wrong := faults(layout, decals, job.settings):
        raise Disagreement(wrong[0])
    return replace(layout, lever=_lever(job, layout, decals, places)) if effort else layout


def _lever(job: Job, layout: Layout, decals: Sequence[Decal], places: Mapping[int, int]) -> Lever | None:
    """What would save film that the strips cost, where there is enough of it to try anything."""
    settings = job.settings
    now = sum(strip.length + settings.gap for run in layout.runs for strip in run.strips)
    free = sum(need.free + settings.gap for need in layout.needs)
    if settings.interlock or len(places) > MOST_TRIED or now - free < WORTH:
        return None
    numbers = sorted({decal.garment_no for decal in decals})

    def length(changed: Settings) -> float:
        strips = _work(replace(job, settings=changed), decals, 0, places).strips(numbers)
        return sum(strip.length + settings.gap for of_batch in strips.values() for strip in of_batch.values())

    return best_lever(settings, now, length)


@dataclass(frozen=True)
class _FilmsUsed:
    """The films used, and each garment's decals of every film."""

    films: Sequence[Film]
    beds: Sequence[Bed]
    decals: Sequence[dict[int, list[Decal]]]  # of each film, by garment number
    settings: Settings
    effort: int
    places: Mapping[int, int]  # of the garments in an order that has like shirts next to one another

    def strips(self, numbers: Sequence[int]) -> dict[Group, Strips]:
        """The batches and their strips, in the order of their first garments on the roster.

        Batches are chosen by boxes. Interlocked, those that are too long may still make strips that are short enough:
        they are tried first, and what is still too long is chosen anew."""
        done_strips: dict[Group, Strips] = {}
        left = list(numbers)
        for room in ROOM if self.settings.interlock else ROOM[-1:]:
            groups = self._groups(left, room)
            laid = zip(groups, self._laid(groups), strict=True)
            done_strips.update((group, strips) for group, strips in laid if len(group) == 1 or self._fits(strips))
            done = {no for group in done_strips for no in group}
            left = [no for no in left if no not in done]
        place = {no: number for number, no in enumerate(numbers)}
        return dict(sorted(done_strips.items(), key=lambda of_group: place[of_group[0][0]]))

    def _groups(self, numbers: Sequence[int], room: float) -> list[Group]:
        if not numbers:
            return []
        boxes = [
            FilmBoxes(
                replace(bed, longest=round(bed.longest * room)),
                tuple(tuple(box_of(decal, bed.gap) for decal in decals.get(no, ())) for no in numbers),
            )
            for bed, decals in zip(self.beds, self.decals, strict=True)
        ]
        fixed, handy = self.settings.shirts_per_strip, um(self.settings.handy_strip)
        larger = Larger(MOST, handy + self.beds[0].gap) if fixed is None and not self.settings.interlock else None
        chosen = choose_batches(boxes, fixed or USUAL, self.effort, larger, [self.places[no] for no in numbers])
        return [tuple(numbers[garment] for garment in group) for group in chosen]

    def _laid(self, groups: Sequence[Group]) -> list[Strips]:
        """The strips of each group."""
        laid: list[Strips] = [{} for _ in groups]
        for film, bed, decals in zip(self.films, self.beds, self.decals, strict=True):
            sets = [
                (group_no, [decal for no in group for decal in decals.get(no, ())])
                for group_no, group in enumerate(groups)
            ]
            strips = lay_strips([of_batch for of_batch in sets if of_batch[1]], bed, TRIES[min(self.effort, 1)])
            if self.settings.interlock:
                strips = interlock(strips, bed, self.effort, mirrored=self.settings.mirror)
            for strip in strips:
                laid[strip.batch][film.name] = strip
        return laid

    def _fits(self, strips: Strips) -> bool:
        """Whether no strip is longer than allowed."""
        beds = {film.name: bed for film, bed in zip(self.films, self.beds, strict=True)}
        return all(um(strip.length) + beds[name].gap <= beds[name].longest for name, strip in strips.items())


def _work(job: Job, decals: Sequence[Decal], effort: int, places: Mapping[int, int]) -> _FilmsUsed:
    by_garment: dict[str, dict[int, list[Decal]]] = defaultdict(lambda: defaultdict(list))
    for decal in decals:
        by_garment[decal.film][decal.garment_no].append(decal)
    films = [film for film in job.films if film.name in by_garment]
    beds = [bed_of(film, job.settings) for film in films]
    return _FilmsUsed(films, beds, [by_garment[film.name] for film in films], job.settings, effort, places)
