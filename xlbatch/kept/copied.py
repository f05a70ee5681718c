"""A row of the Roster that was copied with its garment number: the row nearest to what was planned keeps the number."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from xlbatch.kept.input_rows import GivenRow, as_planned
from xlbatch.kept.memory import Memory
from xlbatch.problems import problem
from xlbatch.roster.read import Reading

TWICE = "garment-no-twice"
NUMBER = "Garment no."


def told_apart(reading: Reading, memory: Memory, given: Iterable[GivenRow]) -> Reading:
    """The reading with the numbers of such rows the right way round."""
    twice = [found for found in reading.problems if found.code == TWICE]
    planned = as_planned(memory) if twice else {}
    values = {row.key: row.values for row in given if row.sheet == "Roster"} if twice else {}
    for found in twice:
        first = next((row for row in reading.job.roster if str(row.no) == found.found), None)
        second = next((row for row in reading.job.roster if row.source.row in found.rows), None)
        before = planned.get(("Roster", found.found))
        if first is None or second is None or before is None:
            continue
        if _alike(before, values[str(second.no)]) > _alike(before, values[str(first.no)]):
            other = {first.source.row: second.no, second.source.row: first.no}
            roster = tuple(replace(row, no=other.get(row.source.row, row.no)) for row in reading.job.roster)
            where, rows = first.source.at(NUMBER), (first.source.row,)
            asked = problem(TWICE, where, found.found, rows=rows, number=second.no)
            problems = tuple(asked if each is found else each for each in reading.problems)
            reading = replace(reading, job=replace(reading.job, roster=roster), problems=problems)
    return reading


def _alike(before: Mapping[str, str], now: Mapping[str, str]) -> int:
    """In how many cells, their numbers apart, a row is as it was planned."""
    return sum(before.get(name) == value for name, value in now.items() if name != NUMBER)
