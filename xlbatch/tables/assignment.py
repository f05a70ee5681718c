"""The best joint assignment: which column gets which meaning so that the scores add up to the most."""

from collections.abc import Sequence
from math import inf


def best_assignment(scores: Sequence[Sequence[float]]) -> tuple[int, ...]:
    """For each row of `scores` its column, no column twice, the sum the greatest. At least as many columns as rows.

    Shortest augmenting paths (H. W. Kuhn's Hungarian method in the form of R. Jonker and A. Volgenant, Computing
    38, 1987); tests/tables/test_assignment.py compares with all there are."""
    count = len(scores[0]) if scores else 0
    of_row, of_column = [0.0] * (len(scores) + 1), [0.0] * (count + 1)
    holder = [0] * (count + 1)  # the row (from 1) that has each column (from 1)
    for row in range(1, len(scores) + 1):
        _place(row, scores, of_row, of_column, holder)
    placed = {holder[column]: column - 1 for column in range(1, count + 1)}
    return tuple(placed[row] for row in range(1, len(scores) + 1))


def _place(
    row: int, scores: Sequence[Sequence[float]], of_row: list[float], of_column: list[float], holder: list[int]
) -> None:
    """Gives a further row a column, moving others along the cheapest path to a free one."""
    count = len(of_column) - 1
    holder[0], column = row, 0
    least, before, reached = [inf] * (count + 1), [0] * (count + 1), [False] * (count + 1)
    while holder[column]:
        reached[column] = True
        here, step, following = holder[column], inf, 0
        for other in range(1, count + 1):
            if not reached[other]:
                cost = -scores[here - 1][other - 1] - of_row[here] - of_column[other]
                if cost < least[other]:
                    least[other], before[other] = cost, column
                if least[other] < step:
                    step, following = least[other], other
        for other in range(count + 1):
            if reached[other]:
                of_row[holder[other]] += step
                of_column[other] -= step
            else:
                least[other] -= step
        column = following
    while column:
        holder[column] = holder[before[column]]
        column = before[column]
