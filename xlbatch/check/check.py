"""Job → the garments to make, and problems."""

from collections.abc import Iterable, Mapping

from xlbatch.check.assumed import assumptions
from xlbatch.check.garment import Garment, kept
from xlbatch.check.heat import heat_problems
from xlbatch.check.names import did_you_mean
from xlbatch.check.progress import design_of, designs_by_name, pieces_wanted
from xlbatch.check.rules import RULES
from xlbatch.check.text import print_name
from xlbatch.job.job import Blank, DecalSpec, Job, RosterRow
from xlbatch.problems import Problem, problem
from xlbatch.tables.body import usual_chest
from xlbatch.tables.sizes import TALL

Blanks = Mapping[tuple[str, str], tuple[Blank, ...]]


def check(job: Job, held: frozenset[int]) -> tuple[tuple[Garment, ...], tuple[Problem, ...]]:
    """The garments still to make, and what is wrong with the rest.

    `held` are the roster rows that reading already holds back. A garment of a row that a problem holds back is
    left out of the result."""
    blanks, designs = _blanks_by_name(job), designs_by_name(job)
    made = _sizes_made(job)
    garments: list[Garment] = []
    problems: list[Problem] = []
    for row in job.roster:
        if row.status in ("done", "cancelled") or row.source.row in held:
            continue
        looked_up = _look_up(row, job, blanks, made, designs)
        if isinstance(looked_up, Garment):
            garments.append(looked_up)
        else:
            problems.append(looked_up)
    problems += (problem_ for rule in RULES for problem_ in rule(job, tuple(garments)))
    good = kept(garments, problems)
    problems += heat_problems(job, good)
    good = kept(good, problems)
    return good, (*dict.fromkeys(problems), *assumptions(job, good))


def _look_up(
    row: RosterRow,
    job: Job,
    blanks: Blanks,
    made: Mapping[str, frozenset[str]],
    designs: Mapping[str, tuple[DecalSpec, ...]],
) -> Garment | Problem:
    """The garment of a row, or what keeps it from being one."""
    name = row.garment or job.settings.usual_garment
    sizes = made.get(name.casefold())
    if not sizes:
        return _unknown("garment-unknown", row, "Garment", name, (blank.garment for blank in job.blanks))
    choices = blanks.get((name.casefold(), row.size), ())
    if not choices:
        return _size_not_made(row, job, name, sizes)
    design = design_of(row, job, designs)
    if not design:
        wanted = row.design or job.settings.usual_design
        return _unknown("design-unknown", row, "Design", wanted, (spec.design for spec in job.designs))
    color = row.color or job.settings.usual_color
    return Garment(
        row=row,
        blank=next((b for b in choices if color.casefold() in map(str.casefold, b.colors)), choices[0]),
        color=color,
        print_name=print_name(row, job.settings),
        design=design,
        to_do=tuple(spec for spec in pieces_wanted(row, job, designs) if not set(spec.pieces) <= set(row.done_so_far)),
        needs_blank=not row.done_so_far,
    )


def _unknown(code: str, row: RosterRow, heading: str, typed: str, known: Iterable[str]) -> Problem:
    return problem(code, row.source.at(heading), typed, suggestion=did_you_mean(typed, known), rows=(row.source.row,))


def _size_not_made(row: RosterRow, job: Job, garment: str, sizes: frozenset[str]) -> Problem:
    """The nearest size that is made is the one whose chest is nearest, going by any garment in both sizes."""
    chest = {blank.size: blank.chest for blank in reversed(job.blanks)}
    usual = row.size.removesuffix(TALL)
    wanted = chest.get(usual) or usual_chest(usual)
    nearest = min(sizes, key=lambda size: (abs(chest[size] - wanted), size)) if wanted else ""
    return problem(
        "size-not-made",
        row.source.at("Size"),
        row.size,
        suggestion=nearest,
        rows=(row.source.row,),
        garment=garment,
        size=row.size,
    )


def _sizes_made(job: Job) -> dict[str, frozenset[str]]:
    """The sizes of each garment by its name in lower case."""
    names = {blank.garment.casefold() for blank in job.blanks}
    return {name: frozenset(b.size for b in job.blanks if b.garment.casefold() == name) for name in sorted(names)}


def _blanks_by_name(job: Job) -> Blanks:
    by_name: dict[tuple[str, str], tuple[Blank, ...]] = {}
    for blank in job.blanks:
        key = (blank.garment.casefold(), blank.size)
        by_name[key] = (*by_name.get(key, ()), blank)
    return by_name
