"""Problems that were answered are not asked again while what they were found at is the same."""

from collections.abc import Iterable

from xlbatch.job.job import Job
from xlbatch.job.marks import AnswerMark
from xlbatch.kept.memory import KeptAnswer
from xlbatch.problems import Problem

OK, NO = "ok", "no"
NOT_NEEDED = "cut-not-needed"  # may come with an offer, which ok takes and no declines


def garment_of(found: Problem, job: Job) -> str:
    """The garment a problem is about, by its number; "" where it is about none or about several."""
    numbers = [str(row.no) for row in job.roster if row.source.row in found.rows] if len(found.rows) == 1 else []
    return numbers[0] if numbers else ""


def _settles(answer: str, found: Problem) -> bool:
    """Whether an answer makes that a problem is not told again."""
    word = answer.strip().casefold()
    return word == NO if found.code == NOT_NEEDED and found.suggestion else word == OK


def answered(
    problems: Iterable[Problem], job: Job, kept: Iterable[KeptAnswer], marks: Iterable[AnswerMark]
) -> tuple[tuple[Problem, ...], tuple[KeptAnswer, ...]]:
    """The problems still to ask, and the answers that still hold. A stop stays whatever is answered."""
    said = {(each.code, each.garment, each.found): each.answer for each in kept}
    said |= {(mark.code, mark.garment, mark.found): mark.answer for mark in marks}
    still: list[Problem] = []
    holding: dict[tuple[str, str, str], KeptAnswer] = {}
    garments = {row.source.row: str(row.no) for row in reversed(job.roster)} if said else {}
    for found in problems:
        key = (found.code, garments.get(found.rows[0], "") if len(found.rows) == 1 else "", found.found)
        if key in said:
            holding[key] = KeptAnswer(*key, said[key])
        if found.level == "stop" or not _settles(said.get(key, ""), found):
            still.append(found)
    return tuple(still), tuple(holding.values())
