"""Brings the roster up to date with what the press log and the Status column say happened."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import replace

from xlbatch.check.stock import blanks_left, film_to_measure, used_blanks
from xlbatch.check.text import decal_text
from xlbatch.job.job import JOINED, NO_NAME, DecalSpec, Job, RosterRow
from xlbatch.job.marks import Result
from xlbatch.problems import Problem

BLANK_IN_HAND = "blank in hand"


def up_to_date(job: Job) -> tuple[Job, tuple[Problem, ...]]:
    """The job with each row's Status and Done so far, and the blanks on hand, as they now stand; and what to ask.

    A Status set by hand wins over the log. A redo is turned into what is left to do: `redo film` keeps the
    blank and presses everything anew, `redo garment` starts over."""
    designs = designs_by_name(job)
    results: dict[int, list[Result]] = defaultdict(list)
    for result in job.results:
        results[result.garment_no].append(result)
    rows = tuple(_now(row, tuple(results[row.no]), pieces_wanted(row, job, designs)) for row in job.roster)
    blanks, problems = blanks_left(job, used_blanks(job, rows))
    return replace(job, roster=rows, blanks=blanks), problems + film_to_measure(job)


def designs_by_name(job: Job) -> Mapping[str, tuple[DecalSpec, ...]]:
    """The decals of each design, by its name without regard to case."""
    by_name: dict[str, tuple[DecalSpec, ...]] = {}
    for spec in job.designs:
        key = spec.design.casefold()
        by_name[key] = (*by_name.get(key, ()), spec)
    return by_name


def design_of(row: RosterRow, job: Job, designs: Mapping[str, tuple[DecalSpec, ...]]) -> tuple[DecalSpec, ...]:
    """The decals of a row's design, the usual design where it names none; empty where there is no such design."""
    return designs.get((row.design or job.settings.usual_design).casefold(), ())


def pieces_wanted(row: RosterRow, job: Job, designs: Mapping[str, tuple[DecalSpec, ...]]) -> tuple[DecalSpec, ...]:
    """The decals a row's garment gets: those of its design, less texts with nothing to say, and no name if so asked."""
    unwanted = ("text", "print name") if row.print_name == NO_NAME else ("text",)
    return tuple(
        spec
        for spec in design_of(row, job, designs)
        if spec.what not in unwanted or decal_text(spec, row, job.settings)
    )


def _named(pieces: Iterable[str], known: Iterable[str]) -> set[str]:
    """The pieces that a log's names mean: a joined piece has its parts' names in one."""
    joined = [f"{JOINED}{name}{JOINED}" for name in known]
    return {piece for piece in pieces if any(f"{JOINED}{piece}{JOINED}" in name for name in joined)}


def _now(row: RosterRow, results: tuple[Result, ...], wanted: tuple[DecalSpec, ...]) -> RosterRow:
    if row.status in ("done", "cancelled"):
        return row
    if row.status == "redo garment":
        return replace(row, status="", done_so_far=())
    if row.status == "redo film":
        return replace(row, status="", done_so_far=(BLANK_IN_HAND,))
    if not results:
        return row
    if any(result.result == "redo garment" for result in results):
        return replace(row, done_so_far=())
    pieces = tuple(piece for spec in wanted for piece in spec.pieces)
    pressed = _named(pieces, (result.piece for result in results if result.result == "ok")) | set(row.done_so_far)
    pressed -= _named(pieces, (result.piece for result in results if result.result == "redo film"))
    if pieces and all(piece in pressed for piece in pieces):
        return replace(row, status="done", done_so_far=())
    return replace(row, done_so_far=(BLANK_IN_HAND, *(piece for piece in pieces if piece in pressed)))
