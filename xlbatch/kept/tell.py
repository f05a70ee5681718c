"""What a plan tells of the time since the one before: changes and what follows, questions not answered yet, notes."""

from collections.abc import Iterable

from xlbatch.check.garment import Garment
from xlbatch.film.layout import Layout
from xlbatch.job.job import Job
from xlbatch.job.marks import Marks
from xlbatch.kept.answered import OK, answered
from xlbatch.kept.changes import Follows
from xlbatch.kept.memory import KeptAnswer
from xlbatch.kept.notes import notes_now, parted
from xlbatch.kept.recall import Past
from xlbatch.kept.remember import Told
from xlbatch.press.step import PressPlan
from xlbatch.problems import Problem


def tell(
    past: Past,
    marks: Marks,
    problems: Iterable[Problem],
    job: Job,
    layout: Layout,
    pressing: PressPlan,
    garments: Iterable[Garment],
) -> tuple[tuple[Problem, ...], Told]:
    """The problems still to ask, and what the memory takes along."""
    memory = past.memory
    still, answers = answered(problems, job, memory.answers, marks.answers)
    steps = {step.place.decal.id for step in pressing.steps}
    notes, without_row = parted(notes_now(memory, marks), steps, marks, memory.plan + 1)
    blanks = (garment.no for garment in garments if garment.needs_blank)
    follows = Follows(memory, layout, pressing, blanks, job.settings.length_unit)
    return still, Told((*map(follows.told, past.changes), *without_row), _sorted((*answers, *_alike(job))), notes)


def _alike(job: Job) -> Iterable[KeptAnswer]:
    """Garments of one row, by How many, are alike and meant so: the next plan, with a row each, need not ask."""
    first: dict[int, int] = {}
    for row in job.roster:
        if row.source.row and row.who and first.setdefault(row.source.row, row.no) != row.no:
            yield KeptAnswer("duplicate-row", str(row.no), row.who, OK)


def _sorted(answers: Iterable[KeptAnswer]) -> tuple[KeptAnswer, ...]:
    return tuple(sorted(set(answers), key=lambda each: (each.code, each.garment, each.found)))
