"""Problems that were answered are not asked again while what they were found at is the same."""

from collections.abc import Iterable

from xlbatch.job.job import Job
from xlbatch.job.marks import AnswerMark
from xlbatch.kept.memory import KeptAnswer
from xlbatch.problems import Problem

OK, NO = "ok", "no"
NOT_NEEDED = "cut-not-needed"  # may come with an offer, which ok takes and no declines


def garment_of(problem: Problem, job: Job) -> str:
    """The garment a problem is about, by its number; "" where it is about none or about several."""
    numbers = [str(row.no) for row in job.roster if row.source.row in problem.rows] if len(problem.rows) == 1 else []
    return numbers[0] if numbers else ""


def _settles(answer: str, problem: Problem) -> bool:
    """Whether an answer makes that a problem is not told again."""
    word = answer.strip().casefold()
    return word == NO if problem.code == NOT_NEEDED and problem.suggestion else word == OK


def answered(
    problems: Iterable[Problem], job: Job, kept: Iterable[KeptAnswer], marks: Iterable[AnswerMark]
) -> tuple[tuple[Problem, ...], tuple[KeptAnswer, ...]]:
    """The problems still to ask, and the answers that still hold. A stop stays whatever is answered."""
    answers = {(answer.code, answer.garment, answer.found): answer.answer for answer in kept}
    answers |= {(mark.code, mark.garment, mark.found): mark.answer for mark in marks}
    still: list[Problem] = []
    holding: dict[tuple[str, str, str], KeptAnswer] = {}
    garments = {row.source.row: str(row.no) for row in reversed(job.roster)} if answers else {}
    for problem in problems:
        key = (problem.code, garments.get(problem.rows[0], "") if len(problem.rows) == 1 else "", problem.found)
        if key in answers:
            holding[key] = KeptAnswer(*key, answers[key])
        if problem.level == "stop" or not _settles(answers.get(key, ""), problem):
            still.append(problem)
    return tuple(still), tuple(holding.values())
