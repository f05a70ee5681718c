"""Whether a later plan of the same job lies beside a list or plan: work goes on in that one."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path

from xlbatch.job.marks import Marks
from xlbatch.kept.memory import Memory
from xlbatch.kept.written import Damaged, from_sheet
from xlbatch.problems.refusals import refusal
from xlbatch.roster.read import Reading, read

ENDINGS = (".xlsx", ".ods", ".xlsm")
MOST_NAMED = 8
_DECAL = re.compile(r"D\d+")
_NUMBER = re.compile(r" - plan(?: (\d+))?$")


@dataclass(frozen=True)
class Later:
    """A later plan with marks: its file, what it holds, and its memory."""

    path: Path
    reading: Reading
    memory: Memory


def later_plan(workbook: Path, name: str, dropped: Reading) -> Later | None:
    """The latest plan of the job `name` beside the workbook that is later than it and has something of its own: marks,
    or, where the workbook is a plan too, another input. A list may be planned as often as one likes before the work
    begins, and so may a plan of which an equal one was made."""
    own = _number(workbook)
    for path in sorted(_plans(workbook.parent, name), key=_number, reverse=True):
        if _number(path) <= own:
            return None
        reading = read(path)
        if not isinstance(reading, Reading) or (memory := _memory(reading)) is None:
            continue
        before = _memory(dropped)
        if _has_marks(reading.marks, memory) or (before and before.rows != memory.rows):
            return Later(path, reading, memory)
    return None


def _plans(folder: Path, name: str) -> Iterator[Path]:
    try:
        inside = tuple(folder.iterdir())
    except OSError:  # a folder that may not be looked into tells of no plan
        return
    for path in inside:
        plain = _NUMBER.sub("", path.stem)
        if path.suffix.lower() in ENDINGS and plain == name and plain != path.stem and not path.name.startswith("~$"):
            yield path


def _number(path: Path) -> int:
    """1 for a first plan, 2 for plan 2; 0 for a list."""
    match = _NUMBER.search(path.stem)
    return int(match[1] or 1) if match else 0


def _memory(reading: Reading) -> Memory | None:
    try:
        return from_sheet(reading.kept) if reading.kept else None
    except Damaged:
        return None


def _has_marks(marks: Marks, memory: Memory) -> bool:
    """Whether anything was written into it, or had been before it was made."""
    return (
        any(mark.cut or mark.weeded or mark.spoiled for mark in marks.strips)
        or any(step.outcome or step.pressed or step.by or step.note for step in marks.steps)
        or any(order.ordered or order.arrived for order in marks.orders)
        or any(decal.state != "to cut" for decal in memory.decals)
        or any(garment.stage for garment in memory.garments)
    )


def sentence(workbook: Path, reading: Reading, later: Later) -> str:
    """What to say instead of planning: which plan to go on with, and who is not in it."""
    there = {row.who.casefold() for row in later.reading.job.roster}
    missing = [row.who for row in reading.job.roster if row.who and row.who.casefold() not in there]
    more = f" and {len(missing) - MOST_NAMED} more" if len(missing) > MOST_NAMED else ""
    names = ", ".join(missing[:MOST_NAMED]) + more
    marks = [mark for mark in reading.marks.strips if mark.cut or mark.spoiled]
    steps = [step for step in reading.marks.steps if step.outcome]
    told = [refusal("planned later", name=workbook.name, later=later.path.name)]
    if missing:
        told.append(refusal("not in later", names=names))
    if marks or steps:
        told.append(refusal("marked here", strips=len(marks), results=len(steps)))
    return " ".join(told)


def numbered_after(reading: Reading, later: Later) -> Reading:
    """The list or plan with all new numbers after those of the later plan: no number comes to mean two things."""
    last, job = later.reading.job.settings.last_no, reading.job
    if reading.kept is None:
        rows = tuple(replace(row, no=row.no + last) for row in job.roster)
        job = replace(job, roster=rows, settings=replace(job.settings, last_no=job.settings.last_no + last))
    return replace(reading, job=job, after=(later.memory.last_decal, later.memory.last_run, later.memory.last_strip))


def numbers_given(marks: Marks) -> tuple[int, int, int]:
    """The highest decal, run and strip number of a plan without a memory of which anything is marked; else 0."""
    marked = any(mark.cut or mark.weeded or mark.spoiled for mark in marks.strips)
    if not (marked or any(step.outcome or step.pressed for step in marks.steps)):
        return 0, 0, 0
    decals = (int(step.decal[1:]) for step in marks.steps if _DECAL.fullmatch(step.decal))
    runs, strips = zip((0, 0), *((mark.run, mark.strip) for mark in marks.strips), strict=True)
    return max(decals, default=0), max(runs), max(strips)


def after(memory: Memory, last: tuple[int, int, int]) -> Memory:
    """The memory with its numbers going on after `last`: decal, run and strip."""
    decal, run, strip = last
    return replace(
        memory,
        last_decal=max(memory.last_decal, decal),
        last_run=max(memory.last_run, run),
        last_strip=max(memory.last_strip, strip),
        retired_run=max(memory.retired_run, run),
        retired_strip=max(memory.retired_strip, strip),
    )
