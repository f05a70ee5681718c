"""A workbook's memory, and where the work stands by it; of a list, or a plan made before there was one, nothing."""

from xlbatch.check.progress import up_to_date
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
    return memory, now, problems + now.problems


def _memory(reading: Reading) -> tuple[Memory | None, tuple[Problem, ...]]:
    if reading.kept is None:
        return None, ()
    try:
        return from_sheet(reading.kept), ()
    except Damaged:
        return None, (problem("memory-damaged", Where(reading.kept.name)),)
