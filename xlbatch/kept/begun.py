"""Garments that were begun stay what was pressed; what the list says otherwise now is asked about, never just done."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from xlbatch.check.progress import design_of, designs_by_name, pieces_wanted
from xlbatch.check.text import decal_text
from xlbatch.job.job import DecalSpec, Job, RosterRow
from xlbatch.job.marks import Marks
from xlbatch.kept.changes import ADDED, DELETED
from xlbatch.kept.memory import KeptChange, KeptDecal, KeptGarment
from xlbatch.kept.states import Standing, parts
from xlbatch.problems import Problem, Where, problem
from xlbatch.problems.phrases import phrase
from xlbatch.trade.tables import color_name

SET = ("Who", "Group")  # headings of which drawings set the text
_HEADING = {"print name": "Print name", "number": "Number", "text": "Design", "artwork": "Design"}


def as_pressed(job: Job, begun: Mapping[int, KeptGarment]) -> Job:
    """The job to plan by: a garment in hand is of the kind, size and color it was pressed on."""
    return replace(job, roster=tuple(_as_pressed(row, begun.get(row.no)) for row in job.roster))


def _as_pressed(row: RosterRow, kept: KeptGarment | None) -> RosterRow:
    if kept is None or not kept.size or row.status:
        return row
    return replace(row, garment=kept.garment, size=kept.size, color=kept.color)


def changed_after_pressing(stood: Standing) -> Iterator[Problem]:
    """A question for each thing the list says otherwise now than what a begun garment is, or what is pressed on it."""
    rows = {row.no: row for row in stood.job.roster if row.source.row}  # a deleted row is asked about as one
    for number, kept in stood.garments.items():
        if number in rows and rows[number].status != "cancelled":
            yield from _other_blank(stood.job, rows[number], kept)
    designs = designs_by_name(stood.job)
    for number, on_it in _pressed(stood.decals).items():
        if number in rows and rows[number].status == "done":
            yield from _not_on_it(rows[number], on_it, pieces_wanted(rows[number], stood.job, designs))
    for decal in stood.decals:
        row = rows.get(decal.garment_no)
        if decal.state == "pressed" and row and row.status != "cancelled":
            specs = {piece: spec for spec in design_of(row, stood.job, designs) for piece in spec.pieces}
            yield from _other_decal(stood.job, row, decal, specs)


def _pressed(decals: Iterable[KeptDecal]) -> Mapping[int, list[str]]:
    """The pieces that are pressed, by garment number."""
    pieces: dict[int, list[str]] = {}
    for decal in decals:
        if decal.state == "pressed":
            pieces.setdefault(decal.garment_no, []).extend(parts(decal.piece))
    return pieces


def _not_on_it(row: RosterRow, on_it: Sequence[str], wanted: Iterable[DecalSpec]) -> Iterator[Problem]:
    """A question where a garment is done and its design has more than what is pressed on it."""
    if lacking := [piece for spec in wanted for piece in spec.pieces if piece not in on_it]:
        lacking_text = ", ".join(lacking)
        where = row.source.at("Design")
        yield problem("done-without", where, lacking_text, rows=_rows(row), number=row.no, pressed="; ".join(on_it))


def design_changed(stood: Standing, changes: Iterable[KeptChange]) -> Iterator[Problem]:
    """A question for each thing changed in a design that is pressed on garments already."""
    pressed, usual = _pressed(stood.decals), stood.job.settings.usual_design
    rows = [row for row in stood.job.roster if row.no in pressed and row.status != "cancelled"]
    for change in changes:
        if change.sheet != "Designs" or change.what in (ADDED, DELETED):
            continue
        design = change.who.partition(" · ")[0].casefold()
        begun = [row for row in rows if (row.design or usual).casefold() == design]
        if begun:
            yield problem(
                "design-after-pressing",
                Where(change.sheet, change.cell),
                change.now,
                rows=tuple(dict.fromkeys(row.source.row for row in begun if row.source.row)),
                what=change.what,
                before=change.before,
                count=len(begun),
            )


def set_text_changed(stood: Standing, changes: Iterable[KeptChange]) -> Iterator[Problem]:
    """A question for each cell of the Roster that was changed and whose text is set in a drawing that is pressed."""
    rows = {row.no: row for row in stood.job.roster}
    specs = {(spec.design.casefold(), piece): spec for spec in stood.job.designs for piece in spec.pieces}
    change_of = {(change.who.split(" ")[1], change.what): change for change in changes if change.who.startswith("No. ")}
    for decal in stood.decals:
        row = rows.get(decal.garment_no)
        if decal.state != "pressed" or row is None or row.status == "cancelled":
            continue
        design = (row.design or stood.job.settings.usual_design).casefold()
        if any((spec := specs.get((design, part))) and spec.what == "artwork" for part in parts(decal.piece)):
            for (number, heading), change in change_of.items():
                if number == str(row.no) and heading in SET and change.before and change.before in decal.text:
                    yield _asked(row, heading, change.now, decal.text, decal.piece)


def _rows(row: RosterRow) -> tuple[int, ...]:
    return (row.source.row,) if row.source.row else ()


def _other_blank(job: Job, row: RosterRow, kept: KeptGarment) -> Iterator[Problem]:
    usual = job.settings
    for heading, now, before, same in (
        ("Garment", row.garment or usual.usual_garment, kept.garment, str.casefold),
        ("Size", row.size, kept.size, str),
        ("Color", row.color or usual.usual_color, kept.color, color_name),
    ):
        if before and now and same(now) != same(before):
            yield _asked(row, heading, now, before, phrase("of its blank", heading=heading.lower()))


def _other_decal(job: Job, row: RosterRow, decal: KeptDecal, specs: Mapping[str, DecalSpec]) -> Iterator[Problem]:
    of_piece = [specs.get(part) for part in parts(decal.piece)]
    if None in of_piece:
        design = row.design or job.settings.usual_design
        yield _asked(row, "Design", design, decal.piece, phrase("piece pressed"))
        return
    known = [spec for spec in of_piece if spec]
    texts = [text for spec in known if (text := decal_text(spec, row, job.settings))]
    now, drawn = " / ".join(texts), any(spec.what == "artwork" for spec in known)  # a drawing may have texts of its own
    if now != decal.text and not (drawn and set(texts) <= set(decal.text.split(" / "))):
        heading = _HEADING[known[0].what]
        heading_ = "Who" if heading == "Print name" and not row.print_name else heading
        yield _asked(row, heading_, now, decal.text, decal.piece)


def _asked(row: RosterRow, heading: str, now: str, before: str, what: str) -> Problem:
    return problem(
        "changed-after-pressing",
        row.source.at(heading),
        now,
        rows=_rows(row),
        number=row.no,
        what=what,
        before=before,
    )


def redone_under(stood: Standing, marks: Marks) -> Iterator[Problem]:
    """A stop for each piece to be made anew that lies under one that is pressed: it cannot go there any more."""
    rows, designs = {row.no: row for row in stood.job.roster}, designs_by_name(stood.job)
    for step in marks.steps:
        row = rows.get(step.garment_no)
        if row is None or step.outcome != "redo film" or row.status:
            continue
        specs = {piece: spec for spec in design_of(row, stood.job, designs) for piece in spec.pieces}
        own = [specs[part] for part in parts(step.piece) if part in specs]
        over = [
            piece
            for piece in row.done_so_far
            if piece in specs and any(_lies_over(specs[piece], piece, spec, step.piece) for spec in own)
        ]
        if over:
            where, suggestion = step.source.at("Result"), "redo garment"
            yield problem("redo-under", where, step.piece, suggestion=suggestion, rows=_rows(row), over=", ".join(over))


def _lies_over(upper: DecalSpec, name: str, lower: DecalSpec, lower_name: str) -> bool:
    """Whether one piece is pressed over another: at the same place, in a higher layer or over its border."""
    level = (upper.layer, name != upper.border) > (lower.layer, lower_name != lower.border)
    return level and upper.position.casefold() == lower.position.casefold()
