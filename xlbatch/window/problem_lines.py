"""Problems as lines to read: like ones are one line, and each names the person it is about."""

from collections.abc import Iterable, Iterator

from xlbatch.problems import Level, Problem

MOST_PLACES = 6  # places of like problems that are named


def problem_lines(problems: Iterable[Problem], level: Level) -> Iterator[str]:
    """A line for the problems of one level that are alike."""
    alike: dict[tuple[str, str], list[Problem]] = {}
    for problem in problems:
        if problem.level == level:
            alike.setdefault((problem.code, problem.todo), []).append(problem)
    for first, *others in alike.values():
        yield first.sentence + _further(others)


def _further(others: list[Problem]) -> str:
    places = list(dict.fromkeys(_place(problem) for problem in others))
    if not places:
        return ""
    more = f" and {len(places) - MOST_PLACES} more" if len(places) > MOST_PLACES else ""
    return f" Likewise {', '.join(places[:MOST_PLACES])}{more}."


def _place(problem: Problem) -> str:
    return " ".join(part for part in (*problem.where, f"({problem.who})" if problem.who else "") if part)
