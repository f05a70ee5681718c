"""Judges a whole plan before it is written: it shares no code with what made it, only the records.

Each rule gives what is wrong in words that hold nothing of the list; nothing where all agrees.
"""

import math
from collections import Counter, defaultdict
from collections.abc import Collection, Iterator
from decimal import Decimal

from xlbatch.job.job import JOINED
from xlbatch.kept.memory import READY
from xlbatch.plan import Plan

NEAR = 0.01  # mm: lengths are rounded to 0.001


def disagreements(plan: Plan, cut_files: Collection[str]) -> tuple[str, ...]:
    """What is wrong with a plan and the files that are written beside it."""
    return (*_names_of_files_wrong(plan, cut_files), *(wrong for rule in RULES for wrong in rule(plan)))


def _decals_wrong(plan: Plan) -> Iterator[str]:
    """Every decal has a number of its own, belongs to a garment of the plan, has one place and is pressed once."""
    garments = {garment.no for garment in plan.garments}
    yield from (
        f"decal {decal.id} is of garment {decal.garment_no}, which is not planned"
        for decal in plan.decals
        if decal.garment_no not in garments
    )
    ids = Counter(decal.id for decal in plan.decals)
    yield from (f"decal number {id_} is given {times} times" for id_, times in ids.items() if times != 1)
    places = Counter((place.decal.id, place.garment.no) for place in plan.places)
    steps = Counter((step.place.decal.id, step.place.garment.no) for step in plan.pressing.steps)
    wanted = {(decal.id, decal.garment_no) for decal in plan.decals}
    for where, counted in (("in Placement", places), ("in Press log", steps)):
        yield from (f"decal {key[0]} is {counted[key]} times {where}" for key in wanted if counted[key] != 1)
        yield from (f"decal {key[0]} {where} is no decal of its garment" for key in counted if key not in wanted)


def _garments_wrong(plan: Plan) -> Iterator[str]:
    """Every garment has a number of its own, gets all that is still to go on it, and is pressed in one batch."""
    numbers = Counter(garment.no for garment in plan.garments)
    yield from (f"garment number {no} is given {times} times" for no, times in numbers.items() if times != 1)
    pieces: dict[int, set[str]] = defaultdict(set)
    drawn: dict[int, set[str]] = defaultdict(set)  # drawings, of which other words may leave no ink of a color
    for decal in plan.decals:
        pieces[decal.garment_no] |= {decal.piece, *decal.piece.split(JOINED)}
        drawn[decal.garment_no] |= {spec.artwork for spec in decal.specs}
    for garment in plan.garments:
        rows = (spec for spec in garment.to_do if not (spec.artwork_color and spec.artwork in drawn[garment.no]))
        to_go_on = {piece for spec in rows for piece in spec.pieces} - set(garment.row.done_so_far)
        if lacking := to_go_on - pieces[garment.no]:
            yield f"garment {garment.no} lacks {len(lacking)} decals"
    batches: dict[int, set[int]] = defaultdict(set)
    for step in plan.pressing.steps:
        batches[step.place.garment.no].add(step.batch)
    yield from (f"garment {no} is pressed in {len(batches[no])} batches" for no in numbers if len(batches[no]) > 1)


def _runs_wrong(plan: Plan) -> Iterator[str]:
    """Every decal lies on one run, or is cut already and lies on none."""
    cut = {kept.id for kept in plan.memory.decals if kept.state in READY}
    times = Counter(lying.decal.id for run in plan.layout.runs for lying in run.lying)
    for decal in plan.decals:
        if times[decal.id] != (decal.id not in cut):
            yield f"decal {decal.id} is on {times[decal.id]} runs{' and cut already' if decal.id in cut else ''}"
    ids = {decal.id for decal in plan.decals}
    yield from (f"decal {id_} is on a run and not asked for" for id_ in times if id_ not in ids)


def _film_sums_wrong(plan: Plan) -> Iterator[str]:
    """What a film comes to is what its runs come to."""
    for need in plan.layout.needs:
        runs = [run for run in plan.layout.runs if run.film.name == need.film.name]
        if need.runs != len(runs) or need.decals != sum(len(run.lying) for run in runs):
            yield f"film {need.film.name} has other runs or decals than its sum says"
        if not math.isclose(need.length, sum(run.length for run in runs), abs_tol=NEAR):
            yield f"the runs of film {need.film.name} are not as long as their sum"
    if sum(need.runs for need in plan.layout.needs) != len(plan.layout.runs):
        yield "there are runs of films that are not counted"


def _blanks_wrong(plan: Plan) -> Iterator[str]:
    """As many blanks are on the shopping list as garments need one."""
    needed = sum(line.needed for line in plan.shopping if line.kind == "blank")
    garments = sum(garment.needs_blank for garment in plan.garments)
    if needed != garments:
        yield f"{garments} garments need a blank and the shopping list has {needed}"


def _money_wrong(plan: Plan) -> Iterator[str]:
    """What garments cost in blanks and film adds up to the shopping list, as long as no price was told before."""
    if any(line.told for line in plan.money):
        return
    films = [need.cost for need in plan.layout.needs]
    blanks = [line.cost for line in plan.shopping if line.kind == "blank" and line.buy]
    shares = (
        ("blanks", blanks, [line.blank for line in plan.money]),
        ("film", films, [line.film for line in plan.money]),
    )
    for what, costs, parts in shares:
        if parts and None not in (*costs, *parts) and _sum(costs) != _sum(parts):
            yield f"the garments' shares of the {what} do not add up to their cost"


def _sum(amounts: Collection[Decimal | None]) -> Decimal:
    return sum((amount for amount in amounts if amount is not None), Decimal(0))


def _names_of_files_wrong(plan: Plan, cut_files: Collection[str]) -> Iterator[str]:
    """Every run with outlines has its cut files, and no two files have names that some systems take for one."""
    yield from (
        f"run {run.no} lacks its cut file" for run in plan.layout.runs if not set(run.cut_files) <= {*cut_files}
    )
    times = Counter(name.casefold() for name in cut_files)
    yield from (f"{count} files have the same name" for count in times.values() if count > 1)


RULES = (_decals_wrong, _garments_wrong, _runs_wrong, _film_sums_wrong, _blanks_wrong, _money_wrong)
