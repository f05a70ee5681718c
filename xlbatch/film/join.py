"""Joins what lies together: rows of one design in the same film, layer and side, placed relative to one another, become
one decal, cut, weeded, placed and pressed as one.

It is decided once a design, from the top down: a part joins those above it where the piece fits film and plate in
every size of the job, lies over nothing else and does not take much more film.
"""

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence

from xlbatch.film.box import Bed, Box, bed_of, box_of, um
from xlbatch.film.strip_lengths import least_lengths
from xlbatch.job.job import JOINED, Film, Job
from xlbatch.placement.pieces import one_drawing, pieces
from xlbatch.placement.place import Extent, Place, around
from xlbatch.placement.sections import sections
from xlbatch.trade.tables import practice

TOGETHER = round(practice("shirts that share a strip, where their number is not fixed"))
SAMPLE, TRIES = 60, 50  # garments that film is measured on, and tries for a strip of theirs
NOTHING_CUT: Mapping[int, Collection[str]] = {}

Stack = tuple[str, str, str, str, int, str]  # design, film, outline film, side, layer, the position all hang from
Garments = Mapping[int, Sequence[Place]]  # the places of each garment
Clusters = Mapping[Stack, Sequence[Sequence[str]]]  # the names of the rows that are joined


def join(job: Job, places: Sequence[Place], cut: Mapping[int, Collection[str]] = NOTHING_CUT) -> tuple[Place, ...]:
    """The places with the parts that are one piece made one, in garment and design order.

    `cut`: the pieces that lie cut already, by garment number: they are joined, or not, as they were cut."""
    garments: dict[int, list[Place]] = defaultdict(list)
    for place in places:
        garments[place.garment.no].append(place)
    clusters = _clusters(job, garments) if job.settings.join else {}
    if not clusters and not any(JOINED in piece for pieces_ in cut.values() for piece in pieces_):
        return tuple(places)
    return tuple(place for no, of_one in garments.items() for place in _joined(job, of_one, clusters, cut.get(no, ())))


def _clusters(job: Job, garments: Garments) -> Clusters:
    """The rows that are joined, of each design's stacks."""
    stacks: dict[Stack, dict[int, list[Place]]] = defaultdict(dict)
    for no, of_one in garments.items():
        for stack, members in _stacks(job, of_one).items():
            stacks[stack][no] = members
    return {
        stack: _chosen(job, of_each, garments)
        for stack, of_each in stacks.items()
        if any(len(_names(members)) > 1 for members in of_each.values())
    }


def _stacks(job: Job, of_one: Sequence[Place]) -> Mapping[Stack, list[Place]]:
    """One garment's places that might be joined, from the top down."""
    positions = {place.decal.spec.position.casefold() for place in of_one}
    stacks: dict[Stack, list[Place]] = defaultdict(list)
    for place in sorted(of_one, key=lambda it: -it.extent.top):
        if place.decal.outline is not None:
            stacks[_stack(job, place, positions)].append(place)
    return stacks


def _stack(job: Job, place: Place, positions: set[str]) -> Stack:
    spec, blank = place.decal.spec, place.garment.blank
    position = job.position(spec.position, blank.for_, blank.neckline)
    root = position.top_of(positions) if position else ""
    return spec.design.casefold(), spec.film.casefold(), spec.outline_film.casefold(), place.side, spec.layer, root


def _names(places: Iterable[Place]) -> list[str]:
    return list(dict.fromkeys(place.decal.spec.decal for place in places))


def _chosen(job: Job, members: Garments, garments: Garments) -> Sequence[Sequence[str]]:
    """The rows of a stack from the top down, those together that are joined."""
    clusters: list[list[str]] = [[]]
    for name in _names(place for places in members.values() for place in places):
        tried = [*clusters[-1], name]
        sets = {no: [it for it in places if it.decal.spec.decal in tried] for no, places in members.items()}
        if len(tried) == 1 or _is_better(job, sets, garments):
            clusters[-1] = tried
        else:
            clusters.append([name])
    return clusters


def _is_better(job: Job, sets: Garments, garments: Garments) -> bool:
    """Whether these rows are to be one piece of each film on every garment that has several of them."""
    films = {film.name: film for film in job.films}
    several: dict[str, list[list[Place]]] = defaultdict(list)
    for no, places in sets.items():
        for border in (False, True) if len(_names(places)) > 1 else ():
            if them := [place for place in places if place.decal.border == border]:
                several[them[0].decal.film].append(them)
                if not _fits(job, films[them[0].decal.film], them, garments[no]):
                    return False
    apart = joined = 0
    for name, of_film in several.items():
        bed, sample = bed_of(films[name], job.settings), of_film[:: -(-len(of_film) // SAMPLE)]
        apart += _film([[box_of(place.decal, bed.gap) for place in places] for places in sample], bed)
        joined += _film([[_box(around(places), bed.gap)] for places in sample], bed)
    return joined <= apart * practice("a joined piece may take so much film of what its parts take")


def _fits(job: Job, film: Film, places: Sequence[Place], of_one: Sequence[Place]) -> bool:
    """Whether they fit film and plate as one piece, which lies over nothing but films of its own drawings."""
    bed, box = bed_of(film, job.settings), around(places)
    return (
        any(along <= bed.longest for _, along in bed.ways(_box(box, bed.gap)))
        and len(sections(box.right - box.left, box.top - box.bottom, job.presses[0])) == 1
        and not _lies_over_another(places, box, of_one)
    )


def _film(boxes: Sequence[Sequence[Box]], bed: Bed) -> int:
    """About how much film garments with these boxes take, a few in a strip."""
    strips = [
        [box for few in boxes[first : first + TOGETHER] for box in few] for first in range(0, len(boxes), TOGETHER)
    ]
    return int(least_lengths(strips, bed, TRIES).sum())


def _box(box: Extent, gap: int) -> Box:
    return um(box.right - box.left) + gap, um(box.top - box.bottom) + gap


def _lies_over_another(places: Sequence[Place], box: Extent, of_one: Sequence[Place]) -> bool:
    """Whether the piece would lie over a decal that is no other film of one of its drawings."""
    return any(
        other.side == places[0].side
        and other.extent.meets(box)
        and not any(place is other or one_drawing(place, other) for place in places)
        for other in of_one
    )


def _joined(job: Job, of_one: Sequence[Place], clusters: Clusters, cut: Collection[str]) -> Iterable[Place]:
    """One garment's places, the parts of each cluster made one; films of one drawing stay together."""
    positions = {place.decal.spec.position.casefold() for place in of_one}
    sets: dict[object, list[Place]] = {}
    for place in of_one:
        stack = _stack(job, place, positions)
        cluster = next((names for names in clusters.get(stack, ()) if place.decal.spec.decal in names), None)
        key: object = (stack, tuple(cluster), place.decal.border) if cluster and place.decal.outline else id(place)
        if as_cut := next((piece for piece in cut if place.decal.piece in piece.split(JOINED)), None):
            key = as_cut if JOINED in as_cut else id(place)
        sets.setdefault(key, []).append(place)
    return pieces(job.presses[0], tuple(sets.values()))
