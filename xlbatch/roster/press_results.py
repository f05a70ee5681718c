"""Turns the rows of a Press log into what happened to each piece at the press."""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import cast

from xlbatch.job.marks import Outcome, StepMark
from xlbatch.problems import Problem, problem
from xlbatch.problems.phrases import phrase
from xlbatch.tables.cells import shown_value
from xlbatch.tables.line import Line

BATCH = re.compile(r"(?:press \d+ · )?batch \d", re.IGNORECASE)  # how the first banner of a batch begins
Key = tuple[int, str, str]  # garment number, decal and piece


@dataclass
class _Block:
    """The steps under one block of banners, and the result written into a banner."""

    new_batch: bool
    steps: list[StepMark] = field(default_factory=list)
    batch_result: Outcome = ""  # in the batch's own banner: for all its parts
    result: Outcome = ""
    by: str = ""  # written into a banner: for its steps that have no one
    note: str = ""  # likewise: beside the first of them


def read_steps(given: Iterable[Line]) -> tuple[tuple[StepMark, ...], tuple[Problem, ...]]:
    """The steps of the Press log, each with what its results come to, and what was wrong or unclear.

    A result counts for its row; on a garment's last row of a batch, or under one banner, also for its blank rows above
    it there; in a banner for the rows under it that are still blank."""
    given = tuple(given)
    parts, part_problems = _parts(given)
    outcomes: dict[Key, Outcome] = {}
    for batch in _batches(parts):
        for rows in (*(part.steps for part in batch), [step for part in batch for step in part.steps]):
            _count_last_rows(rows, outcomes)
        for part in batch:
            _count_banner(part.steps, part.result, outcomes)
            _count_banner(part.steps, batch[0].batch_result, outcomes)
    every = [step for part in parts for step in _with_banner(part)]
    outcomes |= dict.fromkeys(map(_key, _two_results(every)), "")
    steps = tuple(replace(step, outcome=outcomes.get(_key(step), "")) for step in every)
    problems = [_never_ok(problem) for line in given for problem in line.problems]
    return steps, (*problems, *part_problems, *_twice(steps), *_pressed_on_spoiled(steps), *_no_result(steps))


def _parts(given: Iterable[Line]) -> tuple[list[_Block], list[Problem]]:
    parts = [_Block(new_batch=True)]
    problems: list[Problem] = []
    in_banner = True
    for line in given:
        number = line.count("Garment no.") if line.given("Garment no.") else None
        if number:
            parts[-1].steps.append(_step(line, number))
            in_banner = False
            continue
        opens = bool(BATCH.match(_text(line)))
        if not in_banner or (opens and parts[-1].steps):
            parts.append(_Block(new_batch=opens))
        parts[-1].new_batch |= opens
        in_banner = True
        parts[-1].by = line.any_text("By") or parts[-1].by
        parts[-1].note = line.any_text("Note") or parts[-1].note
        result = cast(Outcome, line.choice("Result"))
        before = parts[-1].batch_result if opens else parts[-1].result
        if result and before and result != before:
            problems.append(problem("result-contradicts", line.source.at("Result"), result, other=before, what="row"))
        elif result and opens:
            parts[-1].batch_result = result
        elif result:
            parts[-1].result = result
    return parts, problems


def _step(line: Line, number: int) -> StepMark:
    result = cast(Outcome, line.choice("Result"))
    decal = line.text("Decal")
    return StepMark(
        line.source,
        number,
        line.text("Piece") or decal,
        decal.upper(),
        bool(line.mark("Pressed")),
        result,
        result,
        line.any_text("By"),
        line.any_text("Note"),
        bool(line.mark("Peeled")),
    )


def _with_banner(part: _Block) -> Iterator[StepMark]:
    """The steps with what stands under By and Note in their banner."""
    for step_no, step in enumerate(part.steps):
        note = step.note if step_no else " · ".join(filter(None, (part.note, step.note)))
        yield replace(step, by=step.by or part.by, note=note)


def _text(line: Line) -> str:
    """What a banner says, in the first cell of its row."""
    cell = line.cells.get("Step") or line.cells.get("Garment no.")
    return shown_value(cell) if cell else ""


def _batches(parts: Sequence[_Block]) -> Iterator[list[_Block]]:
    batch: list[_Block] = []
    for part in parts:
        if part.new_batch and batch:
            yield batch
            batch = []
        batch.append(part)
    if batch:
        yield batch


def _key(step: StepMark) -> Key:
    return step.garment_no, step.decal, step.piece


def _count_last_rows(steps: Sequence[StepMark], outcomes: dict[Key, Outcome]) -> None:
    """Each row's own result, and on a garment's last row also for its blank rows."""
    last: dict[int, StepMark] = {step.garment_no: step for step in steps}
    for step in steps:
        result = step.result or last[step.garment_no].result
        if result:
            outcomes.setdefault(_key(step), result)


def _count_banner(steps: Sequence[StepMark], result: Outcome, outcomes: dict[Key, Outcome]) -> None:
    for step in steps if result else ():
        outcomes.setdefault(_key(step), result)


def _two_results(steps: Sequence[StepMark]) -> Iterator[StepMark]:
    """Rows about a piece of which another row says something else."""
    first: dict[Key, Outcome] = {}
    for step in steps:
        if step.result and first.setdefault(_key(step), step.result) != step.result:
            yield step


def _twice(steps: Sequence[StepMark]) -> Iterator[Problem]:
    for step in _two_results(steps):
        yield problem(
            "result-contradicts", step.source.at("Result"), step.result, other=phrase("another result"), what="piece"
        )


def _pressed_on_spoiled(steps: Sequence[StepMark]) -> Iterator[Problem]:
    """A garment that is spoiled in one row and goes on well in a later one."""
    spoiled: dict[int, StepMark] = {}
    for step in steps:
        if step.result == "ok" and step.garment_no in spoiled:
            other = phrase("redo in", cell=spoiled[step.garment_no].source.at("Result").cell)
            yield problem("result-contradicts", step.source.at("Result"), "ok", other=other, what="garment")
        if step.result == "redo garment":
            spoiled[step.garment_no] = step


def _no_result(steps: Sequence[StepMark]) -> Iterator[Problem]:
    """A garment all of whose steps are ticked, and none has a result."""
    of_garment: dict[int, list[StepMark]] = {}
    for step in steps:
        of_garment.setdefault(step.garment_no, []).append(step)
    for number, own in of_garment.items():
        if all(step.pressed for step in own) and not any(step.outcome for step in own):
            yield problem("pressed-no-result", own[-1].source.at("Result"), "", number=number)


def _never_ok(problem: Problem) -> Problem:
    """A result that can't be read is never taken for ok: that piece would not be looked at again."""
    return (
        replace(problem, suggestion="") if problem.code == "result-unknown" and problem.suggestion == "ok" else problem
    )


def garments_in(steps: Iterable[StepMark]) -> frozenset[int]:
    """The garments of the log, marked or not."""
    return frozenset(step.garment_no for step in steps)


def by_garment(steps: Iterable[StepMark]) -> Mapping[int, list[StepMark]]:
    """Each garment's steps in order."""
    steps_of: dict[int, list[StepMark]] = {}
    for step in steps:
        steps_of.setdefault(step.garment_no, []).append(step)
    return steps_of
