"""A workbook's memory, and where the work stands by it; of a list, or a plan made before there was one, nothing."""

from collections import Counter
from dataclasses import replace

from xlbatch.check.progress import up_to_date
from xlbatch.check.stock import BlankKind, blank_kind, blanks_left, film_to_measure
from xlbatch.kept.memory import NO_MEMORY, Memory
from xlbatch.kept.remember import nothing_yet
from xlbatch.kept.states import Standing, standing
from xlbatch.kept.written import Damaged, from_sheet
from xlbatch.problems import Problem, Where, problem
from xlbatch.roster.read import Reading


def recall(reading: Reading) -> tuple[Memory, Standing, tuple[Problem, ...]]:
    """The memory of the plan dropped, where each piece stands now, and what to ask."""
    memory, problems = _memory(reading)
    if memory is None:
        job, asked = up_to_date(reading.job)
        return NO_MEMORY, nothing_yet(job), problems + asked
    now = standing(reading.job, reading.marks, memory)
    blanks, asked = blanks_left(now.job, _used(memory, now))
    now = replace(now, job=replace(now.job, blanks=blanks))
    return memory, now, problems + now.problems + asked + film_to_measure(now.job)


def _used(memory: Memory, now: Standing) -> Counter[BlankKind]:
    """The blanks used since the plan, by what was pressed, not by what the Roster says now."""
    planned = {garment.no: garment for garment in memory.garments}
    counts: Counter[BlankKind] = Counter()
    for number, count in now.used.items():
        counts[blank_kind(planned[number].garment, planned[number].size, planned[number].color)] += count
    return counts


def _memory(reading: Reading) -> tuple[Memory | None, tuple[Problem, ...]]:
    if reading.kept is None:
        return None, ()
    try:
        return from_sheet(reading.kept), ()
    except Damaged:
        return None, (problem("memory-damaged", Where(reading.kept.name)),)
