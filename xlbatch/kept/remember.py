"""What is planned now → the memory that the plan takes along."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from xlbatch.check.garment import Garment
from xlbatch.film.layout import Batch, Layout, Run
from xlbatch.job.job import RosterRow
from xlbatch.kept.gone import ROSTER
from xlbatch.kept.input_rows import GivenRow, kept_rows
from xlbatch.kept.lasting import Numbered, area_of, text_of
from xlbatch.kept.memory import (
    KeptAnswer,
    KeptChange,
    KeptDecal,
    KeptGarment,
    KeptNote,
    KeptOffer,
    KeptStrip,
    Memory,
    Stage,
    strips_cut,
)
from xlbatch.kept.notes import ON_CELL
from xlbatch.kept.states import Standing


@dataclass(frozen=True)
class Told:
    """What the plan says of changes since the last, which answers hold, and what people wrote beside steps."""

    changes: tuple[KeptChange, ...]
    answers: tuple[KeptAnswer, ...]
    notes: tuple[KeptNote, ...]
    offers: tuple[KeptOffer, ...]


NOWHERE = 0  # the run, strip and batch of a decal that is not laid


def remember(
    memory: Memory,
    stood: Standing,
    numbers: Numbered,
    layout: Layout,
    batches: tuple[Batch, ...],
    garments: tuple[Garment, ...],
    retired: tuple[int, int],
    given: Sequence[GivenRow],
    told: Told,
) -> Memory:
    """The memory of the plan after the one that had `memory`."""
    decals = _decals(stood, layout, batches)
    cut = strips_cut(decals)
    # To six places first: sums differ in their last bits from one Python to the next, and half a thousandth is common.
    strips = tuple(
        KeptStrip(run.film.name, run.no, strip.batch, round(round(strip.length + _more(run), 6), 3), run.cut_from)
        for run in layout.runs
        for strip in run.strips
    )
    headings, rows = kept_rows(given)
    laid = max((run.no for run in layout.runs), default=0), max((batch.no for batch in layout.batches), default=0)
    return replace(
        memory,
        plan=memory.plan + bool(told.changes),
        changes=(*told.changes, *memory.changes),
        answers=told.answers,
        notes=(*told.notes, *_on_the_roster(given)),
        offers=told.offers,
        last_decal=numbers.last,
        last_run=max(retired[0], laid[0]),
        last_strip=max(retired[1], laid[1]),
        retired_run=retired[0],
        retired_strip=retired[1],
        decals=decals,
        strips=(*(strip for strip in memory.strips if strip.place in cut), *strips),
        garments=tuple(_garments(stood, garments)),
        films=tuple(sorted(memory.films, key=lambda film: film.film)),
        headings=headings,
        rows=rows,
    )


def _on_the_roster(given: Iterable[GivenRow]) -> Iterable[KeptNote]:
    """The notes on cells of the Roster: should a row be deleted, they come back with it."""
    for row in given:
        for heading, text in row.source.notes.items() if row.sheet == ROSTER else ():
            yield KeptNote(ROSTER, row.key, heading, text, ON_CELL)


def _more(run: Run) -> float:
    """A strip's share of the film beside the strips: margins and gaps."""
    return (run.length - sum(strip.length for strip in run.strips)) / len(run.strips)


def _decals(stood: Standing, layout: Layout, batches: tuple[Batch, ...]) -> tuple[KeptDecal, ...]:
    batch_of = {no: batch.no for batch in batches for no in batch.garments}
    decals = {
        old.id: replace(old, run=NOWHERE, strip=NOWHERE, batch=NOWHERE) if old.state == "to cut" else old
        for old in stood.decals
    }
    for run in layout.runs:
        for strip in run.strips:
            for decal in (lying.decal for lying in strip.lying):
                decals[decal.id] = KeptDecal(
                    decal.id,
                    decal.garment_no,
                    decal.piece,
                    text_of(decal),
                    decal.film,
                    decal.width,
                    decal.height,
                    area_of(decal),
                    run.no,
                    strip.batch,
                    batch_of[decal.garment_no],
                    "to cut",
                )
    return tuple(sorted(decals.values(), key=lambda decal: int(decal.id[1:])))


def _garments(stood: Standing, garments: Iterable[Garment]) -> Iterable[KeptGarment]:
    """Every garment of the list: one begun or done with the blank it is on, the others as they are planned."""
    planned = {garment.no: garment for garment in garments}
    for row in stood.job.roster:
        if row.no in stood.garments:
            yield stood.garments[row.no]
        elif garment := planned.get(row.no):
            yield KeptGarment(row.no, garment.blank.garment, garment.blank.size, garment.color, _stage(row))
        else:
            usual = stood.job.settings
            yield KeptGarment(
                row.no, row.garment or usual.usual_garment, row.size, row.color or usual.usual_color, _stage(row)
            )


def _stage(row: RosterRow) -> Stage:
    return "done" if row.status == "done" else "begun" if row.done_so_far else ""
