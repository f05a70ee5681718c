"""What a plan tells of the time since the one before: changes and what follows, questions not answered yet, notes."""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass

from xlbatch.check.garment import Garment
from xlbatch.film.layout import Layout
from xlbatch.job.job import Job
from xlbatch.job.marks import Marks, row_key
from xlbatch.kept.answered import OK, answered, garment_of
from xlbatch.kept.follows import Follows
from xlbatch.kept.memory import KeptAnswer, KeptOffer
from xlbatch.kept.notes import Rows, notes_now, parted
from xlbatch.kept.recall import Past
from xlbatch.kept.remember import Told
from xlbatch.press.step import PressPlan
from xlbatch.problems import Problem
from xlbatch.shopping.lines import BuyLine, MoneyLine


@dataclass(frozen=True)
class Planned:
    """What is planned now, as far as it has to do with what was written into the plan before."""

    job: Job
    garments: tuple[Garment, ...]
    layout: Layout
    pressing: PressPlan
    shopping: tuple[BuyLine, ...]
    money: tuple[MoneyLine, ...]


def tell(
    past: Past,
    marks: Marks,
    problems: Iterable[Problem],
    now: Planned,
    offered: tuple[KeptOffer, ...],
    own: Mapping[str, Collection[str]],
) -> tuple[tuple[Problem, ...], Told]:
    """The problems still to ask, and what the memory takes along. `own`: the headings of a plan's own sheets."""
    memory = past.memory
    still, answers = answered(problems, now.job, memory.answers, marks.answers)
    asked = still if any(note.sheet == "Problems" for note in marks.beside) else ()
    notes, without_row = parted(memory, notes_now(marks, own), marks.orders, _rows(now, past, asked))
    follows = Follows(memory, now.job.settings, now.garments, now.layout, now.pressing)
    changes = (*follows.told(past.changes), *without_row)
    return still, Told(changes, _sorted((*answers, *_alike(now.job))), notes, offered)


def _rows(now: Planned, past: Past, problems: Iterable[Problem]) -> Rows:
    """What the rows of the plan's own sheets are called, those of garments held back for now among them."""
    waiting = {str(row.no) for row in past.stood.job.roster if row.status not in ("done", "cancelled")}
    lines = ((line.kind, line.item, line.garment, line.size, line.color) for line in now.shopping)
    strips = {(run.film.name, run.no, strip.batch) for run in now.layout.runs for strip in run.strips}
    strips |= {(decal.film, decal.run, decal.strip) for decal in past.stood.decals if decal.ready}
    return {
        "Press log": {step.place.decal.id for step in now.pressing.steps},
        "Proof": waiting,
        "Money": waiting | {str(line.no) for line in now.money},
        "Shopping list": set(map(row_key, lines)),
        "Cut list": {row_key(map(str, strip)) for strip in strips},
        "Problems": {row_key((problem.code, garment_of(problem, now.job), problem.found)) for problem in problems},
    }


def _alike(job: Job) -> Iterable[KeptAnswer]:
    """Garments of one row, by How many, are alike and meant so: the next plan, with a row each, need not ask."""
    first: dict[int, int] = {}
    for row in job.roster:
        if row.source.row and row.who and first.setdefault(row.source.row, row.no) != row.no:
            yield KeptAnswer("duplicate-row", str(row.no), row.who, OK)


def _sorted(answers: Iterable[KeptAnswer]) -> tuple[KeptAnswer, ...]:
    return tuple(sorted(set(answers), key=lambda answer: (answer.code, answer.garment, answer.found)))
