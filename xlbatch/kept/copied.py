"""A row of the Roster that was copied with its garment number: the row nearest to what was planned keeps the number,
and the other is a garment of its own, of which nothing is made or paid."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from xlbatch.job.job import RosterRow
from xlbatch.kept.input_rows import GivenRow, as_planned
from xlbatch.kept.memory import Memory
from xlbatch.problems import Problem, problem
from xlbatch.roster.read import Reading

TWICE = "garment-no-twice"
NUMBER = "Garment no."
OF_ITS_OWN = ("Status", "Done so far", "Paid")  # what is true of the garment that was copied alone


def told_apart(reading: Reading, memory: Memory, given: Iterable[GivenRow]) -> Reading:
    """The reading with the numbers of such rows the right way round, and the new ones begun anew."""
    twice = [problem_ for problem_ in reading.problems if problem_.code == TWICE]
    planned = as_planned(memory) if twice else {}
    values = {row.key: row.values for row in given if row.sheet == "Roster"} if twice else {}
    for twin in twice:
        first = next((row for row in reading.job.roster if str(row.no) == twin.found), None)
        second = next((row for row in reading.job.roster if row.source.row in twin.rows), None)
        before = planned.get(("Roster", twin.found))
        if first is None or second is None or before is None:
            continue
        copy = values[str(second.no)]
        if _alike(before, copy) > _alike(before, values[str(first.no)]):
            reading = _swapped(reading, twin, first, second)
            first, copy = second, values[str(first.no)]
        reading = _begun_anew(reading, int(twin.found), before, copy)
    return reading


def _swapped(reading: Reading, twin: Problem, first: RosterRow, second: RosterRow) -> Reading:
    """The second row has the number, and the first is the copy."""
    other = {first.source.row: second.no, second.source.row: first.no}
    roster = tuple(replace(row, no=other.get(row.source.row, row.no)) for row in reading.job.roster)
    where, rows = first.source.at(NUMBER), (first.source.row,)
    asked = problem(TWICE, where, twin.found, rows=rows, number=second.no)
    problems = tuple(asked if problem_ is twin else problem_ for problem_ in reading.problems)
    return replace(reading, job=replace(reading.job, roster=roster), problems=problems)


def _begun_anew(reading: Reading, no: int, before: Mapping[str, str], copy: Mapping[str, str]) -> Reading:
    """Without what the copy has of the garment `no` and can't be true of both."""
    twice = next(problem_ for problem_ in reading.problems if problem_.code == TWICE and problem_.found == str(no))
    same = {name for name in OF_ITS_OWN if before.get(name) and copy.get(name) == before[name] != "cancelled"}
    if not same:
        return reading
    left_text = ", ".join(f"{name} {copy[name]}" for name in OF_ITS_OWN if name in same)
    row = next(row for row in reading.job.roster if row.source.row in twice.rows)
    anew = replace(
        row,
        status="" if "Status" in same else row.status,
        done_so_far=() if "Done so far" in same else row.done_so_far,
        paid=None if "Paid" in same else row.paid,
    )
    roster = tuple(anew if row_ is row else row_ for row_ in reading.job.roster)
    left = problem("copied-with-it", row.source.at("Garment no."), left_text, rows=twice.rows, number=row.no, copied=no)
    problems = tuple(left if problem_ is twice else problem_ for problem_ in reading.problems)
    return replace(reading, job=replace(reading.job, roster=roster), problems=problems)


def _alike(before: Mapping[str, str], now: Mapping[str, str]) -> int:
    """In how many cells, their numbers apart, a row is as it was planned."""
    return sum(before.get(name) == value for name, value in now.items() if name != NUMBER)
