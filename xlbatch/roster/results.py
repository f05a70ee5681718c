"""Turns the Result column of a plan's press log into results, one a piece that was marked."""

from collections.abc import Iterable
from typing import Literal, cast

from xlbatch.problems import Problem
from xlbatch.roster.job import Result
from xlbatch.roster.line import Line


def read_results(given: Iterable[Line]) -> tuple[tuple[Result, ...], tuple[Problem, ...]]:
    """The results, and what was wrong. Rows without a garment number are the batches' banners."""
    results, problems = [], []
    for line in given:
        if not (line.given("Garment no.") and line.given("Result")):
            continue
        number, piece, result = line.count("Garment no."), line.text("Piece"), line.choice("Result")
        if number and result:
            results.append(Result(number, piece, cast(Literal["ok", "redo film", "redo garment"], result)))
        problems += line.problems
    return tuple(results), tuple(problems)
