"""Problems as lines to read: like ones are one line, and each names the person it is about."""

from collections.abc import Iterable, Iterator, Mapping

from xlbatch.problems import Level, Problem

MOST_PLACES = 6  # places of like problems that are named


def problem_lines(problems: Iterable[Problem], level: Level, people: Mapping[int, str]) -> Iterator[str]:
    """A line for the problems of one level that are alike. `people`: who stands on each row of the roster."""
    alike: dict[tuple[str, str], list[Problem]] = {}
    for each in problems:
        if each.level == level:
            alike.setdefault((each.code, each.todo), []).append(each)
    for them in alike.values():
        first, *others = them
        yield _named(first, people) + _further(others, people)


def _named(problem: Problem, people: Mapping[int, str]) -> str:
    who = _who(problem, people)
    return f"{who}: {problem.sentence}" if who else problem.sentence


def _further(others: list[Problem], people: Mapping[int, str]) -> str:
    if not others:
        return ""
    places = [" ".join(part for part in (*each.where, _in_brackets(_who(each, people))) if part) for each in others]
    shown = list(dict.fromkeys(places))
    more = f" and {len(shown) - MOST_PLACES} more" if len(shown) > MOST_PLACES else ""
    return f" Likewise {', '.join(shown[:MOST_PLACES])}{more}."


def _who(problem: Problem, people: Mapping[int, str]) -> str:
    """The one person that a problem is about; "" where it is about several, or none."""
    names = {people.get(row, "") for row in problem.rows}
    return names.pop() if len(names) == 1 else ""


def _in_brackets(who: str) -> str:
    return f"({who})" if who else ""
